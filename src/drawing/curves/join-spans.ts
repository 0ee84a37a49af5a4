/** Joins neighbours in a chain that lie on one line or on one circle. Moves nothing by more than `SAME_CARRIER`. */

import { itemAt } from '#geometry/assert.ts';
import { cross, distance, pointOnCircle, subtract } from '#geometry/point.ts';
import {
  type ArcSpan,
  type LineSpan,
  lineSpan,
  type Span,
  spanFromBulge,
  startAngle,
} from '#geometry/span.ts';
import { SAME_CARRIER, SAME_COUNT } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import { tan } from '#maths/tangent.ts';

export function joinSpans(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  // Arcs on the circle of the first of them.
  let run: ArcSpan[] = [];
  const endRun = (): void => {
    for (const arc of divideRun(run)) joined.push(arc);
    run = [];
  };
  for (const span of spans) {
    const [first] = run;
    if (span.kind === 'arc') {
      if (first !== undefined && !isOnCircle(first, span)) endRun();
      run.push(span);
      continue;
    }
    endRun();
    const last = joined.at(-1);
    const both = last?.kind === 'line' ? joinLines(last, span) : undefined;
    if (both === undefined) joined.push(span);
    else joined[joined.length - 1] = both;
  }
  endRun();
  return joined;
}

function isOnCircle(first: ArcSpan, arc: ArcSpan): boolean {
  return (
    Math.sign(first.sweep) === Math.sign(arc.sweep) &&
    Math.abs(first.radius - arc.radius) <= SAME_CARRIER &&
    distance(first.center, arc.center) <= SAME_CARRIER
  );
}

/** The whole run as equal arcs, as few as half a turn each allows; its ends stay where they are. */
function divideRun(run: readonly ArcSpan[]): readonly Span[] {
  if (run.length < 2) return run;
  const first = itemAt(run, 0);
  const sweep = run.reduce((sum, arc) => sum + arc.sweep, 0);
  const count = Math.ceil(Math.abs(sweep) / Math.PI - SAME_COUNT);
  const from = startAngle(first);
  // At half a turn, rounding must not push the bulge past 1.
  const bulge = Math.max(-1, Math.min(1, tan(sweep / count / 4)));
  const arcs: Span[] = [];
  let { start } = first;
  for (let n = 1; n <= count; n++) {
    const angle = from + (sweep * n) / count;
    const end =
      n === count ? itemAt(run, run.length - 1).end : pointOnCircle(first.center, first.radius, angle);
    arcs.push(spanFromBulge(start, end, bulge));
    start = end;
  }
  return arcs;
}

function joinLines(a: LineSpan, b: LineSpan): Span | undefined {
  const whole = subtract(b.end, a.start);
  const length = hypot(whole.x, whole.y);
  if (length < distance(a.start, a.end) || length < distance(b.start, b.end)) return undefined;
  const aside = Math.abs(cross(whole, subtract(a.end, a.start))) / length;
  return aside <= SAME_CARRIER ? lineSpan(a.start, b.end) : undefined;
}
