/** Where to gauge: the sheet with its drawn regions, and each inspection point as a cross with its number. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxesMeet } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type PictureRoom, partFrame } from './part-frame.ts';
import { closed, drawScaleBar, SCALE_BAR } from './part-marks.ts';
import type { Block } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';

/** mm of paper. */
const CROSS = 1.2;
const LETTERS = 2.2;

export function pointsPicture(
  plan: EtchPlan,
  points: readonly InspectionPoint[],
  room: PictureRoom,
  unit: 'mm' | 'in' = 'mm',
): Block {
  const frame = partFrame(plan, room);
  return {
    height: frame.height + SCALE_BAR + 4,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left, right, top: top - 2 });
      const borders = plan.regions.flatMap(({ loops }) => loops.map(placed.loop));
      pen.paths(borders.map(closed), { stroke: { width: 0.15, color: INK } });
      pen.paths(plan.sheet.map(placed.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      const stroke = { width: 0.3, color: INK };
      const taken: Box[] = [];
      for (const { id, at } of points) {
        const { x, y } = placed.place(at);
        pen.line({ x: x - CROSS, y }, { x: x + CROSS, y }, stroke);
        pen.line({ x, y: y - CROSS }, { x, y: y + CROSS }, stroke);
        const width = pen.textWidth(id, { size: LETTERS });
        const boxes = besides({ x, y }, width).filter(({ minX, maxX }) => minX > left && maxX < right);
        const free = boxes.find((each) => taken.every((other) => !boxesMeet(other, each)));
        const box = free ?? itemAt(boxes, 0);
        taken.push(box);
        pen.rectangle(box, { fill: '#ffffff' });
        pen.text(id, { x: box.minX, y: box.minY + 0.2 }, { size: LETTERS });
      }
      drawScaleBar(pen, { left, top: top - frame.height - 4 }, frame.scale, unit);
    },
  };
}

/** Where a point's number may stand: right of it and above first. */
function besides({ x, y }: Point, width: number): readonly Box[] {
  const height = LETTERS * 0.8 + 0.2;
  const [right, left, above, below] = [x + 0.5, x - 0.5 - width, y + 0.5, y - 0.5 - height];
  return [
    [right, above],
    [left, above],
    [right, below],
    [left, below],
  ].map(([minX = 0, minY = 0]) => ({ minX, minY, maxX: minX + width, maxY: minY + height }));
}
