/** Where to gauge: the sheet with its drawn regions, and each inspection point as a cross with its number. */
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type PictureRoom, partFrame } from './part-frame.ts';
import { closed, drawScaleBar, SCALE_BAR } from './part-marks.ts';
import type { Block } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';

/** mm of paper. */
const CROSS = 1.2;
const LETTERS = 2.2;

export function pointsPicture(plan: EtchPlan, points: readonly InspectionPoint[], room: PictureRoom): Block {
  const frame = partFrame(plan, room);
  return {
    height: frame.height + SCALE_BAR + 4,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left, right, top: top - 2 });
      const borders = plan.regions.flatMap(({ loops }) => loops.map(placed.loop));
      pen.paths(borders.map(closed), { stroke: { width: 0.15, color: INK } });
      pen.paths(plan.sheet.map(placed.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      const stroke = { width: 0.3, color: INK };
      for (const { id, at } of points) {
        const { x, y } = placed.place(at);
        pen.line({ x: x - CROSS, y }, { x: x + CROSS, y }, stroke);
        pen.line({ x, y: y - CROSS }, { x, y: y + CROSS }, stroke);
        const beside = { x: x + 0.5, y: y + 0.7 };
        const width = pen.textWidth(id, { size: LETTERS });
        pen.rectangle(
          { minX: beside.x, maxX: beside.x + width, minY: beside.y - 0.2, maxY: beside.y + LETTERS * 0.8 },
          { fill: '#ffffff' },
        );
        pen.text(id, beside, { size: LETTERS });
      }
      drawScaleBar(pen, { left, top: top - frame.height - 4 }, frame.scale);
    },
  };
}
