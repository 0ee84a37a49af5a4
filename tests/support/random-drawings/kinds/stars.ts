/** Polygons with sharp and blunt corners, some with bent or filleted sides, that may overlap. */

import { rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';
import { bent, filleted, star } from '#support/random-drawings/loops.ts';

export function stars(dice: Dice): DrawnCurve[] {
  const count = dice.whole(1, 4);
  const pockets = Array.from({ length: count }, () => {
    const center = { x: dice.between(25, 95), y: dice.between(25, 65) };
    const loop = star(dice, center, { least: 6, most: 20 });
    const shape = dice.pick(['plain', 'bent', 'filleted'] as const);
    if (shape === 'bent') return pocketOf(bent(dice, loop, 0.3));
    return pocketOf(shape === 'filleted' ? filleted(loop, dice.between(0.5, 4)) : loop);
  });
  return [sheetOf(rectangle(0, 0, 120, 90)), ...pockets];
}
