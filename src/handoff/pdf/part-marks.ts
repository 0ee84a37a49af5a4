/** What is written on a picture of the part: scribe lines with their marks, names of regions, a bar to measure by. */

import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, type Path, spansLength } from '#geometry/span.ts';
import { decadeOf, powerOfTen } from '#maths/decade.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { stageMark } from '#plan/stage-mark.ts';
import type { Placed } from './part-frame.ts';
import type { Pen, Stroke } from './pen.ts';
import type { Area } from './sheet-book.ts';
import { drawStraights, INK } from './sheet-ink.ts';

/** On paper, mm. */
const TICK_PITCH = 0.8;
const TICK_HALF = 0.9;
/** A line as long as this has ticks of full size; none are smaller than this share. */
const FULL_SIZE_LENGTH = 40;
const LEAST_SIZE = 0.5;
const NAME = { size: 2.6, isBold: true } as const;
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

/** Lines on the page. A short line's ticks are smaller, so that they stay beside it and do not fill its piece. */
export function drawMarks(pen: Pen, lines: readonly Path[], stage: number, leastSize = LEAST_SIZE): void {
  const ticks = lines.flatMap(({ spans }) => {
    const size = Math.min(1, Math.max(leastSize, spansLength(spans) / FULL_SIZE_LENGTH));
    const half = TICK_HALF * size;
    return stageMark(spans, { stage, pitch: TICK_PITCH * size }).map(({ at, across }): [Point, Point] => [
      { x: at.x - across.x * half, y: at.y - across.y * half },
      { x: at.x + across.x * half, y: at.y + across.y * half },
    ]);
  });
  drawStraights(pen, ticks, { width: 0.18, color: INK });
}

export interface Named {
  readonly ids: ReadonlySet<string>;
  readonly scale: number;
  readonly placed: Placed;
}

/** Ids on white, so that no hatch strikes them out: along the region's longer way, and none where they would reach out of it. */
export function nameRegions(pen: Pen, plan: EtchPlan, { ids, scale, placed }: Named): void {
  for (const { id, label, loops } of plan.regions) {
    if (!ids.has(id)) continue;
    const { minX, minY, maxX, maxY } = boxOfSpans(loops.flat());
    const [across, up] = [(maxX - minX) * scale, (maxY - minY) * scale];
    const width = pen.textWidth(id, NAME);
    const isTurned = across < width;
    if (isTurned && (up < width || across < NAME.size)) continue;
    const { x, y } = placed.place(label);
    const [along, aside] = [width / 2 + 0.4, 1.4];
    const [halfX, halfY] = isTurned ? [aside, along] : [along, aside];
    pen.rectangle(
      { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY },
      { fill: '#ffffff' },
    );
    if (isTurned) pen.text(id, { x: x + 0.9, y }, { ...NAME, align: 'middle', turn: Math.PI / 2 });
    else pen.text(id, { x, y: y - 0.9 }, { ...NAME, align: 'middle' });
  }
}

/** A bar of a round length with the scale beside it: what to lay a rule against when a copy may have been scaled. */
export function drawScaleBar(pen: Pen, { left, top }: Pick<Area, 'left' | 'top'>, scale: number): void {
  const length = roundLength(30 / scale);
  const [y, end] = [top - 3.2, left + length * scale];
  const stroke = { width: 0.25, color: INK };
  pen.line({ x: left, y }, { x: end, y }, stroke);
  for (const x of [left, end]) pen.line({ x, y: y - 1 }, { x, y: y + 1 }, stroke);
  const said = `${length} mm of the part; ${ratio(scale)}`;
  pen.text(said, { x: end + 2, y: y - 0.9 }, { size: 2.6 });
}

/** 1, 2 or 5 times a power of ten, not above. */
function roundLength(length: number): number {
  const decade = powerOfTen(decadeOf(length));
  const step = [5, 2, 1].find((each) => each * decade <= length) ?? 1;
  return Number((step * decade).toPrecision(1));
}

/** A scale as drawings write it (ISO 5455), to three figures. */
export function ratio(scale: number): string {
  const figure = (value: number) => String(Number(value.toPrecision(3)));
  return scale > 1 ? `${figure(scale)} : 1` : `1 : ${figure(1 / scale)}`;
}
