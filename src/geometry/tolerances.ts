/**
 * The tolerances of reading linework, each with its reason: what is one place, one line, one region (docs/method.md, M1). What leaves the arrangement may be off by `SAME_PLACE`, one
 * hundredth of the 0.005 mm that a scribe line may be off in all; gaps that the engineer allows to be joined come on top
 * and are reported one by one.
 */

/**
 * Two places closer than this are one place, and a curve closer than this to a point runs through it, mm. Drawings
 * written with six decimals of an inch round every coordinate by up to half of 25.4e-6 mm, so that two ends of one
 * corner can lie 3.6e-5 mm apart; nothing that is meant to be two things is drawn this close.
 */
export const SAME_PLACE = 5e-5;

/** Gaps up to this are joined without a word, mm: a fifth of the error budget, and far below any scribing knife. */
export const SILENT_JOIN = 0.001;

/**
 * A face narrower than this is none, mm: as far as a scribe line may be off in all, so that nobody could cut both its sides.
 * Two outlines meant to be one leave such faces between them.
 */
export const SLIVER_WIDTH = 0.005;

/** An end that misses other linework by up to this many join tolerances was meant to reach it: it is reported as open. */
export const OPEN_GAP_REACH = 10;
