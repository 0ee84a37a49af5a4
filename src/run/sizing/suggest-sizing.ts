/**
 * Where a sheet that nobody sizes would better be sized (M8.8): all of it is to get thinner, so that a stage goes with the sizing; or a
 * pocket has no opening for a final thickness that a thinner sheet would have nearer. Levels are planned with it, and lines only where
 * there was a stop without.
 */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { etchMinutes } from '#bath/etch-minutes.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { largestDisc } from '#geometry/loops/largest-disc.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { LEAST_LEVEL } from '#job/job-file.ts';
import { deeperBy } from '#part/deeper-by.ts';
import type { Asked } from '#part/part.ts';
import { levelsByRule } from '#plan/choose-levels.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { makePlan, type PlanFace } from '#plan/make-plan.ts';
import { depthBands } from '#plan/taper-strips.ts';

export interface SizingSaves {
  /** What the sheet would get thinner by, mm. */
  readonly thinner: number;
  /** No region is without a final thickness, land among them: sized, the part is the one that is asked for. */
  readonly isAllAsked: boolean;
  /** `sizing-saves-stage` or `sizing-saves-stop`. */
  readonly suggestion: Finding;
}

/** Undefined where it saves nothing. Levels that the engineer wrote down are not moved, nor are two faces weighed. */
export function sizingSaves(plan: EtchPlan, face: PlanFace, job: Job): SizingSaves | undefined {
  const isFree = typeof job.levels === 'string' && (job.lockedLevels ?? []).length === 0;
  if (job.sizing !== undefined || plan.far !== undefined || !isFree) return undefined;
  // Without an outline there is land about the pockets that no requirement can name.
  const { sheet, regions } = face.part;
  const isAllAsked = sheet.length > 0 && regions.every(({ id }) => isThickness(face.asked.get(id)));
  // For a stage only so: depths that count from the surface would not leave what they leave now.
  const saved = savedStop(plan, face, job) ?? (isAllAsked ? savedStage(face, job) : undefined);
  return saved && { ...saved, isAllAsked };
}

type Saved = Omit<SizingSaves, 'isAllAsked'>;

function savedStage({ part, asked }: PlanFace, job: Job): Saved | undefined {
  const bands = [...depthBands(part, asked).values()];
  if (bands.length < part.regions.length) return undefined;
  const thinner = bands.reduce((least, { low }) => Math.min(least, low), Number.POSITIVE_INFINITY);
  if (thinner < LEAST_LEVEL) return undefined;
  const left = bands
    .map((band) => ({ ...band, low: band.low - thinner, high: band.high - thinner }))
    .filter(({ high }) => high > ROUNDING);
  const [before, after] = [levelsByRule(bands, job), levelsByRule(left, job)];
  if (after.length >= before.length) return undefined;
  const minutesOf = (levels: readonly number[]) =>
    etchMinutes({ depth: Math.max(0, ...levels), rate: job.process.rate });
  const facts = {
    thinner,
    before: before.length,
    after: after.length,
    minutesBefore: minutesOf(before),
    minutesAfter: minutesOf(after) + etchMinutes({ depth: thinner / 2, rate: job.process.rate }),
  };
  return { thinner, suggestion: finding('sizing-saves-stage', facts, { path: 'process.sizing.amount' }) };
}

/** mm, in which a suggestion is made. */
const STEP = 0.01;

function savedStop(plan: EtchPlan, face: PlanFace, job: Job): Saved | undefined {
  const closed = new Set(
    plan.findings.flatMap(({ code, place }) => (code === 'opening-missing' ? (place.regions ?? []) : [])),
  );
  const pockets = plan.regions.filter(({ id }) => closed.has(id));
  if (pockets.length === 0 || !pockets.every(({ asked }) => isThickness(asked))) return undefined;
  const needed = Math.max(...pockets.map((pocket) => tooDeep(pocket, job.process)));
  const thinner = Math.ceil(needed / STEP) * STEP + STEP;
  const own = new Map(
    [...face.asked].map(([id, each]) => [id, isThickness(each) ? deeperBy(each, -thinner) : each] as const),
  );
  if ([...own.values()].some(({ depth, plus }) => depth + plus < 0)) return undefined;
  const planned = makePlan({ part: face.part, asked: own, job });
  if (planned.findings.some(({ severity }) => severity === 'stop')) return undefined;
  const regions = pockets.map(({ id }) => id);
  const facts = { thinner, pockets: pockets.length };
  return {
    thinner,
    suggestion: finding('sizing-saves-stop', facts, { path: 'process.sizing.amount', regions }),
  };
}

/** By how much a pocket is deeper than its widest place has room for an opening. */
function tooDeep({ level, loops }: PlannedRegion, { etchFactor }: Job['process']): number {
  const room = largestDisc(loops, { within: STEP, enough: Number.POSITIVE_INFINITY }).radius;
  return level - room / etchFactorAt(etchFactor, level);
}

/** Not of what is cut out: it goes through whatever sheet there is. */
function isThickness(asked: Asked | undefined): boolean {
  return asked?.asThickness === true && asked.wall === undefined;
}
