/** Labels beside an axis: as near to their own places as they can be, a pitch apart, in the same order from above. */

export interface SpreadRoom {
  readonly pitch: number;
  readonly low: number;
  readonly high: number;
}

/** `places` in any order; places that come too near are moved apart about their middle, and all of them into the room. */
export function spreadApart(places: readonly number[], { pitch, low, high }: SpreadRoom): number[] {
  const order = places.map((_, index) => index).sort((a, b) => (places[b] ?? 0) - (places[a] ?? 0));
  const runs: { middle: number; of: number[] }[] = [];
  for (const index of order) {
    let run = { middle: places[index] ?? 0, of: [index] };
    for (let before = runs.at(-1); before !== undefined; before = runs.at(-1)) {
      const gap = (pitch * (before.of.length + run.of.length)) / 2;
      if (before.middle - run.middle >= gap) break;
      runs.pop();
      run = joined([...before.of, ...run.of]);
    }
    runs.push(run);
  }
  function joined(of: number[]): { middle: number; of: number[] } {
    const sum = of.reduce((total, index) => total + (places[index] ?? 0), 0);
    const half = (pitch * (of.length - 1)) / 2;
    return { middle: Math.min(high - half, Math.max(low + half, sum / of.length)), of };
  }
  const spread: number[] = places.map(() => 0);
  for (const { middle, of } of runs) {
    of.forEach((index, at) => {
      spread[index] = middle + (pitch * (of.length - 1)) / 2 - at * pitch;
    });
  }
  return spread;
}
