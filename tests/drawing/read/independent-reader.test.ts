/**
 * Random drawings against the npm package dxf 5.3.1, which shares no code with ours: its points on every curve must lie on our
 * lines and arcs, and our ends on its chords. It is asked only for what it does rightly (no mirrored frames of single entities, no fit points);
 * its chords of 5° stand 0.1 % of the radius off an arc, and those of splines, 25 to a knot span, somewhat more: that bounds the way back.
 */
import { parseString, toPolylines } from 'dxf';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { distanceToSpan, lineSpan, type Span } from '#geometry/span.ts';
import {
  block,
  bytesOf,
  circle,
  drawingText,
  entity,
  insert,
  line,
  polyline,
  type Tag,
} from '#support/drawings/raw-drawing.ts';

const coordinate = fc.integer({ min: -400_000, max: 400_000 }).map((n) => n / 1000);
const size = fc.integer({ min: 500, max: 80_000 }).map((n) => n / 1000);
const degrees = fc.integer({ min: 0, max: 359 });
const bulge = fc.oneof(
  fc.constant(0),
  fc
    .integer({ min: -2500, max: 2500 })
    .filter((n) => Math.abs(n) > 20)
    .map((n) => n / 1000),
);

const someLine = fc.tuple(coordinate, coordinate, size, size).map(([x, y, w, h]) => line(x, y, x + w, y - h));
const someCircle = fc.tuple(coordinate, coordinate, size).map(([x, y, r]) => circle(x, y, r));
const someArc = fc
  .tuple(coordinate, coordinate, size, degrees, fc.integer({ min: 2, max: 358 }))
  .map(([x, y, r, from, sweep]) =>
    entity('ARC', [10, x], [20, y], [40, r], [50, from], [51, (from + sweep) % 360]),
  );
const somePolyline = fc
  .tuple(
    coordinate,
    coordinate,
    fc.array(fc.tuple(size, size, bulge), { minLength: 2, maxLength: 8 }),
    fc.boolean(),
  )
  .map(([x, y, steps, closed]) => {
    let [px, py] = [x, y];
    const vertices = steps.map(([dx, dy, b], n): [number, number, number] => {
      const vertex: [number, number, number] = [px, py, b];
      px += n % 3 === 2 ? -dx : dx;
      py += n % 2 === 1 ? -dy : dy;
      return vertex;
    });
    return polyline(vertices, closed ? 1 : 0);
  });
const someEllipse = fc
  .tuple(
    coordinate,
    coordinate,
    size,
    size,
    fc.integer({ min: 5, max: 100 }),
    fc.integer({ min: 0, max: 600 }),
    fc.integer({ min: 10, max: 620 }),
  )
  .map(([x, y, mx, my, ratio, from, sweep]) =>
    entity(
      'ELLIPSE',
      [10, x],
      [20, y],
      [11, mx],
      [21, my],
      [40, ratio / 100],
      [41, from / 100],
      [42, (from + sweep) / 100],
    ),
  );
const someSpline = fc
  .tuple(
    fc.integer({ min: 2, max: 5 }),
    fc.array(fc.tuple(coordinate, coordinate, fc.integer({ min: 3, max: 30 })), {
      minLength: 6,
      maxLength: 12,
    }),
    fc.boolean(),
  )
  .map(([degree, points, rational]) => {
    const inner = points.length - degree - 1;
    const knots = [
      ...Array(degree + 1).fill(0),
      ...Array.from({ length: inner }, (_, n) => n + 1),
      ...Array(degree + 1).fill(inner + 1),
    ];
    return entity(
      'SPLINE',
      [70, rational ? 12 : 8],
      [71, degree],
      ...knots.map((knot): Tag => [40, knot]),
      ...(rational ? points.map(([, , weight]): Tag => [41, weight / 10]) : []),
      ...points.flatMap(([x, y]): Tag[] => [
        [10, x],
        [20, y],
        [30, 0],
      ]),
    );
  });

const exact = fc.oneof(someLine, someCircle, someArc, somePolyline);

test.each([
  ['lines, circles, arcs and polylines', exact, 1e-6, 0.002, 60],
  ['ellipses', someEllipse, 0.001, 0.002, 40],
  ['splines, weighted and not', someSpline, 0.001, 0.02, 12],
] as const)('%s', { tags: ['long'] }, (_, entities, within, chords, numRuns) => {
  fc.assert(
    fc.property(fc.array(entities, { minLength: 1, maxLength: 6 }), (list) => {
      agree(drawingText({ entities: list.join('') }), within, chords);
    }),
    { numRuns, endOnFailure: true },
  );
});

test('insertions: turned, scaled, mirrored, in arrays, nested, with base points', { tags: ['long'] }, () => {
  const scale = fc
    .integer({ min: -20, max: 20 })
    .filter((n) => Math.abs(n) > 4)
    .map((n) => n / 10);
  const scales = fc.oneof(
    scale.map((s) => [s, s] as const),
    fc.tuple(scale, scale),
  );
  const placed = fc.tuple(coordinate, coordinate, degrees, scales);
  const put = (
    name: string,
    [x, y, turn, [sx, sy]]: readonly [number, number, number, readonly [number, number]],
    ...more: Tag[]
  ): string => insert(name, x, y, [41, sx], [42, sy], [43, 1], [50, turn], ...more);
  fc.assert(
    fc.property(
      fc.array(exact, { minLength: 1, maxLength: 3 }),
      placed,
      placed,
      coordinate,
      (list, outer, inner, base) => {
        const blocks =
          block('RIB', list.join(''), [10, base], [20, -base], [30, 0]) + block('BAY', put('RIB', inner));
        const array: Tag[] = [
          [70, 2],
          [71, 2],
          [44, 300],
          [45, 200],
        ];
        agree(
          drawingText({
            layers: [{ name: 'SKIN' }],
            blocks,
            entities: put('RIB', inner, ...array) + put('BAY', outer),
          }),
          0.001,
          0.002,
        );
      },
    ),
    { numRuns: 40, endOnFailure: true },
  );
});

/** `within` in mm; `chordShare` is how far its chords may stand off the curve, as a share of the curve's size. */
function agree(text: string, within: number, chordShare: number): void {
  const drawing = readDrawing(bytesOf(text));
  const theirs = toPolylines(parseString(text)).polylines;
  expect(drawing.findings).toEqual([]);
  expect(drawing.curves.length).toBe(theirs.length);
  let off = 0;
  let back = 0;
  for (const [n, { spans }] of drawing.curves.entries()) {
    const points = theirs[n]?.vertices ?? [];
    const [fx, fy] = points[0] ?? [Number.NaN, Number.NaN];
    for (const [x, y] of points) off = Math.max(off, nearest(spans, x, y));
    const chords = points.slice(1).map(([x, y], at): Span => {
      const [px, py] = points[at] ?? [fx, fy];
      return lineSpan({ x: px, y: py }, { x, y });
    });
    const reach = points.reduce((most, [x, y]) => Math.max(most, Math.hypot(x - fx, y - fy)), LONGEST_AXIS);
    for (const { start } of spans) back = Math.max(back, nearest(chords, start.x, start.y) / reach);
  }
  expect(off).toBeLessThanOrEqual(within);
  expect(back).toBeLessThanOrEqual(chordShare);
}

/** mm. Of the ellipses above, and with the largest scale. */
const LONGEST_AXIS = 240;

function nearest(spans: readonly Span[], x: number, y: number): number {
  return spans.reduce((least, span) => {
    const isPoint = span.start.x === span.end.x && span.start.y === span.end.y && span.kind === 'line';
    const away = isPoint ? Math.hypot(x - span.start.x, y - span.start.y) : distanceToSpan(span, { x, y });
    return Math.min(least, away);
  }, Number.POSITIVE_INFINITY);
}
