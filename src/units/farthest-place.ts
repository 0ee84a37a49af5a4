/**
 * How far out a place may lie, along x or y, in the unit that it is given in. Survey frames have their origins thousands of kilometres
 * away; farther than this in millimetres a double no longer resolves a micrometre, and neither does a drawing.
 */
export const FARTHEST_PLACE = 1e12;
