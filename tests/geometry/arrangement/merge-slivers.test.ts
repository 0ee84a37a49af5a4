import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { mergeSlivers } from '#geometry/arrangement/merge-slivers.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Loop } from '#geometry/span.ts';
import { polygon, rectangle, sourced } from '#support/geometry/shapes.ts';

const arranged = (...loops: Loop[]) => arrange(sourced(loops), { joinTolerance: 0.05 }).arrangement;
const areasOf = (loops: Loop[]) =>
  mergeSlivers(arranged(...loops))
    .arrangement.faces.slice(1)
    .map(({ area }) => area)
    .sort((a, b) => a - b);

describe('M1.1 a face narrower than a line can be placed', () => {
  test('between two bays belongs to the larger of them', () => {
    const [left, right] = [rectangle(0, 0, 30, 20), rectangle(30.003, 0, 50, 20)];
    expect(areasOf([rectangle(-10, -10, 60, 30), left, right])).toEqual([
      expect.closeTo(19.997 * 20, 6),
      expect.closeTo(30 * 20 + 0, 0),
      expect.closeTo(70 * 40 - 30 * 20 - 19.997 * 20, 0),
    ]);
  });

  test.each([
    [19.8, 'the larger, though it lies along it 1 % less'],
    [19.5, 'the one that it lies along by 2.5 % more'],
  ])('of two bays, 20 and %d high, belongs to %s', (height, _) => {
    const bays = [rectangle(0, 0, 30, 20), rectangle(30, 0, 30.004, 20), rectangle(30.004, 0, 80, height)];
    // The larger bay then begins at x = 30; or the smaller one ends at 30.004.
    const areas = height === 19.8 ? [30 * 20, 50 * height] : [30.004 * 20, 49.996 * height];
    expect(areasOf(bays)).toEqual(areas.map((area) => expect.closeTo(area, 6)));
  });

  test('slivers and slits are named from left to right', () => {
    const { slivers } = mergeSlivers(
      arranged(
        rectangle(-10, -10, 130, 50),
        rectangle(80, 7, 80.004, 20),
        rectangle(80.004, 0, 110, 20),
        rectangle(5, 3, 30, 28),
        rectangle(30.003, 5, 52, 26),
      ),
    );
    expect(slivers.map(({ at, width }) => [Math.round(at.x), Math.round(width * 1000)])).toEqual([
      [30, 3],
      [80, 4],
    ]);
  });

  test.each([
    ['the left one', rectangle(30.004, 0, 60.004, 20), rectangle(30, 0, 30.004, 20), [0, 0]],
    [
      'the right one, which lies lower',
      polygon([
        [30.004, 0],
        [60.004, -3],
        [60.004, 17],
        [30.004, 20],
      ]),
      rectangle(30, 0, 30.004, 20),
      [30, -3],
    ],
    [
      'the lower one, though the upper reaches further left',
      polygon([
        [0, 20.004],
        [30, 20.004],
        [25, 40.004],
        [-5, 40.004],
      ]),
      rectangle(0, 20, 30, 20.004),
      [0, 0],
    ],
  ])('of two bays of 600 mm² belongs to %s', (_, other, sliver, corner) => {
    const { faces } = mergeSlivers(arranged(rectangle(0, 0, 30, 20), sliver, other)).arrangement;
    const larger = faces.slice(1).filter(({ area }) => area > 600.05);
    expect(larger).toHaveLength(1);
    const { minX, minY } = boxOfSpans(larger.flatMap(({ loops }) => loops.flat()));
    expect([minX, minY]).toEqual(corner.map((each) => expect.closeTo(each, 6)));
  });

  test('stays a face at a hair over 0.005 mm', () => {
    const apart = mergeSlivers(
      arranged(rectangle(0, 0, 30, 20), rectangle(30, 0, 30.0052, 20), rectangle(30.0052, 0, 50, 20)),
    );
    expect(apart.slivers).toEqual([]);
    expect(apart.arrangement.faces).toHaveLength(4);
  });

  test('is reported with its place and width', () => {
    const { slivers, arrangement } = mergeSlivers(
      arranged(rectangle(0, 0, 30, 20), rectangle(30, 0, 30.004, 20), rectangle(30.004, 0, 47, 20)),
    );
    expect(slivers).toEqual([{ at: expect.anything(), width: expect.closeTo(0.004, 5) }]);
    expect(arrangement.faces).toHaveLength(3);
  });

  test('leaves the same areas in whatever order the outlines come', () => {
    const loops = [rectangle(0, 0, 60, 40), rectangle(5, 5, 25, 30), rectangle(25.002, 5, 52, 30)];
    const first = areasOf(loops);
    const again = areasOf([...loops].reverse());
    expect(again).toHaveLength(first.length);
    first.forEach((area, i) => {
      expect(again[i]).toBeCloseTo(area, 9);
    });
  });

  test('between an outline drawn twice lets the curves of both run where one is left', () => {
    const { arrangement, slivers } = mergeSlivers(
      arranged(rectangle(0, 0, 80, 50), rectangle(10, 10, 40, 35), rectangle(10.001, 10.001, 39.999, 34.999)),
    );
    expect(slivers).toHaveLength(1);
    const pocket = arrangement.edges.filter(({ sources }) => sources.includes(1));
    expect(pocket.length).toBeGreaterThan(0);
    expect(pocket.every(({ sources }) => sources.includes(2))).toBe(true);
  });
});
