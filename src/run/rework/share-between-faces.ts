/**
 * What each floor still accepts where floors of both faces lie behind each other (M8.5): a dip takes the same from every floor that is
 * open, so what a place needs in all is the sum of what its floors get, and a floor that lies over several others has to serve all of
 * those places. Found is first what comes nearest to the middle of every place, shared evenly where nothing else decides; then, where
 * that misses one, the nearest that misses none (projections onto convex sets in turn; L. M. Bregman, 1965, from memory). Each floor may
 * leave it by so much that its partner may do the same. No place ever gets more than it bears.
 * Cost: places × rounds.
 */
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { ExtraEtch } from './extra-dips.ts';

/** mm of metal that still have to go at a place in all; `most` under 0 where it is too thin already. */
export interface PlaceNeed extends ExtraEtch {
  /** One, or one of either face. */
  readonly floors: readonly string[];
}

/** Enough that what is left to correct is far below a micrometre, however floors hang together. */
const ROUNDS = 2000;

/** By floor. One of a place that is too thin already takes nothing more: its `most` is under 0. */
export function shareBetweenFaces(places: readonly PlaceNeed[]): Map<string, ExtraEtch> {
  const held = new Set(places.flatMap(({ floors, most }) => (most < -SAME_SUM ? floors : [])));
  const open = places
    .filter(({ most }) => most >= -SAME_SUM)
    .map((place) => ({ ...place, floors: place.floors.filter((id) => !held.has(id)) }))
    .filter(({ floors }) => floors.length > 0);
  const middles = middlesOf(open);
  const found = new Map<string, ExtraEtch>();
  for (const place of open) {
    for (const id of place.floors) {
      const here = isAlone(place, open) ? place : roomAround(middles.get(id) ?? 0, place, middles);
      const known = found.get(id);
      found.set(id, {
        least: Math.max(0, here.least, known?.least ?? 0),
        most: Math.min(here.most, known?.most ?? Number.POSITIVE_INFINITY),
      });
    }
  }
  const inOrder = new Set(places.flatMap(({ floors }) => floors));
  return new Map([...inOrder].map((id) => [id, found.get(id) ?? { least: 0, most: -1 }]));
}

/** One floor that lies at no other place: bit for bit what the place needs. */
function isAlone({ floors: [id, other] }: PlaceNeed, places: readonly PlaceNeed[]): boolean {
  if (id === undefined || other !== undefined) return false;
  return places.filter(({ floors }) => floors.includes(id)).length === 1;
}

function roomAround(
  middle: number,
  { floors, least, most }: PlaceNeed,
  middles: ReadonlyMap<string, number>,
): ExtraEtch {
  const sum = sumOf(floors, middles);
  return {
    least: middle - Math.max(0, sum - least) / floors.length,
    most: middle + Math.max(0, most - sum) / floors.length,
  };
}

function sumOf(floors: readonly string[], gets: ReadonlyMap<string, number>): number {
  return floors.reduce((total, id) => total + (gets.get(id) ?? 0), 0);
}

/** What each floor gets, none less than nothing. */
function middlesOf(places: readonly PlaceNeed[]): Map<string, number> {
  const gets = nearestToMiddles(places);
  const correct = (offBy: (sum: number, place: PlaceNeed) => number) => {
    for (let round = 0; round < ROUNDS; round++) {
      let isStill = true;
      for (const place of places) {
        const off = offBy(sumOf(place.floors, gets), place);
        if (Math.abs(off) <= SAME_SUM) continue;
        isStill = false;
        for (const id of place.floors)
          gets.set(id, Math.max(0, (gets.get(id) ?? 0) - off / place.floors.length));
      }
      if (isStill) return;
    }
  };
  correct((sum, { least, most }) => Math.max(0, sum - most) - Math.max(0, least - sum));
  correct((sum, { most }) => Math.max(0, sum - most));
  return gets;
}

/** All places corrected at once, each floor by the mean of what its places ask: least squares. */
function nearestToMiddles(places: readonly PlaceNeed[]): Map<string, number> {
  const gets = new Map(places.flatMap(({ floors }) => floors.map((id) => [id, 0])));
  for (let round = 0; round < ROUNDS; round++) {
    const changes = new Map<string, number[]>();
    for (const { floors, least, most } of places) {
      const change = ((least + most) / 2 - sumOf(floors, gets)) / floors.length;
      for (const id of floors) changes.set(id, [...(changes.get(id) ?? []), change]);
    }
    let isStill = true;
    for (const [id, own] of changes) {
      const before = gets.get(id) ?? 0;
      const after = Math.max(0, before + own.reduce((sum, each) => sum + each, 0) / own.length);
      if (Math.abs(after - before) > SAME_SUM) isStill = false;
      gets.set(id, after);
    }
    if (isStill) break;
  }
  return gets;
}
