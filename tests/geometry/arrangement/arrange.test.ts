/** Shapes whose arrangement is known by hand: areas and counts are closed forms. */
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import type { Arrangement, SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { arcSpan, type Loop, lineSpan, pointAlong, type Span } from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle, sourced } from '#support/geometry/shapes.ts';

const JOIN = { joinTolerance: 0.05 };

/** Areas of the bounded faces, smallest first. */
function areas(arrangement: Arrangement): number[] {
  return arrangement.faces
    .slice(1)
    .map(({ area }) => area)
    .sort((a, b) => a - b);
}

function expectAreas(spans: readonly SourcedSpan[], expected: readonly number[]): Arrangement {
  const { arrangement, trouble } = arrange(spans, JOIN);
  expect(trouble).toEqual([]);
  const got = areas(arrangement);
  expect(got).toHaveLength(expected.length);
  expected.forEach((area, i) => {
    expect(got[i]).toBeCloseTo(area, 6);
  });
  return arrangement;
}

function line(x0: number, y0: number, x1: number, y1: number): Span {
  return lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
}

function loose(spans: readonly Span[]): SourcedSpan[] {
  return spans.map((span, source) => ({ span, source }));
}

describe('faces of plain linework', () => {
  test('nothing drawn: only the outside', () => {
    const { arrangement } = arrange([], JOIN);
    expect(arrangement.faces).toEqual([{ borders: [], loops: [], area: 0 }]);
  });

  test('a rectangle is one face of four edges', () => {
    const arrangement = expectAreas(sourced([rectangle(0, 0, 30, 20)]), [600]);
    expect(arrangement.edges).toHaveLength(4);
    expect(arrangement.faces[0]?.loops).toHaveLength(1);
  });

  test('a rounded rectangle keeps its eight spans, its arcs bit for bit', () => {
    const drawn = roundedRectangle(10, 20, 110, 80, 7);
    const arrangement = expectAreas(sourced([drawn]), [100 * 60 - (4 - Math.PI) * 49]);
    expect(arrangement.edges).toHaveLength(8);
    const arcs = arrangement.edges.flatMap(({ span }) => (span.kind === 'arc' ? [span] : []));
    for (const arc of arcs) {
      const same = drawn.some(
        (span) =>
          span.kind === 'arc' &&
          span.center === arc.center &&
          span.radius === arc.radius &&
          Math.abs(span.sweep) === Math.abs(arc.sweep),
      );
      expect(same).toBe(true);
    }
  });

  test('a bay grid of closed rectangles that share borders: every shared edge has two sources', () => {
    const bays = [0, 1, 2].flatMap((x) =>
      [0, 1].map((y) => rectangle(x * 10, y * 5, x * 10 + 10, y * 5 + 5)),
    );
    const arrangement = expectAreas(sourced(bays), [50, 50, 50, 50, 50, 50]);
    expect(arrangement.edges.filter(({ sources }) => sources.length === 2)).toHaveLength(7);
    expect(arrangement.edges).toHaveLength(17);
  });

  test('a sheet cut by lines that end on it and on each other (T joints)', () => {
    const cuts = [line(40, 0, 40, 50), line(40, 20, 100, 20), line(70, 20, 70, 50)];
    expectAreas(sourced([rectangle(0, 0, 100, 50), ...cuts.map((cut) => [cut])]), [900, 900, 1200, 2000]);
  });

  test('an island in a pocket in a sheet: holes go to the face around', () => {
    const arrangement = expectAreas(
      sourced([rectangle(0, 0, 100, 60), roundedRectangle(10, 10, 60, 50, 5), circle(30, 30, 8)]),
      [64 * Math.PI, 2000 - (4 - Math.PI) * 25 - 64 * Math.PI, 6000 - 2000 + (4 - Math.PI) * 25],
    );
    expect(arrangement.faces.map(({ loops }) => loops.length).sort()).toEqual([1, 1, 2, 2]);
  });

  test('crossing rectangles fall into three faces', () => {
    expectAreas(sourced([rectangle(0, 0, 20, 20), rectangle(10, 10, 40, 40)]), [100, 300, 800]);
  });

  test('a cross of two rectangles has five faces', () => {
    expectAreas(sourced([rectangle(0, 10, 30, 20), rectangle(10, 0, 20, 30)]), [100, 100, 100, 100, 100]);
  });

  test('overlapping circles: lens and two lunes', () => {
    // Lens of two circles of radius r a distance r apart: r² (2π/3 − √3/2).
    const lens = 100 * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2);
    const lune = 100 * Math.PI - lens;
    expectAreas(sourced([circle(0, 0, 10), circle(10, 0, 10)]), [lens, lune, lune]);
  });

  test('tangent circles meet at one vertex and make no sliver', () => {
    const outside = expectAreas(sourced([circle(0, 0, 10), circle(16, 12, 10)]), [
      100 * Math.PI,
      100 * Math.PI,
    ]);
    expect(outside.faces[0]?.loops).toHaveLength(2);
    const inside = expectAreas(sourced([circle(0, 0, 10), circle(3, 4, 5)]), [25 * Math.PI, 75 * Math.PI]);
    expect(inside.faces.some(({ loops }) => loops.length === 2)).toBe(true);
  });

  test('a figure eight of one crossing polyline has two lobes', () => {
    const eight: Loop = polygon([
      [0, 0],
      [20, 10],
      [20, 0],
      [0, 10],
    ]);
    const arrangement = expectAreas(sourced([eight]), [50, 50]);
    expect(arrangement.vertices).toHaveLength(5);
  });

  test('a line that runs on tangentially from a fillet shares its end and nothing else', () => {
    const fillet = arcSpan({ center: { x: 10, y: 10 }, radius: 10, from: Math.PI, sweep: Math.PI / 2 });
    const arrangement = expectAreas(
      loose([
        line(-30, 0, 50, 0),
        fillet,
        line(0, 10, 0, 40),
        line(0, 40, 50, 40),
        line(50, 40, 50, 0),
        line(-30, 0, -30, 40),
        line(-30, 40, 0, 40),
      ]),
      [1200 + (1 - Math.PI / 4) * 100, 2000 - (1 - Math.PI / 4) * 100],
    );
    expect(arrangement.vertices).toHaveLength(7);
  });
});

describe('vertices by place, from left to right and upwards, edges by their vertices', () => {
  test('of two plates across each other, drawn from the right', () => {
    const { vertices, edges } = expectAreas(
      sourced([rectangle(4, -3, 7, 9), rectangle(0, 0, 10, 6)]),
      [9, 9, 18, 18, 24],
    );
    expect(vertices.map(({ x, y }) => [x, y])).toEqual([
      ...[0, 6].map((y) => [0, y]),
      ...[-3, 0, 6, 9].map((y) => [4, y]),
      ...[-3, 0, 6, 9].map((y) => [7, y]),
      ...[0, 6].map((y) => [10, y]),
    ]);
    expect(edges.map(({ start, end }) => `${start}–${end}`).join(' ')).toBe(
      '0–1 0–3 1–4 2–3 2–6 3–4 3–7 4–5 4–8 5–9 6–7 7–8 7–10 8–9 8–11 10–11',
    );
  });

  test('of a circle: its lower half before its upper', () => {
    const { edges } = expectAreas(sourced([circle(3, 5, 2)]), [4 * Math.PI]);
    expect(edges.map(({ span }) => Math.round(pointAlong(span, 0.5).y))).toEqual([3, 7]);
  });
});
