/** Boxes with four different sides. Arcs: quarter points by hand. */
import { describe, expect, test } from 'vitest';
import {
  boxesMeet,
  boxOfPoints,
  boxOfSpan,
  boxOfSpans,
  EMPTY_BOX,
  growBox,
  joinBoxes,
} from '#geometry/box.ts';
import { arcSpan, lineSpan, reverseSpan } from '#geometry/span.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });
const near = (minX: number, minY: number, maxX: number, maxY: number) => ({
  minX: expect.closeTo(minX, 12),
  minY: expect.closeTo(minY, 12),
  maxX: expect.closeTo(maxX, 12),
  maxY: expect.closeTo(maxY, 12),
});

test('points in any order', () => {
  const points = [
    { x: 3, y: -7 },
    { x: -2, y: 11 },
    { x: 5, y: 1 },
  ];
  expect(boxOfPoints(points)).toEqual(box(-2, -7, 5, 11));
  expect(boxOfPoints([...points].reverse())).toEqual(box(-2, -7, 5, 11));
  expect(boxOfPoints([])).toEqual(EMPTY_BOX);
});

describe('the box of an arc of radius 10 about (3, 5)', () => {
  const from = (fromDeg: number, sweepDeg: number) =>
    arcSpan({
      center: { x: 3, y: 5 },
      radius: 10,
      from: (fromDeg * Math.PI) / 180,
      sweep: (sweepDeg * Math.PI) / 180,
    });

  test('from 30° to 60° is that of its ends', () => {
    const root = 5 * Math.sqrt(3);
    expect(boxOfSpan(from(30, 30))).toEqual(near(8, 10, 3 + root, 5 + root));
  });

  test('from 60° to 150° reaches the top, and so it does run backwards', () => {
    const root = 5 * Math.sqrt(3);
    expect(boxOfSpan(from(60, 90))).toEqual(near(3 - root, 10, 8, 15));
    expect(boxOfSpan(reverseSpan(from(60, 90)))).toEqual(near(3 - root, 10, 8, 15));
  });

  test('from −30° round to 210° the short way below reaches the bottom', () => {
    const root = 5 * Math.sqrt(3);
    expect(boxOfSpan(from(-30, -120))).toEqual(near(3 - root, -5, 3 + root, 0));
  });

  test('a half circle that begins on a quarter point', () => {
    expect(boxOfSpan(from(90, 180))).toEqual(near(-7, -5, 3, 15));
  });
});

test('several spans, joined and grown', () => {
  const spans = [lineSpan({ x: 1, y: 2 }, { x: 4, y: -3 }), lineSpan({ x: -6, y: 0 }, { x: 0, y: 8 })];
  expect(boxOfSpans(spans)).toEqual(box(-6, -3, 4, 8));
  expect(joinBoxes(box(0, 1, 2, 3), box(-4, 2, 1, 9))).toEqual(box(-4, 1, 2, 9));
  expect(growBox(box(0, 1, 2, 5), 0.75)).toEqual(box(-0.75, 0.25, 2.75, 5.75));
});

test('boxes meet that overlap or share a side or a corner, not those a hair apart on any side', () => {
  const one = box(2, 3, 7, 11);
  for (const other of [box(7, 11, 9, 12), box(-1, 1, 2, 3), box(3, 4, 5, 6), box(0, 5, 20, 6)]) {
    expect(boxesMeet(one, other)).toBe(true);
    expect(boxesMeet(other, one)).toBe(true);
  }
  for (const other of [box(7.01, 4, 9, 6), box(-1, 4, 1.99, 6), box(3, 11.01, 5, 13), box(3, -2, 5, 2.99)]) {
    expect(boxesMeet(one, other)).toBe(false);
    expect(boxesMeet(other, one)).toBe(false);
  }
});
