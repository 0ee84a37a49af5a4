/**
 * Circles of a drawing just opened that stand within what is to be etched, or on a layer named after holes: holes of the part,
 * bosses, or etched like all around them. Only the engineer knows, unless the drawing says it by the layer's name.
 */
import { depthOffers } from '#app/state/edits/depth-offers.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import type { Derived } from '#app/state/workbench-state.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { distance } from '#geometry/point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { JobFile } from '#job/job-file.ts';

export type CircleMeaning = 'holes' | 'bosses' | 'etched';

/** Circles of one layer: what is said of one holds for all. */
export interface CircleGroup {
  readonly layer: string;
  /** Region ids. */
  readonly circles: readonly string[];
  /** Regions that they stand in. */
  readonly within: readonly string[];
  /** mm: the smallest and the largest. */
  readonly least: number;
  readonly most: number;
  /** As the layer's name says; undefined where it says nothing. */
  readonly said: CircleMeaning | undefined;
  /** The layer draws nothing else. */
  readonly isWholeLayer: boolean;
}

export interface CircleAnswer {
  readonly group: CircleGroup;
  readonly meaning: CircleMeaning;
}

/** In the plan on show, as far as nothing is asked of them. */
export function circlesOf({ page, shapes }: Pick<Derived, 'page' | 'shapes'>, job: JobFile): CircleGroup[] {
  const offers = depthOffers({ page, shapes, prefix: '', thickness: sheetThickness(job) });
  return circlesInside({
    shapes,
    layers: page?.lines.map(({ layer }) => layer) ?? [],
    figured: new Set(offers.map(({ region }) => region)),
  });
}

interface DrawnPart {
  readonly shapes: readonly RegionShape[];
  /** The layer of each curve of the drawing. */
  readonly layers: readonly string[];
  /** Regions with a figure of their own: it says that they are etched. */
  readonly figured: ReadonlySet<string>;
}

/** By layer, in the order of the regions. Cost: circles times regions. */
export function circlesInside({ shapes, layers, figured }: DrawnPart): CircleGroup[] {
  if (shapes.length === 0) return [];
  const sheet = largestBox(shapes);
  const groups = new Map<
    string,
    { shape: RegionShape; within: RegionShape | undefined; diameter: number }[]
  >();
  for (const shape of shapes) {
    const { id, layer, asked } = shape.region;
    const diameter = diameterOf(shape);
    if (diameter === undefined || asked.depth > 0 || figured.has(id)) continue;
    const within = shapes.find((other) => isHoleOf(shape, other));
    const isInEtched = within !== undefined && !isSameBox(within.box, sheet);
    if (!isInEtched && meaningOf(layer) !== 'holes') continue;
    groups.set(layer, [...(groups.get(layer) ?? []), { shape, within, diameter }]);
  }
  return [...groups].map(([layer, found]) => ({
    layer,
    circles: found.map(({ shape }) => shape.region.id),
    within: [...new Set(found.flatMap(({ within }) => within?.region.id ?? []))].sort(),
    least: Math.min(...found.map(({ diameter }) => diameter)),
    most: Math.max(...found.map(({ diameter }) => diameter)),
    said: meaningOf(layer),
    isWholeLayer: layers.filter((each) => each === layer).length === found.length,
  }));
}

const HOLES = /hole|drill|bore|bohr|through|thru/i;
const BOSSES = /boss|pad|stud/i;

function meaningOf(layer: string): CircleMeaning | undefined {
  if (HOLES.test(layer)) return 'holes';
  return BOSSES.test(layer) ? 'bosses' : undefined;
}

/** Undefined where its border is not one whole circle, with nothing inside. */
function diameterOf(shape: RegionShape): number | undefined {
  // Most are told apart before their exact border is made.
  if (shape.region.contours.length > 1) return undefined;
  const [loop] = shape.loops;
  const [first] = loop ?? [];
  if (loop === undefined || first?.kind !== 'arc') return undefined;
  const isOne = loop.every(
    (span) =>
      span.kind === 'arc' &&
      distance(span.center, first.center) < SCRIBE_ACCURACY &&
      Math.abs(span.radius - first.radius) < SCRIBE_ACCURACY,
  );
  return isOne ? 2 * first.radius : undefined;
}

function isHoleOf(circle: RegionShape, { loops }: RegionShape): boolean {
  return loops.slice(1).some((hole) => isSameBox(boxOfSpans(hole), circle.box));
}

function isSameBox(a: Box, b: Box): boolean {
  return (['minX', 'minY', 'maxX', 'maxY'] as const).every(
    (side) => Math.abs(a[side] - b[side]) < SCRIBE_ACCURACY,
  );
}

/** Of the region that reaches farthest: the land round all others. */
function largestBox(shapes: readonly RegionShape[]): Box {
  const area = ({ minX, minY, maxX, maxY }: Box) => (maxX - minX) * (maxY - minY);
  return itemAt(
    shapes.map(({ box }) => box).sort((a, b) => area(b) - area(a)),
    0,
  );
}
