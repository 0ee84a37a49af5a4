/** From where on a reading is asked about, in the run and on paper alike (M7.4). */
import { ASSUMED_GAUGE_NOISE } from '#job/process-assumptions.ts';

/** Share of the metal expected by which a reading may be off before it is asked about: our own choice, five times the usual spread. */
export const QUESTIONED_SHARE = 0.25;

/** mm that a reading is never asked about: four standard deviations of a gauge. */
export const GAUGE_OFF = 4 * ASSUMED_GAUGE_NOISE.value;
