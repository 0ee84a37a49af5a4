import { expect, test } from 'vitest';
import { arcSpan, lineSpan, reverseSpan } from '#geometry/span.ts';
import { nearestPlaces } from '#geometry/spans/nearest-places.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

test('between two circles on the line through both centres', () => {
  const [found] = nearestPlaces(circle(0, 0, 2), circle(6, 8, 3), 9);
  expect(found?.gap).toBeCloseTo(5, 12);
  expect(found?.from).toEqual({ x: expect.closeTo(1.2, 9), y: expect.closeTo(1.6, 9) });
  expect(found?.to).toEqual({ x: expect.closeTo(6 - 1.8, 9), y: expect.closeTo(8 - 2.4, 9) });
});

test('from a corner to a side, whichever comes first', () => {
  const [one, other] = [rectangle(0, 0, 4, 3), rectangle(4.5, 1, 9, 7)];
  expect(nearestPlaces(one, other, 2)[0]?.gap).toBeCloseTo(0.5, 12);
  expect(nearestPlaces(other, one, 2)[0]?.gap).toBeCloseTo(0.5, 12);
});

test('0 where they cross, nothing where all are farther', () => {
  expect(nearestPlaces(rectangle(0, 0, 4, 3), rectangle(3, -1, 5, 2), 1)[0]?.gap).toBe(0);
  expect(nearestPlaces(circle(0, 0, 2), circle(6, 8, 3), 4.9)).toEqual([]);
});

test('from a slanting side to the arc under it, at the foot of the common normal, and back', () => {
  const side = [lineSpan({ x: 10, y: 5 }, { x: 2, y: 11 })];
  const arc = [arcSpan({ center: { x: 0, y: 0 }, radius: 7, from: 0.5, sweep: 1 })];
  const [onSide, onArc] = [
    { x: expect.closeTo(6, 9), y: expect.closeTo(8, 9) },
    { x: expect.closeTo(4.2, 9), y: expect.closeTo(5.6, 9) },
  ];
  expect(nearestPlaces(side, arc, 4)[0]).toEqual({ gap: expect.closeTo(3, 9), from: onSide, to: onArc });
  expect(nearestPlaces(arc, side, 4)[0]).toEqual({ gap: expect.closeTo(3, 9), from: onArc, to: onSide });
});

test('from the end of a line that is nearer, be it the first or the last', () => {
  const wall = [lineSpan({ x: 0, y: -5 }, { x: 0, y: 7 })];
  const way = lineSpan({ x: 3, y: 1 }, { x: 9, y: 2 });
  for (const span of [way, reverseSpan(way)]) {
    expect(nearestPlaces([span], wall, 4)[0]).toEqual({ gap: 3, from: { x: 3, y: 1 }, to: { x: 0, y: 1 } });
    expect(nearestPlaces(wall, [span], 4)[0]).toEqual({ gap: 3, from: { x: 0, y: 1 }, to: { x: 3, y: 1 } });
  }
});

test('all places that are as near, here both ends of a side and a corner beyond', () => {
  const one = rectangle(0, 0, 4, 3);
  const others = [...rectangle(5, -2, 9, 2), ...rectangle(-2, 4, 1, 7)];
  const places = nearestPlaces(one, others, 2).map(({ gap, from, to }) =>
    [gap, from.x, from.y, to.x, to.y].join(' '),
  );
  expect(new Set(places)).toEqual(new Set(['1 4 0 5 0', '1 4 2 5 2', '1 0 3 0 4', '1 1 3 1 4']));
});
