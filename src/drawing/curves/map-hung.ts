/** How a text hangs once it is mapped: where the map mirrors, the text is turned to read, and hangs on its other end. */
import type { HungText } from '#drawing/drawing.ts';
import { scale } from '#geometry/point.ts';
import { type Affine, determinant, mapVector } from './affine.ts';

const OTHER_END = { start: 'end', middle: 'middle', end: 'start' } as const;

export function mapHung(map: Affine, { along, across, up }: HungText): HungText {
  const mapped = mapVector(map, along);
  if (determinant(map) >= 0) return { along: mapped, across, up };
  return { along: scale(mapped, -1), across: OTHER_END[across], up };
}
