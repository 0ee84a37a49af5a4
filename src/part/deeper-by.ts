/** What is asked of a region, so many mm deeper, all over a taper: less than 0 where the sheet is thinner. */
import type { Asked } from './part.ts';

export function deeperBy(asked: Asked, by: number): Asked {
  const depth = asked.depth + by;
  const [first, ...others] = asked.tapers ?? [];
  if (first === undefined) return { ...asked, depth };
  const moved = { ...first, fromValue: first.fromValue + by, toValue: first.toValue + by };
  return { ...asked, depth, tapers: [moved, ...others] };
}
