/** Exact squared Euclidean distance transform of a mask (P. F. Felzenszwalb and D. P. Huttenlocher, Distance Transforms of Sampled Functions, Theory of Computing 8 (2012)). */

/** By pixel: squared distance, in pixels, to the nearest pixel of the mask. Linear in the number of pixels. */
export function squaredDistanceTransform(mask: Uint8Array, width: number, height: number): Float64Array {
  const far = (width + height) ** 2;
  const squares = Float64Array.from(mask, (inside) => (inside === 1 ? 0 : far));
  const longest = Math.max(width, height);
  const line = new Float64Array(longest);
  const space = { hulls: new Int32Array(longest), bounds: new Float64Array(longest + 1), line };
  for (let x = 0; x < width; x++) transformLine(squares, { start: x, step: width, count: height }, space);
  for (let y = 0; y < height; y++) transformLine(squares, { start: y * width, step: 1, count: width }, space);
  return squares;
}

interface Space {
  readonly hulls: Int32Array;
  readonly bounds: Float64Array;
  readonly line: Float64Array;
}

/** Lower envelope of the parabolas that stand on a line of values. */
function transformLine(
  values: Float64Array,
  { start, step, count }: { start: number; step: number; count: number },
  { hulls, bounds, line }: Space,
): void {
  for (let i = 0; i < count; i++) line[i] = values[start + i * step] as number;
  let last = 0;
  hulls[0] = 0;
  bounds[0] = Number.NEGATIVE_INFINITY;
  bounds[1] = Number.POSITIVE_INFINITY;
  for (let q = 1; q < count; q++) {
    let cross = crossing(line, hulls[last] as number, q);
    while (cross <= (bounds[last] as number)) {
      last--;
      cross = crossing(line, hulls[last] as number, q);
    }
    last++;
    hulls[last] = q;
    bounds[last] = cross;
    bounds[last + 1] = Number.POSITIVE_INFINITY;
  }
  let hull = 0;
  for (let q = 0; q < count; q++) {
    while ((bounds[hull + 1] as number) < q) hull++;
    const foot = hulls[hull] as number;
    values[start + q * step] = (q - foot) ** 2 + (line[foot] as number);
  }
}

function crossing(line: Float64Array, p: number, q: number): number {
  return ((line[q] as number) + q * q - ((line[p] as number) + p * p)) / (2 * (q - p));
}
