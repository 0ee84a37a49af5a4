/** Pockets that run to the sheet's edge, side by side; the edge may slope, bend or have a corner in it. */

import { polygon } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';
import { chain } from '#support/random-drawings/loops.ts';

export function edgePockets(dice: Dice): DrawnCurve[] {
  const isSloping = dice.chance(0.7);
  const rise = isSloping ? dice.between(-25, 25) : 0;
  const top = (x: number): number => 70 + (rise * x) / 120;
  const bulge = dice.chance(0.3) ? dice.between(-0.1, 0.1) : 0;
  const sheet = chain([
    [0, 0],
    [120, 0, bulge],
    [120, top(120)],
    [0, top(0)],
  ]);
  const pockets: DrawnCurve[] = [];
  let x = dice.whole(8, 20);
  for (let count = dice.whole(1, 4); count > 0 && x < 100; count--) {
    const width = dice.chance(0.5) ? dice.whole(8, 24) : dice.between(8, 24);
    const end = Math.min(x + width, 115);
    const low = dice.between(15, 45);
    pockets.push(
      pocketOf(
        polygon([
          [x, low],
          [end, low],
          [end, top(end)],
          [x, top(x)],
        ]),
      ),
    );
    x = dice.chance(0.6) ? end : end + dice.whole(3, 10);
  }
  return [sheetOf(sheet), ...pockets];
}
