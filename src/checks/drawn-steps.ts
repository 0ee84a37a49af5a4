/**
 * The drawn edges of a plan, those of one step and one tolerance together: where a floor ends at a shallower one or at land. A cut
 * between two strips of one taper is drawn by nobody and does not count; nor does the sheet's edge.
 */

import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
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
  plan.arrangement.edges.forEach(({ left, right }, edge) => {
    const step = stepBetween(regionOf(plan, left), regionOf(plan, right));
    if (step === undefined) return;
    const ofRegion = known.get(step.deeper) ?? new Map<number, Found>();
    known.set(step.deeper, ofRegion);
    const group = ofRegion.get(step.beside) ?? foundFor(found, step, toleranceOf(step.deeper, rules));
    ofRegion.set(step.beside, group);
    group.edges.push(edge);
  });
  const figures = edgeFigures(plan);
  return [...found.values()]
    .sort((a, b) => b.level - a.level || a.beside - b.beside || (a.asked?.plus ?? 0) - (b.asked?.plus ?? 0))
    .map(({ level, beside, wall, asked, edges, regions }) => ({
      level,
      beside,
      ...(wall === undefined ? {} : { wall }),
      asked,
      regions: plan.regions.filter((each) => regions.has(each)).map(({ id }) => id),
      ...alongEdges(plan, edges, figures),
    }));
}

/** Of each edge of an arrangement, mm. */
interface EdgeFigures {
  readonly lengths: Float64Array;
  /** Farthest that it lies from the middle of the part, by its ends and its middle. */
  readonly far: Float64Array;
}

/** By the arrangement: plans of one part have the same edges, whatever their levels. */
const figuresOf = new WeakMap<Arrangement, EdgeFigures & { readonly middle: Point }>();

function edgeFigures(plan: EtchPlan): EdgeFigures {
  const { arrangement } = plan;
  const { edges } = arrangement;
  const middle = middleOf(plan);
  const kept = figuresOf.get(arrangement);
  if (kept?.middle.x === middle.x && kept.middle.y === middle.y) return kept;
  const figures = {
    middle,
    lengths: Float64Array.from(edges, ({ span }) => spanLength(span)),
    far: Float64Array.from(edges, ({ span }) => farthestFrom(middle, span)),
  };
  figuresOf.set(arrangement, figures);
  return figures;
}

function alongEdges(
  { arrangement }: EtchPlan,
  numbers: readonly number[],
  { lengths, far }: EdgeFigures,
): Pick<DrawnStep, 'edges' | 'length' | 'at' | 'farthest'> {
  let [length, farthest] = [0, 0];
  let longest = itemAt(numbers, 0);
  const edges = numbers.map((edge) => {
    length += itemAt(lengths, edge);
    farthest = Math.max(farthest, itemAt(far, edge));
    if (itemAt(lengths, edge) > itemAt(lengths, longest)) longest = edge;
    return itemAt(arrangement.edges, edge).span;
  });
  return { edges, length, at: pointAlong(itemAt(arrangement.edges, longest).span, 0.5), farthest };
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

/** By ends and middle. */
function farthestFrom(middle: Point, span: Span): number {
  return Math.max(
    distance(middle, span.start),
    distance(middle, pointAlong(span, 0.5)),
    distance(middle, span.end),
  );
}

interface Found {
  readonly level: number;
  readonly beside: number;
  readonly wall: number | undefined;
  readonly asked: EdgeTolerance | undefined;
  /** By their number in the arrangement. */
  readonly edges: number[];
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
