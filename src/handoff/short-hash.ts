/** Twelve digits of a hash, in fours: what a person compares. */
export function shortHash(planHash: string): string {
  return [0, 4, 8].map((at) => planHash.slice(at, at + 4)).join(' ');
}
