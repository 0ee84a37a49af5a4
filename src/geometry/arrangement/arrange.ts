/**
 * The planar arrangement of linework: all of it cut where it meets, and the faces that it cuts the plane into.
 *
 * Gaps are joined, then everything is cut where it meets (`split-spans.ts`), what borders nothing is taken out, and the
 * faces are walked and nested. Arcs stay arcs: one that nothing cuts keeps its centre, radius and sweep bit for bit, parts
 * of one keep its centre and radius. The arrangement is the same, bit for bit, in whatever order and direction the
 * spans come, source numbers apart. V − E + F = 1 + C holds with C the connected parts.
 * Cost: near linear in spans and crossings.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { type Effort, type EffortLimits, limitEffort } from '#geometry/effort.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, spanLength } from '#geometry/span.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import type { Arrangement, ArrangementEdge, Face, LineworkTrouble, SourcedSpan } from './arrangement.ts';
import { canonicalSpans, comparePoints } from './canonical-spans.ts';
import { findBridges } from './find-bridges.ts';
import { findDangling } from './find-dangling.ts';
import { findDoubled } from './find-doubled.ts';
import { joinGaps } from './join-gaps.ts';
import { mergeSegments } from './merge-segments.ts';
import { nestCycles } from './nest-cycles.ts';
import { type Segment, splitSpans } from './split-spans.ts';
import { traceFaces } from './trace-faces.ts';

export interface Arranged {
  readonly arrangement: Arrangement;
  readonly trouble: readonly LineworkTrouble[];
}

const WITHOUT_LIMIT: EffortLimits = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };

/**
 * Gaps up to `joinTolerance` (mm) are closed. Trouble is reported in a fixed order, kind by kind and along x. Linework that takes
 * more work than `most` allows gives an arrangement of nothing, and `too-crossed` for its only trouble.
 */
export function arrange(
  spans: readonly SourcedSpan[],
  options: { readonly joinTolerance: number; readonly most?: EffortLimits },
): Arranged {
  const effort = limitEffort(options.most ?? WITHOUT_LIMIT);
  const { kept, trouble } = dropWithoutLength(spans);
  const joined = joinGaps(canonicalSpans(kept), { joinTolerance: options.joinTolerance, effort });
  if (effort.exceeded() !== undefined) return giveUp(effort);
  const split = splitSpans(joined.spans, effort);
  if (effort.exceeded() !== undefined) return giveUp(effort);
  const isBridge = findBridges(split.segments, split.points.length);
  const found = trouble.concat(joined.trouble, findDoubled(split), findDangling(split, isBridge));
  const bordering = split.segments.filter((_, number) => !isBridge[number]);
  const segments = mergeSegments(bordering, { spans: joined.spans, points: split.points });
  return { arrangement: assemble(segments, split.points), trouble: found.sort(compareTrouble) };
}

function giveUp(effort: Effort): Arranged {
  const over = effort.exceeded();
  assert(over !== undefined, 'only what takes too much work is given up');
  return { arrangement: assemble([], []), trouble: [{ kind: 'too-crossed', ...over }] };
}

function dropWithoutLength(spans: readonly SourcedSpan[]): {
  kept: SourcedSpan[];
  trouble: LineworkTrouble[];
} {
  const kept: SourcedSpan[] = [];
  const trouble: LineworkTrouble[] = [];
  for (const each of spans) {
    const length = spanLength(each.span);
    assert(Number.isFinite(length), 'linework has finite coordinates');
    if (length > SAME_PLACE) kept.push(each);
    else trouble.push({ kind: 'zero-length', source: each.source, at: each.span.start });
  }
  return { kept, trouble };
}

/** Vertices by place, edges by their vertices, faces by their least vertex. */
function assemble(segments: readonly Segment[], points: readonly Point[]): Arrangement {
  const places = [...new Set(segments.flatMap(({ start, end }) => [start, end]))];
  places.sort((a, b) => comparePoints(itemAt(points, a), itemAt(points, b)) || a - b);
  const vertices = places.map((place) => itemAt(points, place));
  const vertexAt = new Map(places.map((place, vertex) => [place, vertex]));
  const vertexOf = (place: number) => vertexAt.get(place) ?? -1;
  const bare = segments
    .map(({ span, sources, start, end }) => ({ span, sources, start: vertexOf(start), end: vertexOf(end) }))
    .sort(compareEdges);
  const faces = nestCycles(traceFaces(bare, vertices.length), { edges: bare, vertices });
  const { left, right } = facesOfEdges(faces, bare.length);
  const edges = bare.map(
    ({ span, sources, start, end }, number): ArrangementEdge => ({
      span,
      sources,
      start,
      end,
      left: itemAt(left, number),
      right: itemAt(right, number),
    }),
  );
  return { vertices, edges, faces };
}

type BareEdge = Omit<ArrangementEdge, 'left' | 'right'>;

function compareEdges(a: BareEdge, b: BareEdge): number {
  return (
    a.start - b.start || a.end - b.end || comparePoints(pointAlong(a.span, 0.5), pointAlong(b.span, 0.5))
  );
}

function facesOfEdges(faces: readonly Face[], edgeCount: number): { left: Int32Array; right: Int32Array } {
  const left = new Int32Array(edgeCount).fill(-1);
  const right = new Int32Array(edgeCount).fill(-1);
  faces.forEach(({ borders }, face) => {
    for (const { edge, forward } of borders.flat()) (forward ? left : right)[edge] = face;
  });
  assert(!left.includes(-1) && !right.includes(-1), 'every edge has a face on either side');
  return { left, right };
}

const KINDS: readonly LineworkTrouble['kind'][] = [
  'zero-length',
  'doubled',
  'joined-gap',
  'open-gap',
  'dangling',
  'too-crossed',
];

function compareTrouble(a: LineworkTrouble, b: LineworkTrouble): number {
  return KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || comparePoints(a.at, b.at);
}
