/**
 * A taper without steps (M4.6): the part hangs with the deep end down and is drawn out of the bath, so that each place
 * leaves it when it is deep enough. The waterline passes with speed rate / (dd/ds), even wherever depth changes evenly.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Point, scale } from '#geometry/point.ts';
import type { Job } from '#part/job.ts';
import type { TaperProfile } from './taper-profile.ts';

export type Hoist = NonNullable<Job['process']['hoist']>;

/** From this minute the waterline moves on at this speed until the next row's minute. */
export interface WithdrawalRow {
  readonly minute: number;
  /** Distance of the waterline from the shallow end along the way that depth grows, mm. */
  readonly waterline: number;
  /** mm/min */
  readonly speed: number;
}

/** A length that the hoist can't follow. */
export interface SpeedMissed {
  /** Distances from the shallow end, mm. */
  readonly from: number;
  readonly to: number;
  /** mm/min; infinite where depth does not change. */
  readonly wanted: number;
  readonly given: number;
}

export interface Withdrawal {
  /** Unit vector that has to hang down: the way that depth grows. */
  readonly down: Point;
  readonly rows: readonly WithdrawalRow[];
  readonly minutes: number;
  /** How far depth comes off what is asked at worst, mm: 0 unless the hoist can't follow. */
  readonly worstDeviation: number;
  readonly missed: readonly SpeedMissed[];
}

/** Minutes between two rows at most: often enough to look at the waterline and compare. */
const ROW_MINUTES = 10;

/** Undefined where depth does not grow one way, or is less than nothing somewhere. */
export function planWithdrawal(
  profile: TaperProfile,
  { rate, hoist }: { readonly rate: number; readonly hoist: Hoist },
): Withdrawal | undefined {
  const { knots, depthAt, direction, low, high } = profile;
  const isFalling = depthAt(itemAt(knots, 0)) > depthAt(itemAt(knots, knots.length - 1));
  const rising = isFalling ? [...knots].reverse() : knots;
  const places = rising.map((knot) => ({
    at: Math.abs(knot - itemAt(rising, 0)),
    depth: depthAt(knot),
  }));
  const isOneWay = places.every(({ depth }, i) => i === 0 || depth >= itemAt(places, i - 1).depth);
  if (!isOneWay || low < 0 || low === high) return undefined;

  const runs = places.slice(1).flatMap((to, index) => {
    const from = itemAt(places, index);
    const length = to.at - from.at;
    if (length <= 0) return [];
    const wanted =
      to.depth > from.depth ? (rate * length) / (to.depth - from.depth) : Number.POSITIVE_INFINITY;
    return [{ from, to, wanted, speed: Math.min(hoist.fastest, Math.max(hoist.slowest, wanted)) }];
  });
  // Depth got too much or too little at the end of each run, if the waterline starts at its due minute.
  let late = 0;
  const errors = [0];
  for (const { from, to, speed } of runs) {
    late += (rate * (to.at - from.at)) / speed - (to.depth - from.depth);
    errors.push(late);
  }
  const start = Math.max(0, low / rate - (Math.max(...errors) + Math.min(...errors)) / 2 / rate);
  const shift = rate * start - low;
  return {
    down: isFalling ? scale(direction, -1) : direction,
    ...rowsOf(runs, start),
    worstDeviation: errors.reduce((worst, error) => Math.max(worst, Math.abs(error + shift)), 0),
    missed: runs
      .filter(({ wanted, speed }) => wanted !== speed)
      .map(({ from, to, wanted, speed }) => ({ from: from.at, to: to.at, wanted, given: speed })),
  };
}

interface Run {
  readonly from: { readonly at: number };
  readonly to: { readonly at: number };
  readonly speed: number;
}

/** All stands in the bath until the waterline starts; then rows at every change of speed and in between. */
function rowsOf(
  runs: readonly Run[],
  start: number,
): { readonly rows: readonly WithdrawalRow[]; readonly minutes: number } {
  const rows: WithdrawalRow[] = start > 0 ? [{ minute: 0, waterline: 0, speed: 0 }] : [];
  let minute = start;
  for (const { from, to, speed } of runs) {
    const minutes = (to.at - from.at) / speed;
    const parts = Math.max(1, Math.ceil(minutes / ROW_MINUTES));
    for (let part = 0; part < parts; part++) {
      const passed = (minutes * part) / parts;
      rows.push({ minute: minute + passed, waterline: from.at + speed * passed, speed });
    }
    minute += minutes;
  }
  rows.push({ minute, waterline: runs.at(-1)?.to.at ?? 0, speed: 0 });
  return { rows, minutes: minute };
}
