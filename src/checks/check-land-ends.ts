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
  const besides = arrangement.vertices.map((): [land: RegionId, etched: RegionId][] => []);
  for (const { start, end, left, right } of arrangement.edges) {
    const [a, b] = [left, right].map((face) => regions[regionOfFace[face] ?? -1]);
    if (a === undefined || b === undefined || a.level > 0 === b.level > 0) continue;
    const beside: [RegionId, RegionId] = a.level === 0 ? [a.id, b.id] : [b.id, a.id];
    for (const vertex of [start, end]) itemAt(besides, vertex).push(beside);
  }
  const ends = besides.flatMap((pairs, vertex) => {
    if (pairs.length < PIECES_APART) return [];
    return [{ vertex, pairs, limit: leastLand(plan, pairs, job.rules.minLandWidth) }];
  });
  if (ends.length === 0) return [];
  const worst = ends.reduce((most, each) => (each.limit > most.limit ? each : most));
  const beside = new Set(ends.flatMap(({ pairs }) => pairs.flat()));
  const facts = { places: ends.length, limit: worst.limit };
  const at = itemAt(arrangement.vertices, worst.vertex);
  return [finding('land-ends-in-point', facts, { at, regions: [...beside].sort() })];
}

/** As wide as land beside the deepest of these floors has to be, mm. */
function leastLand(
  { regions }: EtchPlan,
  pairs: readonly (readonly [RegionId, RegionId])[],
  least: number,
): number {
  const etched = new Set(pairs.map(([, id]) => id));
  const depth = Math.max(...regions.filter(({ id }) => etched.has(id)).map(({ level }) => level));
  return Math.max(least, LAND_TO_DEPTH.value * depth);
}
