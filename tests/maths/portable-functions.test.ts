/**
 * The portable functions against their power series in whole numbers (tests/oracle/exact-functions.ts), at random places,
 * where they are hardest, and where ECMA-262 (15th edition, 21.3.2) says what must come out.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acos } from '#maths/arc-cosine.ts';
import { atan, atan2 } from '#maths/arc-tangent.ts';
import { decadeOf, powerOfTen } from '#maths/decade.ts';
import { exp } from '#maths/exponential.ts';
import { hypot } from '#maths/hypot.ts';
import { root } from '#maths/root.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';
import {
  exactAcos,
  exactAtan,
  exactAtan2,
  exactCos,
  exactExp,
  exactHypot,
  exactSin,
  exactTan,
  type Fixed,
  fixed,
  ulpsOff,
} from '#oracle/exact-functions.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** As many of each size, from thousandths of a micrometre to kilometres. */
const sized = fc
  .tuple(between(-30, 24), fc.constantFrom(-1, 1))
  .map(([size, sign]) => sign * 2 ** Math.floor(size) * (1 + (size - Math.floor(size))));

/** Two turns either way; what is too small for the oracle's places is a special value. */
const turns = between(-13, 13).filter((x) => Math.abs(x) > 1e-40);

const cases: readonly [string, (x: number) => number, (x: Fixed) => Fixed, fc.Arbitrary<number>][] = [
  ['sin', sin, exactSin, fc.oneof(sized, turns)],
  ['cos', cos, exactCos, fc.oneof(sized, turns)],
  ['tan', tan, exactTan, fc.oneof(sized, turns)],
  ['atan', atan, exactAtan, sized],
  ['acos', acos, exactAcos, between(-0.999_999, 1)],
  ['exp', exp, exactExp, between(-40, 40)],
];

describe.each(cases)('%s', (_, ours, exact, places) => {
  test('is right to one unit in the last place', () => {
    fc.assert(
      fc.property(places, (x) => {
        expect(ulpsOff(ours(x), exact(fixed(x))), String(x)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 3000 },
    );
  });
});

test('sin, cos and tan hold next to whole quarter turns, where nearly all of the angle cancels', () => {
  for (
    let quarters = -40;
    quarters <= 1_000_000;
    quarters = quarters < 40 ? quarters + 1 : quarters * 3 + 1
  ) {
    for (const x of [quarters * (Math.PI / 2), (quarters * Math.PI) / 2 + 1e-12 * quarters]) {
      expect(ulpsOff(sin(x), exactSin(fixed(x))), `sin ${x}`).toBeLessThanOrEqual(1);
      expect(ulpsOff(cos(x), exactCos(fixed(x))), `cos ${x}`).toBeLessThanOrEqual(1);
      expect(ulpsOff(tan(x), exactTan(fixed(x))), `tan ${x}`).toBeLessThanOrEqual(1);
    }
  }
});

test('angles that no drawing has are still turned right', () => {
  // K. C. Ng, Argument Reduction for Huge Arguments: Good to the Last Bit (1992): sin(10²²) = −0.852200849767138…
  expect(sin(1e22)).toBe(-0.8522008497671888);
  expect(cos(1e22)).toBe(0.523214785395139);
  fc.assert(
    fc.property(between(1.6e6, 1e40), (x) => {
      expect(hypot(sin(x), cos(x))).toBeCloseTo(1, 15);
      expect(ulpsOff(sin(x), exactSin(fixed(x)))).toBeLessThanOrEqual(1);
    }),
    { numRuns: 300 },
  );
});

test('atan2 is right to one and a half units all round, and tells the two sides of the seam apart', () => {
  fc.assert(
    fc.property(sized, sized, (y, x) => {
      expect(ulpsOff(atan2(y, x), exactAtan2(fixed(y), fixed(x)))).toBeLessThanOrEqual(1.5);
    }),
    { numRuns: 3000 },
  );
});

test('hypot is right to one and a half units, and neither overflows nor vanishes', () => {
  fc.assert(
    fc.property(sized, sized, (x, y) => {
      expect(ulpsOff(hypot(x, y), exactHypot(fixed(x), fixed(y)))).toBeLessThanOrEqual(1.5);
    }),
    { numRuns: 3000 },
  );
  expect(hypot(3, 4)).toBe(5);
  expect(hypot(2, 3, 6)).toBe(7);
  expect(hypot(3e200, -4e200) / 1e200).toBeCloseTo(5, 14);
  expect(hypot(3e-200, 4e-200) / 1e-200).toBeCloseTo(5, 14);
  expect(hypot(0, 0)).toBe(0);
  expect(hypot(Number.NEGATIVE_INFINITY, 1)).toBe(Number.POSITIVE_INFINITY);
});

test('root is right to two units in the last place', () => {
  const power = (value: Fixed, degree: number) =>
    Array.from({ length: degree - 1 }).reduce<Fixed>((all) => (all * value) >> 240n, value);
  fc.assert(
    fc.property(between(1e-6, 1e6), fc.constantFrom(2, 3, 5, 7), (value, degree) => {
      const found = root(value, degree);
      const step = 2 * 2 ** (Math.floor(Math.log2(found)) - 52);
      expect(power(fixed(found - step), degree)).toBeLessThan(fixed(value));
      expect(power(fixed(found + step), degree)).toBeGreaterThan(fixed(value));
    }),
    { numRuns: 1000 },
  );
});

test('decades and powers of ten are exact', () => {
  for (let n = -300; n <= 300; n++) {
    const power = powerOfTen(n);
    expect(power).toBe(JSON.parse(`1e${n}`));
    expect(decadeOf(power)).toBe(n);
    expect(decadeOf(power * 9.99)).toBe(n);
    expect(decadeOf(power * (1 - Number.EPSILON))).toBe(n - 1);
  }
});

describe('special values', () => {
  const { NaN: none, POSITIVE_INFINITY: endless } = Number;

  test.each<[string, (x: number) => number, [number, number][]]>([
    [
      'sin',
      sin,
      [
        [0, 0],
        [-0, -0],
        [endless, none],
        [none, none],
      ],
    ],
    [
      'cos',
      cos,
      [
        [0, 1],
        [-0, 1],
        [endless, none],
        [none, none],
      ],
    ],
    [
      'tan',
      tan,
      [
        [0, 0],
        [-0, -0],
        [endless, none],
        [none, none],
      ],
    ],
    [
      'atan',
      atan,
      [
        [0, 0],
        [-0, -0],
        [endless, Math.PI / 2],
        [-endless, -Math.PI / 2],
        [none, none],
      ],
    ],
    [
      'acos',
      acos,
      [
        [1, 0],
        [-1, Math.PI],
        [0, Math.PI / 2],
        [1.000_000_1, none],
        [-1.1, none],
        [none, none],
      ],
    ],
    [
      'exp',
      exp,
      [
        [0, 1],
        [-0, 1],
        [endless, endless],
        [-endless, 0],
        [710, endless],
        [-746, 0],
        [none, none],
      ],
    ],
  ])('%s', (_, ours, pairs) => {
    for (const [x, expected] of pairs) expect(ours(x), String(x)).toBe(expected);
  });

  test('atan2', () => {
    const half = Math.PI / 2;
    for (const [y, x, expected] of [
      [0, 0, 0],
      [0, -0, Math.PI],
      [-0, 0, -0],
      [-0, -0, -Math.PI],
      [0, -1, Math.PI],
      [-0, -1, -Math.PI],
      [1, 0, half],
      [1, -0, half],
      [-1, 0, -half],
      [endless, endless, half / 2],
      [endless, -endless, 1.5 * half],
      [-endless, -endless, -1.5 * half],
      [1, endless, 0],
      [-1, endless, -0],
      [1, -endless, Math.PI],
      [none, 1, none],
      [1, none, none],
    ] as const) {
      expect(atan2(y, x), `${y} ${x}`).toBe(expected);
    }
  });
});
