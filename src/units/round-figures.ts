/** Figures as files hold them: rounded to a millionth (a nanometre, a nano-minute), so that the same job gives the same bytes. */

/** Never −0. */
export function toMillionth(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/** Every figure in lists and objects, however deep; all else as it is. */
export function roundFigures<Held>(held: Held): Held;
export function roundFigures(held: unknown): unknown {
  if (typeof held === 'number') return toMillionth(held);
  if (Array.isArray(held)) return held.map((each) => roundFigures(each));
  if (typeof held !== 'object' || held === null) return held;
  return Object.fromEntries(Object.entries(held).map(([key, each]) => [key, roundFigures(each)]));
}
