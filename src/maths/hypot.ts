/**
 * Length of a vector, right to within one and a half units in the last place. Square roots are the same to the last bit on
 * every engine; `Math.hypot` need not be. Scaled only where squares would leave the range of numbers.
 */
export function hypot(x: number, y: number, z = 0): number {
  const squared = x * x + y * y + z * z;
  if (squared > 1e-280 && squared < 1e300) return Math.sqrt(squared);
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (most === 0 || !Number.isFinite(most)) return most;
  const [a, b, c] = [x / most, y / most, z / most];
  return most * Math.sqrt(a * a + b * b + c * c);
}
