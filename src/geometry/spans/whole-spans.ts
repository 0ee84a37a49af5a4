/**
 * A border in as few spans as it has lines and arcs: neighbours on one line or circle are one, however the drawing cut them.
 * What is judged by spans then does not depend on that. Arcs may turn by more than a half, a whole circle all the way.
 * Linear in spans.
 */

import type { Loop, Span } from '#geometry/span.ts';
import { sameCarrier } from './carrier.ts';

export interface WholeSpan {
  readonly span: Span;
  /** The spans that it is made of, as they stand in the loop, one after the other. */
  readonly parts: readonly Span[];
}

/** @param isAlike whether two neighbours may be one for other reasons too */
export function wholeSpans(loop: Loop, isAlike: (a: Span, b: Span) => boolean = () => true): WholeSpan[] {
  const seam = loop.findIndex((span, i) => !goesOn(loop[(i + loop.length - 1) % loop.length], span, isAlike));
  if (seam < 0) return allOnOneCircle(loop);
  const whole: { span: Span; readonly parts: Span[] }[] = [];
  for (const span of [...loop.slice(seam), ...loop.slice(0, seam)]) {
    const before = whole.at(-1);
    if (before !== undefined && goesOn(before.parts.at(-1), span, isAlike)) {
      before.span = joined(before.span, span);
      before.parts.push(span);
    } else whole.push({ span, parts: [span] });
  }
  return whole;
}

function goesOn(before: Span | undefined, span: Span, isAlike: (a: Span, b: Span) => boolean): boolean {
  if (before === undefined || before === span || !sameCarrier(before, span)) return false;
  const isOnward = before.kind === 'line' ? runsOn(before, span) : sweepOf(before) * sweepOf(span) > 0;
  return isOnward && isAlike(before, span);
}

/** Whether the line goes on the same way, and not back. */
function runsOn(before: Span, span: Span): boolean {
  const [dx, dy] = [before.end.x - before.start.x, before.end.y - before.start.y];
  return dx * (span.end.x - span.start.x) + dy * (span.end.y - span.start.y) > 0;
}

function sweepOf(span: Span): number {
  return span.kind === 'arc' ? span.sweep : 0;
}

function joined(before: Span, span: Span): Span {
  if (before.kind === 'line') return { kind: 'line', start: before.start, end: span.end };
  return { ...before, end: span.end, sweep: before.sweep + sweepOf(span) };
}

/** Of a loop whose every span goes on from the one before: that takes a circle, or no spans. */
function allOnOneCircle(loop: Loop): WholeSpan[] {
  const [first] = loop;
  if (first?.kind !== 'arc') return [];
  const sweep = Math.sign(first.sweep) * 2 * Math.PI;
  return [{ span: { ...first, end: first.start, sweep }, parts: loop }];
}
