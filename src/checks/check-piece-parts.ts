/** Regions whose opening falls into several parts, each to be found, cut and peeled by itself, with a ridge between them. */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea, pointAlong, type Span, tangentAlong } from '#geometry/span.ts';
import { JUST_BESIDE, TOUCHING } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { type MakingPlace, type PlaceRule, stageNumbers, type WholePlan } from './making.ts';

interface SplitRegion {
  readonly level: number;
  readonly region: RegionId;
  readonly at: Point;
  readonly parts: readonly Loop[];
}

export const pieceParts: PlaceRule<SplitRegion> = { find, report };

function find(making: MakingPlace): SplitRegion[] {
  return making.plan.stages.flatMap(({ opening, level }) => {
    const whole = partAtTouches(opening, TOUCHING);
    return [...partsByRegion(making, whole, level)].flatMap(([{ id, label }, loops]) =>
      loops.size > 1
        ? [{ level, region: id, at: label, parts: [...loops].map((loop) => itemAt(whole, loop)) }]
        : [],
    );
  });
}

/** One finding a stage, about the region in the most parts. */
function report(found: readonly SplitRegion[], whole: WholePlan): Finding[] {
  const numberOf = stageNumbers(whole);
  return whole.plan.stages.flatMap(({ level }) => {
    const split = found.filter((each) => each.level === level);
    const [most] = [...split].sort((a, b) => b.parts.length - a.parts.length);
    if (most === undefined) return [];
    const { at, parts } = most;
    return [
      finding(
        'piece-in-many-parts',
        { parts: parts.length, stage: numberOf(level), regions: split.length },
        {
          at,
          regions: split.map(({ region }) => region).sort(),
          outline: parts.map((spans) => ({ closed: true, spans })),
        },
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
  { around, plan }: MakingPlace,
  opening: readonly Loop[],
  level: number,
): Map<PlannedRegion, Set<number>> {
  const parts = new Map<PlannedRegion, Set<number>>();
  const hasThrough = plan.masking === 're-mask' && plan.regions.some(({ asked }) => asked.wall !== undefined);
  opening.forEach((loop, number) => {
    if (loopArea(loop) <= 0) return;
    // With a new coat for each stage the window of what is cut out may reach over its neighbours: it is no part of their opening.
    if (hasThrough && around.regionAt(labelPoint([loop]))?.asked.wall !== undefined) return;
    for (const span of loop) {
      const region = around.regionAt(justInside(span));
      if (region?.level !== level) continue;
      const known = parts.get(region);
      if (known === undefined) parts.set(region, new Set([number]));
      else known.add(number);
    }
  });
  return parts;
}
