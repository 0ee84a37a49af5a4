/**
 * Straight runs that go on straight are made one: a vertex in the middle of a straight side would be left out by the
 * triangles on both sides of it, and they would then share more than they should.
 */

import { itemAt } from '#geometry/assert.ts';
import { hypot } from '#maths/hypot.ts';
import type { Chain } from './contour-outline.ts';
import type { MeshDraft } from './mesh-draft.ts';

/** mm; a vertex no farther than this from the way between its neighbours is in the middle of a straight side. */
const STRAIGHT = 1e-7;

export interface Borders {
  readonly withFloor: readonly Chain[];
  readonly withoutFloor: readonly Chain[];
}

/** Both borders of one depth with straight runs joined; a vertex where only one of them bends stays in both. */
export function joinStraight(
  draft: MeshDraft,
  { withFloor, withoutFloor }: Borders,
  isFixed: (vertex: number) => boolean,
): Borders {
  const all = [...new Set([...withFloor, ...withoutFloor])];
  const byStart = new Map<number, Chain>();
  const met = new Map<number, number>();
  for (const chain of all) {
    const start = itemAt(chain.vertices, 0);
    const end = itemAt(chain.vertices, chain.vertices.length - 1);
    byStart.set(start, chain);
    met.set(start, (met.get(start) ?? 0) + 1);
    met.set(end, (met.get(end) ?? 0) + 1);
  }
  const inner = new Set(withoutFloor);
  const outer = new Set(withFloor);
  const isAlike = (a: Chain, b: Chain): boolean =>
    inner.has(a) === inner.has(b) && outer.has(a) === outer.has(b);
  const follows = new Map<Chain, Chain>();
  const swallowed = new Set<Chain>();
  for (const chain of all) {
    const end = itemAt(chain.vertices, chain.vertices.length - 1);
    const next = byStart.get(end);
    if (next === undefined || next === chain || met.get(end) !== 2 || isFixed(end)) continue;
    if (!isAlike(chain, next) || !isStraightOn(draft, chain, next)) continue;
    follows.set(chain, next);
    swallowed.add(next);
  }
  if (follows.size === 0) return { withFloor, withoutFloor };
  const joined = new Map(
    all.map((chain) => [chain, swallowed.has(chain) ? undefined : lengthen(chain, follows)]),
  );
  const pick = (chains: readonly Chain[]): Chain[] => chains.flatMap((chain) => joined.get(chain) ?? []);
  const one = pick(withFloor);
  return { withFloor: one, withoutFloor: withFloor === withoutFloor ? one : pick(withoutFloor) };
}

function lengthen(chain: Chain, follows: ReadonlyMap<Chain, Chain>): Chain {
  let last = chain;
  for (let next = follows.get(last); next !== undefined; next = follows.get(last)) last = next;
  if (last === chain) return chain;
  return { vertices: [itemAt(chain.vertices, 0), itemAt(last.vertices, 1)], stage: chain.stage };
}

function isStraightOn({ xs, ys }: MeshDraft, chain: Chain, next: Chain): boolean {
  if (chain.vertices.length !== 2 || next.vertices.length !== 2) return false;
  const from = itemAt(chain.vertices, 0);
  const middle = itemAt(chain.vertices, 1);
  const to = itemAt(next.vertices, 1);
  const dx = itemAt(xs, to) - itemAt(xs, from);
  const dy = itemAt(ys, to) - itemAt(ys, from);
  const mx = itemAt(xs, middle) - itemAt(xs, from);
  const my = itemAt(ys, middle) - itemAt(ys, from);
  const length = hypot(dx, dy);
  return mx * dx + my * dy > 0 && Math.abs(dx * my - dy * mx) <= STRAIGHT * length && hypot(mx, my) < length;
}
