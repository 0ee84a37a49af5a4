/**
 * Items sorted by a figure and put together where figures differ by rounding only: each group's figures follow each other within
 * the tolerance, so that where a figure happens to lie on a grid decides nothing.
 */
import { itemAt } from './assert.ts';

export function groupNear<Item>(
  items: readonly Item[],
  figureOf: (item: Item) => number,
  apart: number,
): Item[][] {
  const rising = items.map((item) => ({ item, figure: figureOf(item) })).sort((a, b) => a.figure - b.figure);
  const groups: Item[][] = [];
  rising.forEach(({ item, figure }, i) => {
    const before = i === 0 ? Number.NEGATIVE_INFINITY : itemAt(rising, i - 1).figure;
    const last = groups.at(-1);
    if (last === undefined || figure - before > apart) groups.push([item]);
    else last.push(item);
  });
  return groups;
}
