/**
 * Tooling holes that fit one way only: turned, or laid face down, a template of one face must not go onto the pins of the other.
 * Both faces have the same holes, so that their templates, films and the part itself are laid on the same pins.
 */
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { distance, type Point } from '#geometry/point.ts';
import { bringTogether, movedPoint } from '#geometry/spans/rigid-motion.ts';
import { cornerHoles, partLoops, type TemplateSheetAsk } from './template-sheet.ts';

/** Steps that the last hole is moved in along the part, in diameters; about as many as a small part has room for. */
const STEP = 2;
const MOST_STEPS = 6;

/** Four near the corners, the last of them moved along the part until they fit one way only, where there is room for that. */
export function oneWayHoles(
  ask: Pick<TemplateSheetAsk, 'sheet' | 'lines' | 'margin' | 'diameter'>,
): readonly Point[] {
  const { margin, diameter } = ask;
  const part = partLoops(ask);
  const corners = cornerHoles(part, margin / 2, 3 * diameter);
  const last = corners.at(-1);
  if (last === undefined) return corners;
  const { minX, maxX } = boxOfSpans(part.flat());
  const side = last.x < (minX + maxX) / 2 ? 1 : -1;
  for (let step = 0; step <= MOST_STEPS; step++) {
    const moved = [...corners.slice(0, -1), { x: last.x + side * step * STEP * diameter, y: last.y }];
    if (!fitsOtherwise(moved, diameter)) return moved;
  }
  return corners;
}

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
