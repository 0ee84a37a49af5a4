/** The cut that a part is first shown with: right across it, through the deepest region. */
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { boxOfShapes, type RegionShape } from './region-shape.ts';
import type { SectionLine } from './workbench-state.ts';

/** Share of the part's width by which the cut stands out at both sides, to be taken hold of. */
const OVERHANG = 0.03;

export function defaultCut({ regions }: ShownPlan, shapes: readonly RegionShape[]): SectionLine | undefined {
  const box = boxOfShapes(shapes);
  if (box === undefined) return undefined;
  const deepest = [...regions].sort((a, b) => b.level - a.level)[0];
  const y = deepest?.label[1] ?? (box.minY + box.maxY) / 2;
  const out = (box.maxX - box.minX) * OVERHANG;
  return { from: { x: box.minX - out, y }, to: { x: box.maxX + out, y } };
}
