/**
 * Where along one scribe line its template is left uncut. The middles of the bridges keep out of given stretches, no slot
 * between two bridges is longer or shorter than it may be, there are as few bridges as that takes, and they divide the line as
 * evenly as their places allow. A closed line has at least two.
 *
 * A line is a length from 0 on; a closed one is unrolled from its first bridge. That stands in the middle of a free stretch if it
 * can, else at the beginning of one: all bridges of a choice can be moved back together until one of them stands there.
 * Cost: bridges × free stretches², and for a closed line without room as often as it has free stretches.
 */

import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';

export interface Range {
  readonly from: number;
  readonly to: number;
}

export interface BridgeAsk {
  readonly length: number;
  readonly isClosed: boolean;
  /** Where the middle of a bridge may not stand; on a closed line they may pass its start. */
  readonly keepOut: readonly Range[];
}

export interface BridgeRule {
  /** mm along the line */
  readonly width: number;
  /** Longest and shortest slot, mm. */
  readonly longest: number;
  readonly shortest: number;
}

/** More than the fewest, before giving up: a line cut up that much more is no template. */
const MORE = 8;

/** Middles of the bridges, ascending (on a closed line within one length of the first); undefined where there is no room. */
export function placeBridges(ask: BridgeAsk, rule: BridgeRule): number[] | undefined {
  const { length, isClosed } = ask;
  const half = rule.width / 2;
  const free = freeStretches(ask, rule);
  if (!isClosed) return between({ from: -half, to: length + half }, 0, free, rule);
  const stretches = free
    .filter(({ from }) => from < length)
    .sort((a, b) => b.to - b.from - (a.to - a.from) || a.from - b.from);
  const middles = stretches.map(({ from, to }) => (to - from >= length ? from : (from + to) / 2) % length);
  for (const first of [...middles, ...stretches.map(({ from }) => from)]) {
    const others = between({ from: first, to: first + length }, 1, free, rule);
    if (others !== undefined) return [first, ...others];
  }
  return undefined;
}

/** Where the middle of a bridge may stand, in order: on an open line clear of its ends, on a closed one twice round. One that ends before it begins is none. */
function freeStretches({ length, isClosed, keepOut }: BridgeAsk, { width, shortest }: BridgeRule): Range[] {
  const turns = isClosed ? [-1, 0, 1, 2] : [0];
  const end = isClosed ? 2 * length : length - shortest - width / 2;
  const shut = turns
    .flatMap((turn) =>
      keepOut.map(({ from, to }) => ({ from: from + turn * length, to: to + turn * length })),
    )
    .sort((a, b) => a.from - b.from);
  const free: Range[] = [];
  let at = isClosed ? 0 : shortest + width / 2;
  for (const { from, to } of shut) {
    if (from > at) free.push({ from: at, to: Math.min(from, end) });
    at = Math.max(at, to);
  }
  free.push({ from: at, to: end });
  return free;
}

/** The fewest bridges, at least so many, between two that stand. */
function between(
  posts: Range,
  atLeast: number,
  free: readonly Range[],
  rule: BridgeRule,
): number[] | undefined {
  const whole = posts.to - posts.from;
  const needed = Math.ceil((whole - SAME_SUM) / (rule.longest + rule.width)) - 1;
  const room = Math.floor((whole + SAME_SUM) / (rule.shortest + rule.width)) - 1;
  const fewest = Math.max(atLeast, needed);
  for (let count = fewest; count <= Math.min(room, fewest + MORE); count++) {
    const places = mostEven(posts, count, free, rule);
    if (places !== undefined) return places;
  }
  return undefined;
}

/**
 * So many bridges between the posts. Forward: all places that each bridge can reach, as stretches, so that room is found wherever
 * there is some. Then backward: each bridge as near to even division of what is left as the next one and the reach allow.
 */
function mostEven(
  posts: Range,
  count: number,
  free: readonly Range[],
  { width, shortest, longest }: BridgeRule,
): number[] | undefined {
  const [least, most] = [shortest + width - SAME_SUM, longest + width + SAME_SUM];
  const reach: (readonly Range[])[] = [[{ from: posts.from, to: posts.from }]];
  for (let bridge = 1; bridge <= count; bridge++) {
    const before = itemAt(reach, bridge - 1);
    const ahead = before.map(({ from, to }) => ({ from: from + least, to: to + most }));
    reach.push(shared(united(ahead), free));
  }
  const places: number[] = [];
  let next = posts.to;
  for (let bridge = count; bridge >= 0; bridge--) {
    // A hair wider than the way forward, whose ends are places to come back to.
    const window = [{ from: next - most - SAME_SUM, to: next - least + SAME_SUM }];
    const even = posts.from + ((next - posts.from) * bridge) / (bridge + 1);
    const at = nearest(shared(itemAt(reach, bridge), window), even);
    if (at === undefined) return undefined;
    if (bridge > 0) places.unshift(at);
    next = at;
  }
  return places;
}

/** Stretches whose ends both come in order; those that overlap made one. */
function united(ranges: readonly Range[]): Range[] {
  const whole: Range[] = [];
  for (const range of ranges) {
    const last = whole.at(-1);
    if (last === undefined || range.from > last.to) whole.push(range);
    else whole[whole.length - 1] = { from: last.from, to: range.to };
  }
  return whole;
}

/** What lies in both. */
function shared(as: readonly Range[], bs: readonly Range[]): Range[] {
  return as.flatMap((a) =>
    bs
      .map((b) => ({ from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) }))
      .filter(({ from, to }) => from <= to),
  );
}

function nearest(ranges: readonly Range[], wanted: number): number | undefined {
  let best: number | undefined;
  for (const { from, to } of ranges) {
    const at = Math.min(to, Math.max(from, wanted));
    if (best === undefined || Math.abs(at - wanted) < Math.abs(best - wanted)) best = at;
  }
  return best;
}
