/**
 * Land that ends in a point: where etched areas on both sides of it meet in one place, as where two outlines cross and what lies in both stays
 * uncut, or where two pockets touch by their corners. Its width there is nothing, whatever it is elsewhere.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { PlanPlace } from './making.ts';
import { LAND_TO_DEPTH } from './making-limits.ts';

/** Edges between land and an etched area that come together at one place: two of them go round one piece of land, four between two. */
const PIECES_APART = 4;

export function checkLandEnds({ plan, job }: PlanPlace): Finding[] {
  const { arrangement, regions, regionOfFace } = plan;
  const kinds = Int8Array.from(regionOfFace, (region) =>
    region < 0 ? -1 : Math.sign(itemAt(regions, region).level),
  );
  const shores = arrangement.edges.filter(
    ({ left, right }) => itemAt(kinds, left) + itemAt(kinds, right) === 1,
  );
  const counts = new Int32Array(arrangement.vertices.length);
  for (const { start, end } of shores) {
    counts[start] = itemAt(counts, start) + 1;
    counts[end] = itemAt(counts, end) + 1;
  }
  const besides = new Map<number, [land: RegionId, etched: RegionId][]>();
  for (const { start, end, left, right } of shores) {
    for (const vertex of [start, end]) {
      if (itemAt(counts, vertex) < PIECES_APART) continue;
      const [land, etched] = itemAt(kinds, left) === 0 ? [left, right] : [right, left];
      const pairs = besides.get(vertex) ?? [];
      pairs.push([idOf(plan, land), idOf(plan, etched)]);
      besides.set(vertex, pairs);
    }
  }
  const ends = [...besides]
    .sort(([a], [b]) => a - b)
    .map(([vertex, pairs]) => ({ vertex, pairs, limit: leastLand(plan, pairs, job.rules.minLandWidth) }));
  if (ends.length === 0) return [];
  const worst = ends.reduce((most, each) => (each.limit > most.limit ? each : most));
  const beside = new Set(ends.flatMap(({ pairs }) => pairs.flat()));
  const facts = { places: ends.length, limit: worst.limit };
  const at = itemAt(arrangement.vertices, worst.vertex);
  return [finding('land-ends-in-point', facts, { at, regions: [...beside].sort() })];
}

function idOf({ regions, regionOfFace }: EtchPlan, face: number): RegionId {
  return itemAt(regions, itemAt(regionOfFace, face)).id;
}

/** As wide as land beside the deepest of these floors has to be, mm. */
function leastLand(
  { regions }: EtchPlan,
  pairs: readonly (readonly [RegionId, RegionId])[],
  least: number,
): number {
  const etched = new Set(pairs.map(([, id]) => id));
  const depth = regions.reduce((most, { id, level }) => (etched.has(id) ? Math.max(most, level) : most), 0);
  return Math.max(least, LAND_TO_DEPTH.value * depth);
}
