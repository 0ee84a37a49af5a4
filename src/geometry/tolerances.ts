/**
 * What is one place, one line, one figure: every length below which two things count as one, with its reason (docs/method.md, M1.1).
 * All in mm. Limits of making, which a shop may change, are no tolerances; they lie with the rules.
 *
 * A scribe line may be off by `SCRIBE_ACCURACY` in all. What it can lose on its way is, at worst: `CURVE_FIT` where the drawing
 * has a spline or an ellipse, `SILENT_JOIN` where an end missed another, `SAME_PLACE` where linework meets, `SAGITTA` where
 * a border could not be made of exact lines and arcs (a finding says so), and `ROUNDING` in a file.
 */

/** What a scribe line may be off in all; a finding, a neck, a step or a place rests on no less. */
export const SCRIBE_ACCURACY = 0.005;

/** An arc leaves the spline or ellipse that it stands for by no more. */
export const CURVE_FIT = 0.001;

/**
 * Two places closer than this are one place, and a curve closer than this to a point runs through it. Drawings written with six
 * decimals of an inch round every coordinate by up to half of 25.4e-6 mm, so that two ends of one corner can lie 3.6e-5 mm
 * apart; nothing that is meant to be two things is drawn this close.
 */
export const SAME_PLACE = 5e-5;

/** Gaps up to this are joined without a word: a fifth of the error budget, and far below any scribing knife. */
export const SILENT_JOIN = 0.001;

/** An end that misses other linework by up to this many join tolerances was meant to reach it: it is reported as open. */
export const OPEN_GAP_REACH = 10;

/** Grid units in a millimetre: 0.1 µm, coarse enough that parts up to 9.4 m stay in clipper-lib's exact range (|c| ≤ 47 453 132). */
export const UNITS_PER_MM = 10_000;

/** One unit of the grid on which topology is decided. */
export const GRID = 1 / UNITS_PER_MM;

/**
 * How much farther than asked a border is pushed on the grid. Drawings are full of necks exactly two allowances wide: pushed by
 * just the allowance, rounding would decide whether such a neck has an opening of no width. Nudged, it has none, wherever and
 * however it is drawn. Only topology feels it: the border that comes out is the exact one.
 */
export const NUDGE = 1.5 * GRID;

/** Farthest that a chord on the grid lies from its arc. */
export const SAGITTA = 0.002;

/** Runs on the grid shorter than this are rounding at a crossing, not an edge of their own. */
export const SPECK = 10 * GRID;

/** A border is found again to this, and a width that falls short of its limit by less is just what is asked: drawings are full of them. */
export const SAME_BORDER = 1e-4;

/** Curves nearer than this touch: well over the rounding of crossings at small angles, well under a border. */
export const TOUCHING = 1e-5;

/** How far beside a border is looked for what lies there: more than any rounding, less than anything that is made. */
export const JUST_BESIDE = 0.001;

/** Places along a curve nearer than this are one: crossings are found to less. */
export const SAME_CROSSING = 1e-7;

/** Files, levels and figures are rounded to a millionth: a nanometre, below anything that can be gauged. */
export const ROUNDING = 1e-6;

/** Two roundings: figures no farther apart are one figure. */
export const SAME_FIGURE = 2 * ROUNDING;

/** Sums of figures nearer than this are equal: 2.2 + 0.1 and 2.4 − 0.1. */
export const SAME_SUM = 1e-9;
