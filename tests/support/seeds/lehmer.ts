/** Numbers from 0 to 1 by Lehmer's generator with the multiplier of Park and Miller, Comm. ACM 31 (1988): whole numbers only, the same on every engine. */
export function lehmer(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
