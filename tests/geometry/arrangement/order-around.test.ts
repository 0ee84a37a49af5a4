import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderAround } from '#geometry/arrangement/order-around.ts';
import { lineSpan, type Span, spanFromBulge } from '#geometry/span.ts';

const ORIGIN = { x: 0, y: 0 };
const towards = (deg: number, far: number) => ({
  x: far * Math.cos((deg * Math.PI) / 180),
  y: far * Math.sin((deg * Math.PI) / 180),
});
const order = (spans: readonly Span[]) =>
  orderAround(spans.map((span, half) => ({ half, span }))).map(({ half }) => half);
/** From the span that was given first on. */
function fromFirst(halves: readonly number[]): number[] {
  const at = halves.indexOf(0);
  return [...halves.slice(at), ...halves.slice(0, at)];
}

test('lines come counter-clockwise by their angle', () => {
  const spans = [170, 20, -100, 95, -3].map((deg) => lineSpan(ORIGIN, towards(deg, 5)));
  expect(fromFirst(order(spans))).toEqual([0, 2, 4, 1, 3]);
});

describe('spans that leave in one direction', () => {
  test('a fillet that bends left comes after the line, one that bends right before it', () => {
    // A bulge of b leaves 2 atan(b)·… to the right of its chord: tangent to 0° when its chord lies at half its sweep.
    const bent = (bulge: number, far = 8) =>
      spanFromBulge(ORIGIN, towards((2 * Math.atan(bulge) * 180) / Math.PI, far), bulge);
    const line = lineSpan(ORIGIN, towards(0, 8));
    expect(fromFirst(order([lineSpan(ORIGIN, towards(180, 3)), bent(0.2), line, bent(-0.3)]))).toEqual([
      0, 3, 2, 1,
    ]);
    expect(fromFirst(order([lineSpan(ORIGIN, towards(180, 3)), line, bent(0.2), bent(0.4)]))).toEqual([
      0, 1, 2, 3,
    ]);
  });

  test('are put right across the seam at 180° too', () => {
    const bent = (bulge: number) =>
      spanFromBulge(ORIGIN, towards(180 + (2 * Math.atan(bulge) * 180) / Math.PI, 8), bulge);
    const line = lineSpan(ORIGIN, towards(180, 8));
    expect(fromFirst(order([lineSpan(ORIGIN, towards(10, 3)), bent(-0.3), bent(0.2), line]))).toEqual([
      0, 1, 3, 2,
    ]);
  });

  test('are put right across the seam whichever of them comes first', () => {
    const bent = (bulge: number, far: number, lean = 0) =>
      spanFromBulge(ORIGIN, towards(180 + lean + (2 * Math.atan(bulge) * 180) / Math.PI, far), bulge);
    // Counter-clockwise; tangents a little above and below the seam, none where the span then goes.
    const inOrder = [
      lineSpan(ORIGIN, towards(10, 3)),
      bent(-0.35, 7, 0.1),
      bent(-0.2, 8, 0.3),
      lineSpan(ORIGIN, towards(180, 8)),
      bent(0.25, 9, -0.2),
      bent(0.4, 6, -0.3),
    ];
    for (const first of inOrder) {
      const given = [first, ...inOrder.filter((span) => span !== first).reverse()];
      const found = order(given).map((half) => inOrder.indexOf(given[half] ?? first));
      expect(fromFirst(found)).toEqual([0, 1, 2, 3, 4, 5]);
    }
  });

  test('a short arc that leans 0.01 to the wrong side at first is ordered by where it goes', () => {
    // Starts 0.6° right of the line and ends 5° left of it.
    const arc = spanFromBulge(ORIGIN, towards(5, 2), Math.tan((5.6 * Math.PI) / 180 / 2));
    const line = lineSpan(ORIGIN, towards(0, 2));
    expect(fromFirst(order([lineSpan(ORIGIN, towards(120, 3)), arc, line]))).toEqual([0, 2, 1]);
  });
});

test('the order does not depend on the order given (random)', () => {
  const span = fc
    .tuple(fc.integer({ min: 0, max: 35 }), fc.integer({ min: 1, max: 9 }), fc.integer({ min: -9, max: 9 }))
    .map(([tens, far, bulge]) => ({
      tens,
      span: spanFromBulge(ORIGIN, towards(10 * tens + 1, far), bulge / 100),
    }));
  fc.assert(
    fc.property(
      fc.uniqueArray(span, { maxLength: 8, minLength: 3, selector: ({ tens }) => tens }),
      (drawn) => {
        const leaving = drawn.map(({ span: each }, half) => ({ half, span: each }));
        const again = orderAround([...leaving].reverse()).map(({ half }) => half);
        expect(again).toEqual(orderAround(leaving).map(({ half }) => half));
        // Tangents lean at most 2 · atan 0.09 · 2, 20°, off their chords: by angle of the tangent it is ascending but for near ones.
        expect([...again].sort()).toEqual(drawn.map((_, half) => half).sort());
      },
    ),
  );
});
