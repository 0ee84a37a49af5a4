/** A made-up part for benchmarks: a grid of rounded pockets with a deeper pocket nested in each, three depth classes. */
import type { Loop } from '#geometry/span.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

const PITCH = { x: 70, y: 50 };

export interface PocketGrid {
  readonly sheet: Loop;
  readonly outlines: readonly Loop[];
  /** A point and a depth for every pocket. */
  readonly depths: readonly (readonly [x: number, y: number, depth: number])[];
}

export function pocketGrid(columns: number, rows: number): PocketGrid {
  const outlines: Loop[] = [];
  const depths: [number, number, number][] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = column * PITCH.x;
      const y = row * PITCH.y;
      outlines.push(
        roundedRectangle(x, y, x + 60, y + 40, 6),
        roundedRectangle(x + 15, y + 10, x + 45, y + 30, 4),
      );
      depths.push([x + 5, y + 20, 1], [x + 30, y + 20, (column + row) % 2 === 0 ? 2.2 : 3]);
    }
  }
  const sheet = rectangle(-20, -20, columns * PITCH.x + 10, rows * PITCH.y + 10);
  return { sheet, outlines, depths };
}
