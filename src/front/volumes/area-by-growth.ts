/**
 * Steiner's formula (J. Steiner, Über parallele Flächen, 1840): while a border meets nothing new, the area inside it is of the second degree
 * in how far it has grown. So where the contours at four depths agree on one such curve, they tell the area at all depths between them.
 */
import { itemAt } from '#geometry/assert.ts';
import { GROWN_AGREEMENT } from '#geometry/tolerances.ts';
import { type DepthRange, outerDepths } from './integrate-depth.ts';

/**
 * The area by depth in a range, mm²: by the curve where four contours agree on one, else by a contour each time that it is asked for.
 * @param growth how far the widest border has grown at a depth of the range, mm
 */
export function areaByGrowth(
  area: (depth: number) => number,
  growth: (depth: number) => number,
  range: DepthRange,
): (depth: number) => number {
  const known = new Map(outerDepths(range).map((depth) => [depth, area(depth)]));
  const [depths, areas] = [[...known.keys()], [...known.values()]];
  const curve = secondDegree(depths.map(growth), areas);
  if (curve === undefined) return (depth) => known.get(depth) ?? area(depth);
  return (depth) => known.get(depth) ?? curve(growth(depth));
}

/** Through the first three places, in Newton's form; undefined where the fourth is off it, or they do not lie apart. */
function secondDegree(
  places: readonly number[],
  values: readonly number[],
): ((place: number) => number) | undefined {
  const [p, q, r, s] = [0, 1, 2, 3].map((at) => itemAt(places, at)) as [number, number, number, number];
  const [a, b, c, d] = [0, 1, 2, 3].map((at) => itemAt(values, at)) as [number, number, number, number];
  if (p === q || q === r || p === r) return undefined;
  const first = (b - a) / (q - p);
  const second = ((c - b) / (r - q) - first) / (r - p);
  const curve = (at: number): number => a + (at - p) * (first + (at - q) * second);
  return Math.abs(curve(s) - d) <= GROWN_AGREEMENT * Math.abs(d) ? curve : undefined;
}
