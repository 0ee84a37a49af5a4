/** The regions of the plan on show, as a job names them: by points in the drawing's own unit. */
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import type { RegionTarget } from './edit-job.ts';
import { shapeHolds } from './region-shape.ts';
import type { WorkbenchState } from './workbench-state.ts';

/** Places kept of a point that stands for a region: well below any region's size in millimetres or inches. */
const PLACES = 4;

export function regionTargets({ derived }: WorkbenchState): Map<string, RegionTarget> {
  const { page, shapes } = derived;
  if (page?.plan === undefined) return new Map();
  const scale = millimetresIn(page.plan.drawing.unit as LengthUnit);
  const inDrawing = (length: number) => Number((length / scale).toFixed(PLACES));
  return new Map(
    shapes.map((shape) => {
      const { id, layer, label } = shape.region;
      const target: RegionTarget = {
        layer,
        at: [inDrawing(label[0]), inDrawing(label[1])],
        holds: ([x, y]) => shapeHolds(shape, { x: x * scale, y: y * scale }),
      };
      return [id, target];
    }),
  );
}
