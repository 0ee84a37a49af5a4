/**
 * ∫ max(0, s − from) dA over the inside of closed loops, s the distance along a direction: exact for lines and arcs.
 * With t square to s (a quarter turn counter-clockwise), ½ max(0, s − from)² has the integrand as its slope along s, so by Green's theorem the integral is
 * ∮ ½ max(0, s − from)² dt round the loops, outer ones counter-clockwise, holes clockwise.
 */

import { dot, type Point, turnLeft } from '#geometry/point.ts';
import { type ArcSpan, type LineSpan, type Loop, startAngle } from '#geometry/span.ts';
import { acos } from '#maths/arc-cosine.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { cos, sin } from '#maths/sine.ts';

export interface Beyond {
  /** Unit vector. */
  readonly direction: Point;
  /** Distance along it from the origin of the plane. */
  readonly from: number;
}

export function firstMomentBeyond(loops: readonly Loop[], beyond: Beyond): number {
  let sum = 0;
  for (const loop of loops) {
    for (const span of loop) sum += span.kind === 'line' ? alongLine(span, beyond) : alongArc(span, beyond);
  }
  return sum;
}

/** u = s − from changes evenly, so the part with u > 0 is a share of the line: ∫ ½ u² dt over it. */
function alongLine({ start, end }: LineSpan, { direction, from }: Beyond): number {
  const across = turnLeft(direction);
  const u0 = dot(start, direction) - from;
  const u1 = dot(end, direction) - from;
  const dt = dot(end, across) - dot(start, across);
  if (u0 <= 0 && u1 <= 0) return 0;
  if (u0 >= 0 && u1 >= 0) return (dt * (u0 * u0 + u0 * u1 + u1 * u1)) / 6;
  const top = Math.max(u0, u1);
  return (dt * (top / Math.abs(u1 - u0)) * top * top) / 6;
}

/** u = a + r cos θ and t = r sin θ, θ from the direction: ∫ ½ u² r cos θ dθ between the turns at which u passes 0. */
function alongArc(arc: ArcSpan, { direction, from }: Beyond): number {
  const { center, radius, sweep } = arc;
  const a = dot(center, direction) - from;
  const first = startAngle(arc) - atan2(direction.y, direction.x);
  const antiderivative = (angle: number) => {
    const sine = sin(angle);
    const evenly = a * a * sine + a * radius * (angle + sine * cos(angle));
    return (radius * (evenly + radius * radius * (sine - (sine * sine * sine) / 3))) / 2;
  };
  let sum = 0;
  const stops = [first, ...passings(a, radius, { first, sweep }), first + sweep];
  stops.slice(1).forEach((stop, index) => {
    const start = stops[index] ?? first;
    // u keeps its sign between two passings, but may touch 0 in the middle: where an arc's own turn is the least of it.
    const sides = [0.25, 0.5, 0.75].reduce(
      (all, share) => all + a + radius * cos(start + share * (stop - start)),
      0,
    );
    if (sides > 0) sum += antiderivative(stop) - antiderivative(start);
  });
  return sum;
}

/** Turns inside the arc at which a + r cos θ is 0, in the order of its run. */
function passings(
  a: number,
  radius: number,
  { first, sweep }: { readonly first: number; readonly sweep: number },
): number[] {
  if (Math.abs(a) >= radius) return [];
  const turn = acos(-a / radius);
  const whole = 2 * Math.PI;
  return [turn, -turn]
    .flatMap((angle) => {
      // How far round from the start, in the arc's own sense.
      const ahead = ((((angle - first) * Math.sign(sweep)) % whole) + whole) % whole;
      return ahead > 0 && ahead < Math.abs(sweep) ? [first + ahead * Math.sign(sweep)] : [];
    })
    .sort((p, q) => (p - q) * Math.sign(sweep));
}
