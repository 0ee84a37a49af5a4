/** Powers of ten, read and written in decimal: that is exact on every engine, `Math.log10` and `10 ** n` are not. */

/** The largest n with 10ⁿ ≤ `value`, which is positive and finite. */
export function decadeOf(value: number): number {
  const text = value.toExponential();
  return Number(text.slice(text.indexOf('e') + 1));
}

/** 10ⁿ, n a whole number. */
export function powerOfTen(n: number): number {
  return Number(`1e${n}`);
}
