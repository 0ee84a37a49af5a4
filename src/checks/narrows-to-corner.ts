/**
 * Curves that merely meet in a corner, however many arcs they consist of. A curve that came as a spline is fitted with arcs, and where
 * one of them ends says nothing about the part: no strip begins there.
 */
import { itemAt } from '#geometry/assert.ts';
import { dot } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span, tangentAlong } from '#geometry/span.ts';
import { RUN_TOGETHER } from '#geometry/tolerances.ts';

/** A span with all those of its border in order, and its number among them. */
interface SpanOfChain {
  readonly span: Span;
  readonly chain: readonly Span[];
  readonly number: number;
}

/** Whether all that the curve of side a does from there is to come nearer to side b, up to a corner with that. */
export function narrowsToCorner({ span, chain, number }: SpanOfChain, b: SpanOfChain): boolean {
  if (chain !== b.chain || span.kind !== 'arc') return false;
  const [start, middle, end] = [0, 0.5, 1].map((share) => distanceToSpan(b.span, pointAlong(span, share)));
  if (start === undefined || middle === undefined || end === undefined) return false;
  const isBack = start < middle && middle < end;
  if (!isBack && !(start > middle && middle > end)) return false;
  const onward = (step: number): Span =>
    itemAt(chain, (number + (isBack ? chain.length - step : step)) % chain.length);
  let gap = isBack ? start : end;
  let step = 1;
  for (; goesOn(onward(step - 1), onward(step), isBack); step++) {
    if (step + 1 >= chain.length) return false;
    const next = onward(step);
    const less = distanceToSpan(b.span, isBack ? next.start : next.end);
    if (less >= gap) return false;
    gap = less;
  }
  return onward(step) === b.span;
}

/** Whether two neighbours are one smooth curve: arcs that go on into each other. */
function goesOn(span: Span, next: Span, isBack: boolean): boolean {
  if (span.kind !== 'arc' || next.kind !== 'arc') return false;
  const [before, after] = isBack ? [next, span] : [span, next];
  return dot(tangentAlong(before, 1), tangentAlong(after, 0)) > RUN_TOGETHER;
}
