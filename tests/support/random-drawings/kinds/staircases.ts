/** Many levels in one cluster: strips side by side, as a taper cut into steps. */

import { polygon, rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

export function staircases(dice: Dice): DrawnCurve[] {
  const slope = dice.chance(0.5) ? dice.between(-6, 6) : 0;
  const pockets: DrawnCurve[] = [];
  let x = 15;
  for (let count = dice.whole(4, 9); count > 0; count--) {
    const end = x + (dice.chance(0.5) ? dice.whole(4, 12) : dice.between(4, 12));
    pockets.push(
      pocketOf(
        polygon([
          [x, 15],
          [end, 15],
          [end + slope, 60],
          [x + slope, 60],
        ]),
      ),
    );
    x = end;
  }
  return [sheetOf(rectangle(0, 0, x + 25, 75)), ...pockets];
}
