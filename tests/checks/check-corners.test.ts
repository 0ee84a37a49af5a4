/** M3.1 corners that come out rounder than drawn: figures, the worst one, and places, by hand. φ = 1 throughout. */
import { describe, expect, test } from 'vitest';
import { arcSpan, type Loop, type Span } from '#geometry/span.ts';
import { polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';

const SHEET = rectangle(-60, -60, 300, 200);

type Code = 'corner-drawn-sharp' | 'corner-sharper-than-undercut';

function corners(code: Code, drawn: Omit<CheckedPart, 'sheet'>) {
  return checkPart({ sheet: SHEET, ...drawn }).filter((each) => each.code === code);
}

describe('(corner-drawn-sharp)', () => {
  test('of a triangle the sharpest corner is reported, with how far metal stands into it and where the wall leaves the lines', () => {
    const triangle = polygon([
      [0, 0],
      [60, 0],
      [0, 40],
    ]);
    const [reported] = corners('corner-drawn-sharp', { outlines: [triangle], depths: [[15, 12, 2]] });
    // The corner at (60, 0) is atan(40 / 60) wide; a circle of 2 in it stands 2 / sin(half) from the corner.
    const half = Math.atan2(40, 60) / 2;
    expect(reported?.facts).toMatchObject({
      drawn: 0,
      comes: 2,
      short: expect.closeTo(2 / Math.sin(half) - 2, 9),
      level: 2,
      stage: 1,
      corners: 3,
      levels: 1,
    });
    expect(reported?.place.at).toEqual({ x: 60, y: 0 });
    expect(reported?.place.regions).toHaveLength(1);
    expect(reported?.place.outline).toHaveLength(3);
    // It touches both lines 2 / tan(half) from the corner.
    const back = 2 / Math.tan(half);
    const [leg] = reported?.place.outline ?? [];
    expect(leg?.closed).toBe(false);
    expect(leg?.spans).toEqual([
      { kind: 'line', start: { x: expect.closeTo(60 - back, 9), y: 0 }, end: { x: 60, y: 0 } },
      {
        kind: 'line',
        start: { x: 60, y: 0 },
        end: {
          x: expect.closeTo(60 - back * Math.cos(2 * half), 9),
          y: expect.closeTo(back * Math.sin(2 * half), 9),
        },
      },
    ]);
  });

  test('two levels are one finding, and the deeper floor’s corners are the worst', () => {
    const found = corners('corner-drawn-sharp', {
      outlines: [rectangle(0, 0, 60, 40), rectangle(100, 10, 150, 70)],
      depths: [
        [30, 20, 1.4],
        [120, 40, 3],
      ],
    });
    expect(found).toHaveLength(1);
    expect(found[0]?.facts).toMatchObject({ comes: 3, level: 3, stage: 1, corners: 8, levels: 2 });
    // The lowest of four that are alike, then the leftmost.
    expect(found[0]?.place.at).toEqual({ x: 100, y: 10 });
    expect(found[0]?.place.regions).toEqual([...(found[0]?.place.regions ?? [])].sort());
    expect(found[0]?.place.regions).toHaveLength(2);
  });

  test('of corners that stand alike the deepest speaks, wherever it is', () => {
    // A floor of 3 beside one of √5 keeps back √(9 − 5) = 2, as one of 2 beside land does.
    const [reported] = corners('corner-drawn-sharp', {
      outlines: [
        rectangle(0, 0, 40, 40),
        roundedRectangle(80, 60, 200, 160, 9),
        rectangle(110, 90, 170, 130),
      ],
      depths: [
        [20, 20, 2],
        [90, 110, Math.sqrt(5)],
        [140, 110, 3],
      ],
    });
    expect(reported?.facts).toMatchObject({ comes: expect.closeTo(2, 9), level: 3, corners: 8, levels: 2 });
    expect(reported?.place.at).toEqual({ x: 110, y: 90 });
  });

  test('floors of one level side by side have no wall between them, and so no corners there', () => {
    const [reported] = corners('corner-drawn-sharp', {
      outlines: [rectangle(0, 0, 60, 40), rectangle(60, 0, 100, 40)],
      depths: [
        [30, 20, 2],
        [80, 20, 2],
      ],
    });
    expect(reported?.facts).toMatchObject({ corners: 4, comes: 2 });
  });

  test('between a wall on land and one on a shallower floor the longer allowance rounds the corner', () => {
    const [reported] = corners('corner-drawn-sharp', {
      outlines: [rectangle(0, 10, 60, 30), rectangle(-40, 10, 0, 30), rectangle(60, 10, 90, 30)],
      depths: [
        [30, 20, 3],
        [-20, 20, 1],
        [80, 20, 1],
      ],
    });
    // √(9 − 1) beside the shallower floors, 3 beside land.
    expect(reported?.facts).toMatchObject({ comes: 3, level: 3 });
    expect(reported?.facts).toMatchObject({ corners: 8 });
  });

  test('a tip narrower than 0.01 radians is no corner, nor one at the sheet’s edge, nor in what is not opened', () => {
    const blade = polygon([
      [0, 0],
      [200, 0],
      [200, 1],
    ]);
    expect(
      corners('corner-drawn-sharp', { outlines: [blade], depths: [[190, 0.4, 0.4]] })[0]?.facts,
    ).toMatchObject({ corners: 2 });
    const across = rectangle(-60, 0, 300, 60);
    expect(corners('corner-drawn-sharp', { outlines: [across], depths: [[50, 30, 2]] })).toEqual([]);
    const slot = rectangle(0, 0, 60, 3);
    expect(corners('corner-drawn-sharp', { outlines: [slot], depths: [[30, 1, 2]] })).toEqual([]);
  });

  test('no more than 200 corners are marked one by one', () => {
    const pockets = Array.from({ length: 51 }, (_, i) =>
      rectangle(20 * (i % 10), 20 * Math.floor(i / 10), 20 * (i % 10) + 9, 20 * Math.floor(i / 10) + 7),
    );
    const [reported] = corners('corner-drawn-sharp', {
      outlines: pockets,
      depths: pockets.flatMap(([side]) =>
        side === undefined ? [] : [[side.start.x + 4, side.start.y + 3, 1] as const],
      ),
    });
    expect(reported?.facts).toMatchObject({ corners: 204 });
    expect(reported?.place.outline).toHaveLength(200);
  });
});

describe('(corner-sharper-than-undercut)', () => {
  test('each stage reports its own worst: radius drawn, radius that comes, what is left standing in it', () => {
    const found = corners('corner-sharper-than-undercut', {
      outlines: [
        roundedRectangle(0, 0, 60, 40, 1.6),
        roundedRectangle(80, 0, 120, 40, 1.3),
        roundedRectangle(150, 5, 200, 60, 2.1),
      ],
      depths: [
        [30, 20, 2],
        [100, 20, 2],
        [170, 30, 3],
      ],
    });
    const stood = (radius: number, comes: number) => expect.closeTo((comes - radius) * (Math.SQRT2 - 1), 9);
    expect(found.map(({ facts }) => facts)).toEqual([
      { drawn: 2.1, comes: 3, short: stood(2.1, 3), level: 3, stage: 1, corners: 4 },
      { drawn: 1.3, comes: 2, short: stood(1.3, 2), level: 2, stage: 2, corners: 8 },
    ]);
    // The middle of the lower left round of each.
    const middle = (x: number, y: number, radius: number) => ({
      x: expect.closeTo(x + radius * (1 - Math.SQRT1_2), 9),
      y: expect.closeTo(y + radius * (1 - Math.SQRT1_2), 9),
    });
    expect(found.map(({ place }) => place.at)).toEqual([middle(150, 5, 2.1), middle(80, 0, 1.3)]);
    expect(found.map(({ place }) => place.regions?.length)).toEqual([1, 2]);
    // Marked in the order of the regions: the whole round of each.
    const marked = (found[1]?.place.outline ?? []).map(({ closed, spans }) => ({
      closed,
      radii: spans.map((span) => (span.kind === 'arc' ? span.radius : 0)),
    }));
    expect(marked).toEqual([
      ...Array.from({ length: 4 }, () => ({ closed: false, radii: [expect.closeTo(1.6, 9)] })),
      ...Array.from({ length: 4 }, () => ({ closed: false, radii: [expect.closeTo(1.3, 9)] })),
    ]);
  });

  test('a round drawn in two pieces is one corner, and as short as if drawn in one', () => {
    const inPieces = (loop: Loop): Loop =>
      loop.flatMap((span): Span[] => {
        if (span.kind === 'line') return [span];
        const from = Math.atan2(span.start.y - span.center.y, span.start.x - span.center.x);
        const { center, radius, sweep } = span;
        const first = arcSpan({ center, radius, from, sweep: 0.3 * sweep });
        const second = arcSpan({ center, radius, from: from + 0.3 * sweep, sweep: 0.7 * sweep });
        return [
          { ...first, start: span.start },
          { ...second, start: first.end, end: span.end },
        ];
      });
    const whole = roundedRectangle(0, 0, 60, 40, 1.5);
    const factsOf = (outline: Loop) =>
      corners('corner-sharper-than-undercut', { outlines: [outline], depths: [[30, 20, 2]] })[0]?.facts;
    expect(factsOf(inPieces(whole))).toEqual({
      ...factsOf(whole),
      short: expect.closeTo(0.5 * (Math.SQRT2 - 1), 9),
      corners: 4,
    });
  });

  test('a round as large as the allowance comes out as drawn, and so does one that bulges into the floor', () => {
    const round = (radius: number) =>
      corners('corner-sharper-than-undercut', {
        outlines: [roundedRectangle(0, 0, 60, 40, radius)],
        depths: [[30, 20, 2]],
      });
    expect(round(2)).toEqual([]);
    expect(round(2.6)).toEqual([]);
    // Land that stands into the pocket with a round of 1.2: the wall goes round it with 1.2 + 2.
    const island = roundedRectangle(20, 10, 40, 30, 1.2);
    expect(
      corners('corner-sharper-than-undercut', {
        outlines: [roundedRectangle(0, 0, 60, 40, 4), island],
        depths: [[5, 20, 2]],
      }),
    ).toEqual([]);
  });
});
