/**
 * Levels too near each other to be two (M4.2): closer than a floor can be placed, etched or gauged. They become one, half-way
 * between the outermost, as long as every region that asked for one of them keeps its tolerance.
 */
import { itemAt } from '#geometry/assert.ts';
import { ROUNDING, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { DepthBand } from './fewest-levels.ts';

export interface NearLevels {
  readonly from: number;
  readonly to: number;
  /** The one that takes their place. */
  readonly level: number;
}

export interface MergedLevels {
  /** Rising. */
  readonly levels: readonly number[];
  readonly merged: readonly NearLevels[];
}

/** @param bands what is asked of the regions, whose tolerances decide whether they can do with one level */
export function mergeNearLevels(levels: readonly number[], bands: readonly DepthBand[]): MergedLevels {
  const rising = [...new Set(levels)].sort((a, b) => a - b);
  const kept: number[] = [];
  const merged: NearLevels[] = [];
  for (let first = 0; first < rising.length; ) {
    const from = itemAt(rising, first);
    let last = first;
    while (last + 1 < rising.length && canBeOne({ from, to: itemAt(rising, last + 1) }, bands)) last++;
    const to = itemAt(rising, last);
    if (last > first) merged.push({ from, to, level: middleOf({ from, to }) });
    kept.push(last > first ? middleOf({ from, to }) : from);
    first = last + 1;
  }
  return { levels: kept, merged };
}

interface Between {
  readonly from: number;
  readonly to: number;
}

function middleOf({ from, to }: Between): number {
  return (from + to) / 2;
}

/** Whether the levels are near enough, and their middle serves every flat floor that one of them served. */
function canBeOne({ from, to }: Between, bands: readonly DepthBand[]): boolean {
  if (to - from > SCRIBE_ACCURACY + ROUNDING) return false;
  const level = middleOf({ from, to });
  return bands.every(({ low, high, minus, plus }) => {
    const isFlat = low === high;
    const wasServed = low - minus <= to && low + plus >= from;
    return !isFlat || !wasServed || (low - minus <= level && level <= low + plus);
  });
}
