/** Contours as plain numbers, to cross between threads: arrays of numbers are copied whole, thousands of objects one by one. */
import { itemAt } from '#geometry/assert.ts';
import type { Contour } from '#job/formats/plan-file.ts';

export interface PackedContours {
  /** x, y and bulge by turns. */
  readonly vertices: Float64Array;
  /** Vertices of each contour; below 0 for an open one. */
  readonly counts: Int32Array;
}

export function packContours(contours: readonly Contour[]): PackedContours {
  const total = contours.reduce((sum, contour) => sum + contour.vertices.length, 0);
  const vertices = new Float64Array(3 * total);
  let at = 0;
  for (const contour of contours) {
    for (const [x, y, bulge] of contour.vertices) {
      vertices[at++] = x;
      vertices[at++] = y;
      vertices[at++] = bulge;
    }
  }
  const counts = Int32Array.from(contours, ({ closed, vertices: { length } }) => (closed ? length : -length));
  return { vertices, counts };
}

export function unpackContours({ vertices, counts }: PackedContours): Contour[] {
  let at = 0;
  return Array.from(counts, (count) => {
    const taken: [number, number, number][] = [];
    for (let index = 0; index < Math.abs(count); index++, at += 3) {
      taken.push([itemAt(vertices, at), itemAt(vertices, at + 1), itemAt(vertices, at + 2)]);
    }
    return { closed: count > 0, vertices: taken };
  });
}
