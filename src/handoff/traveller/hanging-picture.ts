/** How the part hangs: the sheet with its pockets in the tank, clear of its floor and covered, gas going up and away. */
import type { Point } from '#geometry/point.ts';
import { arcSpan } from '#geometry/span.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { type PictureRoom, partFrame } from '#handoff/pdf/part-frame.ts';
import { closed } from '#handoff/pdf/part-marks.ts';
import type { Pen, Stroke } from '#handoff/pdf/pen.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** Clear height under the part, and cover above it, by unit (published, aircraft sheet-metal textbook; docs/verification.md). */
const CLEAR = { mm: '150 mm', in: '6 in' } as const;
const WALL: Stroke = { width: 0.9, color: INK };
const FINE: Stroke = { width: 0.2, color: INK };
const BUBBLES: readonly (readonly [number, number])[] = [
  [0, 0.2],
  [1.2, 0.45],
  [-0.6, 0.65],
  [0.8, 0.85],
];

/** In the units of the paper. */
export function clearHeight({ units }: PaperFigures): string {
  return units.map((unit) => CLEAR[unit]).join(', ');
}

export function hangingPicture(
  { plan, figures }: { readonly plan: EtchPlan; readonly figures: PaperFigures },
  { width, height = 50 }: PictureRoom,
): Block {
  const clear = CLEAR[figures.units[0]];
  const around = 10;
  const frame = partFrame(plan, { width: width - 2 * around - 16, height: height - 22 });
  return {
    height,
    draw: (pen, { left, top }) => {
      const [floor, bath] = [top - height + 1, top - 8];
      const right = left + width;
      pen.line({ x: left, y: top - 5 }, { x: left, y: floor }, WALL);
      pen.line({ x: left, y: floor }, { x: right, y: floor }, WALL);
      pen.line({ x: right, y: floor }, { x: right, y: top - 5 }, WALL);
      surface(pen, { x: left, y: bath }, width);
      const area = { left: left + around + 6, right: right - around, top: bath - 6 };
      const placed = frame.on(area);
      const middle = area.left + (width - 2 * around - 16) / 2;
      for (const x of [middle - 6, middle + 6]) pen.line({ x, y: top - 1 }, { x, y: bath - 6 }, FINE);
      pen.line({ x: middle - 14, y: top - 0.6 }, { x: middle + 14, y: top - 0.6 }, WALL);
      pen.paths(plan.sheet.map(placed.loop).map(closed), {
        fill: '#f1f1f1',
        stroke: { width: 0.35, color: INK },
      });
      const floors = plan.regions
        .filter(({ level }) => level > 0)
        .flatMap(({ loops }) => loops.map(placed.loop));
      pen.paths(floors.map(closed), { fill: '#ffffff', stroke: FINE });
      const low = bath - 6 - frame.height;
      span(pen, left + 4, { from: bath, to: bath - 6, clear });
      span(pen, left + 4, { from: low, to: floor, clear });
      gas(pen, { x: right - 8, y: low }, frame.height);
    },
  };
}

/** The bath's surface: a line of long dashes. */
function surface(pen: Pen, { x, y }: Point, width: number): void {
  pen.line({ x, y }, { x: x + width, y }, { width: 0.25, color: INK, dash: [4, 1.5] });
}

interface Span {
  readonly from: number;
  readonly to: number;
  /** In words. */
  readonly clear: string;
}

function span(pen: Pen, x: number, { from, to, clear }: Span): void {
  pen.line({ x, y: from }, { x, y: to }, FINE);
  for (const y of [from, to]) pen.line({ x: x - 1, y }, { x: x + 1, y }, FINE);
  pen.text(clear, { x: x + 1.4, y: (from + to) / 2 - 0.8 }, { size: TYPE.label });
}

function gas(pen: Pen, { x, y }: Point, height: number): void {
  const [from, to] = [y + height * 0.15, y + height * 0.95];
  pen.line({ x, y: from }, { x, y: to }, { width: 0.4, color: INK });
  pen.line({ x: x - 1, y: to - 2 }, { x, y: to }, { width: 0.4, color: INK });
  pen.line({ x: x + 1, y: to - 2 }, { x, y: to }, { width: 0.4, color: INK });
  for (const [aside, share] of BUBBLES) {
    const center = { x: x - 3.5 + aside, y: y + height * share };
    const ring = [0, Math.PI].map((start) => arcSpan({ center, radius: 0.6, from: start, sweep: Math.PI }));
    pen.paths([{ closed: true, spans: ring }], { stroke: FINE });
  }
  pen.text('gas', { x: x - 2.4, y: y - 2.4 }, { size: TYPE.label });
}
