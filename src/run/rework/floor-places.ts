/**
 * Where floors leave one thickness each: every floor, and on a part of two faces each overlap of a near and a far one by itself, with
 * what of either has land behind it (M9.1). Cost: overlaps of regions whose boxes meet.
 */
import { boxesMeet, boxOfSpans } from '#geometry/box.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { type Loop, loopArea, loopsArea } from '#geometry/span.ts';
import { LEAST_OVERLAP } from '#geometry/tolerances.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';

type PlanRegion = PlanFile['regions'][number];

export interface FloorPlace {
  readonly region: PlanRegion;
  /** The floor of the far face behind it. */
  readonly over?: PlanRegion;
  readonly label: readonly [x: number, y: number];
  /** mm² */
  readonly area: number;
}

export function floorPlaces({ regions }: Pick<PlanFile, 'regions'>): FloorPlace[] {
  const floors = regions
    .filter(({ level }) => level > 0)
    .map((region) => ({ region, loops: loopsOf(region) }));
  const [near, far] = (['near', 'far'] as const).map((side) =>
    floors.filter(({ region: { face = 'near' } }) => face === side),
  );
  if (near === undefined || far === undefined || far.length === 0)
    return floors.map(({ region }) => wholeOf(region));
  const overlaps = near.flatMap((one) =>
    far.flatMap((other) => {
      const both = overlapOf(one.loops, other.loops);
      return loopsArea(both) > LEAST_OVERLAP ? [{ one, other, both }] : [];
    }),
  );
  const alone = floors.flatMap(({ region, loops }): FloorPlace[] => {
    const shared = overlaps.filter(({ one, other }) => one.region === region || other.region === region);
    if (shared.length === 0) return [wholeOf(region)];
    const rest = combineLoops(
      'subtract',
      loops,
      shared.flatMap(({ both }) => both),
    );
    return loopsArea(rest) > LEAST_OVERLAP ? [{ region, ...placeOf(rest) }] : [];
  });
  return [
    ...alone,
    ...overlaps.map(({ one, other, both }) => ({ region: one.region, over: other.region, ...placeOf(both) })),
  ];
}

function loopsOf({ contours }: PlanRegion): Loop[] {
  return contours.map((each) => pathOfContour(each).spans);
}

function overlapOf(a: readonly Loop[], b: readonly Loop[]): Loop[] {
  return boxesMeet(boxOfSpans(a.flat()), boxOfSpans(b.flat())) ? combineLoops('intersect', a, b) : [];
}

function wholeOf(region: PlanRegion): FloorPlace {
  return { region, label: region.label, area: region.area };
}

/** In the largest part of it. */
function placeOf(loops: readonly Loop[]): Pick<FloorPlace, 'label' | 'area'> {
  const outer = loops
    .filter((loop) => loopArea(loop) > 0)
    .sort((a, b) => loopArea(b) - loopArea(a))
    .slice(0, 1);
  const holes = loops.filter((loop) => {
    const [first] = loop;
    return loopArea(loop) < 0 && first !== undefined && isInsideLoops(outer, first.start);
  });
  const { x, y } = labelPoint([...outer, ...holes]);
  return { label: [x, y], area: loopsArea(loops) };
}
