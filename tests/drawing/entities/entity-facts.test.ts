/** What is said of entities that cannot be taken as they stand: the figures, in mm and degrees, from drawings in inches. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { spline } from '#fixtures/tricky-splines.ts';
import { bytesOf, circle, drawingText, entity, line, polyline, tags } from '#support/drawings/raw-drawing.ts';

/** Codes and facts beside what names the entity. */
function said(entities: string, unit: 'mm' | 'in' = 'mm') {
  const { findings } = readDrawing(bytesOf(drawingText({ entities: entities + line(0, 0, 500, 0) })), {
    unit,
  });
  return findings
    .filter(({ code }) => code !== 'drawing-unit-overridden')
    .map(({ code, facts, place }) => ({ code, facts, at: place.at }));
}

describe('lines', () => {
  test.each([
    ['its start', entity('LINE', [10, 1], [11, 3], [21, 4])],
    ['its end', entity('LINE', [10, 1], [20, 2], [11, 3])],
  ])('without %s', (lacks, text) => {
    expect(said(text)).toMatchObject([{ code: 'entity-incomplete', facts: { lacks } }]);
  });

  test('without length, and upright ones, at their place', () => {
    expect(said(line(3, 4, 3, 4), 'in')).toMatchObject([
      {
        code: 'entity-without-size',
        facts: { what: 'no length' },
        at: { x: expect.closeTo(76.2, 9), y: expect.closeTo(101.6, 9) },
      },
    ]);
    expect(said(line(3, 4, 3, 4, [30, 1], [31, 3]))).toMatchObject([
      { facts: { what: 'no length seen from above' }, at: { x: 3, y: 4 } },
    ]);
  });

  test('that rise by half an inch', () => {
    expect(said(line(0, 0, 3, 4, [30, 0.25], [31, -0.25]), 'in')).toMatchObject([
      { code: 'entity-not-flat', facts: { rise: 12.7 } },
    ]);
    expect(said(line(0, 0, 3, 4, [30, 2], [31, 2]))).toEqual([]);
  });
});

describe('round ones', () => {
  const ellipse = (...more: Parameters<typeof entity>[1][]) =>
    entity('ELLIPSE', [10, 7], [20, -3], [11, 6], [21, 8], ...more);

  test.each([
    ['its centre', entity('CIRCLE', [10, 1], [40, 2])],
    ['its radius', entity('CIRCLE', [10, 1], [20, 2])],
    ['an angle', entity('ARC', [10, 1], [20, 2], [40, 3], [50, 4])],
    ['its long axis', entity('ELLIPSE', [10, 1], [20, 2], [40, 0.5])],
    ['its axis ratio', ellipse()],
  ])('without %s', (lacks, text) => {
    expect(said(text)).toMatchObject([{ code: 'entity-incomplete', facts: { lacks } }]);
  });

  test.each([
    ['a radius of 0', circle(3, 4, 0)],
    ['a radius below 0 (-2.5)', circle(3, 4, -2.5)],
    ['equal start and end angles', entity('ARC', [10, 3], [20, 4], [40, 5], [50, 30], [51, 30])],
  ])('with %s', (what, text) => {
    expect(said(text)).toMatchObject([{ code: 'entity-without-size', facts: { what }, at: { x: 3, y: 4 } }]);
  });

  test('an ellipse without a short axis, and one between equal parameters', () => {
    expect(said(ellipse([40, 0]))).toMatchObject([
      { facts: { what: 'an axis of no length' }, at: { x: 7, y: -3 } },
    ]);
    expect(said(ellipse([40, 0.5], [41, 1], [42, 1]))).toMatchObject([
      { facts: { what: 'equal start and end parameters' }, at: { x: 7, y: -3 } },
    ]);
  });

  test('tilted ones, by their angle', () => {
    // A long axis of 10 in the plane that rises by 10.
    expect(said(ellipse([31, -10], [40, 0.5]))).toMatchObject([
      { code: 'entity-tilted', facts: { tiltDeg: expect.closeTo(45, 9) } },
    ]);
    expect(said(circle(3, 4, 5, [210, 0.6], [220, 0], [230, 0.8]))).toMatchObject([
      { code: 'entity-tilted', facts: { tiltDeg: expect.closeTo(36.869_897_645_844, 9) } },
    ]);
    expect(said(circle(3, 4, 5, [210, 0], [220, 3], [230, -4]))).toMatchObject([
      { facts: { tiltDeg: expect.closeTo(36.869_897_645_844, 9) } },
    ]);
    expect(said(circle(3, 4, 5, [210, 0], [220, 0], [230, 0]))).toEqual([]);
  });
});

describe('polylines', () => {
  test('with fewer vertices than stated, none, one, or all in one place', () => {
    expect(
      said(
        polyline(
          [
            [0, 0],
            [4, 3],
          ],
          0,
        ).replace('90\n2\n', '90\n5\n'),
      ),
    ).toMatchObject([{ code: 'polyline-count-differs', facts: { stated: 5, found: 2 } }]);
    expect(said(polyline([], 0))).toMatchObject([{ facts: { what: 'no vertices' }, at: undefined }]);
    expect(said(polyline([[3, 4]], 0))).toMatchObject([
      { facts: { what: 'one vertex only' }, at: { x: 3, y: 4 } },
    ]);
    expect(
      said(
        polyline(
          [
            [3, 4],
            [3, 4],
            [3, 4],
          ],
          0,
        ),
      ),
    ).toMatchObject([{ facts: { what: 'all vertices in one place' }, at: { x: 3, y: 4 } }]);
  });

  test('with an arc between two vertices in one place, at it', () => {
    expect(
      said(
        polyline(
          [
            [0, 0],
            [3, 4, 0.5],
            [3, 4],
            [9, 1],
          ],
          0,
        ),
      ),
    ).toMatchObject([{ facts: { what: 'an arc between two vertices in one place' }, at: { x: 3, y: 4 } }]);
    expect(
      said(
        polyline(
          [
            [0, 1],
            [3, 4],
            [9, 1],
            [0, 1, 0.5],
          ],
          1,
        ),
      ),
    ).toMatchObject([{ facts: { what: 'an arc between two vertices in one place' }, at: { x: 0, y: 1 } }]);
    expect(
      said(
        polyline(
          [
            [0, 1],
            [3, 4],
            [9, 1],
            [0, 1, 0.5],
          ],
          0,
        ),
      ),
    ).toEqual([]);
  });

  test('of the older kind: torn, without an end, in space', () => {
    const vertex = (x: number, y: number, z = 0) => entity('VERTEX', [10, x], [20, y], [30, z]);
    const end = tags([0, 'SEQEND']);
    const head = (flags: number) => entity('POLYLINE', [66, 1], [70, flags]);
    expect(said(head(0) + vertex(1, 2) + entity('VERTEX', [10, 5]) + end)).toMatchObject([
      { code: 'entity-incomplete', facts: { lacks: 'the place of a vertex' } },
    ]);
    expect(said(head(0) + vertex(1, 2) + vertex(4, 6))).toMatchObject([
      { code: 'polyline-end-missing', facts: { vertices: 2 } },
    ]);
    expect(said(head(8) + vertex(1, 2, -1.5) + vertex(4, 6, 3) + vertex(9, 6, 2) + end)).toMatchObject([
      { code: 'entity-not-flat', facts: { rise: 4.5 } },
    ]);
    expect(said(head(0) + vertex(1, 2, -1.5) + vertex(4, 6, 3) + end)).toEqual([]);
  });
});

describe('splines', () => {
  const points = [
    [0, 0],
    [3, 5],
    [8, 6],
    [11, 1],
  ] as const;
  const knots = [0, 0, 0, 0, 1, 1, 1, 1];

  test.each([
    ['degree', 26, 25, { degree: 26, knots, points }],
    ['degree', 0, 25, { degree: 0, knots, points }],
    ['degree', 1.5, 25, { degree: 1.5, knots, points }],
    ['too few points', 3, 4, { knots, points: points.slice(0, 3) }],
    ['knot count', 7, 8, { knots: knots.slice(1), points }],
    ['weight count', 3, 4, { knots, points, weights: [1, 1, 1] }],
    ['weight', -0.5, 0, { knots, points, weights: [1, 2, -0.5, 1] }],
    ['weight', 0, 0, { knots, points, weights: [1, 2, 1, 0] }],
    ['knots fall', 6, 0, { knots: [0, 0, 0, 0, 2, 1, 3, 3], points }],
    ['knots repeat', 5, 4, { knots: [0, 0, 0, 0, 0, 1, 1, 1], points }],
    [
      'too few points',
      1,
      2,
      {
        knots: [],
        points: [],
        fit: [
          [3, 4],
          [3, 4],
        ],
      },
    ],
  ] as const)('unusable by %s: %f where %f is asked', (problem, found, wanted, parts) => {
    expect(said(spline(parts))).toMatchObject([
      { code: 'spline-unusable', facts: { problem, found, wanted } },
    ]);
  });

  test('that rise, by their control points or the points that they go through', () => {
    // Four heights in turn in place of the group's zeros.
    const heights = (text: string, code: number, ...zs: readonly number[]) =>
      zs.reduce((so, z) => so.replace(`\n${code}\n0\n`, `\n${code}\n${z}\n`), text);
    const controlled = spline({ knots, points });
    expect(said(heights(controlled, 30, 0.5, 1.5, -0.75, 1), 'in')).toMatchObject([
      { code: 'entity-not-flat', facts: { rise: expect.closeTo(2.25 * 25.4, 9) } },
    ]);
    expect(said(heights(controlled, 30, 1.5, 1.5, 1.5, 1.5))).toEqual([]);
    const through = spline({ knots: [], points: [], fit: points });
    expect(said(heights(through, 31, 4, 1.5, 2, 3.5))).toMatchObject([
      { code: 'entity-not-flat', facts: { rise: 2.5 } },
      { code: 'spline-through-points' },
    ]);
  });

  test.each([
    ['a control point', spline({ knots, points }).replace('\n20\n5\n', '\n')],
    [
      'a point that it goes through',
      spline({ knots: [], points: [], fit: points }).replace('\n21\n5\n', '\n'),
    ],
  ])('without the y of %s', (_, text) => {
    expect(said(text)).toMatchObject([
      { code: 'entity-incomplete', facts: { lacks: 'an x or y of a point' } },
    ]);
  });

  test('torn at a full knot', () => {
    const two = {
      degree: 1,
      knots: [0, 0, 1, 1, 2, 2],
      points: [
        [0, 0],
        [3, 5],
        [3, 5.1],
        [8, 6],
      ],
    } as const;
    expect(said(spline(two))).toMatchObject([
      { code: 'spline-unusable', facts: { problem: 'torn', found: 2, wanted: 1 } },
    ]);
    expect(
      said(
        spline({
          ...two,
          points: [
            [0, 0],
            [3, 5],
            [3, 5],
            [8, 6],
          ],
        }),
      ),
    ).toEqual([]);
  });

  test('all points in one place, and through points as many as were given', () => {
    expect(said(spline({ knots, points: points.map(() => [3, 4] as const) }))).toMatchObject([
      { code: 'entity-without-size', facts: { what: 'all points in one place' } },
    ]);
    expect(
      said(
        spline({
          knots: [],
          points: [],
          fit: [
            [0, 0],
            [3, 4],
            [3, 4],
            [9, 1],
          ],
        }),
      ),
    ).toMatchObject([{ code: 'spline-through-points', facts: { points: 4 } }]);
  });
});

describe('lengths in inches are judged in millimetres', () => {
  // 0.000127 mm: not yet nothing.
  const small = 5e-6;

  test('a line, a circle and an ellipse of 0.000005 are there', () => {
    expect(said(line(1, 2, 1 + small, 2), 'in')).toEqual([]);
    expect(said(circle(1, 2, small), 'in')).toEqual([]);
    expect(said(entity('ELLIPSE', [10, 7], [20, -3], [11, small], [21, 0], [40, 0.9]), 'in')).toEqual([]);
  });
});
