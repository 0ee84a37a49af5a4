/** Pockets in pockets, up to four deep, drawn with round or odd measures. */

import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

export function nested(dice: Dice): DrawnCurve[] {
  const step = dice.chance(0.5) ? () => dice.whole(2, 9) : () => dice.between(1.5, 9);
  const curves = [sheetOf(rectangle(0, 0, 120, 90))];
  let [x0, y0, x1, y1] = [step(), step(), 120 - step(), 90 - step()];
  for (let depth = dice.whole(1, 4); depth > 0 && x1 - x0 > 12 && y1 - y0 > 12; depth--) {
    const radius = dice.chance(0.4) ? 0 : dice.pick([1, 2, 3, 5]);
    curves.push(
      pocketOf(radius === 0 ? rectangle(x0, y0, x1, y1) : roundedRectangle(x0, y0, x1, y1, radius)),
    );
    [x0, y0, x1, y1] = [x0 + step(), y0 + step(), x1 - step(), y1 - step()];
  }
  return curves;
}
