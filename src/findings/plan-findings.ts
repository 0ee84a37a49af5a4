/** Findings about levels, openings and scribe lines. */
import type { WordsFor } from './words.ts';

export interface PlanFacts {
  /** A region with a level but no opening: every point of it is nearer to a shallower region than the allowance. */
  readonly 'opening-missing': { readonly depth: number; readonly allowance: number };
  /** None of the levels given lies in the region's tolerance. */
  readonly 'level-missing': { readonly depth: number; readonly minus: number; readonly plus: number };
  /** A locked level that lies in no region's tolerance, or is nobody's best. */
  readonly 'locked-level-unused': { readonly level: number };
  /** Nothing to etch. */
  readonly 'nothing-to-etch': Record<string, never>;
}

export const planWords: WordsFor<PlanFacts> = {
  'opening-missing': {
    severity: 'stop',
    title: 'Pocket without an opening',
    say: ({ depth, allowance }) => ({
      reason: `This region is to be ${mm(depth)} deep, so its opening must stay ${mm(allowance)} inside a border with land, and nothing of the region is that far from its neighbours.`,
      remedy: `Widen it to more than ${mm(2 * allowance)}, ask for less depth, or use a process with a smaller etch factor.`,
      value: 0,
      limit: 2 * allowance,
    }),
  },
  'level-missing': {
    severity: 'stop',
    title: 'No level within tolerance',
    say: ({ depth, minus, plus }) => ({
      reason: `This region accepts depths from ${mm(depth - minus)} to ${mm(depth + plus)}, and none of the levels that the job lists lies between.`,
      remedy: `Add the level ${mm(depth)} to the list, or set levels to "as-drawn" or "fewest".`,
      value: depth,
    }),
  },
  'locked-level-unused': {
    severity: 'warn',
    title: 'Locked level unused',
    say: ({ level }) => ({
      reason: `No region takes the locked level ${mm(level)}: it lies in nobody's tolerance, or another level suits better.`,
      remedy: 'Drop it from lockedLevels, or ask a region for this depth; the plan has no stage for it.',
      value: level,
    }),
  },
  'nothing-to-etch': {
    severity: 'stop',
    title: 'Nothing to etch',
    say: () => ({
      reason: 'No requirement asks any region for a depth, so the whole part is land.',
      remedy: 'Give at least one layer or point a depth or a final thickness in the job’s requirements.',
    }),
  },
};

function mm(value: number): string {
  return `${value.toFixed(3)} mm`;
}
