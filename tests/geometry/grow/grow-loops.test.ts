/** Growing by Steiner's formula, area + perimeter · d + π d²; booleans of circles by the lens formula. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combineLoops, growLoops, shrinkLoops } from '#geometry/grow/grow-loops.ts';
import { type Loop, loopArea, loopsArea, reverseSpans, type Span } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const areasOf = (loops: readonly Loop[]) => loops.map(loopArea).sort((a, b) => a - b);

describe('growing', () => {
  test('a convex outline by Steiner’s formula (random triangles and distances)', () => {
    const side = fc.integer({ min: 2, max: 40 });
    fc.assert(
      fc.property(
        side,
        side,
        fc.integer({ min: -10, max: 30 }),
        fc.integer({ min: 1, max: 60 }),
        (a, b, lean, tenths) => {
          const by = tenths / 10;
          const triangle = polygon([
            [0, 0],
            [a, 0],
            [lean, b],
          ]);
          const around = a + Math.hypot(a - lean, b) + Math.hypot(lean, b);
          const grown = (a * b) / 2 + around * by + Math.PI * by * by;
          expect(areasOf(growLoops([triangle], by))).toEqual([expect.closeTo(grown, 5)]);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('a hole shrinks, and is gone at its radius', () => {
    const plate = (hole: number) => [rectangle(0, 0, 30, 20), reverseSpans(circle(11, 9, hole))];
    expect(areasOf(growLoops(plate(5), 2))).toEqual([
      expect.closeTo(-9 * Math.PI, 6),
      expect.closeTo(600 + 200 + 4 * Math.PI, 6),
    ]);
    expect(growLoops(plate(2), 2.5)).toHaveLength(1);
  });

  test('neighbours that come together are united', () => {
    // 4 apart, grown by 2.5: the strips overlap by 1 over 12 and in the rounds.
    const grown = growLoops([rectangle(0, 0, 10, 12), rectangle(14, 0, 20, 12)], 2.5);
    expect(grown).toHaveLength(1);
    const cap = 2 * (2.5 ** 2 * Math.acos(2 / 2.5) - 2 * 1.5);
    const each = (width: number) => 12 * width + 2 * (width + 12) * 2.5 + 6.25 * Math.PI;
    expect(areasOf(grown)).toEqual([expect.closeTo(each(10) + each(6) - 12 - cap, 5)]);
  });

  test('by nothing is the same', () => {
    const loops = [rectangle(0, 0, 3, 2)];
    expect(growLoops(loops, 0)).toEqual(loops);
    expect(growLoops([], 3)).toEqual([]);
  });
});

describe('shrinking', () => {
  test('outside corners stay sharp, inside ones come out round', () => {
    // An L of 30 × 20 less 12 × 9, by 0.7: at its one inside corner a quarter disc of 0.7 is gone too.
    const angle = polygon([
      [0, 0],
      [30, 0],
      [30, 11],
      [18, 11],
      [18, 20],
      [0, 20],
    ]);
    // Both strips along the inside corner leave its square of 0.7, of which a quarter disc goes.
    const left = (30 - 1.4) * (11 - 1.4) + (18 - 1.4) * 9 + 0.7 * 0.7 * (1 - Math.PI / 4);
    expect(areasOf(shrinkLoops([angle], 0.7))).toEqual([expect.closeTo(left, 6)]);
  });

  test('a hole grows, and opens where it comes to an edge', () => {
    const plate = [rectangle(0, 0, 30, 20), reverseSpans(circle(11, 9, 5))];
    expect(areasOf(shrinkLoops(plate, 1.5))).toEqual([
      expect.closeTo(-6.5 * 6.5 * Math.PI, 6),
      expect.closeTo(27 * 17, 6),
    ]);
    // 4 to the lower edge: 2.1 from either side.
    expect(shrinkLoops(plate, 2.1)).toHaveLength(1);
  });

  test('by half its width nothing is left; by nothing it is the same', () => {
    const bar = [rectangle(0, 0, 30, 3)];
    expect(shrinkLoops(bar, 1.6)).toEqual([]);
    expect(shrinkLoops(bar, 0)).toEqual(bar);
  });
});

describe('areas combined', () => {
  const [a, b] = [[circle(0, 0, 5)], [circle(6, 0, 4)]];
  // d = 6: x = (36 + 25 − 16) / 12 = 3.75.
  const lens = 25 * Math.acos(3.75 / 5) + 16 * Math.acos(2.25 / 4) - 6 * Math.sqrt(25 - 3.75 ** 2);

  test('two circles', () => {
    expect(loopsArea(combineLoops('intersect', a, b))).toBeCloseTo(lens, 8);
    expect(loopsArea(combineLoops('unite', a, b))).toBeCloseTo(41 * Math.PI - lens, 8);
    expect(loopsArea(combineLoops('subtract', a, b))).toBeCloseTo(25 * Math.PI - lens, 8);
    expect(loopsArea(combineLoops('subtract', b, a))).toBeCloseTo(16 * Math.PI - lens, 8);
  });
});

test('what is left of a circle less the same one, cut elsewhere and off by rounding, is nothing', () => {
  const center = { x: 24.40890261028399, y: 40.325389502477066 };
  const [right, left] = [
    { x: 25.207538377470765, y: 44.37730829400657 },
    { x: 23.610266843097218, y: 36.273470710947564 },
  ];
  const half = { kind: 'arc', center, radius: 4.129874693229796, sweep: Math.PI } as const;
  const round = [
    { ...half, start: right, end: left },
    { ...half, start: left, end: right },
  ];
  const cuts = [
    { x: 20.279027917054197, y: 40.325389502477066 },
    { x: 23.610266843097218, y: 36.273470710947564 },
    { x: 26.503359018396967, y: 36.76601914575744 },
    { x: 28.538777303513786, y: 40.325389502477066 },
    { x: 26.24389089127316, y: 44.025211523927865 },
  ];
  const sweeps = [
    1.3761901658648774, 0.7264782306360356, 1.0389242570888801, 1.1103806120928854, 2.0312120414969077,
  ];
  const radii = [
    4.129874693229796, 4.129874693229796, 4.1298746932297945, 4.129874693229794, 4.129874693229794,
  ];
  const same = cuts.map(
    (start, i): Span => ({
      kind: 'arc',
      center: i < 2 ? { ...center, x: 24.408902610283995 } : center,
      radius: radii[i] ?? 0,
      sweep: sweeps[i] ?? 0,
      start,
      end: cuts[(i + 1) % cuts.length] ?? start,
    }),
  );
  expect(combineLoops('subtract', [round], [same])).toEqual([]);
});
