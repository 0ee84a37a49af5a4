/** Pockets drawn as closed smooth curves (uniform cubic B-splines). */

import { rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from '#support/random-drawings/dice.ts';
import { type DrawnCurve, POCKETS, pocketOf, sheetOf } from '#support/random-drawings/drawn-part.ts';

const DEGREE = 3;

export function splines(dice: Dice): DrawnCurve[] {
  const [x, y] = [dice.between(35, 55), dice.between(35, 55)];
  const corners = dice.whole(5, 9);
  const ring = Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const away = dice.between(14, 28);
    return { x: x + away * Math.cos(angle), y: y + away * Math.sin(angle) };
  });
  // The first points again at the end close it smoothly over even knots.
  const points = [...ring, ...ring.slice(0, DEGREE)];
  const knots = Array.from({ length: points.length + DEGREE + 1 }, (_, i) => i);
  const beside = dice.chance(0.5)
    ? [pocketOf(rectangle(88, 20, dice.whole(96, 112), dice.whole(40, 80)))]
    : [];
  return [sheetOf(rectangle(0, 0, 120, 95)), { layer: POCKETS, spline: { points, knots } }, ...beside];
}
