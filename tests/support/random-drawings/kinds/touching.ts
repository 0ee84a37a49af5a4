/** Pockets that touch at a corner, along a part of a side, or with a round in a straight: coincidences that drawings are full of. */

import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

export function touching(dice: Dice): DrawnCurve[] {
  const [w, h] = [dice.whole(10, 24), dice.whole(10, 24)];
  const first = rectangle(30, 30, 30 + w, 30 + h);
  const radius = dice.whole(3, 9);
  const others = [
    () => rectangle(30 + w, 30 + h, 30 + w + dice.whole(6, 20), 30 + h + dice.whole(6, 20)),
    () =>
      rectangle(30 + w, 30 + dice.whole(-6, h - 3), 30 + w + dice.whole(6, 20), 30 + h + dice.whole(1, 8)),
    () => circle(30 + w + radius, 30 + dice.whole(1, h - 1), radius),
    () => circle(30 - radius, 30, radius),
    () =>
      polygon([
        [30, 30],
        [30 - dice.whole(4, 14), 30 - dice.whole(4, 14)],
        [30 + dice.whole(1, 6), 30 - dice.whole(4, 14)],
      ]),
    () => rectangle(30, 30 + h, 30 + dice.whole(3, w), 30 + h + dice.whole(6, 14)),
  ];
  const count = dice.whole(1, 3);
  const chosen = Array.from({ length: count }, () => pocketOf(dice.pick(others)()));
  return [sheetOf(rectangle(0, 0, 100, 90)), pocketOf(first), ...chosen];
}
