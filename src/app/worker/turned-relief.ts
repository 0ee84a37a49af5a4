/** The relief of the far face as it lies in the sheet: pockets go up from below. */
import { itemAt } from '#geometry/assert.ts';
import type { ReliefArrays } from './planned-page.ts';

/**
 * @param relief of the far face alone, its surface at 0 and pockets below it
 * @param thickness of the sheet, mm: the far face lies that deep
 */
export function turnedRelief(relief: ReliefArrays, thickness: number): ReliefArrays {
  const { positions, indices, edges, feet } = relief;
  return {
    ...relief,
    positions: withHeights(positions, 3, thickness),
    indices: indices.map((_, at) => itemAt(indices, at - (at % 3) + ((3 - (at % 3)) % 3))),
    edges: withHeights(edges, 3, thickness),
    feet: withHeights(feet, 5, thickness),
  };
}

/** Of places with `each` numbers: x, y, the height, and what else belongs to one. */
function withHeights(numbers: Float32Array, each: number, thickness: number): Float32Array {
  return numbers.map((value, index) => (index % each === 2 ? -thickness - value : value));
}
