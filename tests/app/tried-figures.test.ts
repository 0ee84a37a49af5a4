import { expect, test } from 'vitest';
import { placeTried, type TriedFigure } from '#app/views/sheet/words/tried-figures.ts';

const room = { width: 840, height: 440, taken: [], lines: [] };
const rectangle = (minX: number, minY: number, maxX: number, maxY: number) => [
  [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ],
];
const figure: TriedFigure = {
  region: 'R03',
  text: '.063',
  at: { x: 0, y: 0 },
  lines: [
    { words: '0.0620 deep', isStop: false },
    { words: 'leaves 0.0620', isStop: false },
  ],
};
const own = { minX: 108, minY: 101, maxX: 132, maxY: 113 };
const place = (width: number, height: number) => ({
  figure,
  rings: rectangle(60, 80, 60 + width, 80 + height),
  middle: { x: 120, y: 110 },
  widths: [61, 74],
});

test('both meanings stand under each other, inside the region and clear of the figure itself', () => {
  const [placed] = placeTried([place(130, 90)], { ...room, taken: [own] });
  expect(placed?.form).toBe('stacked');
  const { x = 0, y = 0 } = placed?.at ?? {};
  expect(Math.abs(x - 125)).toBeLessThan(130 / 2 - 37);
  expect(y - 13).toBeGreaterThan(own.maxY);
});

test('where it is too low they stand side by side, and where there is room for one alone there is none', () => {
  expect(placeTried([place(180, 30)], room)[0]?.form).toBe('beside');
  expect(placeTried([place(90, 30)], room)).toEqual([]);
  const chosen = { ...place(90, 30), figure: { ...figure, lines: figure.lines.slice(0, 1) }, widths: [61] };
  expect(placeTried([chosen], room)).toHaveLength(1);
});

test('they keep off a line that is laid over the sheet', () => {
  const lines = [{ from: { x: 0, y: 125 }, to: { x: 840, y: 125 } }];
  const [high] = placeTried([place(130, 110)], { ...room, lines });
  expect(Math.abs((high?.at.y ?? 125) - 125)).toBeGreaterThan(13 + 9);
  expect(placeTried([place(90, 60)], { ...room, lines })).toEqual([]);
});
