/** Lines to follow: where they run close to each other, and where they only part or meet. */
import { describe, expect, test } from 'vitest';
import { narrowPlaces } from '#checks/narrow-places.ts';
import { sidesOfPath } from '#checks/sides.ts';
import { arcSpan, type Path } from '#geometry/span.ts';
import { openLine, polygon, roundedRectangle } from '#support/geometry/shapes.ts';
import { checkPart } from '#support/parts/check-part.ts';

function widths(...paths: readonly Path[]): number[] {
  const limit = 1.5;
  const ask = { widestOf: () => limit, limitOf: () => limit, bothSides: true };
  return narrowPlaces(paths.flatMap(sidesOfPath), ask).map(({ width }) => width);
}

describe('lines that part with a jog of 0.15 mm', () => {
  const earlier = openLine([-50, 0], [0, 0], [0, 40]);

  test('lines-too-close is not reported where the later one goes on the other way, at whatever slope', () => {
    for (const slope of [-2, -0.2, 0, 0.1])
      expect(widths(earlier, openLine([0, 0], [0, -0.15], [50, -0.15 + slope]))).toEqual([]);
    expect(widths(earlier, openLine([50, -0.2], [0, -0.15], [0, 0]))).toEqual([]);
  });

  test('it is where the later one runs back beside the earlier', () => {
    expect(widths(earlier, openLine([0, 0], [0, -0.15], [-50, -0.15]))).toContain(0.15);
    expect(widths(earlier, openLine([-50, -0.15], [0, -0.15], [0, 0]))).toContain(0.15);
  });
});

describe('lines that part with a slanted jog', () => {
  /** From the corner down the jog, and then back below it, falling so many degrees. */
  const later = (fallDeg: number, isReversed: boolean) => {
    const fall = (fallDeg * Math.PI) / 180;
    const points = [
      [0, 0],
      [0.1, -0.15],
      [0.1 - 50 * Math.cos(fall), -0.15 - 50 * Math.sin(fall)],
    ] as const;
    return openLine(...(isReversed ? [...points].reverse() : points));
  };
  /** Into the corner or out of it, rising so many degrees away from it. */
  const earlier = (riseDeg: number, isReversed: boolean) => {
    const rise = (riseDeg * Math.PI) / 180;
    const points = [
      [-50 * Math.cos(rise), 50 * Math.sin(rise)],
      [0, 0],
    ] as const;
    return openLine(...(isReversed ? [...points].reverse() : points));
  };

  test.each([
    [false, false],
    [false, true],
    [true, false],
    [true, true],
  ])(
    'at 25° to one side and 20° to the other they part (reversed: %s, %s); level, they run close',
    (one, other) => {
      expect(widths(earlier(25, one), later(20, other))).toEqual([]);
      const level = sidesOfPath(earlier(0, one));
      const [place, more] = narrowPlaces([...level, ...sidesOfPath(later(0, other))], {
        widestOf: () => 1.5,
        limitOf: () => 1.5,
        bothSides: true,
      });
      expect(more).toBeUndefined();
      expect(place?.width).toBeCloseTo(0.15, 9);
      expect(place?.from.x).toBeCloseTo(-24.95, 6);
    },
  );
});

test('two bays of a taper, 0.15 mm apart in depth, side by side along a sloping edge: their lines part, and do not run close', () => {
  const root = polygon([
    [0, 0],
    [100, 4],
    [100, 60],
    [0, 60],
  ]);
  const tip = polygon([
    [100, 4],
    [200, 8],
    [200, 60],
    [100, 60],
  ]);
  const findings = checkPart({
    sheet: polygon([
      [-50, -50],
      [250, -50],
      [250, 110],
      [-50, 110],
    ]),
    outlines: [root, tip],
    depths: [
      [50, 30, 2.374],
      [150, 30, 2.222],
    ],
  });
  expect(findings.map(({ code }) => code)).not.toContain('lines-too-close');
});

describe('lines to follow', () => {
  const sides = (...paths: readonly Path[]) => paths.flatMap(sidesOfPath);
  const both = { widestOf: () => 1.5, limitOf: () => 1.5, bothSides: true };

  test('side by side they are reported in the middle of what they run along each other, whichever way they go', () => {
    const long = openLine([0, 0], [30, 0]);
    for (const short of [openLine([5, 1.2], [21, 1.2]), openLine([21, -1.2], [5, -1.2])]) {
      const [place, more] = narrowPlaces(sides(long, short), both);
      expect(more).toBeUndefined();
      expect(place).toMatchObject({
        width: expect.closeTo(1.2, 9),
        from: { x: expect.closeTo(13, 9), y: 0 },
        sides: [0, 1],
      });
    }
  });

  test('as near as a line is cut they are one line, and no further apart than asked they are none of it', () => {
    const apart = (gap: number) =>
      narrowPlaces(sides(openLine([0, 0], [30, 0]), openLine([5, gap], [21, gap])), both);
    expect(apart(0.005)).toEqual([]);
    expect(apart(0.0053)).toHaveLength(1);
    expect(apart(1.5)).toEqual([]);
    expect(apart(1.4997)).toHaveLength(1);
  });

  test('a line that leaves another at a small angle runs close to it nowhere', () => {
    for (const end of [1.1, -0.7])
      expect(narrowPlaces(sides(openLine([0, 0], [30, 0]), openLine([4, 0], [28, end])), both)).toEqual([]);
  });

  test('one that sets off from the middle of another and goes on beside it is close', () => {
    const straight = openLine([-50, 0], [50, 0]);
    for (const way of [1, -1])
      for (const beside of [
        openLine([3, 0], [3, 0.15], [3 + 30 * way, 0.15]),
        openLine([3 + 30 * way, 0.15], [3, 0.15], [3, 0]),
      ])
        expect(widths(straight, beside)).toContainEqual(expect.closeTo(0.15, 9));
  });

  test.each([
    ['over', 5, Math.PI],
    ['under', -5.2, 0],
  ])('a half-round nose %s a line is nearest at its middle', (_, y, from) => {
    const nose: Path = {
      closed: false,
      spans: [arcSpan({ center: { x: 11, y }, radius: 4, from, sweep: Math.PI })],
    };
    for (const straight of [openLine([0, 0], [30, 0]), openLine([30, 0], [0, 0])]) {
      const [place, more] = narrowPlaces(sides(nose, straight), both);
      expect(more).toBeUndefined();
      expect(place?.width).toBeCloseTo(Math.abs(y) - 4, 9);
      expect(place?.from).toEqual({ x: expect.closeTo(11, 9), y: expect.closeTo(y - 4 * Math.sign(y), 9) });
    }
  });

  test('a closed one is one line all round, wherever it begins', () => {
    const [bottom, ...others] = roundedRectangle(0, 0, 20, 1.1, 0.3);
    const cut = { x: 7, y: 0 };
    const spans = bottom === undefined ? [] : [{ ...bottom, start: cut }, ...others, { ...bottom, end: cut }];
    const places = narrowPlaces(sides({ closed: true, spans }), both);
    // Where the round ends begin, they are as near to the sides.
    const along = places.filter(({ from }) => from.x > 0.5 && from.x < 19.5);
    expect(along).toMatchObject([{ width: expect.closeTo(1.1, 9), from: { x: expect.closeTo(10, 9) } }]);
  });

  test('a closed one is followed all round', () => {
    const closed: Path = { closed: true, spans: roundedRectangle(0, 0, 1.1, 20, 0.3) };
    expect(narrowPlaces(sides(closed), both).map(({ width }) => width)).toContainEqual(
      expect.closeTo(1.1, 9),
    );
  });
});
