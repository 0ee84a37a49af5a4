/**
 * A bath that no plan knows: its rate is off from the start and drifts on. A run in it, gauged and corrected stage by stage, beside the
 * same run by the clock. How deep a floor really is comes from the bath alone, not from the code that corrects.
 */
import type { Masking } from '#job/job.ts';
import type { Reading } from '#run/correct-fit.ts';
import type { RunPlan } from '#run/correct-plan.ts';
import { correctRates } from '#run/correct-rates.ts';

const RATE = 0.025;
const LEVELS = [3, 2.2, 1];
const WHOLE = 3 / RATE;
export const TOLERANCE = 0.05;

/** A gauge-pod cover of three floors, ± 0.05 mm, in the order of the run. */
export function threeFloors(masking: Masking): RunPlan {
  const levels = masking === 're-mask' ? LEVELS.toReversed() : LEVELS;
  return {
    masking,
    stages: levels.map((level, index) => {
      const before = levels[masking === 're-mask' ? index - 1 : index + 1] ?? 0;
      return { number: index + 1, level, minutes: (level - before) / RATE };
    }),
    regions: levels.map((level, index) => ({
      id: `R0${index + 1}`,
      level,
      asked: { depth: level, plus: TOLERANCE, minus: TOLERANCE },
    })),
    rate: RATE,
    rateSpread: 0.05,
    sheet: { thickness: 5, minus: 0.2, plus: 0.2 },
  };
}

export interface SimulatedRun {
  /** Whether every floor ends inside tolerance. */
  readonly corrected: boolean;
  readonly blind: boolean;
  /** By floor: how far the corrected run is off, mm. */
  readonly off: readonly number[];
}

/** What goes on in a bath that no plan knows. */
export interface Bath {
  /** Floors that can be gauged, where they are in a reading, and the metal that is really gone. */
  readonly open: (
    had: readonly number[],
    current: number,
  ) => readonly { readonly place: Omit<Reading, 'value'>; readonly metal: number }[];
  /** By floor: how far it is off its level, mm. */
  readonly deviations: (had: readonly number[]) => number[];
}

/** Rate off by up to 15 %, drifting by up to 5 % more to the end of the run. */
export function bathOf({ masking, stages }: RunPlan, random: () => number): Bath {
  const bias = 1 + 0.15 * (2 * random() - 1);
  const drift = 0.05 * (2 * random() - 1);
  const removedAt = (minute: number) => RATE * (bias * minute + (drift * minute * minute) / (2 * WHOLE));
  const depthOf = (floor: number, had: readonly number[]) => {
    const before = sum(had.slice(0, floor));
    if (masking === 're-mask') return removedAt(before + (had[floor] ?? 0));
    return removedAt(sum(had)) - removedAt(before);
  };
  return {
    deviations: (had) => stages.map(({ level }, floor) => Math.abs(depthOf(floor, had) - level)),
    open: (had, current) => {
      const now = sum(had);
      return [0, 1, 2]
        .filter((floor) => (masking === 're-mask' ? floor >= current : floor <= current))
        .map((floor) => {
          const from = masking === 're-mask' ? 0 : sum(had.slice(0, floor));
          const region = `R0${floor + 1}`;
          const place = { stage: current, bare: { from, to: now }, region, kind: 'depth' } as const;
          return { place, metal: removedAt(now) - removedAt(from) };
        });
    },
  };
}

/** Gauged and corrected stage by stage, with no reading wrong. */
export function simulateRun(masking: Masking, seed: number): SimulatedRun {
  const plan = threeFloors(masking);
  const random = randomFrom(seed);
  const bath = bathOf(plan, random);
  const inside = (had: readonly number[]) => bath.deviations(had).every((each) => each <= TOLERANCE);

  const readings: Reading[] = [];
  const had = [0, 0, 0];
  const gauge = (current: number) => {
    for (const { place, metal } of bath.open(had, current)) {
      for (let repeat = 0; repeat < 3; repeat++) {
        readings.push({ ...place, value: gaugeReading(metal, random) });
      }
    }
  };
  const minutesLeft = (current: number) =>
    correctRates(plan, readings, { had, current }).stages[current]?.left.value ?? 0;
  for (let current = 0; current < 3; current++) {
    // Out at four fifths of the minutes, gauged, in for the rest, gauged again; once more where it says so.
    had[current] = 0.8 * minutesLeft(current);
    for (let dip = 0; dip < 2; dip++) {
      gauge(current);
      had[current] = (had[current] ?? 0) + minutesLeft(current);
    }
  }
  return {
    corrected: inside(had),
    blind: inside(plan.stages.map(({ minutes }) => minutes)),
    off: bath.deviations(had),
  };
}

/** A gauge with a normal noise of 0.01 mm, read to 0.01 mm. */
export function gaugeReading(depth: number, random: () => number): number {
  const normal = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return Math.round((depth + 0.01 * normal) * 100) / 100;
}

function sum(minutes: readonly number[]): number {
  return minutes.reduce((total, each) => total + each, 0);
}

/** A small generator (mulberry32): the same runs each time. */
export function randomFrom(seed: number): () => number {
  let state = seed * 2654435769;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
