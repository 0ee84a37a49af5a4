/** The parts of a level line that lie inside closed loops. Exact for arcs; cost linear in spans. */

import { type ArcSpan, type Span, startAngle } from '#geometry/span.ts';
import { halfChord } from '#geometry/spans/cross-carriers.ts';
import { cos } from '#maths/sine.ts';

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The parts of a level line that are inside, left to right. */
export function stretchesInside(spans: readonly Span[], y: number): Stretch[] {
  const crossings: number[] = [];
  for (const span of spans) pushCrossings(span, y, crossings);
  crossings.sort((a, b) => a - b);
  const stretches: Stretch[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    stretches.push({ from: crossings[i] ?? 0, to: crossings[i + 1] ?? 0 });
  }
  return stretches;
}

/** Where the span crosses the level line: a piece that ends on the line counts for the side below only. */
function pushCrossings(span: Span, y: number, crossings: number[]): void {
  const { start, end } = span;
  if (span.kind === 'arc') pushArcCrossings(span, y, crossings);
  else if (start.y <= y !== end.y <= y) {
    crossings.push(start.x + ((end.x - start.x) * (y - start.y)) / (end.y - start.y));
  }
}

/** An arc of at most half a turn passes its circle's top or bottom at most twice: between them it rises or falls. */
function pushArcCrossings(arc: ArcSpan, y: number, crossings: number[]): void {
  const { center, radius, sweep } = arc;
  const above = y - center.y;
  const half = halfChord(radius, above);
  if (half === undefined) return;
  const from = startAngle(arc);
  const low = Math.min(from, from + sweep);
  const high = Math.max(from, from + sweep);
  const isForward = sweep > 0;
  let angle = low;
  let height = isForward ? arc.start.y : arc.end.y;
  for (let k = Math.floor(low / Math.PI + 0.5); angle < high; k++) {
    const turn = (k + 0.5) * Math.PI;
    const isLast = turn >= high;
    const nextAngle = isLast ? high : turn;
    const lastHeight = isForward ? arc.end.y : arc.start.y;
    const nextHeight = isLast ? lastHeight : center.y + (k % 2 === 0 ? radius : -radius);
    if (height <= y !== nextHeight <= y) {
      crossings.push(center.x + (cos((angle + nextAngle) / 2) > 0 ? half : -half));
    }
    angle = nextAngle;
    height = nextHeight;
  }
}
