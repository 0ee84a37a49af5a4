/** Where a taper is cut into strips: which of the levels it takes, and at what distances it goes over from one to the next. */

import { itemAt } from '#geometry/assert.ts';
import { SAME_SHARE, SAME_SUM } from '#geometry/tolerances.ts';
import { bandShare, type DepthBand } from './fewest-levels.ts';
import type { TaperProfile } from './taper-profile.ts';

export interface StripCut {
  /** Distance along the profile. */
  readonly at: number;
  readonly shallow: number;
  readonly deep: number;
  /** On which side of the cut the deeper strip lies. */
  readonly deepSide: 'before' | 'after';
}

/**
 * As few of the levels as serve the whole band without a worse share of its tolerance than all of them together give,
 * rising. Greedy from the shallow end, each time the deepest level that serves what is left: optimal for intervals.
 * Undefined where the levels do not serve the band.
 */
export function coverBand(band: DepthBand, levels: readonly number[]): number[] | undefined {
  const share = bandShare(levels, band)?.share;
  if (share === undefined || share > 1 + SAME_SHARE) return undefined;
  const minus = band.minus * share;
  const plus = band.plus * share;
  const rising = [...new Set(levels)].sort((a, b) => a - b);
  const cover: number[] = [];
  let served = band.low;
  for (;;) {
    const level = rising.findLast((each) => each - plus <= served + SAME_SUM);
    if (level === undefined || level === cover.at(-1)) return undefined;
    cover.push(level);
    served = level + minus;
    if (served >= band.high - SAME_SUM) return cover;
  }
}

/** The cuts, rising: where the depth asked uses up the same share of tolerance from the level on either side. */
export function cutsBetween(
  { depthAt, knots, frame }: TaperProfile,
  levels: readonly number[],
  { minus, plus, sliver }: { readonly minus: number; readonly plus: number; readonly sliver: number },
): StripCut[] {
  const cuts: StripCut[] = [];
  for (let index = 0; index + 1 < levels.length; index++) {
    const shallow = itemAt(levels, index);
    const deep = itemAt(levels, index + 1);
    const depth = (shallow * plus + deep * minus) / (plus + minus);
    for (let knot = 0; knot + 1 < knots.length; knot++) {
      const from = itemAt(knots, knot);
      const to = itemAt(knots, knot + 1);
      const first = depthAt(from);
      const last = depthAt(to);
      if (first < depth === last < depth) continue;
      const at = from + ((to - from) * (depth - first)) / (last - first);
      if (at - frame.from < sliver || frame.to - at < sliver) continue;
      cuts.push({ at, shallow, deep, deepSide: last > first ? 'after' : 'before' });
    }
  }
  return cuts.sort((a, b) => a.at - b.at);
}
