/** Outlines whose curve stops short of the line that closes it, by less than the join tolerance: reported as one gap joined, nothing lost. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { spanLength } from '#geometry/span.ts';
import { findRegions } from '#part/find-regions.ts';
import { bytesOf, drawingText, entity, line, polyline, type Tag } from '#support/drawings/raw-drawing.ts';

type Corner = readonly [x: number, y: number];

const LAYERS = { outline: [], regions: undefined, ignore: [] };

/** The curve runs from (30, 0) to near (0, 20), and two lines close it at the origin. */
function pocket(curve: string) {
  const text = drawingText({ entities: curve + line(0, 20, 0, 0) + line(0, 0, 30, 0) });
  const drawing = readDrawing(bytesOf(text));
  const { part, findings } = findRegions(drawing, { layers: LAYERS, joinTolerance: 0.05 });
  const spans = drawing.curves.flatMap((each) => (each.kind === 'LINE' ? [] : [each.spans]));
  return {
    last: spans.flat().at(-1),
    codes: [...drawing.findings, ...findings].map(({ code }) => code),
    areas: part.regions.map(({ area }) => area),
  };
}

function bezier(points: readonly [Corner, Corner, Corner, Corner]): string {
  const knots = [0, 0, 0, 0, 1, 1, 1, 1];
  const places = points.flatMap(([x, y]): Tag[] => [
    [10, x],
    [20, y],
    [30, 0],
  ]);
  const counts: Tag[] = [
    [70, 8],
    [71, 3],
    [72, 8],
    [73, 4],
    [74, 0],
  ];
  return entity('SPLINE', ...counts, ...knots.map((knot): Tag => [40, knot]), ...places);
}

/** Swept from the origin, by Green's theorem: of a cubic the sum over its control points is exact. */
function sweptBy([a, b, c, d]: readonly [Corner, Corner, Corner, Corner]): number {
  const cross = ([px, py]: Corner, [qx, qy]: Corner) => px * qy - py * qx;
  const sum =
    6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d);
  return sum / 20;
}

/** About the origin, from (30, 0) on, up to a place `gap` before the end of its quarter. */
function ellipse(gap: number): string {
  const shape: Tag[] = [
    [10, 0],
    [20, 0],
    [11, 30],
    [21, 0],
    [40, 2 / 3],
  ];
  return entity('ELLIPSE', ...shape, [41, 0], [42, Math.acos(gap / 30)]);
}

describe('a curve that stops short by less than the join tolerance', () => {
  test.each([0.012, 0.03, 0.048])('gap-joined: an ellipse, by %d mm', (gap) => {
    const { codes, areas } = pocket(ellipse(gap));
    expect(codes).toEqual(['gap-joined']);
    expect(areas).toHaveLength(1);
    expect(Math.abs((areas[0] ?? 0) - (Math.PI * 30 * 20) / 4)).toBeLessThan(gap * 20);
  });

  test.each([0.012, 0.03, 0.048])('gap-joined: a spline, by %d mm', (gap) => {
    const points = [
      [30, 0],
      [30, 11],
      [16, 20],
      [gap, 20],
    ] as const;
    const { codes, areas } = pocket(bezier(points));
    expect(codes).toEqual(['gap-joined']);
    expect(areas).toHaveLength(1);
    expect(Math.abs((areas[0] ?? 0) - sweptBy(points))).toBeLessThan(gap * 20);
  });

  test.each([0.03, 0.04, 0.048])(
    'gap-joined: a spline with a hook at its end, its last arc shorter than twice the gap of %d mm',
    (gap) => {
      const points = [
        [30, 0],
        [30, 12],
        [gap + 0.9, 20.2],
        [gap, 20],
      ] as const;
      const { codes, areas, last } = pocket(bezier(points));
      expect(last === undefined ? 0 : spanLength(last)).toBeLessThan(2 * gap);
      expect(codes).toEqual(['gap-joined']);
      expect(areas).toHaveLength(1);
      expect(Math.abs((areas[0] ?? 0) - sweptBy(points))).toBeLessThan(gap * 20);
    },
  );

  test('gap-joined: a polyline in steps of 0.02 mm, by 0.04 mm', () => {
    const count = 2000;
    const last = Math.acos(0.04 / 30);
    const points = Array.from({ length: count + 1 }, (_, n): Corner => {
      // Its last thousand steps are of 0.02 mm, those before are longer.
      const angle = n <= 1000 ? ((last - 0.667) * n) / 1000 : last - (0.667 * (count - n)) / 1000;
      return [30 * Math.cos(angle), 20 * Math.sin(angle)];
    });
    const { codes, areas } = pocket(polyline(points, 0));
    expect(codes).toEqual(['gap-joined']);
    expect(areas).toEqual([expect.closeTo((Math.PI * 30 * 20) / 4, 0)]);
  });

  test('gap-open: by more than the tolerance, the ellipse and the spline are reported as a gap', () => {
    expect(pocket(ellipse(0.2)).codes).toContain('no-closed-region');
    expect(pocket(ellipse(0.2)).areas).toEqual([]);
  });
});
