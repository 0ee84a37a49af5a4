/** How much linework the regions are looked for in. No sheet to mill comes near; past these the drawing is refused. */
import type { EffortLimits } from '#geometry/effort.ts';

/**
 * Lines and arcs on the layers that count. Eight hundred pockets with eight hundred nested in them have 13 000; the regions of
 * 100 000 are found in a few seconds, those of a million in most of a minute and 3 GB (measured).
 */
export const MOST_LINEWORK = 500_000;

/**
 * Meetings are places where two lines or arcs meet other than end to end: 50 000 of them take some two seconds (measured).
 * Pairs are those whose boxes meet, counted from either side: they cost less, but also where nothing meets (concentric rings, slanting hatching).
 */
export const MOST_TANGLE: EffortLimits = { meetings: 50_000, pairs: 4_000_000 };
