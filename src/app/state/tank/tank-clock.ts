/**
 * The clock of a run at the tank: when each stage went in and came out, and how far its steps have come. Times are those of the clock on
 * the wall, ms since 1970, handed in by whoever reads it; the record of the run gets minutes alone.
 */

export const TANK_STEPS = ['peel', 'check', 'bath', 'gauge', 'left'] as const;
export type TankStep = (typeof TANK_STEPS)[number];

/** In the bath from one time to another; until now while it has no end. */
export interface Dip {
  readonly in: number;
  readonly out?: number;
}

export interface StageClock {
  readonly step: TankStep;
  readonly dips: readonly Dip[];
}

export interface TankClock {
  /** By the stage's number; one that is not there was not begun. */
  readonly stages: Readonly<Record<number, StageClock>>;
}

export const NO_CLOCK: TankClock = { stages: {} };

const NOT_BEGUN: StageClock = { step: 'peel', dips: [] };
const MINUTE = 60_000;

export function stageClock({ stages }: TankClock, stage: number): StageClock {
  return stages[stage] ?? NOT_BEGUN;
}

export function goToStep(clock: TankClock, stage: number, step: TankStep): TankClock {
  return withStage(clock, stage, { ...stageClock(clock, stage), step });
}

export function putIn(clock: TankClock, stage: number, now: number): TankClock {
  const { dips } = stageClock(clock, stage);
  if (stageInBath(clock) !== undefined) return clock;
  return withStage(clock, stage, { step: 'bath', dips: [...dips, { in: now }] });
}

/** Out of the bath, and on to the gauge. */
export function takeOut(clock: TankClock, stage: number, now: number): TankClock {
  const { dips } = stageClock(clock, stage);
  const last = dips.at(-1);
  if (last === undefined || last.out !== undefined) return clock;
  const out = Math.max(now, last.in);
  return withStage(clock, stage, { step: 'gauge', dips: [...dips.slice(0, -1), { ...last, out }] });
}

/** Takes back the last of the two: a glove touches what it should not. */
export function takeBack(clock: TankClock, stage: number): TankClock {
  const { dips } = stageClock(clock, stage);
  const last = dips.at(-1);
  if (last === undefined) return clock;
  const before = dips.slice(0, -1);
  return withStage(clock, stage, {
    step: 'bath',
    dips: last.out === undefined ? before : [...before, { in: last.in }],
  });
}

export function isIn({ dips }: Pick<StageClock, 'dips'>): boolean {
  const last = dips.at(-1);
  return last !== undefined && last.out === undefined;
}

/** Minutes in the bath up to now. */
export function bathMinutes({ dips }: Pick<StageClock, 'dips'>, now: number): number {
  return dips.reduce((sum, dip) => sum + Math.max(0, (dip.out ?? now) - dip.in), 0) / MINUTE;
}

/** Minutes that the stage had before it went in last. */
export function minutesBefore({ dips }: Pick<StageClock, 'dips'>): number {
  const earlier = isIn({ dips }) ? dips.slice(0, -1) : dips;
  return bathMinutes({ dips: earlier }, 0);
}

/** The stage that is in the bath, by its number: there is one part. */
export function stageInBath({ stages }: TankClock): number | undefined {
  const found = Object.entries(stages).find(([, stage]) => isIn(stage));
  return found === undefined ? undefined : Number(found[0]);
}

/** The last stage that was begun, by its number; undefined before the first. */
export function stageInHand({ stages }: TankClock): number | undefined {
  const numbers = Object.keys(stages).map(Number);
  return numbers.length === 0 ? undefined : Math.max(...numbers);
}

function withStage(clock: TankClock, stage: number, now: StageClock): TankClock {
  return { ...clock, stages: { ...clock.stages, [stage]: now } };
}
