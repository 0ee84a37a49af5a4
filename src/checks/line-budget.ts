/**
 * The line budget (M6.5, M6.6): how far each drawn edge may come out off its line, against what is asked, and what helps most. Edges of one
 * step and one tolerance are one budget. Cost: a few hundred evaluations of a closed form for each.
 */
import { couponFactor, THICKNESS_GAUGE, WIDTH_GAUGE } from '#bath/coupon.ts';
import { etchFactorAt } from '#bath/etch-factor.ts';
import type { LineChange } from '#findings/edge-words.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { undercutOf } from '#plan/allowance.ts';
import { type PlacedLines, plannedAllowance } from '#plan/edge-place.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type DrawnStep, drawnStepsOfBoth } from './drawn-steps.ts';
import { type LineProcess, type MovedEdge, type Mover, moversOf } from './line-causes.ts';
import { type LineSide, type LineSum, lineReach, lineSum } from './line-sum.ts';

/** What may be tried, in the order that it is listed where two help alike. */
const LINE_CHANGES: readonly LineChange[] = [
  'coupon-at-depth',
  'gauge-run',
  'cut-closer',
  'fill-slot',
  'lay-closer',
  're-mask',
  'levels-apart',
  'edge-at-foot',
];

export interface LineBudget extends DrawnStep {
  /** How far the line keeps back from the drawn edge, mm. */
  readonly allowance: number;
  /** mm that the edge moves for each mm that the step itself is off, over the etch factor: 1 beside land. */
  readonly amplification: number;
  readonly byClock: LineSum;
  readonly gauged: LineSum;
  /** What helps most, one after the other, until the edge is held or nothing helps any more; and how it then stands. */
  readonly remedy: { readonly changes: readonly LineChange[]; readonly sum: LineSum };
}

type Figures = Pick<Job, 'process' | 'rules'>;

export function lineBudgets(plan: EtchPlan, job: Figures): LineBudget[] {
  const levels = plan.stages.map(({ level }) => level).sort((a, b) => b - a);
  return drawnStepsOfBoth(plan, job.rules).map((step) => {
    const setting: Setting = {
      step,
      levels,
      process: job.process,
      room: roomApart(step, [...plan.regions, ...(plan.far?.regions ?? [])]),
    };
    const lines = linesOf(setting);
    return {
      ...step,
      allowance: plannedAllowance(step, lines.undercut),
      amplification: amplificationOf(setting),
      byClock: summed(setting, NONE),
      gauged: summed(setting, new Set<LineChange>(['gauge-run'])),
      remedy: remedyFor(setting),
    };
  });
}

/** By how much the root-sum-square, or the worst case, passes what is asked on the worse side; −∞ where nothing is asked. */
export function lineOverBy(sum: LineSum, what: 'likely' | 'worst'): number {
  return Math.max(...[sum.outward, sum.inward].map((side) => overOf(side, what)));
}

export function worseLineSide(sum: LineSum): 'outward' | 'inward' {
  const over = ({ worst, allowed = 0 }: LineSide): number => worst - allowed;
  return over(sum.inward) > over(sum.outward) ? 'inward' : 'outward';
}

function overOf(side: LineSide, what: 'likely' | 'worst'): number {
  return side.allowed === undefined ? Number.NEGATIVE_INFINITY : side[what] - side.allowed;
}

interface Setting {
  readonly step: DrawnStep;
  /** Deepest first. */
  readonly levels: readonly number[];
  readonly process: Job['process'];
  /** How much further apart the two levels may go, half of each one's tolerance used; mm. */
  readonly room: { readonly deeper: number; readonly shallower: number };
}

type Changes = ReadonlySet<LineChange>;

const NONE: Changes = new Set();
/** A change that gains less is not worth its trouble, mm. */
const LEAST_LINE_GAIN = 0.005;

function linesOf({ levels, process }: Setting): PlacedLines {
  return { undercut: undercutOf(process, levels), levels };
}

function summed(setting: Setting, changes: Changes): LineSum {
  const { step, lines, movers } = trialOf(setting, changes);
  return lineSum(step, lines, movers, step.asked);
}

function trialOf(setting: Setting, changes: Changes) {
  const changed = changedSetting(setting, changes);
  const movers = moversOf(movedEdge(changed), changedProcess(changed, changes), changes.has('gauge-run'));
  return { step: changed.step, lines: linesOf(changed), movers };
}

/** By how much what may happen passes what is asked on the worse side; where nothing is asked, how far outwards it goes. */
function overWith(setting: Setting, changes: Changes, what: 'likely' | 'worst'): number {
  const trial = trialOf(setting, changes);
  const { asked } = trial.step;
  const outward = lineReach(trial, what, 'outward');
  if (asked === undefined) return outward;
  const inward = what === 'likely' ? outward : lineReach(trial, what, 'inward');
  return Math.max(outward - asked.plus, inward - asked.minus);
}

/** Stages by their number from the deepest level: those down to the shallower floor made the step, later ones deepen both. */
function movedEdge({ step, levels, process }: Setting): MovedEdge {
  const own = levels.indexOf(step.level);
  const beside = levels.indexOf(step.beside);
  const stages = levels.map((_, index) => index);
  const end = beside < 0 ? levels.length : beside;
  return {
    made: stages.slice(own, end),
    // With a new coat for each stage nothing moves once it is coated over, but all depths are those of the floors that the stages before left.
    later: process.masking === 're-mask' ? [] : stages.slice(end),
    etches: levels.map((level, index) => level - (levels[index + 1] ?? 0)),
    farthest: step.farthest,
  };
}

function changedSetting(setting: Setting, changes: Changes): Setting {
  let { step, levels, process } = setting;
  if (changes.has('re-mask')) process = { ...process, masking: 're-mask' };
  if (changes.has('edge-at-foot')) process = { ...process, edgeDatum: 'deep-foot' };
  if (changes.has('levels-apart')) {
    const { deeper, shallower } = setting.room;
    const moved = (level: number): number =>
      level === step.level ? level + deeper : level === step.beside ? level - shallower : level;
    levels = levels.map(moved);
    step = { ...step, level: step.level + deeper, beside: step.beside - shallower };
  }
  return { ...setting, step, levels, process };
}

function changedProcess({ process, step }: Setting, changes: Changes): LineProcess {
  const { scribing } = process;
  return {
    ...process,
    factorSpread: changes.has('coupon-at-depth')
      ? Math.min(process.factorSpread, couponSpread(process, step.level))
      : process.factorSpread,
    scribing: {
      ...scribing,
      cut: scribing.cut * (changes.has('cut-closer') ? 0.5 : 1),
      laying:
        scribing.laying === undefined ? undefined : scribing.laying * (changes.has('lay-closer') ? 0.5 : 1),
      template: changes.has('fill-slot') ? undefined : scribing.template,
    },
  };
}

/** What one coupon etched to a depth leaves open of the factor, its window and depth read with the usual gauges (M5.5). */
function couponSpread({ etchFactor }: Job['process'], depth: number): number {
  const before = 10;
  const after = before + 2 * depth * etchFactorAt(etchFactor, depth);
  const opening = { before, after, depth, gauge: WIDTH_GAUGE.value };
  const coupon = {
    before: 0,
    after: 0,
    minutes: 1,
    faces: 1,
    gauge: THICKNESS_GAUGE.value,
    opening,
  } as const;
  return couponFactor([coupon])?.plusMinus ?? Number.POSITIVE_INFINITY;
}

/** mm of etch by which the amplification is taken. */
const SMALL = 1e-6;

/** By a nanometre more of the stage that makes the step beside its shallower floor. */
function amplificationOf(setting: Setting): number {
  const { process, step } = setting;
  const edge = movedEdge(setting);
  const at = edge.made.at(-1);
  const mover: Mover = {
    cause: 'depth',
    quantities: [
      {
        likely: SMALL,
        worst: SMALL,
        move: ({ etches }, by) => {
          if (at !== undefined) etches[at] = (etches[at] ?? 0) + by;
        },
      },
    ],
  };
  const { outward } = lineSum(step, linesOf(setting), [mover], undefined);
  return outward.worst / SMALL / etchFactorAt(process.etchFactor, step.level);
}

/** Half of what each floor's tolerance leaves, with no level passing its neighbour in the list; none beside land, which stays. */
function roomApart({ level, beside }: DrawnStep, regions: EtchPlan['regions']): Setting['room'] {
  if (beside === 0) return { deeper: 0, shallower: 0 };
  const least = (at: number, side: 'plus' | 'minus'): number =>
    regions.reduce(
      (room, region) => (region.level === at ? Math.min(room, region.asked[side] / 2) : room),
      Number.POSITIVE_INFINITY,
    );
  const deeper = least(level, 'plus');
  const shallower = least(beside, 'minus');
  return {
    deeper: Number.isFinite(deeper) ? deeper : 0,
    shallower: Number.isFinite(shallower) ? Math.min(shallower, beside / 2) : 0,
  };
}

/**
 * M6.6: the change that lets the root-sum-square stand best, and after it the next, until the edge is held or nothing helps any more; the
 * worst case instead, where that alone is not held. A change that cannot be made here gains nothing, and so is never named. What the drawn
 * line stands for is the drawing's to say, so another datum comes last.
 */
function remedyFor(setting: Setting): LineBudget['remedy'] {
  const start = summed(setting, NONE);
  const asks = setting.step.asked !== undefined;
  const isBarelyHeld =
    asks && lineOverBy(start, 'likely') <= ROUNDING && lineOverBy(start, 'worst') > ROUNDING;
  const over: Over = (changes) => overWith(setting, new Set(changes), isBarelyHeld ? 'worst' : 'likely');
  const first = LINE_CHANGES.filter((change) => change !== 'edge-at-foot');
  const most = asks ? Number.POSITIVE_INFINITY : MOST_UNASKED;
  let changes = improve([], first, { over, most });
  if (asks && over(changes) > ROUNDING) changes = improve(changes, ['edge-at-foot'], { over, most });
  return { changes, sum: changes.length === 0 ? start : summed(setting, new Set(changes)) };
}

type Over = (changes: readonly LineChange[]) => number;

function improve(
  from: readonly LineChange[],
  open: readonly LineChange[],
  { over, most }: { readonly over: Over; readonly most: number },
): readonly LineChange[] {
  let changes = from;
  let left = over(from);
  do {
    let best: { readonly changes: readonly LineChange[]; readonly left: number } | undefined;
    for (const change of open) {
      if (changes.includes(change)) continue;
      const tried = [...changes, change];
      const then = over(tried);
      if (best === undefined || then < best.left - ROUNDING) best = { changes: tried, left: then };
    }
    if (best === undefined || best.left > left - LEAST_LINE_GAIN) break;
    ({ changes, left } = best);
  } while (changes.length < most && left > ROUNDING);
  return changes;
}

/** Where nothing is asked, no more is worth naming. */
const MOST_UNASKED = 1;
