/** Numbers as drawings are written in: fixed point, never an exponent, never −0. */
export function fixedPoint(decimals: number): (value: number) => string {
  const zero = (0).toFixed(decimals);
  const finest = Number(`1e-${decimals}`);
  return (value) => {
    const text = value.toFixed(decimals);
    return Math.abs(value) < finest && Number(text) === 0 ? zero : text;
  };
}
