/** What a relief's strips and ground ask of the front. */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import { makeProbe } from '#front/depth-at.ts';
import { momentAt } from '#front/front.ts';
import { isNearFront } from '#front/near-front.ts';
import { itemAt } from '#geometry/assert.ts';
import type { GroundRules } from './ground-mesh.ts';
import { placeOn } from './lattice.ts';
import type { MeshDraft } from './mesh-draft.ts';
import type { ZipRules } from './zip-loops.ts';

/** @param heightOf height of a corner at a depth, mm */
export function groundRules(
  draft: MeshDraft,
  kit: ContourKit,
  {
    minute,
    heightOf,
    tolerance,
  }: { minute: number | undefined; heightOf: (depth: number) => number; tolerance: number },
): GroundRules {
  const { index } = kit;
  const moment = momentAt(index.front, minute);
  const probe = makeProbe(index, moment);
  const floors = new Map(
    index.front.stages.map(({ number }, stage) => [heightOf(itemAt(moment.floors, stage)), number]),
  );
  floors.set(0, 0);
  return {
    heightAt: (x, y) => heightOf(probe.measure(x, y)),
    isFlat: (height) => floors.has(height),
    tolerance,
    stageOf: (a, b, c) => {
      const { xs, ys, zs, lattice } = draft;
      const z = itemAt(zs, a);
      const floor = z === zs[b] && z === zs[c] ? floors.get(z) : undefined;
      if (floor !== undefined) return floor;
      const place = placeOn(lattice, { x: middle(xs, a, b, c), y: middle(ys, a, b, c) });
      probe.measure(place.x, place.y);
      return probe.stage();
    },
  };
}

/** @param longest mm; shorter triangles of a strip are no farther off the front than chords are, about two of which that is */
export function zipRules(
  draft: MeshDraft,
  { heightAt, tolerance }: GroundRules,
  { numbers, longest }: { numbers: readonly number[]; longest: number },
): ZipRules {
  const { perMm } = draft.lattice;
  return {
    numbers,
    squaredReach: longest * perMm * longest * perMm,
    isTrue: (a, b, c) => {
      const height = middle(draft.zs, a, b, c);
      const place = placeOn(draft.lattice, { x: middle(draft.xs, a, b, c), y: middle(draft.ys, a, b, c) });
      return isNearFront(heightAt, place, { height, tolerance });
    },
  };
}

function middle(values: Float64Array, a: number, b: number, c: number): number {
  return ((values[a] as number) + (values[b] as number) + (values[c] as number)) / 3;
}
