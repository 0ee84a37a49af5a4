/** INSERT: a block put somewhere, turned, scaled, mirrored, repeated in columns and rows. Whatever it leaves out has its default. */

import type { Affine } from '#drawing/curves/affine.ts';
import { compose, MIRROR_X } from '#drawing/curves/affine.ts';
import { cos, sin } from '#maths/sine.ts';
import type { Decoded } from './decoded.ts';
import { type EntityTags, numberOf, pointOf, report, textOf } from './entity-tags.ts';
import { facingOf } from './extrusion.ts';

export function decodeInsert(entity: EntityTags): Decoded {
  const block = textOf(entity, 2);
  const at = pointOf(entity, 10);
  if (block === undefined || block === '' || at === undefined) {
    report(entity, 'entity-incomplete', { lacks: at === undefined ? 'its place' : 'the name of its block' });
    return undefined;
  }
  const facing = facingOf(entity);
  if (facing === undefined) return undefined;
  const scaleX = numberOf(entity, 41) ?? 1;
  const scaleY = numberOf(entity, 42) ?? 1;
  if (scaleX === 0 || scaleY === 0) {
    report(entity, 'entity-without-size', { what: 'a scale of 0' });
    return undefined;
  }
  const { cos, sin } = turnOf(numberOf(entity, 50) ?? 0);
  const own: Affine = {
    xx: cos * scaleX,
    xy: -sin * scaleY,
    x0: at.x,
    yx: sin * scaleX,
    yy: cos * scaleY,
    y0: at.y,
  };
  // Spacings are turned with the insertion but not scaled; a mirrored frame mirrors them too.
  const columnSpacing = numberOf(entity, 44) ?? 0;
  const rowSpacing = numberOf(entity, 45) ?? 0;
  const side = facing === 'up' ? 1 : -1;
  return {
    what: 'insert',
    block,
    map: facing === 'up' ? own : compose(MIRROR_X, own),
    columns: countOf(entity, 70),
    rows: countOf(entity, 71),
    columnStep: { x: side * cos * columnSpacing, y: sin * columnSpacing },
    rowStep: { x: side * -sin * rowSpacing, y: cos * rowSpacing },
  };
}

/** Quarter turns exactly, so that square things stay square to the last bit. */
function turnOf(angleDeg: number): { cos: number; sin: number } {
  const quarters = angleDeg / 90;
  if (!Number.isInteger(quarters)) {
    const angle = (angleDeg * Math.PI) / 180;
    return { cos: cos(angle), sin: sin(angle) };
  }
  const quarter = ((quarters % 4) + 4) % 4;
  if (quarter === 0) return { cos: 1, sin: 0 };
  if (quarter === 1) return { cos: 0, sin: 1 };
  if (quarter === 2) return { cos: -1, sin: 0 };
  return { cos: 0, sin: -1 };
}

/** Missing and 0 mean one; what can be no count costs the insertion. */
function countOf(entity: EntityTags, code: number): number {
  const value = numberOf(entity, code) ?? 1;
  if (Number.isInteger(value) && value >= 0) return Math.max(1, value);
  if (!Number.isNaN(value)) report(entity, 'entity-number-bad', { group: code, text: String(value) });
  return 1;
}
