/**
 * Which way an entity faces. Plane entities (ARC, CIRCLE, LWPOLYLINE, 2D POLYLINE, INSERT, TEXT) are given in a frame of their own whose
 * Z axis is the extrusion direction; by the arbitrary axis algorithm (DXF reference, object coordinate systems) straight
 * down means that their X axis points to −X. Anything between is not in the plane of the sheet.
 */

import { codeAt } from '#drawing/read/tag-table.ts';
import { UPRIGHT } from '#geometry/tolerances.ts';
import { acos } from '#maths/arc-cosine.ts';
import { hypot } from '#maths/hypot.ts';
import { type EntityTags, report, strictNumber } from './entity-tags.ts';

export type Facing = 'up' | 'down';

/** Undefined, and reported, when the entity is tilted. */
export function facingOf(entity: EntityTags): Facing | undefined {
  let x = 0;
  let y = 0;
  let z = 1;
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(entity.tags, at);
    if (code === 210) x = strictNumber(entity, at);
    else if (code === 220) y = strictNumber(entity, at);
    else if (code === 230) z = strictNumber(entity, at);
  }
  const length = hypot(x, y, z);
  if (Number.isNaN(length)) return undefined;
  if (length === 0 || hypot(x, y) <= UPRIGHT * length) return z < 0 ? 'down' : 'up';
  report(entity, 'entity-tilted', { tiltDeg: (acos(Math.abs(z) / length) * 180) / Math.PI });
  return undefined;
}
