/** Every limit of reading a drawing, with its reason. What counts as the same lies with the tolerances. */

/** mm. A part a kilometre from its origin is a mistake; up to there doubles resolve 1e-10 mm. */
export const FARTHEST = 1e6;

/** Bytes. A flat pattern has 1 to 5 MB; time and memory grow in step with size (tests/bench/drawing.bench.ts), and past this nobody is served. */
export const MOST_BYTES = 200_000_000;

/** Entities in one file. A million-entity file is a point cloud or a map, not a sheet to mill. */
export const MOST_ENTITIES = 300_000;

/** Curves after block insertion, and insertions themselves: ends block references that double at every level. */
export const MOST_CURVES = 300_000;
export const MOST_INSERTIONS = 300_000;

/** Blocks inserted in blocks: drawings of assemblies nest some ten deep; past this nobody meant it. */
export const MOST_BLOCK_LEVELS = 200;

/** Lines and arcs in all. */
export const MOST_SPANS = 2_000_000;

/** Lines and arcs that one spline or ellipse may need; past that its size and CURVE_FIT do not fit together. */
export const MOST_SPANS_A_CURVE = 20_000;

/**
 * Ranges of one spline or ellipse that no arcs could follow: a usual curve has fewer than one for each span that it comes to, and a range
 * can be narrowed some sixty times before its chord stands for it. Past this, narrowing leads nowhere.
 */
export const MOST_FAILED_FITS_A_CURVE = 2 * MOST_SPANS_A_CURVE;

/** The same for a whole drawing: what curves cost that are given up, or inserted over and over. */
export const MOST_FAILED_FITS = 500_000;

/** Entities of blocks looked at, once for each insertion: what an insertion costs even where nothing of it is shown. */
export const MOST_BLOCK_ENTITIES = 3_000_000;
