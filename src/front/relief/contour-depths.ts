/** At which depths a relief needs contours, so that chords across the fillets leave them by no more than a tolerance. */

import type { Moment } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { acos } from '#maths/arc-cosine.ts';
import { cos } from '#maths/sine.ts';

/**
 * The next contour below `depth`, never past `floor`.
 * A stage's wall is a quarter ellipse with half axes φD and D; in the angle from its foot a chord over Δ leaves it by at
 * most max(φ, 1) · D · (1 − cos(Δ / 2)).
 * @param showing indices of the stages whose fronts show at this depth
 */
export function nextContourDepth(
  moment: Moment,
  { depth, floor, showing, sag }: { depth: number; floor: number; showing: Iterable<number>; sag: number },
): number {
  let next = floor;
  for (const stage of showing) {
    if (itemAt(moment.floors, stage) <= depth) continue;
    const cut = itemAt(moment.cuts, stage);
    const base = itemAt(moment.bases, stage);
    const longest = cut * Math.max(1, itemAt(moment.factors, stage));
    const step = 2 * acos(Math.max(0, 1 - sag / longest));
    const angle = acos((depth - base) / cut);
    // Equal steps down to the foot, so that the last one is not a sliver.
    const steps = Math.max(1, Math.ceil(angle / step - SAME_COUNT));
    next = Math.min(next, base + cut * cos(angle - angle / steps));
  }
  // A step that ends just above the floor goes all the way: contours too near each other would cross by their chords.
  return floor - next < sag / 2 ? floor : next;
}
