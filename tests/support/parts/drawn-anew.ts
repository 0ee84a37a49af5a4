/** Parts for benchmarks, drawn anew from a seed: nested pockets of which no two are alike, and a mesh of holes of many sizes. */
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { lehmer } from '#support/seeds/lehmer.ts';
import type { PocketGrid } from './pocket-grid.ts';

const PITCH = { x: 70, y: 50 };

/** Every pocket has its own place, size and corner radius, and so has the deeper one nested in it. */
export function differentPockets(columns: number, rows: number, seed: number): PocketGrid {
  const random = lehmer(seed * 7919 + columns * rows);
  const between = (low: number, high: number) => low + Math.round((high - low) * random() * 1e4) / 1e4;
  const outlines: Loop[] = [];
  const depths: [number, number, number][] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [x, y] = [column * PITCH.x + between(0, 4), row * PITCH.y + between(0, 4)];
      const [width, height] = [between(48, 56), between(32, 37)];
      const [inX, inY] = [between(9, 13), between(7, 10)];
      outlines.push(
        roundedRectangle(x, y, x + width, y + height, between(4, 7)),
        roundedRectangle(
          x + inX,
          y + inY,
          x + width - between(9, 13),
          y + height - between(7, 10),
          between(3, 5),
        ),
      );
      depths.push([x + 4, y + height / 2, 1], [x + width / 2, y + height / 2, random() < 0.5 ? 2.2 : 3]);
    }
  }
  return { sheet: rectangle(-20, -20, columns * PITCH.x + 10, rows * PITCH.y + 10), outlines, depths };
}

export interface Mesh {
  readonly sheet: Loop;
  readonly holes: readonly { readonly center: Point; readonly radius: number }[];
}

/** A grid of holes 1 mm apart, 0.3 to 0.5 mm wide. */
export function meshOfHoles(columns: number, rows: number, seed: number): Mesh {
  const random = lehmer(seed * 7919 + columns * rows);
  const holes = Array.from({ length: columns * rows }, (_, at) => {
    const center = { x: at % columns, y: Math.floor(at / columns) };
    return { center, radius: 0.15 + Math.round(random() * 1000) / 10_000 };
  });
  return { sheet: rectangle(-3, -3, columns + 2, rows + 2), holes };
}
