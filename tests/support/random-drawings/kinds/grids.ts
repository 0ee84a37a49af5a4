/** Bays side by side that share their borders, of whole or odd measures. */

import { rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

export function grids(dice: Dice): DrawnCurve[] {
  const isWhole = dice.chance(0.5);
  const stops = (from: number, count: number): number[] => {
    const list = [from];
    for (let i = 0; i < count; i++)
      list.push((list.at(-1) ?? 0) + (isWhole ? dice.whole(8, 24) : dice.between(8, 24)));
    return list;
  };
  const [xs, ys] = [stops(10, dice.whole(1, 4)), stops(10, dice.whole(1, 3))];
  const cells = xs.slice(1).flatMap((x1, i) =>
    ys.slice(1).flatMap((y1, j) => {
      if (dice.chance(0.15)) return [];
      return [pocketOf(rectangle(xs[i] ?? 0, ys[j] ?? 0, x1, y1))];
    }),
  );
  return [sheetOf(rectangle(0, 0, (xs.at(-1) ?? 0) + 10, (ys.at(-1) ?? 0) + 10)), ...cells];
}
