/** Arcs of large radius, tangent joints, joggles of two equal arcs, slots: where curves run nearly together for long. */

import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';
import { chain, slot } from '#support/random-drawings/loops.ts';

export function bigArcs(dice: Dice): DrawnCurve[] {
  const shapes = [
    // A bay under an arc of several metres.
    () => {
      const [w, h] = [dice.between(60, 130), dice.between(18, 40)];
      const bulge = dice.between(0.002, 0.15) * dice.pick([1, -1]);
      return chain([
        [20, 20],
        [20 + w, 20],
        [20 + w, 20 + h, bulge],
        [20, 20 + h],
      ]);
    },
    // A joggle: two equal arcs, one into the other.
    () => {
      const [reach, rise] = [dice.between(10, 30), dice.between(4, 14)];
      const bulge = Math.tan(Math.atan2(rise, reach) / 2);
      const [x, y] = [70, 25];
      return chain([
        [20, y],
        [x, y, bulge],
        [x + reach / 2, y + rise / 2, -bulge],
        [x + reach, y + rise],
        [x + reach + 20, y + rise],
        [x + reach + 20, 75],
        [20, 75],
      ]);
    },
    () =>
      slot(
        { x: dice.between(25, 60), y: dice.between(25, 65) },
        { x: dice.between(80, 130), y: dice.between(25, 65) },
        dice.between(3, 12),
      ),
    () => roundedRectangle(22, 22, dice.whole(60, 130), dice.whole(50, 80), dice.pick([3, 6, 12])),
  ];
  const pockets = Array.from({ length: dice.whole(1, 2) }, () => pocketOf(dice.pick(shapes)()));
  const side = dice.chance(0.5) ? 0 : dice.between(-0.08, 0.08);
  const sheet = chain([
    [0, 0],
    [150, 0, side],
    [150, 100],
    [0, 100, -side],
  ]);
  return [sheetOf(dice.chance(0.3) ? rectangle(0, 0, 150, 100) : sheet), ...pockets];
}
