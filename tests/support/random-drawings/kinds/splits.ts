/** A plate cut in two again and again by straight cuts, until small bays are left. */

import { rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

type Bay = readonly [x0: number, y0: number, x1: number, y1: number];

export function splits(dice: Dice): DrawnCurve[] {
  const margin = dice.pick([0, 8, 10]);
  let bays: Bay[] = [[margin, margin, 130 - margin, 90 - margin]];
  for (let cuts = dice.whole(1, 6); cuts > 0; cuts--) {
    const bay = dice.pick(bays);
    const [x0, y0, x1, y1] = bay;
    const isUpright = x1 - x0 > y1 - y0;
    const [from, to] = isUpright ? [x0, x1] : [y0, y1];
    if (to - from < 14) continue;
    const at = dice.chance(0.5) ? Math.round(dice.between(from + 6, to - 6)) : dice.between(from + 6, to - 6);
    const halves: Bay[] = isUpright
      ? [
          [x0, y0, at, y1],
          [at, y0, x1, y1],
        ]
      : [
          [x0, y0, x1, at],
          [x0, at, x1, y1],
        ];
    bays = [...bays.filter((each) => each !== bay), ...halves];
  }
  return [sheetOf(rectangle(0, 0, 130, 90)), ...bays.map((bay) => pocketOf(rectangle(...bay)))];
}
