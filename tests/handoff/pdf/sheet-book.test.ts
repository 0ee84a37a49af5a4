/** Blocks on pages: what stays together. */
import { expect, test } from 'vitest';
import { type Block, paged, together } from '#handoff/pdf/sheet-book.ts';

const block = (height: number, keepsWith?: number): Block => ({
  height,
  draw: () => undefined,
  ...(keepsWith === undefined ? {} : { keepsWith }),
});
const heights = (blocks: readonly Block[], height: number) =>
  paged(blocks, height).map((page) => page.map((each) => each.height));

test('a head with short words below it asks for their room and no more', () => {
  const [head, words] = [block(7.5, 20), block(12)];
  expect(heights([block(230), head, words], 250)).toEqual([[230], [7.5, 12]]);
  expect(heights([block(230), ...together([head, words])], 250)).toEqual([[230, 7.5, 12]]);
});

test('what the last of a group keeps with stays with the group', () => {
  const rows = [...together([block(7), block(4), block(9, 11)]), block(11)];
  expect(heights([block(70), ...rows], 100)).toEqual([[70], [7, 4, 9, 11]]);
  expect(heights([block(69), ...rows], 100)).toEqual([[69, 7, 4, 9, 11]]);
});
