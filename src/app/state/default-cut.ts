/** The cut that a part is first shown with: right across it, through a deepest region, and of these where most of its floors are met. */
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { boxOfShapes, type RegionShape } from './region-shape.ts';
import type { SectionLine } from './workbench-state.ts';

/** Share of the part's width by which the cut stands out at both sides, to be taken hold of. */
const OVERHANG = 0.03;
/** As many deepest regions are tried. */
const MOST_TRIED = 100;

export function defaultCut({ regions }: ShownPlan, shapes: readonly RegionShape[]): SectionLine | undefined {
  const box = boxOfShapes(shapes);
  if (box === undefined) return undefined;
  const deepest = regions.reduce((most, { level }) => Math.max(most, level), 0);
  const tried = regions.filter(({ level }) => level === deepest).slice(0, MOST_TRIED);
  const met = tried.map(({ label: [, y] }) => ({ y, width: widthMet(shapes, y) }));
  const [best] = met.sort((a, b) => b.width - a.width);
  const y = best?.y ?? (box.minY + box.maxY) / 2;
  const out = (box.maxX - box.minX) * OVERHANG;
  return { from: { x: box.minX - out, y }, to: { x: box.maxX + out, y } };
}

/** mm of what is etched that a line at this height runs across, by the regions' boxes; of all regions, where none is etched yet. */
function widthMet(shapes: readonly RegionShape[], y: number): number {
  const etched = shapes.filter(({ region }) => region.level > 0);
  const across = etched.length > 0 ? etched : shapes;
  return across
    .filter(({ box }) => box.minY < y && y < box.maxY)
    .reduce((sum, { box }) => sum + box.maxX - box.minX, 0);
}
