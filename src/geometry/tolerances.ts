/**
 * What is one place, one line, one direction, one area, one figure: every measure below which two things count as the same, with its
 * reason (docs/method.md, M1.1). In mm where nothing else is said. Those of depths and minutes lie in `units/depth-tolerances.ts`.
 * Limits of making, which a shop may change, are no tolerances; they lie with the rules. Steps and ends of a search lie with the search.
 *
 * A scribe line may be off by `SCRIBE_ACCURACY` in all. What it can lose on its way is, at worst: `CURVE_FIT` where the drawing has
 * a spline or an ellipse, `SILENT_JOIN` where an end missed another, `SAME_CARRIER` twice, in centre and radius, where
 * neighbours are joined, `SAME_PLACE` where linework meets, `SAGITTA` where a border could not be made of exact lines and arcs (a finding says
 * so), and `ROUNDING` in a file: 0.001 + 0.001 + 2 · 0.000001 + 0.00005 + 0.002 + 0.000001 = 0.004053.
 */

/** What a scribe line may be off in all; a finding, a neck, a step or a place rests on no less. */
export const SCRIBE_ACCURACY = 0.005;

// Curves of a drawing.

/** An arc leaves the spline or ellipse that it stands for by no more. */
export const CURVE_FIT = 0.001;

/** A piece of spline or ellipse that bulges less than this is a line. */
export const STRAIGHT = 1e-6;

/** Shorter spans have no direction worth the name; they are merged into their neighbour, or reported when alone. */
export const SHORTEST_SPAN = 1e-6;

/** Chords along a curve shorter than this give no direction: a thousand times the rounding of an evaluated point. */
export const SHORTEST_CHORD = 1e-10;

/** Share of a segment of a curve below which the chord stands for it: at a cusp no arc does. */
export const SHORTEST_RANGE = 1e-9;

/** Radians. A larger jump of direction between two segments of a curve is a corner. */
export const CURVE_CORNER = 1e-4;

/** Circles of a chain whose centres and radii differ by less are one; so are lines. Files with six decimals round by half of it. */
export const SAME_CARRIER = 1e-6;

/** Radians. Sweeps this near a whole turn are one, and this near none are none: six-decimal files write 6.283185. */
export const WHOLE_TURN = 1e-6;

/** Rise along an entity above which it does not lie flat in a plane parallel to the sheet. */
export const FLAT = 0.001;

/** Share of its length by which an extrusion direction may lean and still count as upright: rounding in six-decimal files. */
export const UPRIGHT = 1e-6;

/** Shares: unequal scales and axes closer than this are equal (a double's rounding through a dozen nested insertions). */
export const EQUAL_SCALE = 1e-9;

/** Bulge below which a span is a line: it bends a kilometre by half a nanometre. */
export const NO_BULGE = 1e-12;

// Places and ends.

/**
 * Two places closer than this are one place, and a curve closer than this to a point runs through it. Drawings written with six
 * decimals of an inch round every coordinate by up to half of 25.4e-6 mm, so that two ends of one corner can lie 3.6e-5 mm
 * apart; nothing that is meant to be two things is drawn this close.
 */
export const SAME_PLACE = 5e-5;

/**
 * Gaps up to this, between ends or within one entity, are joined without a word: a fifth of the error budget, far below any
 * scribing knife, and coarser than six-decimal files in inches.
 */
export const SILENT_JOIN = 0.001;

/** An end that misses other linework by up to this many join tolerances was meant to reach it: it is reported as open. */
export const OPEN_GAP_REACH = 10;

/** Curves nearer than this touch: well over the rounding of crossings at small angles, well under a border. */
export const TOUCHING = 1e-5;

/** Ends of contour segments nearer than this are one node: two that touch one curve can lie twice as far apart, and a little more. */
export const SAME_NODE = 2.5 * TOUCHING;

/** Places along a curve nearer than this are one: crossings are found to less. */
export const SAME_CROSSING = 1e-7;

/** A place on an arc's circle past the arc's end by less is at the end: a double's rounding, and no more, for crossings beyond are none. */
export const END_ROUNDING = 1e-12;

/** Sides, centres and radii that differ by less are in one line or alike: a join can move an end by as much. */
export const ALIGNED = 1e-3;

/** An end this near to the sheet's edge is on it: rounding where two curves meet at a small angle. */
export const ON_SHEET_EDGE = 1e-3;

/** An end this near to a line ends on it: well over rounding, well under a knife. */
export const ENDS_ON_LINE = 0.01;

/** Ends of a section no farther apart than this show nothing, and its drawing has lines without a length; in the drawing's unit. */
export const SHORTEST_SECTION = 1e-3;

/** Findings of one kind this near to each other are the same trouble, a little moved. */
export const SAME_SPOT = 1;

// Directions, in radians, or their sine or cosine where that is said.

/** Directions, or their sine, that differ by less are one: at a reach of 15 mm the gap left is under 0.02 µm. */
export const PARALLEL = 1e-9;

/** Sine of the turn under which a border that runs back counts as turning on the spot. */
export const TURNS_BACK = 1e-6;

/** Cosine and sine under which two directions count as across each other. */
export const SQUARE_ACROSS = 1e-5;

/** Cosine of half a degree: sides nearer to one direction than that run together where they meet. */
export const RUN_TOGETHER = 1 - 4e-5;

/** Nearer to half a turn than this, directions that are right to rounding no longer say to which side a border turns back. */
export const CUSP = 1e-4;

/** Sides that meet at a smaller angle run together. */
export const TIP = 0.01;

/** Cosine of a tenth of a radian: linework that turns by less runs on. */
export const RUNS_ON = 0.995;

/**
 * Directions closer than this are compared further out. Curves that part by less than `SAME_PLACE` can lean to the wrong side
 * by √(2 · 5e-5 / radius): 0.01 at a radius of 1 mm.
 */
export const NEARLY_ONE_DIRECTION = 0.05;

// The grid on which topology is decided.

/** Grid units in a millimetre: 0.1 µm, coarse enough that parts up to 9.4 m stay in clipper-lib's exact range (|c| ≤ 47 453 132). */
export const UNITS_PER_MM = 10_000;

/** One unit of the grid. */
export const GRID = 1 / UNITS_PER_MM;

/**
 * How much farther than asked a border is pushed on the grid. Drawings are full of necks exactly two allowances wide: pushed by
 * just the allowance, rounding would decide whether such a neck has an opening of no width. Nudged, it has none, wherever and
 * however it is drawn. Only topology feels it: the border that comes out is the exact one.
 */
export const NUDGE = 1.5 * GRID;

/** Farthest that a chord on the grid lies from its arc; what is cut or faced within as much of an arc's end only makes a speck. */
export const SAGITTA = 0.002;

/** Runs on the grid shorter than this are rounding at a crossing, not an edge of their own. */
export const SPECK = 10 * GRID;

/** Ends nearer than this fall on one grid point: no joint is needed. */
export const SAME_POINT = GRID / 4;

/** Grid units. A corner this near to an edge lies on it: both are rounded, and one of them may be nudged. */
export const ON_GRID_EDGE = 2.5;

/** An edge this near to a carrier lies on it as far as the grid can tell: nudged, and rounded at both ends. */
export const FITS_CARRIER = NUDGE + 2 * GRID;

/** An edge farther from a carrier is none of its: rounding moves a vertex by ½ unit a coordinate, a crossing on the grid by one more. */
export const ON_CARRIER = NUDGE + 3 * GRID;

/** An outline may reach this far past the end of its carrier where chords met early. */
export const PAST_END = 0.05;

/** A known end this near to a corner of the grid is that corner; a tangent joint slides by √(2 · SAGITTA · radius). */
export const NEAR_JOINT = 0.25;

/** Farther apart than this two borders stay apart on the grid: each may be a sagitta off. */
export const NEAR_ON_GRID = 2 * SAGITTA;

/** Borders nearer than this are not safely apart on the grid: ten times what a chord leaves its arc. */
export const SAFELY_APART = 0.02;

/** An opening no wider is none on the grid: both borders nudged, and rounded at both ends. */
export const LEAST_OPENING = 5 * NUDGE;

// Borders and what lies beside them.

/** A border is found again to this, and a width that falls short of its limit by less is just what is asked: drawings are full of them. */
export const SAME_BORDER = 1e-4;

/** Widths of narrow places closer than this are one figure: finer than any gauge. */
export const SAME_WIDTH = 0.001;

/** The radius of the largest disc in an outline is found to this: half of `SAME_WIDTH`, which is a width. */
export const ROOM_WITHIN = 5e-4;

/** How far beside a border is looked for what lies there: more than any rounding, less than anything that is made. */
export const JUST_BESIDE = 0.001;

/** How far beside a drawn line is looked for the region there: past what the line itself may be off, less than any region is wide. */
export const BESIDE_LINE = 0.01;

/** How far beyond the ends of a narrow place is looked for the regions there: past both borders between which it lies. */
export const BEYOND_ENDS = 2 * BESIDE_LINE;

/** Share of a side by which its ends are kept off where one place of it is looked at: at its very end another side begins. */
export const OFF_END = 0.01;

/** Strips narrower than this at an end of a taper are left to their neighbour: no knife cuts them. */
export const NARROWEST_STRIP = 1e-3;

/** A band around a line no wider than this to either side is the line. */
export const LEAST_BAND = 0.01;

/** Border lost from a contour that is still rounding: as long as a line runs beside an arc of 100 mm within the width of a border. */
export const LOST_BORDER = 0.05;

/** For each mm that contour segments are across: under this they close. */
export const CLOSES = 1e-6;

// Areas, volumes and shares.

/** mm². A piece no larger is rounding where contours run along each other. */
export const LEAST_PIECE = 1e-3;

/** mm². Regions of either face that share no more do not lie behind each other. */
export const LEAST_OVERLAP = 0.01;

/** Areas, lengths and shares of a whole that differ by less than this share are one: what six decimals of a file make of them. */
export const SAME_SHARE = 1e-6;

/** Share by which areas of faces beside a sliver may differ and be as large: merging slivers cuts them by `SAME_PLACE` all round. */
export const AS_LARGE = 1e-4;

/** Borders of a sliver whose lengths differ by less than this share are alike: its two long sides are. */
export const ALIKE = 0.02;

/** Share of an area that is a sum of whole numbers, which rounding touches only where they are very large. */
export const SAME_WHOLE_SUM = 1e-12;

/** Share: of two gaps between lattice points that differ by less, to the lattice's rounding, neither is shorter. */
export const SAME_GAP = 1e-9;

/** Share of the sheet that may be folded over in a mesh by rounding: none is, on the lattice. */
export const FOLDED = 1e-9;

/** Share of the volume by which two ways to it may differ. */
export const VOLUME_AGREEMENT = 1e-5;

/** The same where slices of a contour are summed, and of a wall alone: the contours themselves come from a grid of 0.1 µm. */
export const SLICE_AGREEMENT = 1e-4;

/** Share of an area by which a contour may be off what others say of it: far more than rounding, far less than anything that meets it. */
export const GROWN_AGREEMENT = 1e-9;

/** Share of an area or a volume by which a mesh may be off. */
export const SOLID_AGREEMENT = 1e-3;

// Files and figures.

/** A cubic on paper leaves its arc by no more: less than a thousandth of the finest stroke. */
export const CUBIC_FIT = 1e-4;

/** An arc's chord in a hatch may leave it by this: a tenth of a fine pen stroke. */
export const HATCH_SAGITTA = 0.01;

/** Asked of the chords of a section: the 0.002 mm that the files promise, less what rounding to a millionth may take of it. */
export const SECTION_SAGITTA = 0.00199;

/** Files, levels and figures are rounded to a millionth: a nanometre, below anything that can be gauged. */
export const ROUNDING = 1e-6;

/** Two roundings: figures no farther apart are one figure. */
export const SAME_FIGURE = 2 * ROUNDING;

/** Sums of figures, and places reached in two ways, nearer than this are equal: 2.2 + 0.1 and 2.4 − 0.1. */
export const SAME_SUM = 1e-9;

/** A quotient this near to a whole number of steps is that number. */
export const SAME_COUNT = 1e-9;
