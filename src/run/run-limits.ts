/** How much a run accepts; beyond these it says so instead of filling the memory. */
import { MOST_BYTES } from '#drawing/drawing-limits.ts';

/** Bytes of a drawing. */
export const MOST_DRAWING_BYTES = MOST_BYTES;

/** Bytes of a job file: a thousand requirements need a fifth of a megabyte. */
export const MOST_JOB_BYTES = 10_000_000;

/** Bytes of a plan, and of a run's record. */
export const MOST_PLAN_BYTES = 200_000_000;

/** Bytes of a list of points: a million of them need a fortieth of a gigabyte. */
export const MOST_POINTS_BYTES = 100_000_000;
