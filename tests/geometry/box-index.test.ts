import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Box } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';

test('no boxes meet nothing', () => {
  expect(indexBoxes([]).meeting({ minX: -1, minY: -1, maxX: 1, maxY: 1 })).toEqual([]);
});

test('boxes that share an edge or a corner meet', () => {
  const index = indexBoxes([
    { minX: 0, minY: 0, maxX: 2, maxY: 3 },
    { minX: 5, minY: 3, maxX: 9, maxY: 4 },
  ]);
  expect(index.meeting({ minX: 2, minY: 3, maxX: 5, maxY: 7 })).toEqual([0, 1]);
  expect(index.meeting({ minX: 2.01, minY: 3, maxX: 4.99, maxY: 7 })).toEqual([]);
});

test('meets what two overlapping intervals a side say, in ascending order', () => {
  const box = fc
    .tuple(fc.nat(40), fc.nat(40), fc.nat(9), fc.nat(14))
    .map(([x, y, width, height]): Box => ({ minX: x, minY: y, maxX: x + width, maxY: y + height }));
  fc.assert(
    fc.property(fc.array(box, { maxLength: 60 }), box, (boxes, asked) => {
      const expected = boxes.flatMap(({ minX, minY, maxX, maxY }, number) =>
        minX <= asked.maxX && maxX >= asked.minX && minY <= asked.maxY && maxY >= asked.minY ? [number] : [],
      );
      expect(indexBoxes(boxes).meeting(asked)).toEqual(expected);
    }),
  );
});

test('a row of forty boxes from right to left, every other one higher up, is met in its own order', () => {
  const row = Array.from({ length: 40 }, (_, n): Box => {
    const [minX, minY] = [400 - 10 * n, n % 2 === 0 ? 0 : 300];
    return { minX, minY, maxX: minX + 7, maxY: minY + 4 };
  });
  expect(indexBoxes(row).meeting({ minX: 95, minY: -1, maxX: 305, maxY: 301 })).toEqual(
    Array.from({ length: 22 }, (_, n) => n + 10),
  );
});
