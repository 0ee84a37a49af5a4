/** A run corrected: rate had, minutes left, what will come out and how surely (M7). Pure; millimetres and minutes. */

import { studentFactor } from '#bath/student-factor.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Fit, fitRates, type Reading } from './correct-fit.ts';
import { depthsLeft, type StillAsked } from './correct-minutes.ts';
import type { RunPlan, RunRegion } from './correct-plan.ts';

/** A value with the half-width of its 95 % interval. */
export interface Measured {
  readonly value: number;
  readonly within: number;
}

export interface StageCorrected {
  readonly number: number;
  readonly planned: number;
  /** Minutes that it had so far. */
  readonly had: number;
  /** mm/min; undefined before it was in the bath. */
  readonly rate: Measured | undefined;
  readonly left: Measured;
}

export interface RegionForeseen {
  readonly id: string;
  readonly asked: RunRegion['asked'];
  readonly depth: Measured;
  /** Undefined where the sheet is not known. */
  readonly thickness: Measured | undefined;
  /** Share of the tolerance on its side that the depth foreseen uses up. */
  readonly share: number;
  readonly verdict: 'met' | 'in doubt' | 'out of reach';
}

export interface RunCorrected {
  readonly rate: Measured;
  readonly next: Measured;
  readonly stages: readonly StageCorrected[];
  readonly regions: readonly RegionForeseen[];
  /** By reading: how far it stands off the fit, in standard deviations of one reading, and that deviation, mm. */
  readonly off: readonly number[];
  readonly noise: number;
}

/** How far a run has come: minutes had by stage, and the stage, by index, that the part was in last; -1 before the first dip. */
export interface RunSoFar {
  readonly had: readonly number[];
  readonly current: number;
}

export function correctRates(plan: RunPlan, readings: readonly Reading[], soFar: RunSoFar): RunCorrected {
  const fit = fitRates(plan, readings);
  const sure = (weights: Parameters<Fit['sum']>[0]): Measured => {
    const { value, u } = fit.sum(weights);
    return { value, within: u * studentFactor(fit.noise.freedom) };
  };
  const peeled = peelMinutes(soFar.had);
  const now = itemAt(peeled, soFar.had.length);
  const next = sure({ ahead: 1 });
  const depths = furtherDepths(plan, fit, { soFar, peeled, now });
  const left = plan.stages.map((_, index) => {
    const place = index - soFar.current;
    if (index < soFar.current) return 0;
    const from = itemAt(depths, Math.max(0, place));
    return Math.max(0, from - (depths[place + 1] ?? 0)) / next.value;
  });
  const stages = plan.stages.map(({ number, minutes }, index): StageCorrected => {
    const had = itemAt(soFar.had, index);
    const from = itemAt(peeled, index);
    const removed = had > 0 ? sure({ removed: { from, to: from + had, sign: 1 } }) : undefined;
    const more = itemAt(left, index);
    return {
      number,
      planned: minutes,
      had,
      rate: removed && { value: removed.value / had, within: removed.within / had },
      left: { value: more, within: (more * next.within) / next.value },
    };
  });
  const regions = plan.regions
    .filter(({ level }) => level > 0)
    .map((region) => foresee(region, { plan, peeled, now, left, current: soFar.current, sure }));
  const whole = now > 0 ? sure({ removed: { from: 0, to: now, sign: 1 } }) : undefined;
  const rate = whole === undefined ? next : { value: whole.value / now, within: whole.within / now };
  return { rate, next, stages, regions, off: fit.off, noise: fit.noise.u };
}

/** Immersed minute at which each stage was peeled, one more for now. */
export function peelMinutes(had: readonly number[]): number[] {
  const minutes = [0];
  for (const each of had) minutes.push(itemAt(minutes, minutes.length - 1) + each);
  return minutes;
}

interface Clock {
  readonly soFar: RunSoFar;
  readonly peeled: readonly number[];
  readonly now: number;
}

/** Depth still to etch from the current stage on, from the next on, and so on. */
function furtherDepths(plan: RunPlan, fit: Fit, { soFar, peeled, now }: Clock): number[] {
  const groups: StillAsked[][] = plan.stages.slice(Math.max(0, soFar.current)).map(() => []);
  for (const { level, asked } of plan.regions) {
    const stage = plan.stages.findIndex((each) => Math.abs(each.level - level) < 1e-5);
    if (stage < 0) continue;
    const from = itemAt(peeled, stage);
    const isOpen = stage <= soFar.current;
    const done = isOpen ? fit.sum({ removed: { from, to: now, sign: 1 } }).value : 0;
    const aim = asked.depth - done;
    const group = itemAt(groups, Math.max(0, stage - Math.max(0, soFar.current)));
    group.push({ low: aim - asked.minus, aim, high: aim + asked.plus });
  }
  return depthsLeft(groups);
}

interface Foresight {
  readonly plan: RunPlan;
  readonly peeled: readonly number[];
  readonly now: number;
  readonly left: readonly number[];
  readonly current: number;
  readonly sure: (weights: Parameters<Fit['sum']>[0]) => Measured;
}

function foresee(region: RunRegion, { plan, peeled, now, left, current, sure }: Foresight): RegionForeseen {
  const { id, asked, level } = region;
  const stage = plan.stages.findIndex((each) => Math.abs(each.level - level) < 1e-5);
  const ahead = left.slice(Math.max(0, stage)).reduce((sum, each) => sum + each, 0);
  const removed =
    stage >= 0 && stage <= current ? ({ from: itemAt(peeled, stage), to: now, sign: 1 } as const) : undefined;
  const depth = sure({ ...(removed && { removed }), ahead });
  const off = depth.value - asked.depth;
  const room = off > 0 ? asked.plus : asked.minus;
  const share = Math.abs(off) < 1e-9 ? 0 : Math.abs(off) / Math.max(room, 1e-9);
  const isSafe = off + depth.within <= asked.plus && depth.within - off <= asked.minus;
  return {
    id,
    asked,
    depth,
    thickness: thicknessOf(region, { plan, removed, ahead, sure }),
    share,
    verdict: share > 1 + 1e-6 ? 'out of reach' : isSafe ? 'met' : 'in doubt',
  };
}

/** The sheet where it was gauged, else the sheet as bought. */
function thicknessOf(
  { id }: RunRegion,
  given: Pick<Foresight, 'plan' | 'sure'> & {
    readonly removed: { readonly from: number; readonly to: number; readonly sign: 1 } | undefined;
    readonly ahead: number;
  },
): Measured | undefined {
  const { plan, sure, removed, ahead } = given;
  const gone = { ...(removed && { removed: { ...removed, sign: -1 as const } }), ahead: -ahead };
  const gauged = sure({ sheet: id });
  if (gauged.value !== 0) return sure({ ...gone, sheet: id });
  if (plan.sheet === undefined) return undefined;
  const { thickness, plus, minus } = plan.sheet;
  const left = sure(gone);
  const sheet = ((plus + minus) / 2 / Math.sqrt(3)) * studentFactor(Number.POSITIVE_INFINITY);
  return { value: thickness + (plus - minus) / 2 + left.value, within: Math.hypot(left.within, sheet) };
}
