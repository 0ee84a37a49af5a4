/** How much linework the regions are looked for in. No sheet to mill comes near; past these the drawing is refused. */
import type { EffortLimits } from '#geometry/effort.ts';

/**
 * Lines and arcs on the layers that count. A mesh of 200,000 round holes has 400 000, and is planned in time linear with 12,500 and with
 * less than 4 GB (tests/bench/size.bench.ts).
 */
export const MOST_LINEWORK = 420_000;

/** Of one curve: all of an outline may meet all the rest of it, which costs far more than as many in many outlines. */
export const MOST_IN_CURVE = 100_000;

/**
 * Meetings are places where two lines or arcs meet other than end to end: 50 000 of them take some two seconds (measured).
 * Pairs are those whose boxes meet, counted from either side: they cost less, but also where nothing meets (concentric rings, slanting hatching).
 */
export const MOST_TANGLE: EffortLimits = { meetings: 50_000, pairs: 4_000_000 };
