/**
 * The front in one dimension, for the pictures of the help page: the closed form of M2.2 along a line square to the
 * openings' borders. Places and depths in mm.
 */

/** What a stage has bared, as a stretch of the line, and how deep it has cut since. */
export interface SliceOpening {
  readonly from: number;
  readonly to: number;
  readonly cut: number;
}

const STEP = 0.05;

/** depth(x) = max √(D² − (dist / φ)²) at evenly spaced places from 0 to the width. */
export function sliceProfile(
  openings: readonly SliceOpening[],
  { width, factor = 1 }: { readonly width: number; readonly factor?: number },
): { x: number; depth: number }[] {
  const count = Math.round(width / STEP);
  return Array.from({ length: count + 1 }, (_, index) => {
    const x = (width * index) / count;
    const depths = openings.map(({ from, to, cut }) => {
      const aside = Math.max(from - x, x - to, 0) / factor;
      return Math.sqrt(Math.max(0, cut * cut - aside * aside));
    });
    return { x, depth: Math.max(0, ...depths) };
  });
}
