/**
 * A taper without steps (M4.6): the part hangs with the deep end down and is drawn out of the bath, so that each place
 * leaves it when it is deep enough. The waterline passes with speed rate / (dd/ds), even wherever depth changes evenly.
 * It may start part-way: what asks for next to nothing then never goes in.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Point, scale } from '#geometry/point.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
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

  const { runs, passing } = runsThrough(places, { rate, hoist });
  const { from, wait, off } = bestStart(passing);
  const drawn = runs.flatMap((run) =>
    run.to.at > from.at ? [{ ...run, from: run.from.at < from.at ? from : run.from }] : [],
  );
  return {
    down: isFalling ? scale(direction, -1) : direction,
    ...rowsOf(drawn, { at: from.at, minute: wait / rate }),
    worstDeviation: off,
    missed: drawn
      .filter(({ wanted, speed }) => wanted !== speed)
      .map(({ from, to, wanted, speed }) => ({ from: from.at, to: to.at, wanted, given: speed })),
  };
}

/** Distance from the shallow end and the depth asked there, mm. */
interface Place {
  readonly at: number;
  readonly depth: number;
}

/** With the metal that goes while the waterline comes there from the shallow end, mm. */
interface Passing extends Place {
  readonly gone: number;
}

interface Run {
  readonly from: { readonly at: number };
  readonly to: { readonly at: number };
  /** mm/min */
  readonly wanted: number;
  readonly speed: number;
}

/** The lengths of even slope, each at the speed wanted or as near to it as the hoist goes. */
function runsThrough(
  places: readonly Place[],
  { rate, hoist }: { readonly rate: number; readonly hoist: Hoist },
): { readonly runs: readonly Run[]; readonly passing: readonly Passing[] } {
  const runs: Run[] = [];
  let gone = 0;
  const passing: Passing[] = [{ ...itemAt(places, 0), gone }];
  for (const [index, to] of places.slice(1).entries()) {
    const from = itemAt(places, index);
    const length = to.at - from.at;
    if (length <= 0) continue;
    const wanted =
      to.depth > from.depth ? (rate * length) / (to.depth - from.depth) : Number.POSITIVE_INFINITY;
    const speed = Math.min(hoist.fastest, Math.max(hoist.slowest, wanted));
    runs.push({ from, to, wanted, speed });
    gone += (rate * length) / speed;
    passing.push({ ...to, gone });
  }
  return { runs, passing };
}

interface Start {
  readonly from: Passing;
  /** Metal that goes before the waterline starts, mm. */
  readonly wait: number;
  /** Worst deviation, mm. */
  readonly off: number;
}

/**
 * Where and when the waterline starts, so that the worst deviation is least. What hangs out from the start stays as it is,
 * off by its depth; the further out, the more that is, and the less is the rest off (less of it is left, and no start is
 * sooner than minute 0). So the best place is where the two are even, found by halving.
 */
function bestStart(passing: readonly Passing[]): Start {
  const whole = startAt(passing, 0);
  let dry = 0;
  let wet = itemAt(passing, passing.length - 1).at;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (dry + wet) / 2;
    const { from, off } = startAt(passing, middle);
    if (from.depth < off) dry = middle;
    else wet = middle;
  }
  const partly = startAt(passing, wet);
  const off = Math.max(partly.off, partly.from.depth);
  return off < whole.off - ROUNDING ? { ...partly, off } : whole;
}

/** The best minute for a place; `off` of what is drawn out alone. */
function startAt(passing: readonly Passing[], at: number): Start {
  const from = passingAt(passing, at);
  const errors = [from, ...passing.filter((each) => each.at > at)].map(({ gone, depth }) => gone - depth);
  const most = Math.max(...errors);
  const least = Math.min(...errors);
  const shift = Math.max(-(most + least) / 2, -from.gone);
  return { from, wait: shift + from.gone, off: Math.max(Math.abs(most + shift), Math.abs(least + shift)) };
}

function passingAt(passing: readonly Passing[], at: number): Passing {
  const index = Math.max(
    1,
    passing.findIndex((each) => each.at >= at),
  );
  const before = itemAt(passing, index - 1);
  const after = itemAt(passing, index);
  const share = (at - before.at) / (after.at - before.at);
  return {
    at,
    depth: before.depth + share * (after.depth - before.depth),
    gone: before.gone + share * (after.gone - before.gone),
  };
}

/** The part stands still until the waterline starts; then rows at every change of speed and in between. */
function rowsOf(
  runs: readonly Run[],
  start: { readonly at: number; readonly minute: number },
): { readonly rows: readonly WithdrawalRow[]; readonly minutes: number } {
  const rows: WithdrawalRow[] = start.minute > 0 ? [{ minute: 0, waterline: start.at, speed: 0 }] : [];
  let { minute } = start;
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
