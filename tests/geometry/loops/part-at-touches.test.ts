/** Shapes that meet in one place are apart there, however their loops were linked. Areas: own computation by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import { type Loop, loopArea, spanFromBulge } from '#geometry/span.ts';
import { polygon } from '#support/geometry/shapes.ts';

const TOUCHING = 1e-5;
const areas = (loops: readonly Loop[]): number[] =>
  loops.map((loop) => Math.round(loopArea(loop) * 1e6) / 1e6).sort((a, b) => a - b);

/** A left square of 4 by 3 mm and a right one of 5 by 2 mm that share the corner (4, 3). */
const left = [
  [0, 0],
  [4, 0],
  [4, 3],
] as const;
const right = [
  [9, 3],
  [9, 5],
  [4, 5],
] as const;

describe('partAtTouches', () => {
  test('takes one loop through a shared corner apart into two', () => {
    const both = polygon([...left, ...right, [4, 3], [0, 3]]);
    expect(areas(partAtTouches([both], TOUCHING))).toEqual([10, 12]);
  });

  test('leaves two loops that share a corner as they are', () => {
    const loops = [polygon([...left, [0, 3]]), polygon([[4, 3], ...right])];
    expect(areas(partAtTouches(loops, TOUCHING))).toEqual([10, 12]);
  });

  test('links a hole that touches the border in a corner to the border', () => {
    const outer = polygon([
      [0, 0],
      [7, 0],
      [7, 5],
      [0, 5],
    ]);
    const hole = polygon([
      [7, 2],
      [4, 1],
      [4, 3],
    ]);
    const [loop, ...more] = partAtTouches([outer, hole], TOUCHING);
    expect(more).toEqual([]);
    expect(loopArea(loop ?? [])).toBeCloseTo(35 - 3, 9);
  });

  test('finds a round that reaches a straight where neither has a corner', () => {
    // A slot from x = 0 to 10 with a round hole of radius 2 about (6, 2) that touches its lower side in (6, 0).
    const outer = polygon([
      [0, 0],
      [10, 0],
      [10, 7],
      [0, 7],
    ]);
    const hole = [
      spanFromBulge({ x: 4, y: 2 }, { x: 8, y: 2 }, -1),
      spanFromBulge({ x: 8, y: 2 }, { x: 4, y: 2 }, -1),
    ];
    const linked = partAtTouches([outer, hole], TOUCHING);
    expect(linked).toHaveLength(1);
    expect(loopArea(linked[0] ?? [])).toBeCloseTo(70 - 4 * Math.PI, 6);
  });

  test('makes one of loops that share part of a side', () => {
    const below = polygon([...left, [0, 3]]);
    const above = polygon([
      [1, 3],
      [9, 3],
      [9, 5],
      [1, 5],
    ]);
    expect(areas(partAtTouches([below, above], TOUCHING))).toEqual([28]);
  });

  test('keeps the window of an arch that stands on a plate with both feet', () => {
    // The plate 12 by 5; the arch 12 by 6 on it, its window a half round of radius 3 about (5, 5).
    const plate = polygon([
      [0, 0],
      [12, 0],
      [12, 5],
      [0, 5],
    ]);
    const [foot, , ...rest] = polygon([
      [0, 5],
      [2, 5],
      [8, 5],
      [12, 5],
      [12, 11],
      [0, 11],
    ]);
    if (foot === undefined) throw new Error('an arch has a foot');
    const arch = [foot, spanFromBulge({ x: 2, y: 5 }, { x: 8, y: 5 }, -1), ...rest];
    const window = Math.round(4.5 * Math.PI * 1e6) / 1e6;
    expect(areas(partAtTouches([plate, arch], TOUCHING))).toEqual([-window, 60 + 72]);
  });

  test('gives the very same loops where nothing touches', () => {
    const loops = [polygon([...left, [0, 3]])];
    expect(partAtTouches(loops, TOUCHING)).toBe(loops);
  });

  test('gives the same parts wherever a chain of touching triangles is begun and however it is linked', () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(sizes, fc.nat(), (widths, seam) => {
        const feet = [0];
        for (const width of widths) feet.push((feet.at(-1) ?? 0) + width);
        const apart = widths.map((width, i) => {
          const foot = feet[i] ?? 0;
          return polygon([
            [foot, 0],
            [foot + width, 0],
            [foot + width / 3, 2],
          ]);
        });
        const whole = polygon(linkedTriangles(feet, widths));
        const turned = [...whole.slice(seam % whole.length), ...whole.slice(0, seam % whole.length)];
        expect(areas(partAtTouches([turned], TOUCHING))).toEqual(areas(apart));
      }),
    );
  });
});

/** The corners of a row of triangles in one go: along all feet, and back over all tips. */
function linkedTriangles(feet: readonly number[], widths: readonly number[]): [number, number][] {
  const back = widths.flatMap((width, i): [number, number][] => [
    [feet[i] ?? 0, 0],
    [(feet[i] ?? 0) + width / 3, 2],
  ]);
  return [...feet.map((x): [number, number] => [x, 0]), ...back.reverse().slice(0, -1)];
}
