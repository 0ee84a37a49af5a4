/** Sizes of type and lines on the papers, mm: one set for all of them. */

/** A typographic point, mm. */
export const POINT = 25.4 / 72;

export const TYPE = {
  title: 15 * POINT,
  section: 10.5 * POINT,
  text: 9 * POINT,
  note: 8 * POINT,
  head: 7 * POINT,
  label: 6.5 * POINT,
  value: 9.5 * POINT,
  figure: 19 * POINT,
} as const;

/** Of the lines between cells, and of frames. */
export const RULE_INK = 0.2;
export const FRAME_INK = 0.5;
/** Behind the heads of tables. */
export const HEAD_FILL = '#e8e8e8';
