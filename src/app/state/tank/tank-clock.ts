/**
 * The clock of a run at the tank: when each stage went in and came out, and how far its steps have come. Times are those of the clock on
 * the wall, ms since 1970, handed in by whoever reads it; the record of the run gets minutes alone.
 */

export const TANK_STEPS = ['peel', 'check', 'bath', 'gauge', 'left'] as const;
/** `sheet`: gauged before the first dip, beside the steps of a stage. */
export type TankStep = 'sheet' | (typeof TANK_STEPS)[number];

/** In the bath from one time to another; until now while it has no end. */
export interface Dip {
  readonly in: number;
  readonly out?: number;
  /** Minutes that the stage had when it went in; undefined of what the clock alone has counted. */
  readonly before?: number;
}

export interface StageClock {
  readonly step: TankStep;
  readonly dips: readonly Dip[];
  /** Minutes that the stage had when it last came out, by whoever stated them; the clock's own where undefined. */
  readonly stated?: number;
  readonly isPeeled?: boolean;
  readonly isChecked?: boolean;
}

export interface TankClock {
  /** By the stage's number; one that is not there was not begun. */
  readonly stages: Readonly<Record<number, StageClock>>;
  /** Said after the last stage; void once the part goes in again. */
  readonly isOver?: boolean;
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

/** The step in hand is done: on to the next of its stage. */
export function finishStep(clock: TankClock, stage: number, step: 'peel' | 'check'): TankClock {
  const own = stageClock(clock, stage);
  const done = step === 'peel' ? { isPeeled: true } : { isChecked: true };
  return withStage(clock, stage, { ...own, ...done, step: step === 'peel' ? 'check' : 'bath' });
}

/** `before`: minutes that the stage had so far, however they are known; the clock goes on from them. */
export function putIn(clock: TankClock, stage: number, now: number, before?: number): TankClock {
  const own = stageClock(clock, stage);
  if (stageInBath(clock) !== undefined) return clock;
  const dip: Dip = { in: now, before: before ?? bathMinutes(own, now) };
  const { stated: _, ...rest } = own;
  const { isOver: __, ...running } = clock;
  return withStage(running, stage, { ...rest, step: 'bath', dips: [...own.dips, dip] });
}

export function endRun(clock: TankClock): TankClock {
  return { ...clock, isOver: true };
}

/** Out of the bath, and on to the gauge. */
export function takeOut(clock: TankClock, stage: number, now: number): TankClock {
  const own = stageClock(clock, stage);
  const last = own.dips.at(-1);
  if (last === undefined || last.out !== undefined) return clock;
  const out = Math.max(now, last.in);
  return withStage(clock, stage, {
    ...own,
    step: 'gauge',
    dips: [...own.dips.slice(0, -1), { ...last, out }],
  });
}

/** Takes back the last of the two: a glove touches what it should not. */
export function takeBack(clock: TankClock, stage: number): TankClock {
  const { stated: _, ...own } = stageClock(clock, stage);
  const last = own.dips.at(-1);
  if (last === undefined) return clock;
  const earlier = own.dips.slice(0, -1);
  if (last.out !== undefined) {
    const { out: __, ...open } = last;
    return withStage(clock, stage, { ...own, step: 'bath', dips: [...earlier, open] });
  }
  const isCounted = last.before === undefined || last.before === bathMinutes({ dips: earlier }, 0);
  const stated = isCounted ? {} : { stated: last.before };
  return withStage(clock, stage, { ...own, ...stated, step: 'bath', dips: earlier });
}

/** While it is out: how long it has really been in, whatever the clock has counted; undefined leaves it to the clock. */
export function stateHad(clock: TankClock, stage: number, minutes: number | undefined): TankClock {
  const { stated: _, ...own } = stageClock(clock, stage);
  if (isIn(own)) return clock;
  return withStage(clock, stage, minutes === undefined ? own : { ...own, stated: minutes });
}

export function isIn({ dips }: Pick<StageClock, 'dips'>): boolean {
  const last = dips.at(-1);
  return last !== undefined && last.out === undefined;
}

type Counted = Pick<StageClock, 'dips' | 'stated'>;

/** Minutes in the bath up to now: as stated when it came out, else as counted. */
export function bathMinutes({ dips, stated }: Counted, now: number): number {
  if (stated !== undefined) return stated;
  return dips.reduce((sum, dip) => (dip.before ?? sum) + Math.max(0, (dip.out ?? now) - dip.in) / MINUTE, 0);
}

/** Minutes that the stage had before it went in last. */
export function minutesBefore(clock: Counted): number {
  const last = clock.dips.at(-1);
  if (last === undefined || !isIn(clock)) return bathMinutes(clock, 0);
  return last.before ?? bathMinutes({ dips: clock.dips.slice(0, -1) }, 0);
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
