/** Figures that a job rests on and no key sets: millimetres and minutes, each with its source. */
import type { Sourced } from '#bath/provenance.ts';
import { fromMemory } from './sources.ts';

/** Standard deviation of one gauge reading where repeats do not give it, mm. */
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

/** Share of a stage's minutes after which the part is taken out and gauged (docs/run.md). */
export const GAUGED_AT: Sourced = { value: 0.8, source: 'our own choice, docs/run.md', kind: 'memory' };
