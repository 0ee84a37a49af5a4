/** What is written on a picture of the part: scribe lines with their marks, names of regions, a bar to measure by. */

import type { Point } from '#geometry/point.ts';
import { type Loop, type Path, spansLength } from '#geometry/span.ts';
import { roundDown } from '#handoff/round-lengths.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { stageMark, tickPlaces } from '#plan/stage-mark.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { Placed } from './part-frame.ts';
import type { PageBox, Pen, Stroke } from './pen.ts';
import type { Area } from './sheet-book.ts';
import { drawStraights, INK } from './sheet-ink.ts';

/** On paper, mm. */
const TICK_PITCH = 0.8;
const TICK_HALF = 0.9;
/** A line as long as this has ticks of full size; none are smaller than this share. */
const FULL_SIZE_LENGTH = 40;
const LEAST_SIZE = 0.5;
/** Height that a scale bar takes. */
export const SCALE_BAR = 7;

export function closed(spans: Loop): Path {
  return { closed: true, spans };
}

export function drawLines(pen: Pen, stage: Stage, placed: Placed, stroke: Stroke): void {
  const paths = stage.lines.map(({ closed, spans }) => ({ closed, spans: placed.loop(spans) }));
  pen.paths(paths, { stroke });
  drawMarks(pen, paths, stage.number);
}

export function drawMarks(pen: Pen, lines: readonly Path[], stage: number, leastSize = LEAST_SIZE): void {
  drawStraights(pen, markTicks(lines, stage, leastSize), { width: 0.18, color: INK });
}

/** Of lines on the page. A short line's ticks are smaller, so that they stay beside it and do not fill its piece. */
export function markTicks(lines: readonly Path[], stage: number, leastSize = LEAST_SIZE): [Point, Point][] {
  return lines.flatMap(({ spans }) => {
    const size = Math.min(1, Math.max(leastSize, spansLength(spans) / FULL_SIZE_LENGTH));
    const half = TICK_HALF * size;
    return stageMark(spans, { stage, pitch: TICK_PITCH * size }).map(({ at, across }): [Point, Point] => [
      { x: at.x - across.x * half, y: at.y - across.y * half },
      { x: at.x + across.x * half, y: at.y + across.y * half },
    ]);
  });
}

/** A line through the middle of a box with a stage's mark once across it, for tables and headings. */
export function drawMarkSample(pen: Pen, { minX, maxX, minY, maxY }: PageBox, stage: number): void {
  const y = (minY + maxY) / 2;
  const places = tickPlaces(stage);
  const room = Math.min(20, maxX - minX - 2);
  const pitch = Math.min(1.4, (room * 0.6) / Math.max(1, places.at(-1) ?? 1));
  const from = minX + 1.5;
  pen.line({ x: from, y }, { x: from + room, y }, { width: 0.25, color: INK });
  const first = from + (room - (places.at(-1) ?? 0) * pitch) / 2;
  const half = Math.min(2, (maxY - minY) / 2 - 0.6);
  drawStraights(
    pen,
    places.map((place): [Point, Point] => {
      const x = first + place * pitch;
      return [
        { x, y: y - half },
        { x, y: y + half },
      ];
    }),
    { width: 0.45, color: INK },
  );
}

/** A bar of a round length with the scale beside it: what to lay a rule against when a copy may have been scaled. */
export function drawScaleBar(
  pen: Pen,
  { left, top }: Pick<Area, 'left' | 'top'>,
  scale: number,
  unit: 'mm' | 'in' = 'mm',
): void {
  const length = roundDown(30 / scale / millimetresIn(unit));
  const [y, end] = [top - 3.2, left + length * millimetresIn(unit) * scale];
  const stroke = { width: 0.25, color: INK };
  pen.line({ x: left, y }, { x: end, y }, stroke);
  for (const x of [left, end]) pen.line({ x, y: y - 1 }, { x, y: y + 1 }, stroke);
  const said = `${length} ${unit} of the part; ${ratio(scale)}`;
  pen.text(said, { x: end + 2, y: y - 0.9 }, { size: 2.6 });
}

/** A scale as drawings write it (ISO 5455), to three figures. */
export function ratio(scale: number): string {
  const figure = (value: number) => String(Number(value.toPrecision(3)));
  return scale > 1 ? `${figure(scale)} : 1` : `1 : ${figure(1 / scale)}`;
}
