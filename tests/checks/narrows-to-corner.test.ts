import { expect, test } from 'vitest';
import { narrowPlaces } from '#checks/narrow-places.ts';
import { sidesOf } from '#checks/sides.ts';
import { arcSpan, type Loop, lineSpan, type Span } from '#geometry/span.ts';

const widthsIn = (loop: Loop) =>
  narrowPlaces(sidesOf([loop]), { widestOf: () => 3, limitOf: () => 3 }).map(({ width }) => width);

/** Arcs that go on into each other, by radius and degrees of turn to the left, from a place and heading on. */
function curve(
  from: { x: number; y: number },
  heading: number,
  ...arcs: readonly (readonly [number, number])[]
) {
  const spans: Span[] = [];
  let [start, along] = [from, (heading * Math.PI) / 180];
  for (const [radius, degrees] of arcs) {
    const sweep = (degrees * Math.PI) / 180;
    const center = { x: start.x - radius * Math.sin(along), y: start.y + radius * Math.cos(along) };
    const arc = arcSpan({ center, radius, from: along - Math.PI / 2, sweep });
    spans.push({ ...arc, start });
    [start, along] = [arc.end, along + sweep];
  }
  return { spans, end: start };
}

/** Under a level line, from the corner (0, 0) on, and closed by an upright. */
function wedge(...arcs: readonly (readonly [number, number])[]): Loop {
  const { spans, end } = curve({ x: 0, y: 0 }, -48, ...arcs);
  const corner = { x: end.x, y: 0 };
  return [...spans, lineSpan(end, corner), lineSpan(corner, { x: 0, y: 0 })];
}

test('M6.4 a line and a curve that leave one corner have no narrow place, into however many arcs the curve falls', () => {
  expect(widthsIn(wedge([5, 43]))).toEqual([]);
  expect(widthsIn(wedge([4, 7], [5, 9], [6, 11], [7, 5], [9, 8], [14, 3]))).toEqual([]);
  expect(widthsIn(wedge([4.2, 12], [5.5, 6], [6.5, 6], [8, 16]))).toEqual([]);
});

test('M6.4 where the curve comes back to the line it is narrow, however many arcs lead there', () => {
  // Lowest 3.0 mm under the line, then up to 2.3 mm from it.
  expect(widthsIn(wedge([9, 8], [6, 40], [10.5, 20])).length).toBeGreaterThan(0);
});
