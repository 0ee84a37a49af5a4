/** Share of the metal expected by which a reading may be off before it is asked about: our own choice, five times the usual spread. */
export const QUESTIONED_SHARE = 0.25;
