/** The middle of figures: a few strays do not move it. */

/** Of an even count the mean of the middle two; undefined of none. */
export function median(values: readonly number[]): number | undefined {
  const middle = middleTwo(values);
  return middle && (middle[0] + middle[1]) / 2;
}

/** In ascending order; of an odd count both are the one in the middle; undefined of none. */
export function middleTwo(values: readonly number[]): readonly [number, number] | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return low === undefined || high === undefined ? undefined : [low, high];
}
