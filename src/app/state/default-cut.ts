/** The cut that a part is first shown with: right across it, through a deepest region, and of these where most of its floors are met. */
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { boxOfShapes, type RegionShape } from './region-shape.ts';
import type { SectionLine } from './workbench-state.ts';

/** Share of the part's width by which the cut stands out at both sides, to be taken hold of. */
const OVERHANG = 0.03;
/** As many deepest regions are tried: counted is what is etched, or all, where nothing is yet. */
const MOST_TRIED = 100;

export function defaultCut({ regions }: ShownPlan, shapes: readonly RegionShape[]): SectionLine | undefined {
  const box = boxOfShapes(shapes);
  if (box === undefined) return undefined;
  const deepest = regions.reduce((most, { level }) => Math.max(most, level), 0);
  const tried = regions.filter(({ level }) => level === deepest).slice(0, MOST_TRIED);
  const etched = shapes.filter(({ region }) => region.level > 0);
  const across = etched.length > 0 ? etched : shapes;
  const met = tried.map(({ label: [, y] }) => ({ y, width: widthMet(across, y) }));
  const [best] = met.sort((a, b) => b.width - a.width);
  const y = best?.y ?? (box.minY + box.maxY) / 2;
  const out = (box.maxX - box.minX) * OVERHANG;
  return { from: { x: box.minX - out, y }, to: { x: box.maxX + out, y } };
}

/** mm that a line at this height runs across regions, by their boxes. */
function widthMet(shapes: readonly RegionShape[], y: number): number {
  let width = 0;
  for (const { box } of shapes) if (box.minY < y && y < box.maxY) width += box.maxX - box.minX;
  return width;
}
