import { describe, expect, test } from 'vitest';
import { isUnder, middleOf, narrowPlaces, roomIn } from '#checks/narrow-places.ts';
import { sidesOf } from '#checks/sides.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { circle, openLine, polygon, rectangle } from '#support/geometry/shapes.ts';

/** The arc from the first point over the second to the third, of which the second is as far from both. */
function arcThrough(
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
): Span {
  const chord = Math.hypot(x2 - x0, y2 - y0);
  const rise = Math.hypot(x1 - (x0 + x2) / 2, y1 - (y0 + y2) / 2);
  const radius = (chord ** 2 / 4 + rise ** 2) / (2 * rise);
  const center = {
    x: x1 + (((x0 + x2) / 2 - x1) * radius) / rise,
    y: y1 + (((y0 + y2) / 2 - y1) * radius) / rise,
  };
  const turn = Math.sign((x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0));
  const sweep = turn * 4 * Math.atan2(2 * rise, chord);
  return { kind: 'arc', start: { x: x0, y: y0 }, end: { x: x2, y: y2 }, center, radius, sweep };
}

describe('a border with a jog of a micrometre between two near carriers', () => {
  const bay = (depth: number) =>
    polygon([
      [0, 0],
      [40, 0],
      [40, -depth],
      [40.2, -depth],
      [40.2, 0],
      [90, 0],
      [90, 30],
      [0, 30],
    ]);
  const narrowIn = (depth: number) =>
    narrowPlaces(sidesOf([bay(depth)]), { widestOf: () => 3, limitOf: () => 3 }).map(({ width }) => width);

  test('has no narrow place there', () => {
    expect(narrowIn(0.0013)).toEqual([]);
  });

  test('has one where the jog is a bay of some depth', () => {
    expect(narrowIn(0.7).map((width) => Number(width.toFixed(9)))).toContain(0.2);
  });
});

describe('a strip with square ends', () => {
  const strip = (width: number) =>
    narrowPlaces(
      sidesOf([
        polygon([
          [0, 0],
          [30, 0],
          [30, width],
          [0, width],
        ]),
      ]),
      {
        widestOf: () => 3,
        limitOf: () => 3,
      },
    );

  test('is as narrow as its long sides are apart, reported as far in from its ends as it is wide', () => {
    const places = strip(2.1);
    expect(places.map(({ width }) => width)).toEqual(places.map(() => expect.closeTo(2.1, 9)));
    expect([...new Set(places.map(({ from }) => Number(from.x.toFixed(9))))].sort()).toEqual([2.1, 27.9]);
    for (const { from, to } of places) expect(from.x).toBeCloseTo(to.x, 9);
    expect(strip(3.1)).toEqual([]);
  });
});

describe('a strip that ends otherwise', () => {
  const feet = (...points: readonly (readonly [number, number])[]) =>
    placesIn([polygon(points)])
      .filter(({ width }) => width > 2)
      .map(({ from, to }) => [from, to].map(({ x }) => Number(x.toFixed(6))));

  test('with a slanted end is reported in the strip alone', () => {
    const right = feet([0, 0], [34, 0], [30, 2.1], [0, 2.1]);
    expect(right.length).toBeGreaterThan(0);
    for (const [from = Number.NaN, to = Number.NaN] of right)
      expect(Math.max(from, to)).toBeLessThanOrEqual(30);
    const left = feet([-4, 0], [30, 0], [30, 2.1], [0, 2.1]);
    expect(left.length).toBeGreaterThan(0);
    for (const [from = Number.NaN, to = Number.NaN] of left)
      expect(Math.min(from, to)).toBeGreaterThanOrEqual(0);
  });

  test('in a narrower one is reported as far in from there as it is wide', () => {
    const stepped = feet([0, 0], [40, 0], [40, 2.5], [20, 2.5], [18, 1.2], [0, 1.2]);
    expect([...new Set(stepped.flat())].sort()).toEqual([22.5, 37.5]);
  });
});

/** The plane turned about the origin: a place is as narrow whichever way it lies. */
function turnedBy(angle: number) {
  const [c, n] = [Math.cos(angle), Math.sin(angle)];
  const point = ({ x, y }: Point): Point => ({ x: c * x - n * y, y: n * x + c * y });
  const loop = (spans: Loop): Loop =>
    spans.map((span) =>
      span.kind === 'line'
        ? lineSpan(point(span.start), point(span.end))
        : { ...span, start: point(span.start), end: point(span.end), center: point(span.center) },
    );
  const near = (x: number, y: number) => {
    const at = point({ x, y });
    return { x: expect.closeTo(at.x, 6), y: expect.closeTo(at.y, 6) };
  };
  return { loop, near };
}

const placesIn = (loops: readonly Loop[], limit = 3) =>
  narrowPlaces(sidesOf(loops), { widestOf: () => limit, limitOf: () => limit });

describe.each([0, 0.7, 1.9, 3.6, 5.5])('turned by %f radians', (angle) => {
  const { loop, near } = turnedBy(angle);
  const ends = (place: { readonly from: Point; readonly to: Point } | undefined) => [place?.from, place?.to];
  const plate = loop(rectangle(0, 0, 40, 30));
  const hole = (x: number, y: number, radius: number) => loop(reverseSpans(circle(x, y, radius)));

  test('a hole of R 5 leaves 1.7 to the plate’s side, straight below its middle', () => {
    const [place, more] = placesIn([plate, hole(12.3, 6.7, 5)]);
    expect(more).toBeUndefined();
    expect(place?.width).toBeCloseTo(1.7, 9);
    expect(ends(place)).toEqual([near(12.3, 0), near(12.3, 1.7)]);
  });

  test('two holes of R 4 and R 7, 13 apart, leave 2 between them on the line of their middles', () => {
    const [place, more] = placesIn([plate, hole(10, 12, 4), hole(22, 17, 7)]);
    expect(more).toBeUndefined();
    expect(place?.width).toBeCloseTo(2, 9);
    expect(ends(place)).toEqual([
      near(10 + (4 / 13) * 12, 12 + (4 / 13) * 5),
      near(22 - (7 / 13) * 12, 17 - (7 / 13) * 5),
    ]);
    expect(placesIn([plate, hole(10, 12, 4), hole(22, 17, 7)], 1.99)).toEqual([]);
  });

  test('a tip that points across leaves 1.3 to the side below it', () => {
    const notched = loop(
      polygon([
        [0, 0],
        [40, 0],
        [40, 30],
        [17, 30],
        [15, 1.3],
        [11, 30],
        [0, 30],
      ]),
    );
    const places = placesIn([notched]);
    expect(places.length).toBeGreaterThan(0);
    for (const place of places) {
      expect(place.width).toBeCloseTo(1.3, 9);
      expect(ends(place)).toEqual([near(15, 0), near(15, 1.3)]);
    }
  });

  test('a strip from 1.1 to 2.4 wide is reported at its narrow end, a wedge that begins in a corner nowhere', () => {
    const strip = loop(
      polygon([
        [0, 0],
        [30, 0],
        [30, 2.4],
        [0, 1.1],
      ]),
    );
    const places = placesIn([strip]);
    expect(places.length).toBeGreaterThan(0);
    for (const { width } of places) {
      expect(width).toBeGreaterThan(1.1);
      expect(width).toBeLessThan(1.2);
    }
    const wedge = polygon([
      [0, 0],
      [30, 0],
      [30, 20],
    ]);
    expect(placesIn([loop(wedge)])).toEqual([]);
  });

  test('where a hole of R 5 touches the side, strips begin: reported where they are 0.05 wide, on both sides of the touch', () => {
    const places = placesIn([plate, hole(12, 5, 5)]);
    // From the side to the hole, straight to its middle: hypot(d, 5) = 5.05.
    const d = Math.sqrt(5.05 ** 2 - 25);
    expect(places.map(({ width }) => width)).toEqual([expect.closeTo(0.05, 6), expect.closeTo(0.05, 6)]);
    const feet = places.map(({ from }) => from);
    expect(feet).toContainEqual(near(12 - d, 0));
    expect(feet).toContainEqual(near(12 + d, 0));
  });
});

describe('places in the area alone', () => {
  test('what is narrow between two pockets is no narrow place in them', () => {
    const [left, right] = [rectangle(0, 0, 20, 25), rectangle(21.2, 3, 40, 22)];
    expect(placesIn([left, right])).toEqual([]);
    const places = placesIn([left, right].map(reverseSpans));
    for (const { width } of places) expect(width).toBeCloseTo(1.2, 9);
    expect(places.map(({ from }) => from)).toContainEqual({ x: 20, y: expect.closeTo(12.5, 9) });
  });

  test.each([
    ['left', 1],
    ['right', -1],
  ])('a tip with an upright flank on its %s leaves 1.3 to the side below it', (_, side) => {
    const notched = polygon([
      [0, 0],
      [40, 0],
      [40, 30],
      [20 + (side < 0 ? 0 : 4), 30],
      [20, 1.3],
      [20 - (side < 0 ? 5 : 0), 30],
      [0, 30],
    ]);
    const places = placesIn([notched]);
    expect(places.length).toBeGreaterThan(0);
    for (const { width } of places) expect(width).toBeCloseTo(1.3, 9);
  });

  test('an arch is narrow at its two feet, and not half-way between them', () => {
    const arch = arcThrough([20, 1.1], [10, 4.1], [0, 1.1]);
    const places = placesIn([
      [...openLine([0, 1.1], [0, 8], [-5, 8], [-5, 0], [27, 0], [27, 8], [20, 8], [20, 1.1]).spans, arch],
    ]);
    expect(places.length).toBeGreaterThan(0);
    for (const { width, from } of places) {
      expect(width).toBeCloseTo(1.1, 9);
      expect([0, 20].some((foot) => Math.abs(from.x - foot) < 1e-6)).toBe(true);
    }
  });
});

describe('round strips', () => {
  test('between two circles about one middle: as wide as their radii differ', () => {
    const [place, more] = placesIn([circle(3, -2, 10), reverseSpans(circle(3, -2, 8.4))]);
    expect(more).toBeUndefined();
    expect(place?.width).toBeCloseTo(1.6, 9);
    expect(placesIn([circle(3, -2, 10), reverseSpans(circle(3, -2, 6.9))])).toEqual([]);
  });

  test('off the middle by 0.4: where they come nearest', () => {
    const [place, more] = placesIn([circle(3, -2, 10), reverseSpans(circle(3.24, -1.68, 7.5))]);
    expect(more).toBeUndefined();
    expect(place?.width).toBeCloseTo(10 - 7.5 - 0.4, 9);
    expect([place?.from, place?.to]).toEqual([
      { x: expect.closeTo(9, 6), y: expect.closeTo(6, 6) },
      { x: expect.closeTo(3.24 + 4.5, 6), y: expect.closeTo(-1.68 + 6, 6) },
    ]);
  });
});

test('a pair of sides is held to its own limit, and a side without one to none', () => {
  const slot = rectangle(0, 0, 30, 2.1);
  const ask = (limit: number, widest = 3) =>
    narrowPlaces(sidesOf([slot]), { widestOf: () => widest, limitOf: (a, b) => (a + b === 2 ? limit : 3) });
  expect(ask(2.2).length).toBeGreaterThan(0);
  expect(ask(2)).toEqual([]);
  expect(ask(0)).toEqual([]);
  expect(ask(2.2, 0)).toEqual([]);
});

describe('room in a shape', () => {
  test('is the diameter of the largest disc, with its middle; none is reported where a disc of the limit fits', () => {
    const room = roomIn(rectangle(7, -4, 15, -1.8), 3);
    expect(room?.width).toBeCloseTo(2.2, 2);
    expect(room?.at.y).toBeCloseTo(-2.9, 2);
    expect(roomIn(rectangle(7, -4, 15, -0.9), 3)).toBeUndefined();
    expect(roomIn(rectangle(7, -4, 47, 30), 3)).toBeUndefined();
    const disc = roomIn(circle(20, 30, 1.2), 3);
    expect(disc?.width).toBeCloseTo(2.4, 2);
    expect([disc?.at.x, disc?.at.y]).toEqual([expect.closeTo(20, 2), expect.closeTo(30, 2)]);
  });

  test('a width is under its limit by more than a tenth of a micrometre, or it is the same', () => {
    expect([isUnder(2.9998, 3), isUnder(2.99995, 3), isUnder(3, 3)]).toEqual([true, false, false]);
  });
});

test('the middle of a way is half-way between its ends', () => {
  const way = { width: 5, from: { x: 1, y: 7 }, to: { x: 4, y: 3 }, sides: [0, 1] as const };
  expect(middleOf(way)).toEqual({ x: 2.5, y: 5 });
});
