/** Regions whose opening falls into several parts, each to be found, cut and peeled by itself, with a ridge between them. */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea, pointAlong, type Span, tangentAlong } from '#geometry/span.ts';
import { JUST_BESIDE, TOUCHING } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';
import type { MakingPlace } from './making.ts';

export function checkPieceParts(making: MakingPlace): Finding[] {
  return making.plan.stages.flatMap((stage) => {
    const opening = partAtTouches(stage.opening, TOUCHING);
    const split = [...partsByRegion(making, opening, stage.level)].filter(([, loops]) => loops.size > 1);
    if (split.length === 0) return [];
    const [most] = [...split].sort((a, b) => b[1].size - a[1].size);
    const [region, loops] = most ?? itemAt(split, 0);
    const at = making.plan.regions.find(({ id }) => id === region)?.label;
    const outline = [...loops].map((loop) => ({ closed: true, spans: itemAt(opening, loop) }));
    return [
      finding(
        'piece-in-many-parts',
        { parts: loops.size, stage: stage.number, regions: split.length },
        { ...(at === undefined ? {} : { at }), regions: split.map(([id]) => id).sort(), outline },
      ),
    ];
  });
}

function justInside(span: Span): Point {
  const { x, y } = pointAlong(span, 0.5);
  const along = tangentAlong(span, 0.5);
  return { x: x - along.y * JUST_BESIDE, y: y + along.x * JUST_BESIDE };
}

/** Outer loops of the opening by the region that they come into, for regions of the stage's level. */
function partsByRegion(
  { around }: MakingPlace,
  opening: readonly Loop[],
  level: number,
): Map<RegionId, Set<number>> {
  const parts = new Map<RegionId, Set<number>>();
  opening.forEach((loop, number) => {
    if (loopArea(loop) <= 0) return;
    for (const span of loop) {
      const region = around.regionAt(justInside(span));
      if (region?.level !== level) continue;
      const known = parts.get(region.id);
      if (known === undefined) parts.set(region.id, new Set([number]));
      else known.add(number);
    }
  });
  return parts;
}
