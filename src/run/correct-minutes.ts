/**
 * The minutes left (M7.3): how much deeper each stage still has to go. Floors that are open already stand where they stand, and
 * every further minute deepens them all alike; a later stage may not start before an earlier one, so the depths still to be
 * etched fall from stage to stage. Among all such depths first as many floors as can be are met; of several choices the
 * shallowest, since metal that is too thick can still be saved. For those floors the worst deviation, as a share of tolerance,
 * is made least, stage by stage; stages that would break the order are joined (pool adjacent violators, which is optimal for
 * whatever rises to both sides of one best depth). Stages whose floors are all lost come as near to theirs as the others let them.
 * Cost: regions × log regions, then regions × 50 a pool.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';

/** What one region still accepts, mm of further depth from the moment its group goes in to the end of the run. */
export interface StillAsked {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
}

/**
 * Further depths by group, never rising and never below 0. The first group holds the regions already open; the others one
 * later stage each. A group without regions follows the next.
 */
export function depthsLeft(groups: readonly (readonly StillAsked[])[]): number[] {
  const depths = withLost(groups, pooled(mostMet(groups)));
  let next = 0;
  return depths
    .toReversed()
    .map((depth) => {
      next = depth ?? next;
      return next;
    })
    .reverse();
}

type Group = readonly StillAsked[];

/** By group the floors of the largest choice that one falling sequence of depths meets; the first depths as small as can be. */
function mostMet(groups: readonly Group[]): Group[] {
  // Each depth of a best sequence can be lowered to where some floor begins to be met.
  const starts = groups.flatMap((group) => group.map(({ low }) => Math.max(0, low)));
  const depths = [...new Set([0, ...starts])].sort((a, b) => a - b);
  // By group and place: how many it and all later ones meet, where it goes to the place, or to none beyond it.
  const exactly: number[][] = [];
  const upTo: number[][] = [];
  for (const [group, asked] of [...groups.entries()].reverse()) {
    const later = upTo[group + 1];
    const counts = countsAt(asked, depths).map((count, place) => count + (later?.[place] ?? 0));
    exactly[group] = counts;
    let most = 0;
    upTo[group] = counts.map((count) => {
      most = Math.max(most, count);
      return most;
    });
  }
  let place = depths.length - 1;
  return groups.map((asked, group) => {
    const most = itemAt(itemAt(upTo, group), place);
    place = itemAt(exactly, group).indexOf(most);
    return asked.filter((each) => isMet(each, itemAt(depths, place)));
  });
}

/** How many of the floors each depth meets. */
function countsAt(asked: Group, depths: readonly number[]): number[] {
  const steps = new Array<number>(depths.length + 1).fill(0);
  for (const each of asked) {
    const first = depths.findIndex((depth) => isMet(each, depth));
    if (first < 0) continue;
    const last = depths.findLastIndex((depth) => isMet(each, depth));
    steps[first] = itemAt(steps, first) + 1;
    steps[last + 1] = itemAt(steps, last + 1) - 1;
  }
  let count = 0;
  return depths.map((_, place) => {
    count += itemAt(steps, place);
    return count;
  });
}

function isMet({ low, high }: StillAsked, depth: number): boolean {
  return low <= depth + SAME_SUM && high >= depth - SAME_SUM;
}

/** The best depth of each group, joined where they would rise; undefined for a group without floors. */
function pooled(groups: readonly Group[]): (number | undefined)[] {
  const blocks: { asked: Group; groups: number[]; depth: number }[] = [];
  for (const [group, asked] of groups.entries()) {
    if (asked.length === 0) continue;
    let block = { asked, groups: [group], depth: bestDepth(asked) };
    for (let last = blocks.at(-1); last !== undefined && last.depth < block.depth; last = blocks.at(-1)) {
      blocks.pop();
      const both = [...last.asked, ...block.asked];
      block = { asked: both, groups: [...last.groups, ...block.groups], depth: bestDepth(both) };
    }
    blocks.push(block);
  }
  const depths = groups.map((): number | undefined => undefined);
  for (const { groups: members, depth } of blocks) for (const group of members) depths[group] = depth;
  return depths;
}

/** Stages whose floors are all lost: as near to theirs as the stages before and after let them. */
function withLost(groups: readonly Group[], known: readonly (number | undefined)[]): (number | undefined)[] {
  const depths = [...known];
  for (let from = 0; from < groups.length; from++) {
    if (known[from] !== undefined) continue;
    const end = known.findIndex((depth, at) => at > from && depth !== undefined);
    const to = end < 0 ? groups.length : end;
    const [above, below] = [from === 0 ? Number.POSITIVE_INFINITY : (known[from - 1] ?? 0), known[to] ?? 0];
    for (const [at, depth] of pooled(groups.slice(from, to)).entries()) {
      if (depth !== undefined) depths[from + at] = Math.min(above, Math.max(below, depth));
    }
    from = to;
  }
  return depths;
}

/** The depth at which the worst share of tolerance is least; where not all can be met, of the most that can. */
function bestDepth(asked: Group): number {
  const met = common(asked, 1) === undefined ? mostMet([asked]).flat() : asked;
  // Every region is too deep already: nothing more.
  if (met.length === 0) return 0;
  let enough = 1;
  let tooLittle = 0;
  for (let halving = 0; halving < 50; halving++) {
    const share = (enough + tooLittle) / 2;
    if (common(met, share) === undefined) tooLittle = share;
    else enough = share;
  }
  const best = common(met, enough);
  assert(best !== undefined, 'regions that are met at the whole tolerance are met at the least share');
  return Math.max(0, best);
}

/** The middle of what all accept with their tolerances shrunk to a share; undefined where they have nothing in common. */
function common(asked: Group, share: number): number | undefined {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  for (const each of asked) {
    low = Math.max(low, each.aim - share * (each.aim - each.low));
    high = Math.min(high, each.aim + share * (each.high - each.aim));
  }
  return low <= high + SAME_SUM ? (low + high) / 2 : undefined;
}
