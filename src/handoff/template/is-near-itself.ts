/**
 * Whether a slot comes back to itself, so that what it goes round hangs by a neck thinner than the web, or is a finger that thin.
 * At a corner the sheet is always thin; what counts is what is near across and far along the line. Cost: pairs of pieces as long
 * as the web.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Span, spansLength } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { hypot } from '#maths/hypot.ts';
import type { SlotBand } from './template-set.ts';

/** Along the line, in widths of slot and web together: a corner of 30° is not yet far along. */
const FAR = 4;

/** @param spans the stretch of scribe line that the slot follows */
export function isNearItself(
  spans: readonly Span[],
  { web, band }: { readonly web: number; readonly band: SlotBand },
): boolean {
  const near = web + 2 * band.reach;
  const length = spansLength(spans);
  if (length <= FAR * near) return false;
  const count = Math.ceil(length / near);
  const pieces = Array.from({ length: count }, (_, index) =>
    stretchAlong(spans, { from: (index * length) / count, to: ((index + 1) * length) / count }),
  );
  return pieces.some((piece, index) =>
    pieces.slice(0, Math.max(0, index - FAR)).some((other) => gapUnder(piece, other, near - ROUNDING)),
  );
}

function gapUnder(as: readonly Span[], bs: readonly Span[], limit: number): boolean {
  const [a, b] = [itemAt(as, 0).start, itemAt(bs, 0).start];
  if (hypot(a.x - b.x, a.y - b.y) > limit + spansLength(as) + spansLength(bs)) return false;
  return as.some((one) => bs.some((other) => spanGap(one, other) < limit));
}
