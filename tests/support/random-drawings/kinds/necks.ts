/** Rooms joined by a neck, and legs of an L or a T, exactly as wide as two allowances or just more or less. */

import { polygon, rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

/** @param allowance φ times the depth of most of the part's pockets, mm */
export function necks(dice: Dice, allowance: number): DrawnCurve[] {
  const width = 2 * allowance + dice.pick([0, 0, 0, 0.001, -0.001, 0.2, -0.2, 1]);
  const [x, y] = [dice.whole(10, 20), dice.whole(10, 20)];
  const [w, h] = [dice.whole(12, 24), dice.whole(12, 24)];
  const low = y + dice.whole(2, 6);
  const far = x + w + dice.whole(6, 16);
  const shape = dice.pick(['rooms', 'leg', 'tee'] as const);
  const corners: Record<typeof shape, readonly (readonly [number, number])[]> = {
    rooms: [
      [x, y],
      [x + w, y],
      [x + w, low],
      [far, low],
      [far, y],
      [far + w, y],
      [far + w, y + h],
      [far, y + h],
      [far, low + width],
      [x + w, low + width],
      [x + w, y + h],
      [x, y + h],
    ],
    leg: [
      [x, y],
      [far, y],
      [far, y + width],
      [x + width + dice.pick([0, 6]), y + width],
      [x + width + 6, y + h + 8],
      [x, y + h + 8],
    ],
    tee: [
      [x, y],
      [far + w, y],
      [far + w, y + h],
      [x + w + width, y + h],
      [x + w + width, y + h + 12],
      [x + w, y + h + 12],
      [x + w, y + h],
      [x, y + h],
    ],
  };
  return [sheetOf(rectangle(0, 0, far + w + 10, y + h + 25)), pocketOf(polygon(corners[shape]))];
}
