/**
 * Exact loops from polygons of the grid (M3.4). Every edge of a polygon is a chord of some known curve, its carrier: the edge is
 * matched to its carrier, equal matches become one run, and neighbouring runs meet where their carriers cross. The
 * grid thus decides only which carriers follow which; every line and arc that comes out is exact.
 *
 * Where an edge fits several carriers, a known one wins: a border that exists already, such as the sheet's edge or a line of
 * an earlier stage, so that it is found again bit for bit. An edge that fits none stays the chord that it is, and says so;
 * a polygon whose exact area differs from its own by more than its chords allow stays as it is: both within `SAGITTA` of
 * the truth.
 * Cost: edges × carriers near them; carriers are looked up by box once there are many.
 */

import { itemAt } from '#geometry/assert.ts';
import { cross, distance, dot, type Point, subtract } from '#geometry/point.ts';
import {
  type ArcSpan,
  arcSpan,
  type Loop,
  lineSpan,
  loopArea,
  nearestShare,
  type Span,
  spansLength,
  startAngle,
} from '#geometry/span.ts';
import { crossCarriers, doesFit, footOn, sameCarrier } from '#geometry/spans/carrier.ts';
import {
  FITS_CARRIER,
  GRID,
  NEAR_JOINT,
  SAGITTA,
  SAME_COUNT,
  SCRIBE_ACCURACY,
  SPECK,
} from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { type Carrier, type CarrierFinder, carrierFinder, type FoundCarrier } from './carrier-finder.ts';
import type { GridPolygon } from './grid-polygon.ts';
import { pointOf } from './grid-polygons.ts';

/** A span of a rebuilt loop. */
export interface RebuiltSpan {
  readonly span: Span;
  /** A chord of the grid that no carrier was found for: within `SAGITTA` of the exact border. */
  readonly isChord: boolean;
}

export type RebuiltLoop = readonly RebuiltSpan[];

/** Consecutive edges of a polygon on one carrier. */
interface Run {
  readonly carrier: Carrier;
  readonly isChord: boolean;
  /** Vertices from the first edge's start to the last edge's end. */
  readonly points: readonly Point[];
}

type GrowingRun = Run & { readonly points: Point[] };

/** Where a run ends and the next begins: one place, but where their carriers do not meet. */
interface Joint {
  readonly end: Point;
  readonly start: Point;
}

/**
 * Polygons thinner than this on average are none, mm: no knife cuts both sides of one, and chords may have closed one half as thin.
 */
const SLIVER = SCRIBE_ACCURACY;

/** Rebuilds all polygons from the given carriers. Slivers thinner than `SLIVER` are dropped. */
export function rebuildLoops(
  polygons: readonly GridPolygon[],
  carriers: readonly Carrier[],
  origin: Point,
): RebuiltLoop[] {
  const find = carrierFinder(carriers);
  const loops: RebuiltLoop[] = [];
  for (const polygon of polygons) {
    const points = polygon.map((each) => pointOf(each, origin));
    const { area, perimeter } = measured(points);
    if (Math.abs(area) < GRID * perimeter) continue;
    const exact = rebuildRing(points, find);
    const isTrue =
      exact !== undefined && Math.abs(area - loopArea(spansOf(exact))) <= 2 * SAGITTA * perimeter;
    const rebuilt = simpleLoops(isTrue ? exact : chordsOf(points));
    // By the exact border: whether a sliver is one must not depend on where its chords begin.
    loops.push(...rebuilt.filter((loop) => !isSliver(loop)));
  }
  return loops;
}

/** Signed area, and length all round. */
function measured(points: readonly Point[]): { readonly area: number; readonly perimeter: number } {
  const first = itemAt(points, 0);
  let [doubleArea, perimeter] = [0, 0];
  for (let index = 0; index < points.length; index++) {
    const from = itemAt(points, index);
    const to = itemAt(points, index + 1 < points.length ? index + 1 : 0);
    doubleArea += (from.x - first.x) * (to.y - first.y) - (from.y - first.y) * (to.x - first.x);
    perimeter += distance(from, to);
  }
  return { area: doubleArea / 2, perimeter };
}

function chordsOf(points: readonly Point[]): RebuiltLoop {
  return points.map((point, index) => ({
    span: lineSpan(point, itemAt(points, (index + 1) % points.length)),
    isChord: true,
  }));
}

function isSliver(loop: RebuiltLoop): boolean {
  const spans = spansOf(loop);
  return Math.abs(loopArea(spans)) <= (SLIVER * spansLength(spans)) / 2;
}

export function spansOf(loop: RebuiltLoop): Loop {
  return loop.map(({ span }) => span);
}

function rebuildRing(points: readonly Point[], find: CarrierFinder): RebuiltLoop | undefined {
  let runs = joinRuns(matchEdges(points, find));
  // Each pass drops at least one run, so this ends.
  for (;;) {
    const [only, another] = runs;
    if (only === undefined) return undefined;
    if (another === undefined) return wholeCircle(only);
    const joints = runs.map((run, index) => jointOf(run, itemAt(runs, (index + 1) % runs.length)));
    const spans = runs.map((run, index) =>
      spansOfRun(run, itemAt(joints, (index + joints.length - 1) % joints.length), itemAt(joints, index)),
    );
    if (spans.every((each) => each !== undefined)) return spans.flat();
    const kept = runs.filter((_, index) => spans[index] !== undefined);
    if (kept.length === runs.length) return undefined;
    runs = joinRuns(kept);
  }
}

/** Edges each on its best carrier, those of one after the other as one run; specks that fit none are left out. */
function matchEdges(points: readonly Point[], find: CarrierFinder): Run[] {
  const runs: GrowingRun[] = [];
  let last: FoundCarrier | undefined;
  points.forEach((start, index) => {
    const end = itemAt(points, index + 1 < points.length ? index + 1 : 0);
    const carrier = bestCarrier(start, end, last, find);
    if (carrier !== undefined && carrier === last) runs.at(-1)?.points.push(end);
    else if (carrier !== undefined) runs.push({ carrier, isChord: false, points: [start, end] });
    else if (distance(start, end) >= SPECK) runs.push(...splitEdge(start, end, find));
    last = carrier;
  });
  return runs;
}

function bestCarrier(
  a: Point,
  b: Point,
  last: FoundCarrier | undefined,
  find: CarrierFinder,
): FoundCarrier | undefined {
  const fitsLast = last !== undefined && doesFit(last, a, b, FITS_CARRIER);
  // The edge after a chord of a circle is most often the next chord of it; only a known carrier goes before that.
  if (fitsLast && (last.isKnown || !find.hasKnown)) return last;
  return find.best(a, b, fitsLast ? last : undefined);
}

/** An edge that fits no carrier as a whole may run along two, where the grid lost the corner between them; else it is a chord. */
function splitEdge(a: Point, b: Point, find: CarrierFinder): GrowingRun[] {
  const edge = lineSpan(a, b);
  const shares = find
    .near(a, b)
    .flatMap(({ span }) => [span.start, span.end])
    .filter((end) => distance(end, footOn(edge, end)) < SAGITTA)
    .map((end) => nearestShare(edge, end))
    .filter((share) => share > 0 && share < 1)
    .sort((p, q) => p - q);
  for (const share of shares) {
    const corner = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    const before = bestCarrier(a, corner, undefined, find);
    const after = bestCarrier(corner, b, undefined, find);
    if (before === undefined || after === undefined) continue;
    return [
      { carrier: before, isChord: false, points: [a, corner] },
      { carrier: after, isChord: false, points: [corner, b] },
    ];
  }
  return [{ carrier: { span: edge, isKnown: false }, isChord: true, points: [a, b] }];
}

/** Joins neighbours that lie on one line or circle, also across the polygon's seam, and drops specks between others. */
function joinRuns(runs: readonly Run[]): Run[] {
  const joined: GrowingRun[] = [];
  for (const run of runs) {
    const last = joined.at(-1);
    if (last === undefined || !belongTogether(last, run)) joined.push({ ...run, points: [...run.points] });
    else {
      for (const point of run.points) last.points.push(point);
      if (run.carrier.isKnown) joined[joined.length - 1] = { ...run, points: last.points };
    }
  }
  const first = joined[0];
  const last = joined.at(-1);
  if (joined.length > 1 && first !== undefined && last !== undefined && belongTogether(last, first)) {
    joined[0] = { ...(first.carrier.isKnown ? first : last), points: [...last.points, ...first.points] };
    joined.pop();
  }
  const kept = joined.filter(({ points }) => pathLength(points) >= SPECK);
  return kept.length === joined.length || kept.length === 0 ? joined : joinRuns(kept);
}

function belongTogether(a: Run, b: Run): boolean {
  if (a.isChord || b.isChord) return false;
  return a.carrier === b.carrier || sameCarrier(a.carrier.span, b.carrier.span);
}

function pathLength(points: readonly Point[]): number {
  let length = 0;
  for (let index = 1; index < points.length; index++) {
    length += distance(itemAt(points, index - 1), itemAt(points, index));
  }
  return length;
}

/** Where a run ends and the next begins: both on their carriers exactly, whether these meet or just miss each other. */
function jointOf(before: Run, after: Run): Joint {
  const corner = itemAt(before.points, before.points.length - 1);
  const a = before.carrier.span;
  const b = after.carrier.span;
  const known = knownJoint(a, b, corner);
  if (known !== undefined) return { end: known, start: known };
  if (!sameCarrier(a, b)) {
    const crossing = crossCarriers(a, b, corner);
    if (crossing !== undefined && distance(crossing, corner) < slideLimit(a, b)) {
      return { end: crossing, start: crossing };
    }
  }
  const end = footOn(a, corner);
  const start = footOn(b, corner);
  return distance(end, start) < GRID / 10 ? { end, start: end } : { end, start };
}

/** An end of one carrier that lies on the other: smooth joints and ends of earlier lines are known, not computed. */
function knownJoint(a: Span, b: Span, corner: Point): Point | undefined {
  const ends = [a.start, a.end, b.start, b.end].filter(
    (end) =>
      distance(end, corner) < NEAR_JOINT &&
      distance(end, footOn(a, end)) < GRID / 10 &&
      distance(end, footOn(b, end)) < GRID / 10,
  );
  return ends.sort((p, q) => distance(p, corner) - distance(q, corner))[0];
}

/** How far the crossing of two curves can lie from the crossing of their chords: they may meet at a small angle. */
function slideLimit(a: Span, b: Span): number {
  const radius = Math.max(a.kind === 'arc' ? a.radius : 0, b.kind === 'arc' ? b.radius : 0, 1);
  return 4 * Math.sqrt(SAGITTA * radius);
}

/** The exact spans of a run between its joints, and the way over to the next; undefined when nothing is left of it between them. */
function spansOfRun(
  { carrier, isChord, points }: Run,
  before: Joint,
  after: Joint,
): RebuiltSpan[] | undefined {
  const from = before.start;
  const to = after.end;
  const { span } = carrier;
  const over = to === after.start ? [] : wayOver(to, after.start);
  if (span.kind === 'line') {
    const along = subtract(itemAt(points, points.length - 1), itemAt(points, 0));
    if (dot(subtract(to, from), along) <= 0 || distance(from, to) < GRID) return undefined;
    return [{ span: lineSpan(from, to), isChord }, ...over];
  }
  const turned = turnedRound(span.center, points);
  const asked = angleBetween(span.center, from, to);
  // The joints fix the angle up to whole turns; the chords say how many there are.
  const sweep = asked + 2 * Math.PI * Math.round((turned - asked) / (2 * Math.PI));
  if (sweep * turned <= 0 || Math.abs(sweep) * span.radius < GRID) return undefined;
  return [...arcPieces(span, from, to, sweep).map((piece) => ({ span: piece, isChord })), ...over];
}

/** Where carriers just miss each other; farther apart than a chord is off, an edge between them was lost. */
function wayOver(from: Point, to: Point): RebuiltSpan[] {
  return [{ span: lineSpan(from, to), isChord: distance(from, to) > SAGITTA }];
}

/** A loop that passes a place twice, as two pockets do that touch at a corner, is two loops: always, not as the grid happens to have it. */
function simpleLoops(loop: RebuiltLoop): RebuiltLoop[] {
  const order = loop.map((_, at) => at).sort((a, b) => startOf(loop, a).x - startOf(loop, b).x);
  for (let i = 0; i < order.length; i++) {
    for (let j = i + 1; j < order.length; j++) {
      const [a, b] = [itemAt(order, i), itemAt(order, j)];
      if (startOf(loop, b).x - startOf(loop, a).x > GRID / 10) break;
      if (distance(startOf(loop, a), startOf(loop, b)) > GRID / 10) continue;
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      const inner = loop.slice(from, to);
      return [...simpleLoops(inner), ...simpleLoops([...loop.slice(0, from), ...loop.slice(to)])];
    }
  }
  return [loop];
}

function startOf(loop: RebuiltLoop, at: number): Point {
  return itemAt(loop, at).span.start;
}

/** Signed angle that a chain of points turns round a centre. */
function turnedRound(center: Point, points: readonly Point[]): number {
  let turned = 0;
  for (let index = 1; index < points.length; index++) {
    turned += angleBetween(center, itemAt(points, index - 1), itemAt(points, index));
  }
  return turned;
}

function angleBetween(center: Point, from: Point, to: Point): number {
  const a = subtract(from, center);
  const b = subtract(to, center);
  return atan2(cross(a, b), dot(a, b));
}

/** An arc of any sweep as arcs of at most half a turn. */
function arcPieces(carrier: ArcSpan, from: Point, to: Point, sweep: number): ArcSpan[] {
  const { center, radius } = carrier;
  const count = Math.ceil(Math.abs(sweep) / Math.PI - SAME_COUNT);
  const first = atan2(from.y - center.y, from.x - center.x);
  const pieces: ArcSpan[] = [];
  for (let index = 0; index < count; index++) {
    const piece = arcSpan({ center, radius, from: first + (sweep * index) / count, sweep: sweep / count });
    pieces.push({
      ...piece,
      start: pieces.at(-1)?.end ?? from,
      end: index === count - 1 ? to : piece.end,
    });
  }
  return pieces;
}

/** A polygon that is one circle all round. */
function wholeCircle({ carrier, points }: Run): RebuiltLoop | undefined {
  if (carrier.span.kind === 'line') return undefined;
  const { center, radius } = carrier.span;
  const turn = Math.sign(turnedRound(center, points)) * Math.PI;
  const from = startAngle(carrier.span);
  return [0, 1].map((half) => ({
    span: arcSpan({ center, radius, from: from + half * turn, sweep: turn }),
    isChord: false,
  }));
}
