/** Inks of the sheets for paper: what a stage is filled and hatched with, so that a copy without colour reads the same. */

import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan } from '#geometry/span.ts';
import { hypot } from '#maths/hypot.ts';
import { type HatchStyle, hatchLines } from './hatch-lines.ts';
import type { Pen, Stroke } from './pen.ts';

export const INK = '#000000';
/** Cut metal. */
export const METAL = '#d4d4d4';

/** Shorter strokes are blots, mm. */
const LEAST_STROKE = 0.05;

export function hatch(pen: Pen, loops: readonly Loop[], style: HatchStyle): void {
  const strokes = hatchLines(loops, style).filter(
    ([from, to]) => hypot(to.x - from.x, to.y - from.y) >= LEAST_STROKE,
  );
  drawStraights(pen, strokes, { width: 0.1, color: INK });
}

/** Many straight lines in one stroke: a hatch, or the ticks of a mark. */
export function drawStraights(pen: Pen, ends: readonly (readonly [Point, Point])[], stroke: Stroke): void {
  if (ends.length === 0) return;
  pen.paths(
    ends.map(([from, to]) => ({ closed: false, spans: [lineSpan(from, to)] })),
    { stroke },
  );
}

/** Degrees from the page's lower edge, in turn by stage: neighbours differ by most. */
const TURNS = [45, 135, 0, 90, 22.5, 112.5, 67.5, 157.5];
/** mm; wider with each round of the turns. */
const SPACING = 1.1;

/** The hatch of a stage: every eight stages the directions come again, wider apart. */
export function stageHatch(stage: number): HatchStyle {
  const turn = TURNS[(stage - 1) % TURNS.length] ?? 0;
  const round = Math.floor((stage - 1) / TURNS.length);
  return { spacing: SPACING * (1 + round), angle: (turn * Math.PI) / 180 };
}

/** Half way to white, so that hatch and mark stay readable on the darkest stage. */
export function tint(color: string): string {
  const halved = channelsOf(color).map((value) =>
    Math.round((value + 255) / 2)
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${halved.join('')}`;
}

/** Black or white, whichever is read better on a colour: by its luma (ITU-R BT.601). */
export function inkOn(color: string): string {
  const [red = 0, green = 0, blue = 0] = channelsOf(color);
  return 0.299 * red + 0.587 * green + 0.114 * blue > 128 ? INK : '#ffffff';
}

function channelsOf(color: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
}
