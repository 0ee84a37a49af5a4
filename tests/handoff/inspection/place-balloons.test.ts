/** Balloons of crowded marks: every number is read, and every leader followed to its own mark. */
import { describe, expect, test } from 'vitest';
import type { Point } from '#geometry/point.ts';
import { placeBalloons } from '#handoff/inspection/place-balloons.ts';

const radius = 2.3;
const room = { minX: 15, maxX: 195, minY: 120, maxY: 225 };

/** A mark a strip, as a taper in fifteen steps has them in a bay of 23 mm, and single floors about it. */
const taper = Array.from({ length: 15 }, (_, strip) => ({
  x: 131 + 1.55 * strip,
  y: 171 - (strip % 2) * 2.7 + 0.11 * strip,
}));
const floors = [
  { x: 112, y: 170 },
  { x: 68, y: 166 },
  { x: 66, y: 139 },
  { x: 143, y: 140 },
  { x: 108, y: 124 },
];
/** Marks on one point, as an edge and a fillet may have them. */
const together = [
  { x: 60, y: 190 },
  { x: 60, y: 190 },
  { x: 60, y: 190 },
];

const gap = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** From a point to the segment between two others. */
function off(point: Point, from: Point, to: Point): number {
  const length = gap(from, to) ** 2;
  const share =
    length === 0 ? 0 : ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
  const t = Math.min(1, Math.max(0, share));
  return gap(point, { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
}

describe.each([
  ['a taper of fifteen strips among floors', [...floors, ...taper]],
  ['three marks on one point', together],
  ['one mark in a corner of the picture', [{ x: 16, y: 121 }]],
])('%s', (_, marks) => {
  const centers = placeBalloons(marks, { radius, room });
  const pairs = centers.flatMap((a, i) => centers.slice(i + 1).map((b, j) => ({ a, b, i, j: i + 1 + j })));

  test('no balloon on another, on a mark or out of the picture', () => {
    expect(centers).toHaveLength(marks.length);
    for (const { a, b } of pairs) expect(gap(a, b)).toBeGreaterThan(2 * radius);
    for (const center of centers) {
      for (const mark of marks) expect(gap(center, mark)).toBeGreaterThan(radius);
      expect(center.x).toBeGreaterThanOrEqual(room.minX + radius);
      expect(center.x).toBeLessThanOrEqual(room.maxX - radius);
      expect(center.y).toBeGreaterThanOrEqual(room.minY + radius);
      expect(center.y).toBeLessThanOrEqual(room.maxY - radius);
    }
  });
});

test('a mark that stands alone keeps its balloon beside it', () => {
  const [mark] = floors;
  const [center] = placeBalloons(floors, { radius, room });
  expect(gap(mark ?? { x: 0, y: 0 }, center ?? { x: 0, y: 0 })).toBeLessThan(6);
});

test.each([
  ['among floors', floors],
  ['of three marks on one point', together],
])('no leader %s lies under the balloon of another', (_, marks) => {
  const centers = placeBalloons(marks, { radius, room });
  for (const [index, mark] of marks.entries()) {
    const own = centers[index] ?? mark;
    for (const [other, center] of centers.entries())
      if (other !== index) expect(off(center, mark, own)).toBeGreaterThan(radius);
  }
});
