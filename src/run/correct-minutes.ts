/**
 * The minutes left (M7): how much deeper each stage still has to go, so that the worst deviation of any region, as a share of
 * its tolerance, is least. Floors that are open already stand where they stand, and every further minute deepens them all
 * alike; a later stage may not start before an earlier one, so the depths still to be etched fall from stage to stage.
 * Groups that would break that order are joined (pool adjacent violators). Cost: groups × regions × 60.
 */
import { assert } from '#geometry/assert.ts';

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
  const blocks: { regions: StillAsked[]; size: number; depth: number }[] = [];
  for (const group of groups) {
    let block = { regions: [...group], size: 1, depth: bestDepth(group) };
    for (let last = blocks.at(-1); last !== undefined && last.depth < block.depth; last = blocks.at(-1)) {
      blocks.pop();
      const regions = [...last.regions, ...block.regions];
      block = { regions, size: last.size + block.size, depth: bestDepth(regions) };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ size, depth }) => Array.from({ length: size }, () => depth));
}

/** The depth at which the worst share of tolerance is least; where not all can be met, of the most that can. */
function bestDepth(asked: readonly StillAsked[]): number {
  if (asked.length === 0) return 0;
  const met = common(asked, 1) === undefined ? mostTogether(asked) : asked;
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
function common(asked: readonly StillAsked[], share: number): number | undefined {
  const low = Math.max(0, ...asked.map((each) => each.aim - share * (each.aim - each.low)));
  const high = Math.min(...asked.map((each) => each.aim + share * (each.high - each.aim)));
  return low <= high + 1e-12 ? (low + high) / 2 : undefined;
}

/** The largest set that one depth meets; of several the shallowest, since metal that is too thick can still be saved. */
function mostTogether(asked: readonly StillAsked[]): readonly StillAsked[] {
  let best: readonly StillAsked[] = [];
  for (const { low } of [...asked].sort((a, b) => a.low - b.low)) {
    const depth = Math.max(0, low);
    const met = asked.filter((each) => each.low <= depth + 1e-12 && each.high >= depth - 1e-12);
    if (met.length > best.length) best = met;
  }
  if (best.length > 0) return best;
  // Every region is too deep already: nothing more.
  return [{ low: 0, aim: 0, high: 0 }];
}
