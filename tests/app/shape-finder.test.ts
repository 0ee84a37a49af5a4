/** Which region holds a place, of a few and of many, with figures by hand. */
import { describe, expect, test } from 'vitest';
import { regionShapes } from '#app/state/region-shape.ts';
import { levelsIn, shapeAt } from '#app/state/shape-finder.ts';
import type { Loop } from '#geometry/span.ts';
import { contourOfLoop } from '#handoff/contour.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

function region(id: string, level: number, loops: readonly Loop[]) {
  return { id, level, contours: loops.map(contourOfLoop) } as Partial<ShownRegion> as ShownRegion;
}

/** A plate of 3 mm a hole, with round holes of 1.2 mm at every third millimetre, as deep by turns as 0.1 and 0.25. */
function mesh(count: number) {
  const holes = Array.from({ length: count }, (_, n) => circle(3 * n + 2, 4, 0.6));
  const land = region('R0', 0, [rectangle(0, 0, 3 * count + 1, 9), ...holes.map(reversed)]);
  return regionShapes(
    [land, ...holes.map((hole, n) => region(`R${n + 1}`, n % 2 === 0 ? 0.1 : 0.25, [hole]))],
    [],
  );
}

function reversed(loop: Loop): Loop {
  return [...loop]
    .reverse()
    .map((span) =>
      span.kind === 'line'
        ? { ...span, start: span.end, end: span.start }
        : { ...span, start: span.end, end: span.start, sweep: -span.sweep },
    );
}

describe.each([7, 400])('of %d holes', (count) => {
  const shapes = mesh(count);
  const idAt = (x: number, y: number) => shapeAt(shapes, { x, y })?.region.id;

  test('each holds what lies in it, the land what lies between them, nothing what lies outside', () => {
    expect(idAt(2.1, 4.2)).toBe('R1');
    expect(idAt(3 * count - 1.3, 3.6)).toBe(`R${count}`);
    expect(idAt(2.7, 4)).toBe('R0');
    // In the box of a hole, but not in it.
    expect(idAt(5.55, 4.55)).toBe('R0');
    expect(idAt(3.5, 8.9)).toBe('R0');
    expect(idAt(-0.1, 4)).toBeUndefined();
    expect(idAt(3 * count + 1.2, 4)).toBeUndefined();
  });

  test('their levels ascend, each once', () => {
    expect(levelsIn(shapes)).toEqual([0, 0.1, 0.25]);
  });
});

test('no region holds anything where there is none', () => {
  expect(shapeAt([], { x: 0, y: 0 })).toBeUndefined();
  expect(levelsIn([])).toEqual([]);
});
