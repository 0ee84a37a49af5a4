/** What a job means where it says nothing: every default in one place, millimetres, each with where it comes from. */
import type { Sourced } from '#bath/provenance.ts';
import type { EdgeDatum, Job, MakingRules, Masking } from './job.ts';

export const DEFAULT_UNITS = 'mm';

/**
 * The drawn line is the edge on the shallower floor unless the drawing says otherwise (docs/method.md, M3.3). Levels
 * are as drawn, so that a job that names none is planned the same by every later version.
 */
export const DEFAULT_EDGE_DATUM: EdgeDatum = 'shallow-edge';
export const DEFAULT_MASKING: Masking = 'peel-next';
export const DEFAULT_LEVELS: Job['levels'] = 'as-drawn';

/** Gaps of a few hundredths are what rounding in exchanged drawings leaves; a gap meant as a gap is wider. */
export const DEFAULT_JOIN_TOLERANCE: Sourced = fromMemory(0.05);

/** ± 0.05 mm (0.002 in) on depth in production on aluminium. */
export const DEFAULT_DEPTH_TOLERANCE: Sourced = {
  value: 0.05,
  source: 'common practice: depth tolerance of production work on aluminium',
  kind: 'common-practice',
};

export const DEFAULT_RATE_SPREAD: Sourced = fromMemory(0.05);

/** Minutes by which an immersion may be off: lifting, draining, the first rinse. */
export const DEFAULT_TIMING: Sourced = fromMemory(0.25);

/** Standard deviation of one gauge reading where repeats do not tell it, mm. */
export const ASSUMED_GAUGE_NOISE: Sourced = fromMemory(0.01);

/** Steps in which gauges are read, mm. Repeats that agree by rounding are no better than this. */
export const GAUGE_STEP: Sourced = fromMemory(0.01);

/** Minutes in which the rate of a bath in use may change by the whole rate spread. */
export const DRIFT_MINUTES: Sourced = fromMemory(30);

/** Undercut over depth: the least and the most that are seen in any bath. */
export const SMALLEST_FACTOR: Sourced = {
  value: 0.33,
  source: 'trade magazine: copper in cupric chloride',
  kind: 'published',
};
export const LARGEST_FACTOR: Sourced = {
  value: 2,
  source: 'from memory: steels and nickel alloys, 1.0 to 2.0',
  kind: 'memory',
};

export const DEFAULT_RULES: Readonly<Record<keyof MakingRules, Sourced>> = {
  minWeb: {
    value: 0.5,
    source: 'common practice: thinnest milled skin, 0.020 in',
    kind: 'common-practice',
  },
  // Twice the usual error of a line that is cut by hand, 0.4 to 0.8 mm.
  minLineSpacing: fromMemory(1.5),
  minPieceWidth: fromMemory(3),
  minLandWidth: fromMemory(3),
};

function fromMemory(value: number): Sourced {
  return { value, source: 'from memory', kind: 'memory' };
}
