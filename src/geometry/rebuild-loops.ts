/**
 * Exact loops from rings of the grid. Every edge of a ring is a chord of some known curve, its carrier: the edge is
 * matched to its carrier, equal matches become one run, and neighbouring runs meet where their carriers cross. The
 * grid thus decides only which carriers follow which; every line and arc that comes out is exact.
 *
 * A ring whose edges cannot all be matched, or whose exact area differs from the ring's by more than its chords
 * allow, keeps its chords: still within `SAGITTA` of the truth.
 * Cost: edges × carriers near them; carriers are looked up by box once there are many.
 */
import { atan2 } from '#maths/arc-tangent.ts';
import { itemAt } from './assert.ts';
import { type Box, boxOfSpan, growBox } from './box.ts';
import { indexBoxes } from './box-index.ts';
import { crossCarriers, footOn, misfit, sameCarrier } from './carrier.ts';
import { cross, distance, dot, type Point, subtract } from './point.ts';
import { GRID, pointOf, type Ring, SAGITTA } from './rings.ts';
import { type ArcSpan, arcSpan, type Loop, lineSpan, loopArea, type Span, startAngle } from './span.ts';

/** A curve that an outline may be made of, with whatever the caller wants to know of it later. */
export interface Carrier<Tag> {
  readonly span: Span;
  readonly tag: Tag;
}

/** A span of a rebuilt loop, and the tag of its carrier; undefined where no carrier was found. */
export interface TracedSpan<Tag> {
  readonly span: Span;
  readonly tag: Tag | undefined;
}

export type TracedLoop<Tag> = readonly TracedSpan<Tag>[];

/** Consecutive edges of a ring on one carrier. */
interface Run<Tag> {
  readonly carrier: Carrier<Tag> | undefined;
  /** Vertices from the first edge's start to the last edge's end. */
  readonly points: readonly Point[];
}

/** Runs shorter than this are rounding at a crossing, not an edge of their own, mm. */
const SPECK = 10 * GRID;

/** With fewer carriers than this, trying them all is cheaper than an index. */
const FEW_CARRIERS = 24;

/** A known end this near to a corner of the grid is that corner, mm; a tangent joint slides by √(2 · SAGITTA · radius). */
const NEAR_JOINT = 0.25;

/** Rings thinner than this on average are slivers between two tessellations of one border, mm. */
const SLIVER = SAGITTA;

/** Rebuilds all rings from the given carriers. Slivers thinner than `SLIVER` are dropped. */
export function rebuildLoops<Tag>(
  rings: readonly Ring[],
  carriers: readonly Carrier<Tag>[],
  origin: Point,
): TracedLoop<Tag>[] {
  const candidates = carrierFinder(carriers);
  const loops: TracedLoop<Tag>[] = [];
  for (const ring of rings) {
    const points = ring.map((each) => pointOf(each, origin));
    const chords = points.map((point, index) => lineSpan(point, itemAt(points, (index + 1) % points.length)));
    const area = loopArea(chords);
    const perimeter = chords.reduce((sum, { start, end }) => sum + distance(start, end), 0);
    if (Math.abs(area) < (SLIVER * perimeter) / 2) continue;
    const exact = rebuildRing(points, candidates);
    const isTrue =
      exact !== undefined && Math.abs(area - loopArea(spansOf(exact))) <= 2 * SAGITTA * perimeter;
    loops.push(isTrue ? exact : chords.map((span) => ({ span, tag: undefined })));
  }
  return loops;
}

export function spansOf<Tag>(loop: TracedLoop<Tag>): Loop {
  return loop.map(({ span }) => span);
}

type FindCarriers<Tag> = (a: Point, b: Point) => readonly Carrier<Tag>[];

function carrierFinder<Tag>(carriers: readonly Carrier<Tag>[]): FindCarriers<Tag> {
  if (carriers.length < FEW_CARRIERS) return () => carriers;
  const index = indexBoxes(carriers.map(({ span }) => growBox(boxOfSpan(span), SAGITTA + SPECK)));
  return (a, b) => index.meeting(edgeMiddle(a, b)).map((each) => itemAt(carriers, each));
}

function edgeMiddle(a: Point, b: Point): Box {
  const x = (a.x + b.x) / 2;
  const y = (a.y + b.y) / 2;
  return { minX: x, minY: y, maxX: x, maxY: y };
}

function rebuildRing<Tag>(points: readonly Point[], find: FindCarriers<Tag>): TracedLoop<Tag> | undefined {
  let runs = joinRuns(matchEdges(points, find));
  // Each pass drops at least one run, so this ends.
  for (;;) {
    if (runs.some(({ carrier }) => carrier === undefined)) return undefined;
    const only = runs.length === 1 ? runs[0] : undefined;
    if (only !== undefined) return wholeCircle(only);
    const joints = runs.map((run, index) => jointOf(run, itemAt(runs, (index + 1) % runs.length)));
    if (joints.some((joint) => joint === undefined)) return undefined;
    const spans = runs.map((run, index) =>
      spanOfRun(run, joints[(index + joints.length - 1) % joints.length], joints[index]),
    );
    if (spans.every((span) => span !== undefined)) return spans.flat();
    const kept = runs.filter((_, index) => spans[index] !== undefined);
    if (kept.length === runs.length || kept.length === 0) return undefined;
    runs = joinRuns(kept);
  }
}

/** One run an edge, each on its best carrier; specks are left out. */
function matchEdges<Tag>(points: readonly Point[], find: FindCarriers<Tag>): Run<Tag>[] {
  const runs: Run<Tag>[] = [];
  let last: Carrier<Tag> | undefined;
  points.forEach((start, index) => {
    const end = itemAt(points, (index + 1) % points.length);
    const carrier = bestCarrier(start, end, last, find);
    if (carrier === undefined && distance(start, end) < SPECK) return;
    runs.push({ carrier, points: [start, end] });
    last = carrier;
  });
  return runs;
}

function bestCarrier<Tag>(
  a: Point,
  b: Point,
  last: Carrier<Tag> | undefined,
  find: FindCarriers<Tag>,
): Carrier<Tag> | undefined {
  // The edge after a chord of a circle is most often the next chord of it, and then fits to the grid.
  if (last !== undefined) {
    const off = misfit(last.span, a, b);
    if (off !== undefined && off < 2 * GRID) return last;
  }
  let best: Carrier<Tag> | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const carrier of find(a, b)) {
    const off = misfit(carrier.span, a, b);
    if (off !== undefined && off < least) {
      best = carrier;
      least = off;
    }
  }
  return best;
}

/** Joins neighbours that lie on one line or circle, also across the ring's seam, and drops specks between others. */
function joinRuns<Tag>(runs: readonly Run<Tag>[]): Run<Tag>[] {
  const joined: Run<Tag>[] = [];
  for (const run of runs) {
    const last = joined.at(-1);
    if (last !== undefined && belongTogether(last, run)) joined[joined.length - 1] = mergeRuns(last, run);
    else joined.push(run);
  }
  const first = joined[0];
  const last = joined.at(-1);
  if (joined.length > 1 && first !== undefined && last !== undefined && belongTogether(last, first)) {
    joined[0] = mergeRuns(last, first);
    joined.pop();
  }
  const kept = joined.filter(({ points }) => pathLength(points) >= SPECK);
  return kept.length === joined.length || kept.length === 0 ? joined : joinRuns(kept);
}

function belongTogether<Tag>(a: Run<Tag>, b: Run<Tag>): boolean {
  if (a.carrier === undefined || b.carrier === undefined) return false;
  if (a.carrier === b.carrier) return true;
  return a.carrier.tag === b.carrier.tag && sameCarrier(a.carrier.span, b.carrier.span);
}

function mergeRuns<Tag>(a: Run<Tag>, b: Run<Tag>): Run<Tag> {
  return { carrier: a.carrier, points: [...a.points, ...b.points] };
}

function pathLength(points: readonly Point[]): number {
  let length = 0;
  for (let index = 1; index < points.length; index++) {
    length += distance(itemAt(points, index - 1), itemAt(points, index));
  }
  return length;
}

/** Where a run ends and the next begins. */
function jointOf<Tag>(before: Run<Tag>, after: Run<Tag>): Point | undefined {
  const corner = before.points.at(-1);
  if (before.carrier === undefined || after.carrier === undefined || corner === undefined) return undefined;
  const a = before.carrier.span;
  const b = after.carrier.span;
  const known = knownJoint(a, b, corner);
  if (known !== undefined) return known;
  if (sameCarrier(a, b)) return footOn(a, corner);
  const crossing = crossCarriers(a, b, corner);
  if (crossing !== undefined && distance(crossing, corner) < slideLimit(a, b)) return crossing;
  const foot = footOn(a, corner);
  return distance(foot, footOn(b, foot)) < SAGITTA ? foot : undefined;
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

/** The exact spans of a run between its joints; undefined when nothing is left of it between them. */
function spanOfRun<Tag>(
  run: Run<Tag>,
  from: Point | undefined,
  to: Point | undefined,
): TracedSpan<Tag>[] | undefined {
  const { carrier, points } = run;
  if (carrier === undefined || from === undefined || to === undefined) return undefined;
  const { span, tag } = carrier;
  if (span.kind === 'line') {
    const along = subtract(itemAt(points, points.length - 1), itemAt(points, 0));
    if (dot(subtract(to, from), along) <= 0 || distance(from, to) < GRID) return undefined;
    return [{ span: lineSpan(from, to), tag }];
  }
  const turned = turnedRound(span.center, points);
  const asked = angleBetween(span.center, from, to);
  // The joints fix the angle up to whole turns; the chords say how many there are.
  const sweep = asked + 2 * Math.PI * Math.round((turned - asked) / (2 * Math.PI));
  if (sweep * turned <= 0 || Math.abs(sweep) * span.radius < GRID) return undefined;
  return arcPieces(span, from, to, sweep).map((piece) => ({ span: piece, tag }));
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
  const count = Math.ceil(Math.abs(sweep) / Math.PI - 1e-9);
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

/** A ring that is one circle all round. */
function wholeCircle<Tag>({ carrier, points }: Run<Tag>): TracedLoop<Tag> | undefined {
  if (carrier === undefined || carrier.span.kind === 'line') return undefined;
  const { center, radius } = carrier.span;
  const turn = Math.sign(turnedRound(center, points)) * Math.PI;
  const from = startAngle(carrier.span);
  return [0, 1].map((half) => ({
    span: arcSpan({ center, radius, from: from + half * turn, sweep: turn }),
    tag: carrier.tag,
  }));
}
