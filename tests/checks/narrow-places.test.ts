import { describe, expect, test } from 'vitest';
import { narrowPlaces, sidesOf, sidesOfPath } from '#checks/narrow-places.ts';
import { lineSpan, type Path } from '#geometry/span.ts';
import { checkPart } from '#support/check-part.ts';
import { polygon } from '#support/shapes.ts';

function openLine(...points: readonly (readonly [number, number])[]): Path {
  const spans = points.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = points[i] ?? [x, y];
    return lineSpan({ x: fromX, y: fromY }, { x, y });
  });
  return { closed: false, spans };
}

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

  test('is as narrow as its long sides are apart, told as far in from its ends as it is wide', () => {
    const places = strip(2.1);
    expect(places.map(({ width }) => width)).toEqual(places.map(() => expect.closeTo(2.1, 9)));
    expect([...new Set(places.map(({ from }) => Number(from.x.toFixed(9))))].sort()).toEqual([2.1, 27.9]);
    for (const { from, to } of places) expect(from.x).toBeCloseTo(to.x, 9);
    expect(strip(3.1)).toEqual([]);
  });
});
