/** A run corrected: rate had, minutes left, what will come out and how surely (M7). Pure; millimetres and minutes. */

import { coverageFactor } from '#bath/coverage-factor.ts';
import type { WhyWide } from '#findings/wide-words.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { ASSUMED_GAUGE_NOISE } from '#job/process-assumptions.ts';
import { hypot } from '#maths/hypot.ts';
import { AT_TOLERANCE, SAME_LEVEL } from '#units/depth-tolerances.ts';
import { type BareSpell, bareSpell } from './bare-spell.ts';
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
  /** Why, where an uncertainty is wider than its figure. */
  readonly wide?: WhyWide;
}

/** How far a run has come: minutes had by stage, and the stage, by index, that the part was in last; -1 before the first dip. */
export interface RunSoFar {
  readonly had: readonly number[];
  readonly current: number;
}

export function correctRates(planned: RunPlan, readings: readonly Reading[], soFar: RunSoFar): RunCorrected {
  const fit = fitRates(planned, readings);
  const plan = aimAtThickness(planned, fit, readings);
  const sure = (weights: Parameters<Fit['sum']>[0]): Measured => {
    const { value, u } = fit.sum(weights);
    return { value, within: u * coverageFactor(fit.freedom) };
  };
  const peeled = peelMinutes(soFar.had);
  const now = itemAt(peeled, soFar.had.length);
  const next = sure({ ahead: 1 });
  const clock: Clock = { current: soFar.current, peeled, now };
  const left = stageDepths(plan, fit, clock).map((depth) => depth / next.value);
  const stages = plan.stages.map(({ number, minutes }, index): StageCorrected => {
    const had = itemAt(soFar.had, index);
    const from = itemAt(peeled, index);
    const removed = had > 0 ? sure({ removed: { spells: [{ from, to: from + had }], sign: 1 } }) : undefined;
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
    .map((region) => foresee(region, { ...clock, plan, left, sheets: sheetsGauged(readings), sure }));
  const whole = now > 0 ? sure({ removed: { spells: [{ from: 0, to: now }], sign: 1 } }) : undefined;
  const rate = whole === undefined ? next : { value: whole.value / now, within: whole.within / now };
  const isWide = [...stages.map(({ left: each }) => each), ...regions.map(({ depth }) => depth)].some(
    isWider,
  );
  const wide = isWide ? { wide: whyWide(planned, readings, fit) } : {};
  return { rate, next, stages, regions, off: fit.off, noise: fit.noise.u, ...wide };
}

/** Smaller ones round to nothing, be they minutes or mm. */
const LEAST_WITHIN = 0.05;

/** Less sure than it is large. */
export function isWider({ value, within }: Measured): boolean {
  return within > value && within >= LEAST_WITHIN;
}

/** Where a sheet known for certain would halve the doubt of the coming rate, it is the sheet. */
function whyWide(plan: RunPlan, readings: readonly Reading[], fit: Fit): WhyWide {
  const { sheet } = plan;
  const rate = { ahead: 1 };
  if (sheet !== undefined && sheet.plus + sheet.minus > 0) {
    const known = fitRates({ ...plan, sheet: { ...sheet, plus: 0, minus: 0 } }, readings);
    if (2 * known.sum(rate).u < fit.sum(rate).u) return 'sheet';
  }
  const isScattered = fit.freedom < fit.noise.freedom || fit.noise.u > 2 * ASSUMED_GAUGE_NOISE.value;
  return isScattered ? 'spread' : 'few';
}

/** Where a final thickness is asked and thickness was read, the depth asked is what leaves it of the sheet as it is there. */
function aimAtThickness(plan: RunPlan, fit: Fit, readings: readonly Reading[]): RunPlan {
  const { sheet } = plan;
  if (sheet === undefined) return plan;
  const sheets = sheetsGauged(readings);
  const regions = plan.regions.map((region): RunRegion => {
    const gauged = sheets.get(region.id);
    if (region.asThickness !== true || region.level === 0 || gauged === undefined) return region;
    const thicker = fit.sum({ sheet: gauged }).value - sheet.thickness;
    const depth = region.asked.depth + thicker * shareOf(region, plan);
    return { ...region, asked: { ...region.asked, depth } };
  });
  return { ...plan, regions };
}

/** By region, under whose name its sheet was gauged: its own, else that of the floor of the other face in front of it. */
function sheetsGauged(readings: readonly Reading[]): Map<string, string> {
  const thicknesses = readings.filter(({ kind }) => kind === 'thickness');
  return new Map([
    ...thicknesses.flatMap(({ region, behind }) =>
      behind === undefined ? [] : [[behind.region, region] as const],
    ),
    ...thicknesses.map(({ region }) => [region, region] as const),
  ]);
}

/** Of what the sheet is thicker a final thickness between two faces asks each for its share, as their depths are (M9.3). */
function shareOf({ behind, asked }: RunRegion, { regions }: RunPlan): number {
  if (typeof behind !== 'object') return 1;
  const other = regions.find(({ id }) => id === behind.floor);
  return other?.asThickness === true ? asked.depth / (asked.depth + other.asked.depth) : 1;
}

/** Immersed minute at which each stage was peeled, one more for now. */
export function peelMinutes(had: readonly number[]): number[] {
  const minutes = [0];
  for (const each of had) minutes.push(itemAt(minutes, minutes.length - 1) + each);
  return minutes;
}

interface Clock {
  readonly current: number;
  readonly peeled: readonly number[];
  readonly now: number;
}

/** Depth that each stage still has to etch. */
function stageDepths(plan: RunPlan, fit: Fit, clock: Clock): number[] {
  const first = Math.max(0, clock.current);
  const groups = stillAsked(plan, fit, clock);
  // Depths to the end of the run fall from stage to stage; with a new coat for each stage, depths to the end of each stage rise.
  const ends = plan.masking === 're-mask' ? depthsLeft(groups.toReversed()).reverse() : depthsLeft(groups);
  const step = plan.masking === 're-mask' ? -1 : 1;
  return plan.stages.map((_, index) =>
    index < first ? 0 : Math.max(0, itemAt(ends, index - first) - (ends[index - first + step] ?? 0)),
  );
}

/** By stage from the current one on, what its regions still accept; where they are open already, the first is theirs too. */
function stillAsked(plan: RunPlan, fit: Fit, { current, peeled, now }: Clock): StillAsked[][] {
  const first = Math.max(0, current);
  const groups: StillAsked[][] = plan.stages.slice(first).map(() => []);
  for (const region of plan.regions) {
    const stage = stageOf(plan, region);
    if (stage < 0 || isOver(plan, stage, current)) continue;
    const removed = bareSpell({ masking: plan.masking, peeled, stage }, now);
    const { asked } = region;
    const aim = asked.depth - fit.sum({ removed: { spells: [removed], sign: 1 } }).value;
    const group = itemAt(groups, Math.max(0, stage - first));
    group.push({ low: aim - asked.minus, aim, high: aim + asked.plus });
  }
  return groups;
}

/** Whether nothing that is still to come etches the floors of a stage: they are coated over. */
function isOver({ masking }: RunPlan, stage: number, current: number): boolean {
  return masking === 're-mask' && stage < current;
}

function stageOf({ stages }: RunPlan, { level }: RunRegion): number {
  return stages.findIndex((each) => Math.abs(each.level - level) < SAME_LEVEL);
}

interface Foresight extends Clock {
  readonly plan: RunPlan;
  readonly left: readonly number[];
  readonly sheets: ReadonlyMap<string, string>;
  readonly sure: (weights: Parameters<Fit['sum']>[0]) => Measured;
}

function foresee(region: RunRegion, foresight: Foresight): RegionForeseen {
  const { id, asked } = region;
  const { sure } = foresight;
  const course = courseOf(region, foresight);
  const depth = sure({ removed: { spells: [course.removed], sign: 1 }, ahead: course.ahead });
  const off = depth.value - asked.depth;
  const room = off > 0 ? asked.plus : asked.minus;
  const share = Math.abs(off) < SAME_SUM ? 0 : Math.abs(off) / Math.max(room, SAME_SUM);
  const isSafe = off + depth.within <= asked.plus && depth.within - off <= asked.minus;
  return {
    id,
    asked,
    depth,
    thickness: thicknessOf(region, course, foresight),
    share,
    verdict: share > 1 + AT_TOLERANCE ? 'out of reach' : isSafe ? 'met' : 'in doubt',
  };
}

/** When a floor was bare so far, and the minutes that it still has. */
interface Course {
  readonly removed: BareSpell;
  readonly ahead: number;
}

function courseOf(region: RunRegion, { plan, peeled, now, left }: Foresight): Course {
  const stage = Math.max(0, stageOf(plan, region));
  const stillBare = plan.masking === 're-mask' ? left.slice(0, stage + 1) : left.slice(stage);
  return {
    removed: bareSpell({ masking: plan.masking, peeled, stage }, now),
    ahead: stillBare.reduce((sum, each) => sum + each, 0),
  };
}

/**
 * At the region's label: the sheet where it was gauged, else the sheet as bought, less what both faces lose there. Undefined where no
 * floor lies behind it but a wall.
 */
function thicknessOf(region: RunRegion, own: Course, foresight: Foresight): Measured | undefined {
  const { plan, sure, sheets } = foresight;
  const { behind } = region;
  if (behind === 'wall') return undefined;
  const other = plan.regions.find(({ id }) => id === behind?.floor);
  const courses = other === undefined ? [own] : [own, courseOf(other, foresight)];
  const gone = {
    removed: { spells: courses.map(({ removed }) => removed), sign: -1 as const },
    ahead: -courses.reduce((sum, { ahead }) => sum + ahead, 0),
  };
  const gauged = sheets.get(region.id);
  if (gauged !== undefined) return sure({ ...gone, sheet: gauged });
  if (plan.sheet === undefined) return undefined;
  const { thickness, plus, minus } = plan.sheet;
  const left = sure(gone);
  const sheet = ((plus + minus) / 2 / Math.sqrt(3)) * coverageFactor(Number.POSITIVE_INFINITY);
  return { value: thickness + (plus - minus) / 2 + left.value, within: hypot(left.within, sheet) };
}
