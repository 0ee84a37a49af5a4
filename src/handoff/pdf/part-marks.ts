/** What is written on a picture of the part: scribe lines with their marks, names of regions, a bar to measure by. */
import type { Loop, Path, Span } from '#geometry/span.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { stageMark } from '#plan/stage-mark.ts';
import type { Placed } from './part-frame.ts';
import type { Pen, Stroke } from './pen.ts';
import type { Area } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';

/** On paper, mm. */
const TICK_PITCH = 0.8;
const TICK_HALF = 0.9;
const NAME = { size: 2.6, isBold: true } as const;
/** Height that a scale bar takes. */
export const SCALE_BAR = 7;

export function closed(spans: Loop): Path {
  return { closed: true, spans };
}

export function drawLines(pen: Pen, stage: Stage, placed: Placed, stroke: Stroke): void {
  for (const line of stage.lines) {
    const spans = placed.loop(line.spans);
    pen.paths([{ closed: line.closed, spans }], { stroke });
    drawMark(pen, spans, stage.number);
  }
}

/** Spans on the page. */
export function drawMark(pen: Pen, spans: readonly Span[], stage: number): void {
  for (const { at, across } of stageMark(spans, { stage, pitch: TICK_PITCH })) {
    const [dx, dy] = [across.x * TICK_HALF, across.y * TICK_HALF];
    pen.line({ x: at.x - dx, y: at.y - dy }, { x: at.x + dx, y: at.y + dy }, { width: 0.22, color: INK });
  }
}

export interface Named {
  readonly ids: ReadonlySet<string>;
  readonly scale: number;
  readonly placed: Placed;
}

/** Ids on white, so that no hatch strikes them out; a region that comes out too small for its name has none. */
export function nameRegions(pen: Pen, plan: EtchPlan, { ids, scale, placed }: Named): void {
  for (const { id, label, area } of plan.regions) {
    if (!ids.has(id)) continue;
    const width = pen.textWidth(id, NAME);
    if (Math.sqrt(area) * scale < width * 0.9) continue;
    const { x, y } = placed.place(label);
    const half = width / 2 + 0.4;
    pen.rectangle({ minX: x - half, minY: y - 1.4, maxX: x + half, maxY: y + 1.4 }, { fill: '#ffffff' });
    pen.text(id, { x, y: y - 0.9 }, { ...NAME, align: 'middle' });
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
  const decade = 10 ** Math.floor(Math.log10(length));
  const step = [5, 2, 1].find((each) => each * decade <= length) ?? 1;
  return Number((step * decade).toPrecision(1));
}

/** A scale as drawings write it (ISO 5455), to three figures. */
export function ratio(scale: number): string {
  const figure = (value: number) => String(Number(value.toPrecision(3)));
  return scale > 1 ? `${figure(scale)} : 1` : `1 : ${figure(1 / scale)}`;
}
