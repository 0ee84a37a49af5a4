/**
 * How much each reading counts, so that one that is wrong does not carry the others along: Huber's M-estimate (P. J. Huber, Robust
 * estimation of a location parameter, Annals of Mathematical Statistics 35 (1964) 73-101), solved by least squares with new
 * weights again and again, its scale from the median of the deviations (P. W. Holland and R. E. Welsch, Communications in Statistics A6
 * (1977) 813-827; both quoted from memory).
 */
import { itemAt } from '#geometry/assert.ts';
import { median } from '#maths/median.ts';

/** Deviations, in standard ones, from which a reading counts less: 95 % efficient among normal readings (Huber 1964). */
const TUNING = 1.345;
/** Median of |x| times this is the standard deviation of a normal distribution. */
const MEDIAN_TO_SIGMA = 1.4826;
/** Robust deviations beyond which one reading says no more of how much all of them scatter. */
const FARTHEST = 2.5;
/** Of a normal gauge, that two repeats may lie from their median by chance. */
const APART = 4;
const MOST_ROUNDS = 100;
const SETTLED = 1e-9;

/** Shares in (0, 1]; `offWith` fits with shares and gives each reading's deviation, in standard deviations of one. */
export function robustShares(
  first: readonly number[],
  offWith: (shares: readonly number[]) => readonly number[],
): readonly number[] {
  let shares = first;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const off = offWith(shares);
    const reach = TUNING * scaleOf(off);
    const next = off.map((each) => Math.min(1, reach / Math.max(Math.abs(each), reach)));
    const change = Math.max(0, ...next.map((each, i) => Math.abs(each - itemAt(shares, i))));
    shares = next;
    if (change < SETTLED) break;
  }
  return shares;
}

/** Deviations as the spread of all is judged by them: those far outside count as if they stood at its border. */
export function cappedOff(off: readonly number[]): number[] {
  const most = FARTHEST * scaleOf(off);
  return off.map((each) => Math.min(Math.abs(each), most));
}

/** Repeats of one place at one moment without those that stand apart from their median; two have none. */
export function withoutApart(values: readonly number[], noise: number): readonly number[] {
  const middle = median(values);
  if (middle === undefined || values.length < 3) return values;
  const spread = MEDIAN_TO_SIGMA * (median(values.map((each) => Math.abs(each - middle))) ?? 0);
  return values.filter((each) => Math.abs(each - middle) <= APART * Math.max(noise, spread));
}

/** In standard deviations of one reading, and never less than one: a few that agree by chance make no better gauge. */
function scaleOf(off: readonly number[]): number {
  return Math.max(1, MEDIAN_TO_SIGMA * (median(off.map(Math.abs)) ?? 0));
}
