/**
 * The sheet at one stage: what to peel now (tinted in the stage's colour and hatched close), what is bare already (hatched wide),
 * lines of later stages, sealed (dashed), and each line's stage by its mark, so that a copy without colour reads the same.
 */
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Path, Span } from '#geometry/span.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { stageMark } from '#plan/stage-mark.ts';
import { hatchLines } from './hatch-lines.ts';
import type { Pen } from './pen.ts';
import { type Area, type Block, INK } from './sheet-book.ts';

/** On paper, mm. */
const TICK_PITCH = 0.8;
const TICK_HALF = 0.9;
const MOST_SHARE = 0.62;

/** Millimetres of paper to one of part, and the picture's height. */
export function pictureScale(
  plan: EtchPlan,
  width: number,
): { readonly scale: number; readonly height: number } {
  const box = boxOfSpans(allSpans(plan));
  const [across, up] = [Math.max(1, box.maxX - box.minX), Math.max(1, box.maxY - box.minY)];
  const scale = Math.min(width / across, (width * MOST_SHARE) / up);
  return { scale, height: up * scale };
}

export function stagePicture(plan: EtchPlan, stage: Stage, width: number): Block {
  const { scale, height } = pictureScale(plan, width);
  const box = boxOfSpans(allSpans(plan));
  return {
    height: height + 4,
    draw: (pen, area) => {
      const frame = placeOn(area, { scale, box, width });
      const bare = plan.stages.filter(({ number }) => number < stage.number).at(-1)?.opening ?? [];
      const later = plan.stages.filter(({ number }) => number > stage.number);
      fill(pen, bare.map(frame.loop), { spacing: 3, angle: -Math.PI / 4 });
      const piece = stage.piece.map(frame.loop);
      pen.paths(piece.map(closed), { fill: tint(stage.color) });
      fill(pen, piece, { spacing: 1.1, angle: Math.PI / 4 });
      pen.paths(plan.sheet.map(frame.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      for (const each of later) lines(pen, each, frame, { width: 0.18, color: INK, dash: [1.2, 0.8] });
      pen.paths(bare.map(frame.loop).map(closed), { stroke: { width: 0.18, color: INK } });
      lines(pen, stage, frame, { width: 0.45, color: INK });
      name(pen, plan, stage, frame);
    },
  };
}

function allSpans(plan: EtchPlan): Span[] {
  return [...plan.sheet.flat(), ...plan.regions.flatMap(({ loops }) => loops.flat())];
}

interface Placed {
  readonly place: (point: Point) => Point;
  readonly loop: (loop: Loop) => Loop;
}

function placeOn(
  { left, top }: Area,
  {
    scale,
    box,
    width,
  }: { readonly scale: number; readonly box: ReturnType<typeof boxOfSpans>; readonly width: number },
): Placed {
  const inset = (width - (box.maxX - box.minX) * scale) / 2;
  const place = ({ x, y }: Point): Point => ({
    x: left + inset + (x - box.minX) * scale,
    y: top - 2 - (box.maxY - y) * scale,
  });
  const moved = (span: Span): Span => {
    const ends = { start: place(span.start), end: place(span.end) };
    if (span.kind === 'line') return { kind: 'line', ...ends };
    return { ...span, ...ends, center: place(span.center), radius: span.radius * scale };
  };
  return { place, loop: (loop) => loop.map(moved) };
}

function closed(spans: Loop): Path {
  return { closed: true, spans };
}

function fill(pen: Pen, loops: readonly Loop[], style: { spacing: number; angle: number }): void {
  for (const [from, to] of hatchLines(loops, style)) pen.line(from, to, { width: 0.1, color: INK });
}

function lines(pen: Pen, stage: Stage, frame: Placed, stroke: Parameters<Pen['line']>[2]): void {
  for (const line of stage.lines) {
    const spans = frame.loop(line.spans);
    pen.paths([{ closed: line.closed, spans }], { stroke });
    for (const { at, across } of stageMark(spans, { stage: stage.number, pitch: TICK_PITCH })) {
      const [dx, dy] = [across.x * TICK_HALF, across.y * TICK_HALF];
      pen.line({ x: at.x - dx, y: at.y - dy }, { x: at.x + dx, y: at.y + dy }, { width: 0.22, color: INK });
    }
  }
}

/** The ids of the regions that the stage peels, on white so that the hatch does not strike them out. */
function name(pen: Pen, plan: EtchPlan, stage: Stage, frame: Placed): void {
  const peeled = new Set(stage.regions);
  for (const { id, label } of plan.regions) {
    if (!peeled.has(id)) continue;
    const { x, y } = frame.place(label);
    const half = pen.textWidth(id, { size: 2.6, isBold: true }) / 2 + 0.4;
    pen.rectangle({ minX: x - half, minY: y - 1.4, maxX: x + half, maxY: y + 1.4 }, { fill: '#ffffff' });
    pen.text(id, { x, y: y - 0.9 }, { size: 2.6, isBold: true, align: 'middle' });
  }
}

/** Half way to white, so that hatch and mark stay readable on the darkest stage. */
function tint(color: string): string {
  const channels = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
  return `#${channels
    .map((value) =>
      Math.round((value + 255) / 2)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}
