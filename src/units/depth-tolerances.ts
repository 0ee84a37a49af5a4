/** What is one depth, one thickness, one moment: below which two of them count as the same, with the reason. In mm where nothing else is said. */

/** Levels nearer than this are one level: far below any tolerance, far above rounding. */
export const SAME_LEVEL = 1e-5;

/** Depths and tolerances that a drawing and a job ask are the same within this: well over what converting units leaves, well under any tolerance. */
export const SAME_ASKED = 1e-4;

/** Share by which a figure and the same in the other unit may differ: each is rounded to its own places. */
export const SAME_IN_OTHER_UNIT = 0.02;

/** Share of a tolerance by which a depth may pass it and still be at it: rounding. */
export const AT_TOLERANCE = 1e-6;

/** A place whose depth is this near to the level of its region is on the floor; on a wall it is farther. */
export const ON_FLOOR = 1e-3;

/** The shallowest depth inside a region is found to this. */
export const SHALLOWEST_WITHIN = 1e-4;

/** A floor may rise and fall by this under one number on paper, whose last place it is. */
export const ONE_FLOOR = 0.01;

/** Half the last place of a figure of three decimals: less is printed as nothing. */
export const PRINTED_AS_NOTHING = 0.0005;

/** A sheet whose thickness changes by less from end to end is even. */
export const EVEN_SHEET = 1e-4;

/** A sheet whose tolerance nobody knows is taken as nominal, to this. */
export const SURE_SHEET = 1e-4;

/** mm/min. A planned rate without a spread is taken as it is, to this. */
export const SURE_RATE = 1e-9;

/** Minutes. Moments closer than this count as one: rates that are even for less say nothing, and cost a lot. */
export const SAME_MOMENT = 1;

/** Minutes. What is planned and what is recorded are the same within this. */
export const SAME_MINUTE = 1e-6;
