/** How lines look on the sheet, whoever draws them; in pixels. */

/** A scribe line; wider where nothing else may compete with it. */
export const SCRIBE_WIDTH = { usual: 2, strong: 2.5 };
/** The edge of the part and of holes through it. */
export const EDGE_WIDTH = 1.3;
/** Dash of what lies on the other face. */
export const THROUGH_DASH = 3;
/** A line that came back: it covers the scribe line where it is as planned. */
export const RETURNED_WIDTH = 2;
/** Each side of a scribe line. */
export const CASING = 1;
/** Of a mark: its ticks, and how far apart they and their groups stand. */
export const MARK = { width: 1.6, length: 10, pitch: 4.6, every: 176 };
/** Round what is picked or pointed at, and round a finding: outside the border, so that no line is hidden. */
export const RING = { width: 2, away: 5.5 };
/** A line longer than this is drawn with its casing, however many there are. */
export const CASED_FROM = 60;
