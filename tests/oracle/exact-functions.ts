/**
 * Elementary functions to 240 binary places in whole numbers, by their power series, and how far a result is from them.
 * Slow and plain: π by Machin's formula (1706), sine, cosine and exponential by Taylor's series, the arc tangent by Gregory's
 * after its angle was halved three times.
 */

const PLACES = 240n;
const ONE = 1n << PLACES;

/** A value times 2²⁴⁰, exact for every number that is not below 2⁻¹⁸⁷. */
export type Fixed = bigint;

export function fixed(value: number): Fixed {
  let [whole, doublings] = [value, 0n];
  for (; !Number.isInteger(whole); doublings++) whole *= 2;
  return (BigInt(whole) << PLACES) >> doublings;
}

/** Units in the last place of the exact value by which a result is off. */
export function ulpsOff(result: number, exact: Fixed): number {
  const size = exact < 0n ? -exact : exact;
  if (size === 0n) return result === 0 ? 0 : Number.POSITIVE_INFINITY;
  const last = BigInt(size.toString(2).length - 53);
  const off = fixed(result) - exact;
  const shift = 40n;
  const scaled = last >= shift ? off >> (last - shift) : off << (shift - last);
  return Math.abs(Number(scaled)) / 2 ** Number(shift);
}

export function exactSin(x: Fixed): Fixed {
  const { quarters, rest } = turned(x);
  const size = quarters % 2n === 0n ? sineSeries(rest) : cosineSeries(rest);
  return quarters < 2n ? size : -size;
}

export function exactCos(x: Fixed): Fixed {
  const { quarters, rest } = turned(x);
  const size = quarters % 2n === 0n ? cosineSeries(rest) : sineSeries(rest);
  return quarters === 0n || quarters === 3n ? size : -size;
}

export function exactTan(x: Fixed): Fixed {
  return (exactSin(x) << PLACES) / exactCos(x);
}

export function exactAtan(x: Fixed): Fixed {
  let halved = x;
  for (let i = 0; i < 3; i++) {
    halved = (halved << PLACES) / (ONE + squareRoot((ONE << PLACES) + halved * halved));
  }
  return 8n * arcSeries(halved);
}

/** Of a direction that is not (0, 0). */
export function exactAtan2(y: Fixed, x: Fixed): Fixed {
  if (x > 0n) return exactAtan((y << PLACES) / x);
  if (x === 0n) return y > 0n ? PI / 2n : -PI / 2n;
  const beyond = exactAtan((y << PLACES) / x);
  return y < 0n ? beyond - PI : beyond + PI;
}

/** Of −1 < x ≤ 1. */
export function exactAcos(x: Fixed): Fixed {
  return 2n * exactAtan(squareRoot(((ONE - x) << (2n * PLACES)) / (ONE + x)));
}

export function exactExp(x: Fixed): Fixed {
  const halvings = 16n;
  let power = series(x >> halvings, (term, n, small) => (term * small) / (ONE * n), ONE);
  for (let i = 0n; i < halvings; i++) power = (power * power) >> PLACES;
  return power;
}

export function exactHypot(x: Fixed, y: Fixed): Fixed {
  return squareRoot(x * x + y * y);
}

const PI = 4n * (4n * arcSeries(ONE / 5n) - arcSeries(ONE / 239n));

function turned(x: Fixed): { quarters: bigint; rest: Fixed } {
  const quarter = PI / 2n;
  const doubled = 2n * x + quarter;
  const count = doubled >= 0n ? doubled / PI : -((-doubled + PI - 1n) / PI);
  return { quarters: ((count % 4n) + 4n) % 4n, rest: x - (count * PI) / 2n };
}

function sineSeries(x: Fixed): Fixed {
  return series(x, (term, n) => -(((term * x) >> PLACES) * x) / (ONE * (2n * n) * (2n * n + 1n)), x);
}

function cosineSeries(x: Fixed): Fixed {
  return series(x, (term, n) => -(((term * x) >> PLACES) * x) / (ONE * (2n * n - 1n) * (2n * n)), ONE);
}

function series(x: Fixed, next: (term: Fixed, n: bigint, x: Fixed) => Fixed, first: Fixed): Fixed {
  let sum = first;
  let term = first;
  for (let n = 1n; term !== 0n && n < 1000n; n++) {
    term = next(term, n, x);
    sum += term;
  }
  return sum;
}

/** x − x³/3 + x⁵/5 − … */
function arcSeries(x: Fixed): Fixed {
  const squared = (x * x) >> PLACES;
  let [sum, power, sign] = [0n, x, 1n];
  for (let odd = 1n; power !== 0n && power !== -1n; odd += 2n) {
    sum += (sign * power) / odd;
    power = (power * squared) >> PLACES;
    sign = -sign;
  }
  return sum;
}

/** Whole part, by Newton's steps from above. */
function squareRoot(value: bigint): bigint {
  if (value < 2n) return value;
  let root = 1n << BigInt(Math.ceil(value.toString(2).length / 2));
  for (;;) {
    const next = (root + value / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}
