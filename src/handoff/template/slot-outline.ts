/**
 * The edge of a slot: all that lies within a band along a stretch of scribe line, square at both ends, round on the outside of
 * corners. Where it takes the grid to tell, the edge is gone round once as a raw chain, in which every span of the stretch sweeps its
 * own strip; read by winding number it is the slot, of true lines and arcs.
 */

import { gridOrigin, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { parallelStrip } from '#geometry/grow/parallel-strip.ts';
import { rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { cross, distance, dot, type Point } from '#geometry/point.ts';
import { type Loop, lineSpan, reverseSpans, type Span, tangentAlong } from '#geometry/span.ts';
import { GRID } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import type { SlotBand } from './template-set.ts';

export function slotOutline(spans: readonly Span[], band: SlotBand): Loop[] {
  const outline = parallelStrip(spans, band);
  return outline === undefined ? outlineOnGrid(spans, band) : [outline];
}

/** The same, read on the grid, whatever the stretch. */
export function outlineOnGrid(spans: readonly Span[], { low, high }: SlotBand): Loop[] {
  const right = edgeAlong(spans, low);
  const left = reverseSpans(edgeAlong(spans, high));
  const chain = closeUp([...right, ...left]);
  const origin = gridOrigin(chain);
  const carriers = chain.map((span) => ({ span, isKnown: false }));
  return rebuildLoops(positivelyWound([gridPolygonOf(chain, origin)]), carriers, origin).map(spansOf);
}

/** One edge, so far to the left of the stretch: each span moved, joined by an arc round a corner or by way of it. */
function edgeAlong(spans: readonly Span[], aside: number): Span[] {
  const edge: Span[] = [];
  spans.forEach((span, index) => {
    const before = spans[index - 1];
    if (before !== undefined) edge.push(...joint(before, span, aside));
    edge.push(...moved(span, aside));
  });
  return edge;
}

/** The span moved to its left; an arc moved past its own centre stays there, as two lines. */
function moved(span: Span, aside: number): Span[] {
  const start = beside(span, 0, aside);
  const end = beside(span, 1, aside);
  if (span.kind === 'line') return [lineSpan(start, end)];
  const radius = span.radius - aside * Math.sign(span.sweep);
  if (radius < GRID) return [lineSpan(start, span.center), lineSpan(span.center, end)];
  return [{ ...span, start, end, radius }];
}

function beside(span: Span, share: 0 | 1, aside: number): Point {
  const along = tangentAlong(span, share);
  const { x, y } = share === 0 ? span.start : span.end;
  return { x: x - along.y * aside, y: y + along.x * aside };
}

function joint(before: Span, after: Span, aside: number): Span[] {
  const corner = after.start;
  const from = beside(before, 1, aside);
  const to = beside(after, 0, aside);
  if (distance(from, to) < GRID / 4) return [];
  const turn = angleBetween(tangentAlong(before, 1), tangentAlong(after, 0));
  if (turn * aside >= 0) return [lineSpan(from, corner), lineSpan(corner, to)];
  return [{ kind: 'arc', start: from, end: to, center: corner, radius: Math.abs(aside), sweep: turn }];
}

/** Signed, counter-clockwise positive, at most half a turn. */
function angleBetween(from: Point, to: Point): number {
  return atan2(cross(from, to), dot(from, to));
}

/** Lines wherever one span does not start where the last one ends: the square ends, above all. */
function closeUp(spans: readonly Span[]): Span[] {
  return spans.flatMap((span, index) => {
    const before = spans.at(index - 1) ?? span;
    return distance(before.end, span.start) === 0 ? [span] : [lineSpan(before.end, span.start), span];
  });
}
