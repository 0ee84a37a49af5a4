/**
 * How far a curve can leave the chord between two of its points, judged by three readings at a quarter, half and three quarters.
 * A curve that bends one way lies, between two readings, under the lines through the two readings on either side: that bound
 * is certain. Fronts bend one way (M2.2: ellipses), but for the inside of an arc, where a change of bend may lie in between; there
 * the second differences stand in, as for any smooth curve, twice over.
 */

/** Readings above the chord at 1/4, 1/2 and 3/4 of it, in the curve's own direction. */
export type QuarterReadings = readonly [number, number, number];

/** The most that the curve leaves its chord by, in the readings' own direction and unit. */
export function chordBound([first, middle, last]: QuarterReadings): number {
  const seconds = [middle - 2 * first, first - 2 * middle + last, middle - 2 * last];
  if (seconds.every((each) => each <= 0)) return boundOfOneBend([first, middle, last]);
  if (seconds.every((each) => each >= 0)) return boundOfOneBend([-first, -middle, -last]);
  const most = Math.max(Math.abs(first), Math.abs(middle), Math.abs(last));
  return most + Math.max(...seconds.map(Math.abs)) / 4;
}

/** Of readings that rise and fall once, none below 0. */
function boundOfOneBend([first, middle, last]: QuarterReadings): number {
  return Math.max(
    first,
    middle,
    last,
    // Under the line through the next two, at the chord's own ends.
    2 * first - middle,
    2 * last - middle,
    crest(0, first, middle, last),
    crest(0, last, middle, first),
  );
}

/** Where the line through `a` and `b` meets the line through `d` and `c`, between `b` and `c`; all a step apart. */
function crest(a: number, b: number, c: number, d: number): number {
  const rise = b - a;
  const fall = c - d;
  if (rise <= 0 || fall <= 0) return Math.max(b, c);
  const share = (c + fall - b) / (rise + fall);
  return b + rise * Math.min(1, Math.max(0, share));
}
