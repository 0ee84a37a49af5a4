/**
 * Whether tooling holes fit in another way too: turned, or laid face down, a template of one face must not go onto the pins of the other.
 */
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { bringTogether, movedPoint } from '#geometry/spans/rigid-motion.ts';

/**
 * Whether holes come onto each other when they are turned or turned over: some motion but rest brings each to within the slack of one.
 * Cubic in the holes, which are few.
 */
export function fitsOtherwise(holes: readonly Point[], slack: number): boolean {
  if (holes.length < 2) return true;
  const first = [itemAt(holes, 0), itemAt(holes, 1)] as const;
  const apart = distance(...first);
  return holes.some((a, i) =>
    holes.some((b, j) => {
      if (i === j || Math.abs(distance(a, b) - apart) > slack) return false;
      return [false, true].some((isMirrored) => {
        if (!isMirrored && i === 0 && j === 1) return false;
        const { motion } = bringTogether(first, [a, b], isMirrored);
        return holes.every((hole) => {
          const there = movedPoint(motion, hole);
          return holes.some((each) => distance(each, there) <= slack);
        });
      });
    }),
  );
}
