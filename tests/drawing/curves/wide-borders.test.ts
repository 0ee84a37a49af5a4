/** Borders of wide polylines: areas worked by hand. */
import { describe, expect, test } from 'vitest';
import { wideBorders } from '#drawing/curves/wide-borders.ts';
import { arcSpan, lineSpan, loopArea, reverseSpans, type Span } from '#geometry/span.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';

const way = (...points: readonly (readonly [number, number])[]): Span[] =>
  points.slice(1).map(([x, y], n) => {
    const [fromX, fromY] = points[n] ?? [x, y];
    return lineSpan({ x: fromX, y: fromY }, { x, y });
  });

/** Areas of the borders, each of which is closed. */
function areas(spans: readonly Span[], width: number, closed = false): number[] | undefined {
  return wideBorders(spans, { width, closed })?.map((border) => {
    border.forEach((span, n) => {
      const before = border.at(n - 1)?.end;
      expect(Math.hypot(span.start.x - (before?.x ?? 0), span.start.y - (before?.y ?? 0))).toBeLessThan(1e-9);
    });
    return loopArea(border);
  });
}

const close = (...values: readonly number[]) => values.map((each) => expect.closeTo(each, 6));

describe('open', () => {
  test('a line is a rectangle with square ends', () => {
    expect(areas(way([1, 2], [7, 10]), 3)).toEqual(close(-30));
    const [border] = wideBorders(way([0, 0], [10, 0]), { width: 3, closed: false }) ?? [];
    expect(border?.map(({ start }) => [start.x, start.y])).toEqual([
      [0, 1.5],
      [10, 1.5],
      [10, -1.5],
      [0, -1.5],
    ]);
  });

  test('a square corner is mitred: what lacks inside is added outside', () => {
    expect(areas(way([0, 0], [10, 0], [10, 6]), 2)).toEqual(close(-32));
    expect(areas(way([0, 0], [10, 0], [10, -7], [22, -7]), 2)).toEqual(close(-58));
  });

  test('a mitre runs out four widths at most: a bevel beyond', () => {
    // Half a width over the sine of half the angle: 3.3 widths at 0.3 rad, 4.2 at 0.24.
    const spans = (turn: number) =>
      wideBorders(way([0, 0], [40, 0], [40 - 30 * Math.cos(turn), 30 * Math.sin(turn)]), {
        width: 1,
        closed: false,
      })?.[0]?.length;
    expect(spans(0.3)).toBe(6);
    expect(spans(0.24)).toBeGreaterThan(6);
  });

  test('half a turn of R 5 is half a ring of 4 and 6', () => {
    const half = arcSpan({ center: { x: 1, y: 2 }, radius: 5, from: 0.3, sweep: Math.PI });
    expect(areas([half], 2)).toEqual(close((-Math.PI / 2) * (36 - 16)));
    const [border] = wideBorders([half], { width: 2, closed: false }) ?? [];
    expect(border?.map((span) => (span.kind === 'arc' ? span.radius : 0)).sort()).toEqual([0, 0, 4, 6]);
  });

  test.each([0, 0.3, 0.9, 1.7, 2.6, -0.4, -1.1, -2.2])(
    'a U of two lines of 10 and half a turn of R 5, turned by %f',
    (turn) => {
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const at = (x: number, y: number) => ({ x: x * c - y * s, y: x * s + y * c });
      const half = arcSpan({ center: at(10, 5), radius: 5, from: turn - Math.PI / 2, sweep: Math.PI });
      const bent = [lineSpan(at(0, 0), half.start), half, lineSpan(half.end, at(0, 10))];
      for (const spans of [bent, reverseSpans(bent)]) {
        expect(areas(spans, 2)).toEqual(close(-(2 * 20 + (Math.PI / 2) * (36 - 16))));
      }
    },
  );

  test('a line that runs into an arc needs no corner', () => {
    const arc = arcSpan({ center: { x: 10, y: 5 }, radius: 5, from: -Math.PI / 2, sweep: 1 });
    expect(areas([...way([0, 0], [10, 0]), arc], 2)).toEqual(close(-(20 + (36 - 16) / 2)));
  });

  test('an arc that meets a line at an angle ends where the borders cross', () => {
    const arc = arcSpan({ center: { x: 10, y: 5 }, radius: 5, from: -2, sweep: 1.2 });
    const [border] =
      wideBorders([...way([0, 0], [arc.start.x, arc.start.y]), arc], { width: 0.6, closed: false }) ?? [];
    expect(border).toHaveLength(6);
    const ends = border?.filter((span) => span.kind === 'arc') ?? [];
    for (const span of ends) {
      for (const { x, y } of [span.start, span.end]) {
        expect(Math.hypot(x - 10, y - 5)).toBeCloseTo(span.kind === 'arc' ? span.radius : 0, 9);
      }
      expect(span.kind === 'arc' && Math.abs(span.sweep)).toBeCloseTo(1.2, 1);
    }
  });
});

describe('closed', () => {
  test('a plate of 10 by 6 has a border inside and one outside', () => {
    expect(areas(rectangle(1, 2, 11, 8), 2, true)).toEqual(close(8 * 4, 12 * 8));
  });

  test('a triangle of 9, 12 and 15 is moved in and out by half of 1.5', () => {
    // Its inscribed circle has R 3.
    const found = areas(
      polygon([
        [0, 0],
        [12, 0],
        [0, 9],
      ]),
      1.5,
      true,
    );
    expect(found).toEqual(close(54 * (1 - 0.75 / 3) ** 2, 54 * (1 + 0.75 / 3) ** 2));
  });
});

describe('what does not fit', () => {
  test('an arc of less radius than half the width, inside alone', () => {
    const tight = arcSpan({ center: { x: 1, y: 2 }, radius: 1.2, from: 0, sweep: 1 });
    expect(wideBorders([tight], { width: 2.4, closed: false })).toBeUndefined();
    expect(wideBorders([{ ...tight, sweep: -1 }], { width: 2.5, closed: false })).toBeUndefined();
    expect(wideBorders([tight], { width: 2.3, closed: false })).toHaveLength(1);
  });

  test('a short line between two corners that would turn round', () => {
    const steps = way([0, 0], [10, 0], [10, 1.5], [0, 1.5]);
    expect(wideBorders(steps, { width: 2, closed: false })).toBeUndefined();
    expect(wideBorders(steps, { width: 1.4, closed: false })).toHaveLength(1);
  });
});
