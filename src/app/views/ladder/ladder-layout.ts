/**
 * Where the ladder's rows of words stand: as near to their true height as they can without overlapping, in order. The levels
 * themselves stay to scale; leaders tie words and levels together.
 */

import { SAME_COUNT } from '#geometry/tolerances.ts';

export interface LadderRow {
  /** Where the middle of the row should be, in pixels from the top; rising. */
  readonly wanted: number;
  readonly height: number;
}

interface Block {
  /** Wanted top of the block if it stood alone, averaged over its rows. */
  wantedTop: number;
  rows: number;
  height: number;
}

/** Tops of the rows inside 0 … `room`; where they can't all fit they overflow at the bottom. */
export function placeRows(rows: readonly LadderRow[], room: number): number[] {
  const blocks: Block[] = [];
  for (const { wanted, height } of rows) {
    blocks.push({ wantedTop: wanted - height / 2, rows: 1, height });
    mergeOverlaps(blocks);
  }
  const tops: number[] = [];
  const total = rows.reduce((sum, row) => sum + row.height, 0);
  let below = 0;
  let left = total;
  for (const block of blocks) {
    // Not above what is placed already, and so that all that follows has room.
    let top = Math.max(below, Math.min(block.wantedTop, room - left));
    for (const row of rows.slice(tops.length, tops.length + block.rows)) {
      tops.push(top);
      top += row.height;
    }
    below = top;
    left -= block.height;
  }
  return tops;
}

/** A block that reaches into the one above joins it: together they stand where their rows want to be on average. */
function mergeOverlaps(blocks: Block[]): void {
  for (let lower = blocks.at(-1), upper = blocks.at(-2); lower !== undefined && upper !== undefined; ) {
    if (upper.wantedTop + upper.height <= lower.wantedTop) return;
    const rows = upper.rows + lower.rows;
    upper.wantedTop = (upper.wantedTop * upper.rows + (lower.wantedTop - upper.height) * lower.rows) / rows;
    upper.rows = rows;
    upper.height += lower.height;
    blocks.pop();
    lower = upper;
    upper = blocks.at(-2);
  }
}

const STEPS = [1, 2, 5];

/** Round figures for a scale from 0 to `length` with at most `most` steps: 1, 2 or 5 times a power of ten apart. */
export function scaleTicks(length: number, most: number): number[] {
  const step = roundStep(length / most);
  return Array.from({ length: Math.floor(length / step + SAME_COUNT) + 1 }, (_, index) => index * step);
}

/** The smallest round figure not below `least`. */
export function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = STEPS.find((each) => each * power >= least * (1 - SAME_COUNT)) ?? 10;
  return factor * power;
}
