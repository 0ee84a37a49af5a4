/** How far the straight lines of a section pass from the depths that they stand for. */
import type { Point } from '#geometry/point.ts';

interface SectionPlace extends Point {
  readonly distance: number;
  readonly depth: number;
}

/** mm square to the lines, the most over three places of each; `depthOf` gives the depth in mm. */
export function chordGap(section: readonly SectionPlace[], depthOf: (place: Point) => number): number {
  const gaps = section.slice(1).flatMap((point, i) => {
    const before = section[i];
    if (before === undefined) return [];
    const run = point.distance - before.distance;
    const rise = point.depth - before.depth;
    return [0.21, 0.5, 0.83].map((share) => {
      const x = before.x + (point.x - before.x) * share;
      const y = before.y + (point.y - before.y) * share;
      return (Math.abs(depthOf({ x, y }) - before.depth - rise * share) * run) / Math.hypot(run, rise);
    });
  });
  return Math.max(0, ...gaps);
}
