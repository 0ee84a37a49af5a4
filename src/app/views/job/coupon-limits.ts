/** What can be typed for a coupon, mm; all our own choice. */

/** The least that a coupon must have lost, or its opening gained: what a micrometer can tell. */
export const LEAST_CHANGE = 0.001;

/** How far a reading may be off. */
export const FINEST_GAUGE = 0.001;
export const COARSEST_GAUGE = 1;
