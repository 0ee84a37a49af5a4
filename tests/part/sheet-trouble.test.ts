/** Outlines that once made metal where there is none, or kept apart what is one, each named for its trouble. */
import { describe, expect, test } from 'vitest';
import { closed, exploded, found } from '#support/drawings/find-in-drawing.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

const TRIM = closed('TRIM', rectangle(0, 0, 200, 100));
const OUTLINE = { outline: ['TRIM'] };
const areasOf = ({ part }: ReturnType<typeof found>) =>
  part.regions.map(({ area }) => area).sort((a, b) => a - b);

describe('M1 outlines that repeat or overlap', () => {
  test('a hole drawn as a circle and again as arcs is one hole', () => {
    const hole = circle(60, 40, 12);
    const drawn = found([TRIM, closed('TRIM', hole), ...exploded('TRIM', hole)], OUTLINE);
    expect(areasOf(drawn)).toEqual([expect.closeTo(200 * 100 - 144 * Math.PI, 6)]);
    expect(drawn.codes.filter((code) => code !== 'line-doubled')).toEqual([]);
  });

  test('outlines-overlap: two cutouts that overlap are one, drawn closed or as loose lines', () => {
    const holes = [rectangle(30, 30, 70, 60), rectangle(55, 20, 90, 50)];
    const bare = 200 * 100 - (40 * 30 + 35 * 30 - 15 * 20);
    const asClosed = found([TRIM, ...holes.map((hole) => closed('TRIM', hole))], OUTLINE);
    expect(areasOf(asClosed)).toEqual([expect.closeTo(bare, 6)]);
    expect(asClosed.findings).toMatchObject([{ code: 'outlines-overlap', facts: { outlines: 2 } }]);
    const asLoose = found([TRIM, ...holes.flatMap((hole) => exploded('TRIM', hole))], OUTLINE);
    expect(areasOf(asLoose)).toEqual([expect.closeTo(bare, 6)]);
  });

  test('cutouts that share an edge, and one in another, are no overlap', () => {
    const cutouts = [rectangle(30, 30, 70, 60), rectangle(70, 30, 90, 60), rectangle(40, 40, 50, 47)];
    const drawn = found([TRIM, ...cutouts.map((each) => closed('TRIM', each))], OUTLINE);
    expect(drawn.codes).toEqual([]);
    expect(areasOf(drawn)).toEqual([expect.closeTo(70, 6), expect.closeTo(200 * 100 - 60 * 30, 6)]);
  });
});

describe('M1.1 a gap and an overlap of the same width', () => {
  test.each([1e-4, 1e-3, 4.9e-3])(
    'slivers-merged: pockets %d mm apart share a border, as those that overlap so far do',
    (off) => {
      for (const gap of [off, -off]) {
        const pockets = [rectangle(20, 20, 60, 51), rectangle(60 + gap, 20, 110, 51)];
        const drawn = found([TRIM, ...pockets.map((each) => closed('POCKETS', each))], OUTLINE);
        expect(drawn.codes).toEqual(['slivers-merged']);
        const [small = 0, large = 0, ...land] = areasOf(drawn);
        expect(land).toHaveLength(1);
        expect(Math.abs(small - 40 * 31)).toBeLessThan(0.16);
        expect(Math.abs(large - 50 * 31)).toBeLessThan(0.16);
      }
    },
  );

  test('pockets a hair apart corner to corner stay two', () => {
    const pockets = [rectangle(20, 20, 60, 51), rectangle(60.002, 51.001, 110, 80)];
    const drawn = found([TRIM, ...pockets.map((each) => closed('POCKETS', each))], OUTLINE);
    expect(drawn.codes).toEqual([]);
    expect(drawn.part.regions).toHaveLength(3);
  });
});
