/** The finished part with a numbered balloon at each place that is measured, none over another. */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { arcSpan } from '#geometry/span.ts';
import { type PictureRoom, type Placed, partFrame } from '#handoff/pdf/part-frame.ts';
import { closed, drawScaleBar, SCALE_BAR } from '#handoff/pdf/part-marks.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { placeBalloons } from './place-balloons.ts';

export interface Balloon {
  /** In the list. */
  readonly number: number;
  readonly at: Point;
  /** Other end of what is measured. */
  readonly from?: Point;
  readonly kind: 'point' | 'edge' | 'land' | 'fillet';
}

/** mm on paper. */
const RADIUS = 2.3;
const AROUND = 14;

export interface BalloonedFace {
  /** The face as it is seen. */
  readonly plan: EtchPlan;
  /** Where datum D1 stands. */
  readonly datum: 'left' | 'right';
  readonly balloons: readonly Balloon[];
}

export function balloonPicture(
  { plan, datum, balloons }: BalloonedFace,
  room: PictureRoom,
  unit: 'mm' | 'in',
): Block {
  const frame = partFrame(plan, {
    width: room.width - 2 * AROUND,
    height: (room.height ?? 80) - 2 * AROUND + 12,
  });
  return {
    height: frame.height + 2 * AROUND - 10 + SCALE_BAR,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left: left + AROUND, right: right - AROUND, top: top - AROUND + 5 });
      const floors = plan.regions
        .filter(({ level }) => level > 0)
        .flatMap(({ loops }) => loops.map(placed.loop));
      pen.paths(floors.map(closed), { fill: '#ededed', stroke: { width: 0.15, color: INK } });
      pen.paths(plan.sheet.map(placed.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      if (balloons.some(({ kind }) => kind === 'edge')) drawDatums(pen, plan, { datum, placed });
      const marks = balloons.map(({ at }) => placed.place(at));
      balloons.forEach((balloon, index) => {
        const other = balloon.from && balloon.kind === 'land' ? placed.place(balloon.from) : undefined;
        drawMark(pen, itemAt(marks, index), { other, isDot: balloon.kind !== 'point' });
      });
      const room = { minX: left, maxX: right, minY: top - frame.height - 2 * AROUND + 10, maxY: top };
      const centers = placeBalloons(marks, { radius: RADIUS, room });
      centers.forEach((center, index) => {
        pen.line(itemAt(marks, index), center, { width: 0.2, color: INK });
      });
      // All leaders first: none runs over a number.
      centers.forEach((center, index) => {
        drawBalloon(pen, { center, number: itemAt(balloons, index).number });
      });
      drawScaleBar(pen, { left, top: top - frame.height - 2 * AROUND + 10 }, frame.scale, unit);
    },
  };
}

/** Boxed, at the middle of the sheet's left or right edge and of its lower one (ISO 5459). */
function drawDatums(
  pen: Pen,
  { sheet }: EtchPlan,
  { datum, placed: { place } }: { readonly datum: BalloonedFace['datum']; readonly placed: Placed },
): void {
  const { minX, minY, maxX, maxY } = boxOfSpans(sheet.flat());
  const isLeft = datum === 'left';
  const side = place({ x: isLeft ? minX : maxX, y: (minY + maxY) / 2 });
  const low = place({ x: (minX + maxX) / 2, y: minY });
  for (const [name, at, dx, dy] of [
    ['D1', side, isLeft ? -1 : 1, 0],
    ['D2', low, 0, -1],
  ] as const) {
    const [x, y] = [at.x + dx * 7, at.y + dy * 6];
    pen.line(at, { x: at.x + dx * 4, y: at.y + dy * 4 }, { width: 0.35, color: INK });
    pen.rectangle(
      { minX: x - 3, maxX: x + 3, minY: y - 2, maxY: y + 2 },
      { fill: '#ffffff', stroke: { width: 0.35, color: INK } },
    );
    pen.text(name, { x, y: y - 1 }, { size: 2.8, isBold: true, align: 'middle' });
  }
}

interface MarkLook {
  readonly other: Point | undefined;
  readonly isDot: boolean;
}

function drawMark(pen: Pen, { x, y }: Point, { other, isDot }: MarkLook): void {
  const stroke = { width: 0.25, color: INK };
  if (isDot && other === undefined) {
    dot(pen, { x, y });
    return;
  }
  if (other !== undefined) {
    pen.line({ x, y }, other, stroke);
    for (const end of [{ x, y }, other]) dot(pen, end);
    return;
  }
  pen.line({ x: x - 1.1, y }, { x: x + 1.1, y }, stroke);
  pen.line({ x, y: y - 1.1 }, { x, y: y + 1.1 }, stroke);
}

function dot(pen: Pen, center: Point): void {
  const spans = [0, Math.PI].map((from) => arcSpan({ center, radius: 0.45, from, sweep: Math.PI }));
  pen.paths([{ closed: true, spans }], { fill: INK });
}

function drawBalloon(
  pen: Pen,
  { center, number }: { readonly center: Point; readonly number: number },
): void {
  const spans = [0, Math.PI].map((from) => arcSpan({ center, radius: RADIUS, from, sweep: Math.PI }));
  pen.paths([{ closed: true, spans }], { fill: '#ffffff', stroke: { width: 0.3, color: INK } });
  const size = number > 99 ? 2.1 : 2.6;
  pen.text(
    String(number),
    { x: center.x, y: center.y - size * 0.36 },
    { size, isBold: true, align: 'middle' },
  );
}
