/** Limits of making that the job does not set, each with where it comes from; they go into the plan's provenance. */
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { provenanceOf } from '#job/job-figures.ts';
import { GAUGED_AT } from '#job/process-assumptions.ts';

/** mm */
export const DEEPEST_CUT: Sourced = {
  value: 12.7,
  source:
    'published as done on aluminium 2219: Langworthy and Bruce, SAWE paper 477 (1965); as a limit from memory',
  kind: 'memory',
};

/** mm that maskant may stand out over undercut metal. Fifty times a thin dry film (0.2 mm, from memory). */
export const LONGEST_OVERHANG: Sourced = { value: 10, source: 'from memory', kind: 'memory' };

/** mm; two floors nearer than this have tolerances that overlap. */
export const SMALLEST_STEP: Sourced = {
  value: 0.1,
  source: 'common practice: twice the ± 0.05 mm that production work on aluminium holds',
  kind: 'common-practice',
};

/** Land is at least this many times as wide as the cut beside it is deep. */
export const LAND_TO_DEPTH: Sourced = { value: 2, source: 'from memory', kind: 'memory' };

/** mm that a corner may fall short of the drawing without a word: as near as a line is cut by hand at best. */
export const LINE_ACCURACY: Sourced = {
  value: 0.125,
  source: 'from memory: cut-and-peel line accuracy at best',
  kind: 'memory',
};

/** How often each floor is gauged in a stage (docs/run.md). */
export const GAUGED_TIMES: Sourced = { value: 3, source: 'our own choice, docs/run.md', kind: 'memory' };

/** So many times as deep as its coupon, or as shallow, an etch may be for the coupon's etch factor to count without a word. */
export const COUPON_DEPTH_TIMES: Sourced = { value: 2, source: 'from memory', kind: 'memory' };

/** Share of a region's area under which its floor is worth a word. */
export const LEAST_FLOOR_SHARE: Sourced = {
  value: 0.5,
  source: 'our own choice: half of it',
  kind: 'memory',
};

export function makingProvenance(): Provenance[] {
  return [
    provenanceOf('deepest cut', 'mm', DEEPEST_CUT),
    provenanceOf('longest maskant overhang', 'mm', LONGEST_OVERHANG),
    provenanceOf('smallest step', 'mm', SMALLEST_STEP),
    provenanceOf('least land width over depth', 'mm/mm', LAND_TO_DEPTH),
    provenanceOf('line accuracy', 'mm', LINE_ACCURACY),
    provenanceOf('least share of a region that is floor', 'mm²/mm²', LEAST_FLOOR_SHARE),
    provenanceOf('gauged after this share of a stage', 'min/min', GAUGED_AT),
    provenanceOf('readings of each floor', '', GAUGED_TIMES),
  ];
}
