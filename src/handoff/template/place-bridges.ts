/**
 * Where along one scribe line its template is left uncut. The middles of the bridges keep out of given stretches, no slot
 * between two bridges is longer or shorter than it may be, there are as few bridges as that takes, and among their places
 * those are chosen that divide the line most evenly. A closed line has at least two.
 *
 * A line is a length from 0 on; a closed one is unrolled from its first bridge. That stands in the middle of a free stretch if it
 * can, else at the beginning of one: all bridges of a choice can be moved back together until one of them stands there.
 * Cost: bridges × places to try², and for a closed line without room once for each free stretch.
 */
import { itemAt } from '#geometry/assert.ts';

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

/** Rounding of lengths along a line, mm. */
const SLACK = 1e-9;
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

/** Where the middle of a bridge may stand: on an open line clear of its ends, on a closed one twice round. */
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
    if (at >= end) break;
  }
  if (at <= end) free.push({ from: at, to: end });
  return free.filter(({ from, to }) => to >= from);
}

/** The fewest bridges, at least so many, between two that stand. */
function between(
  posts: Range,
  atLeast: number,
  free: readonly Range[],
  rule: BridgeRule,
): number[] | undefined {
  const whole = posts.to - posts.from;
  const needed = Math.ceil((whole - SLACK) / (rule.longest + rule.width)) - 1;
  const room = Math.floor((whole + SLACK) / (rule.shortest + rule.width)) - 1;
  const fewest = Math.max(atLeast, needed);
  for (let count = fewest; count <= Math.min(room, fewest + MORE); count++) {
    const places = mostEven(posts, count, free, rule);
    if (places !== undefined) return places;
  }
  return undefined;
}

interface Try {
  readonly at: number;
  /** Sum of squared departures from even gaps up to here. */
  readonly cost: number;
  readonly before: Try | undefined;
}

/** So many bridges, least uneven of all choices among the places worth trying. */
function mostEven(
  posts: Range,
  count: number,
  free: readonly Range[],
  rule: BridgeRule,
): number[] | undefined {
  const even = (posts.to - posts.from) / (count + 1);
  const places = placesToTry(posts, count, free, rule);
  let last: Try[] = [{ at: posts.from, cost: 0, before: undefined }];
  for (let bridge = 1; bridge <= count + 1; bridge++) {
    const targets = bridge > count ? [posts.to] : places;
    last = targets.flatMap((at) => {
      let best: Try | undefined;
      for (const before of last) {
        const slot = at - before.at - rule.width;
        if (slot < rule.shortest - SLACK || slot > rule.longest + SLACK) continue;
        const cost = before.cost + (at - before.at - even) ** 2;
        if (best === undefined || cost < best.cost - SLACK) best = { at, cost, before };
      }
      return best === undefined ? [] : [best];
    });
  }
  const chosen: number[] = [];
  for (let each = last[0]?.before; each?.before !== undefined; each = each.before) chosen.unshift(each.at);
  return last.length === 0 ? undefined : chosen;
}

/** Ends and middles of free stretches, what lies nearest to even division, and as far as each longest slot reaches. */
function placesToTry(posts: Range, count: number, free: readonly Range[], rule: BridgeRule): number[] {
  const inside = free.filter(({ from, to }) => to >= posts.from && from <= posts.to);
  if (inside.length === 0) return [];
  const places = inside.flatMap(({ from, to }) => [from, (from + to) / 2, to]);
  let reach = posts.from;
  for (let bridge = 1; bridge <= count; bridge++) {
    places.push(nearest(inside, posts.from + ((posts.to - posts.from) * bridge) / (count + 1)));
    reach = lastUpTo(inside, reach + rule.longest + rule.width) ?? reach;
    places.push(reach);
  }
  return [...new Set(places)].filter((at) => at > posts.from && at < posts.to).sort((a, b) => a - b);
}

function nearest(free: readonly Range[], wanted: number): number {
  const clamped = free.map(({ from, to }) => Math.min(to, Math.max(from, wanted)));
  return clamped.reduce(
    (best, at) => (Math.abs(at - wanted) < Math.abs(best - wanted) ? at : best),
    itemAt(clamped, 0),
  );
}

function lastUpTo(free: readonly Range[], limit: number): number | undefined {
  const below = free.filter(({ from }) => from <= limit).at(-1);
  return below === undefined ? undefined : Math.min(below.to, limit);
}
