/** Boxes added one by one, asked which of them a box meets. */
import { expect, test } from 'vitest';
import { growingBoxes } from '#geometry/growing-boxes.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

/** The items whose boxes meet, each once. */
function meeting(boxes: ReturnType<typeof growingBoxes<string>>, place: ReturnType<typeof box>): string[] {
  const met = new Set<string>();
  boxes.everyMeeting(place, (item) => {
    met.add(item);
    return true;
  });
  return [...met].sort();
}

test('boxes of one cell, of many and across the origin are met, and touching is meeting', () => {
  const boxes = growingBoxes<string>(5);
  boxes.add(box(1, 1, 3, 2), 'small');
  boxes.add(box(-7, -12, 18, 4), 'large');
  boxes.add(box(30, 8, 31, 9), 'away');
  expect(meeting(boxes, box(2, 1.5, 2.5, 1.6))).toEqual(['large', 'small']);
  expect(meeting(boxes, box(3, 2, 9, 3))).toEqual(['large', 'small']);
  expect(meeting(boxes, box(-8, -13, -6.5, -11))).toEqual(['large']);
  expect(meeting(boxes, box(18, 4, 30, 8))).toEqual(['away', 'large']);
  expect(meeting(boxes, box(18.1, 4.1, 29, 7))).toEqual([]);
});

test('it ends at the first that is not so', () => {
  const boxes = growingBoxes<number>(5);
  for (const at of [1, 2, 3]) boxes.add(box(at, 0, at + 4, 1), at);
  const asked: number[] = [];
  const isSo = (item: number) => {
    asked.push(item);
    return item !== 2;
  };
  expect(boxes.everyMeeting(box(3.5, 0.5, 4.5, 0.75), isSo)).toBe(false);
  expect(asked).toEqual([1, 2]);
  expect(boxes.everyMeeting(box(40, 0, 41, 1), isSo)).toBe(true);
});
