/** CIRCLE, ARC and ELLIPSE. Angles of an ARC are degrees in its own frame; those of an ELLIPSE are parameters in radians, in the world's frame. */

import { MIRROR_X } from '#drawing/curves/affine.ts';
import { type ConicPrimitive, mapPrimitive } from '#drawing/curves/curve-primitive.ts';
import type { Point } from '#geometry/point.ts';
import { SHORTEST_SPAN, UPRIGHT, WHOLE_TURN } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import type { Decoded } from './decoded.ts';
import { type EntityTags, numberOf, pointOf, report, scaled } from './entity-tags.ts';
import { facingOf } from './extrusion.ts';

const TURN = 2 * Math.PI;

export function decodeCircle(entity: EntityTags): Decoded {
  const circle = circleOf(entity);
  return circle === undefined ? undefined : oriented(entity, circle, 0, TURN);
}

export function decodeArc(entity: EntityTags): Decoded {
  const circle = circleOf(entity);
  const fromDeg = numberOf(entity, 50);
  const toDeg = numberOf(entity, 51);
  if (circle === undefined) return undefined;
  if (fromDeg === undefined || toDeg === undefined) {
    report(entity, 'entity-incomplete', { lacks: 'an angle' }, circle.center);
    return undefined;
  }
  const sweep = sweepBetween((fromDeg * Math.PI) / 180, (toDeg * Math.PI) / 180);
  if (sweep === undefined) {
    report(
      entity,
      'entity-without-size',
      { what: 'equal start and end angles' },
      scaled(entity, circle.center),
    );
    return undefined;
  }
  return oriented(entity, circle, (fromDeg * Math.PI) / 180, sweep);
}

export function decodeEllipse(entity: EntityTags): Decoded {
  const center = pointOf(entity, 10);
  const major = pointOf(entity, 11);
  const ratio = numberOf(entity, 40);
  if (center === undefined || major === undefined || ratio === undefined) {
    const lacks =
      center === undefined ? 'its centre' : major === undefined ? 'its long axis' : 'its axis ratio';
    report(entity, 'entity-incomplete', { lacks });
    return undefined;
  }
  const facing = facingOf(entity);
  if (facing === undefined) return undefined;
  const length = hypot(major.x, major.y);
  const rise = Math.abs(numberOf(entity, 31) ?? 0);
  if (rise > UPRIGHT * length) {
    report(entity, 'entity-tilted', { tiltDeg: (atan2(rise, length) * 180) / Math.PI });
    return undefined;
  }
  if (Math.min(1, Math.abs(ratio)) * length * entity.millimetres < SHORTEST_SPAN) {
    report(entity, 'entity-without-size', { what: 'an axis of no length' }, scaled(entity, center));
    return undefined;
  }
  // The short axis is the extrusion direction times the long axis.
  const side = facing === 'up' ? ratio : -ratio;
  const up = { x: -major.y * side, y: major.x * side };
  const from = numberOf(entity, 41) ?? 0;
  const sweep = sweepBetween(from, numberOf(entity, 42) ?? TURN);
  if (sweep === undefined) {
    report(entity, 'entity-without-size', { what: 'equal start and end parameters' }, scaled(entity, center));
    return undefined;
  }
  return { what: 'curve', primitives: [{ kind: 'conic', center, across: major, up, from, sweep }] };
}

interface Circle {
  readonly center: Point;
  readonly radius: number;
}

function circleOf(entity: EntityTags): Circle | undefined {
  const center = pointOf(entity, 10);
  const radius = numberOf(entity, 40);
  if (center === undefined || radius === undefined) {
    report(entity, 'entity-incomplete', { lacks: center === undefined ? 'its centre' : 'its radius' });
    return undefined;
  }
  if (radius * entity.millimetres < SHORTEST_SPAN) {
    const what = radius < 0 ? `a radius below 0 (${radius})` : 'a radius of 0';
    report(entity, 'entity-without-size', { what }, scaled(entity, center));
    return undefined;
  }
  return { center, radius };
}

function oriented(entity: EntityTags, { center, radius }: Circle, from: number, sweep: number): Decoded {
  const facing = facingOf(entity);
  if (facing === undefined) return undefined;
  const across = { x: radius, y: 0 };
  const primitive: ConicPrimitive = { kind: 'conic', center, across, up: { x: 0, y: radius }, from, sweep };
  return { what: 'curve', primitives: [facing === 'up' ? primitive : mapPrimitive(MIRROR_X, primitive)] };
}

/** Counter-clockwise from one angle to the other, above 0 and up to a whole turn; undefined when they are the same. */
function sweepBetween(from: number, to: number): number | undefined {
  if (from === to) return undefined;
  const turned = (to - from) % TURN;
  const sweep = turned < 0 ? turned + TURN : turned;
  return sweep < WHOLE_TURN || sweep > TURN - WHOLE_TURN ? wholeOrNone(from, to, sweep) : sweep;
}

/** 0 to 360 is a whole turn; so is 0 to 359.9999999; 30 to 30.0000001 is a very short arc. */
function wholeOrNone(from: number, to: number, sweep: number): number {
  return Math.abs(to - from) > Math.PI ? TURN : sweep;
}
