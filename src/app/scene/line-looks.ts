/** How lines look on the sheet, whoever draws them; in pixels. */

export const LINE_WIDTH = { tickCasing: 3.4, tick: 1.5, selection: 3.5, mark: 4 };
export const SCRIBE_WIDTH = { near: { casing: 4.6, core: 2.4 }, far: { casing: 3.2, core: 1.7 } };
/** Distance and length of the mark's ticks, in pixels. */
export const TICK = { pitch: 7, length: 11 };
/** Mean length of a stage's lines, in pixels, from which they carry marks, and below which many of them go without a casing. */
export const MARK_ROOM = { marks: 220, casing: 80 };
