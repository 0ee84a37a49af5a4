/**
 * Depth over a region as a function of one distance (M4.4): the sum of tapers, each even between its two points and held
 * beyond them, where over this region they change along one direction.
 */

import { type CutFrame, cutFrame, extentAlong } from '#geometry/loops/cut-across.ts';
import { cross, dot, type Point, scale, subtract } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { PARALLEL } from '#geometry/tolerances.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';
import { hypot } from '#maths/hypot.ts';

export interface TaperProfile {
  /** Unit vector along which depth changes; distances are measured along it from the origin of the plane. */
  readonly direction: Point;
  readonly frame: CutFrame;
  readonly depthAt: (distance: number) => number;
  /** Distances between which depth is even, rising; first and last are the region's ends. */
  readonly knots: readonly number[];
  readonly low: number;
  readonly high: number;
}

/** A taper as seen from a region. */
interface Slope {
  readonly taper: Taper;
  readonly axis: Point;
  /** Change of depth for each mm along the axis. */
  readonly rise: number;
  /** Where between its ends (0 and 1) the region lies. */
  readonly reach: 'before' | 'after' | 'within' | 'across';
}

/** Undefined where two tapers change over the region in different directions and one of them ends in it. */
export function taperProfile(tapers: readonly Taper[], loops: readonly Loop[]): TaperProfile | undefined {
  const slopes = tapers.map((taper) => slopeOf(taper, loops));
  const held = slopes.reduce((sum, each) => sum + heldValue(each), 0);
  const changing = slopes.filter(
    ({ reach, rise }) => rise !== 0 && (reach === 'within' || reach === 'across'),
  );
  const [first] = changing;
  if (first === undefined) return profileAlong({ x: 1, y: 0 }, () => held, { loops, ends: [] });
  if (changing.every(({ axis }) => Math.abs(cross(axis, first.axis)) < PARALLEL)) {
    const valueAt = (distance: number) =>
      held +
      taperedAt(
        changing.map(({ taper }) => alongAxis(taper, first.axis)),
        scale(first.axis, distance),
      );
    const ends = changing.flatMap(({ taper }) => [dot(taper.from, first.axis), dot(taper.to, first.axis)]);
    return profileAlong(first.axis, valueAt, { loops, ends });
  }
  if (changing.some(({ reach }) => reach === 'across')) return undefined;
  return planeProfile(changing, { held, loops });
}

/** The taper with its points moved square to the axis, on to the line through the origin: the same values along it. */
function alongAxis(taper: Taper, axis: Point): Taper {
  const moved = (point: Point) => scale(axis, dot(point, axis));
  return { ...taper, from: moved(taper.from), to: moved(taper.to) };
}

function slopeOf(taper: Taper, loops: readonly Loop[]): Slope {
  const way = subtract(taper.to, taper.from);
  const axis = unit(way);
  const length = dot(way, axis);
  const { from, to } = extentAlong(loops, axis);
  const start = dot(taper.from, axis);
  const reach =
    to <= start
      ? 'before'
      : from >= start + length
        ? 'after'
        : from >= start && to <= start + length
          ? 'within'
          : 'across';
  return { taper, axis, rise: length === 0 ? 0 : (taper.toValue - taper.fromValue) / length, reach };
}

function heldValue({ taper, rise, reach }: Slope): number {
  if (rise === 0 || reach === 'before') return taper.fromValue;
  return reach === 'after' ? taper.toValue : 0;
}

/** Even slopes in several directions add up to one even slope. */
function planeProfile(
  slopes: readonly Slope[],
  { held, loops }: { readonly held: number; readonly loops: readonly Loop[] },
): TaperProfile {
  const gradient = slopes.reduce<Point>(
    (sum, { axis, rise }) => ({ x: sum.x + axis.x * rise, y: sum.y + axis.y * rise }),
    { x: 0, y: 0 },
  );
  const atOrigin = slopes.reduce(
    (sum, { taper, axis, rise }) => sum + taper.fromValue - rise * dot(taper.from, axis),
    held,
  );
  const rise = hypot(gradient.x, gradient.y);
  return profileAlong(unit(gradient), (distance) => atOrigin + rise * distance, { loops, ends: [] });
}

function profileAlong(
  direction: Point,
  depthAt: (distance: number) => number,
  { loops, ends }: { readonly loops: readonly Loop[]; readonly ends: readonly number[] },
): TaperProfile {
  const frame = cutFrame(loops, direction);
  const inner = ends.filter((end) => end > frame.from && end < frame.to);
  const knots = [frame.from, ...inner.sort((a, b) => a - b), frame.to];
  const depths = knots.map(depthAt);
  return { direction, frame, depthAt, knots, low: Math.min(...depths), high: Math.max(...depths) };
}

/** A taper without length points nowhere: it holds its first value. */
function unit(vector: Point): Point {
  const length = hypot(vector.x, vector.y);
  return length === 0 ? { x: 1, y: 0 } : scale(vector, 1 / length);
}
