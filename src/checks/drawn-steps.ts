/**
 * The drawn edges of a plan, those of one step and one tolerance together: where a floor ends at a shallower one or at land. A cut
 * between two strips of one taper is drawn by nobody and does not count; nor does the sheet's edge.
 */
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { distance, type Point } from '#geometry/point.ts';
import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import type { EdgeTolerance } from './line-sum.ts';

export interface DrawnStep {
  readonly level: number;
  /** Of the shallower floor; 0 for land. */
  readonly beside: number;
  /** Of what is cut out: the depth at which the drawn line stands on the wall, mm. */
  readonly wall?: number;
  /** Whose edges they are: the deeper regions, in the part's order. */
  readonly regions: readonly RegionId[];
  readonly edges: readonly Span[];
  /** In all, mm. */
  readonly length: number;
  /** Middle of the longest. */
  readonly at: Point;
  /** Farthest that any of it lies from the middle of the part, mm. */
  readonly farthest: number;
  readonly asked: EdgeTolerance | undefined;
}

/** Of the near face, then of the far one. */
export function drawnStepsOfBoth(plan: EtchPlan, rules: Pick<Job['rules'], 'lineTolerance'>): DrawnStep[] {
  return [plan, ...(plan.far === undefined ? [] : [plan.far])].flatMap((face) => drawnSteps(face, rules));
}

/** Of one face, deepest level first, then the shallowest neighbour. */
export function drawnSteps(plan: EtchPlan, rules: Pick<Job['rules'], 'lineTolerance'>): DrawnStep[] {
  const found = new Map<string, Found>();
  // By region and by what is beside it, so that a key is made for each of its steps and not for each edge.
  const known = new Map<PlannedRegion, Map<number, Found>>();
  for (const { span, left, right } of plan.arrangement.edges) {
    const step = stepBetween(regionOf(plan, left), regionOf(plan, right));
    if (step === undefined) continue;
    const ofRegion = known.get(step.deeper) ?? new Map<number, Found>();
    known.set(step.deeper, ofRegion);
    const group = ofRegion.get(step.beside) ?? foundFor(found, step, toleranceOf(step.deeper, rules));
    ofRegion.set(step.beside, group);
    group.edges.push(span);
  }
  const middle = middleOf(plan);
  return [...found.values()]
    .sort((a, b) => b.level - a.level || a.beside - b.beside || (a.asked?.plus ?? 0) - (b.asked?.plus ?? 0))
    .map(({ level, beside, wall, asked, edges, regions }) => ({
      level,
      beside,
      ...(wall === undefined ? {} : { wall }),
      asked,
      edges,
      regions: plan.regions.filter((each) => regions.has(each)).map(({ id }) => id),
      length: edges.reduce((sum, span) => sum + spanLength(span), 0),
      at: pointAlong(longestOf(edges), 0.5),
      farthest: farthestFrom(middle, edges),
    }));
}

/** The group of a region's step, with the region in it. */
function foundFor(found: Map<string, Found>, step: Step, asked: EdgeTolerance | undefined): Found {
  const { wall } = step.deeper.asked;
  const key = `${step.level} ${step.beside} ${wall} ${asked?.plus} ${asked?.minus}`;
  const group = found.get(key) ?? { ...step, wall, asked, edges: [], regions: new Set<PlannedRegion>() };
  found.set(key, group);
  group.regions.add(step.deeper);
  return group;
}

/** By ends and middles. */
function farthestFrom(middle: Point, edges: readonly Span[]): number {
  return edges.reduce(
    (most, span) =>
      Math.max(
        most,
        distance(middle, span.start),
        distance(middle, pointAlong(span, 0.5)),
        distance(middle, span.end),
      ),
    0,
  );
}

interface Found {
  readonly level: number;
  readonly beside: number;
  readonly wall: number | undefined;
  readonly asked: EdgeTolerance | undefined;
  readonly edges: Span[];
  readonly regions: Set<PlannedRegion>;
}

type Side = PlannedRegion | 'land' | undefined;

/** Without a border the sheet goes on for ever, as land. */
function regionOf({ regions, regionOfFace, sheet }: EtchPlan, face: number): Side {
  const index = regionOfFace[face] ?? -1;
  if (index >= 0) return itemAt(regions, index);
  return sheet.length === 0 ? 'land' : undefined;
}

interface Step {
  readonly deeper: PlannedRegion;
  readonly level: number;
  readonly beside: number;
}

function stepBetween(a: Side, b: Side): Step | undefined {
  if (a === undefined || b === undefined) return undefined;
  const [depthA, depthB] = [depthOf(a), depthOf(b)];
  const deeper = depthA > depthB ? a : b;
  if (depthA === depthB || deeper === 'land' || areOneTaper(a, b)) return undefined;
  return { deeper, level: Math.max(depthA, depthB), beside: Math.min(depthA, depthB) };
}

function depthOf(side: PlannedRegion | 'land'): number {
  return side === 'land' ? 0 : side.level;
}

/** Strips of `R07` are `R07.1`, `R07.2`, … */
function areOneTaper(a: PlannedRegion | 'land', b: PlannedRegion | 'land'): boolean {
  if (a === 'land' || b === 'land' || a.taper === undefined || b.taper === undefined) return false;
  return wholeId(a.id) === wholeId(b.id);
}

function wholeId(id: RegionId): string {
  return id.split('.')[0] ?? id;
}

function toleranceOf(
  { asked: { edge } }: PlannedRegion,
  { lineTolerance }: Pick<Job['rules'], 'lineTolerance'>,
): EdgeTolerance | undefined {
  if (edge !== undefined || lineTolerance === undefined) return edge;
  return { plus: lineTolerance, minus: lineTolerance };
}

function middleOf({ sheet, regions }: EtchPlan): Point {
  const { minX, minY, maxX, maxY } = boxOfSpans(
    sheet.length > 0 ? sheet.flat() : regions.flatMap(({ loops }) => loops.flat()),
  );
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

function longestOf(edges: readonly Span[]): Span {
  const lengths = edges.map(spanLength);
  const longest = lengths.reduce((at, length, i) => (length > itemAt(lengths, at) ? i : at), 0);
  return itemAt(edges, longest);
}
