/** Numbers as drawings are written in: fixed point, never an exponent, never −0. */
export function fixedPoint(decimals: number): (value: number) => string {
  return (value) => {
    const text = value.toFixed(decimals);
    return Number(text) === 0 ? (0).toFixed(decimals) : text;
  };
}
