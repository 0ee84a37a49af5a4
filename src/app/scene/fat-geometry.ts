/**
 * Line segments as triangles for three's `LineMaterial`, all in one run. Its own geometry draws each segment as an instance, and a
 * software renderer takes every instance for a call of its own: some thousand of them cost more than all the rest of a frame.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import { itemAt } from '#geometry/assert.ts';

/** Two ends, and a cap beyond each: across −1 or 1, along 0 at the start and 1 at the end, and the place in the line's own frame. */
const ACROSS = [-1, 1, -1, 1, -1, 1, -1, 1];
const ALONG = [2, 2, 1, 1, 0, 0, -1, -1];
const UP = [2, 2, 1, 1, -1, -1, -2, -2];
const TRIANGLES = [0, 2, 1, 2, 3, 1, 2, 4, 3, 4, 5, 3, 4, 6, 5, 6, 7, 5];
const CORNERS = ACROSS.length;

/** @param segments six numbers each */
export function fatGeometry(segments: Float32Array): BufferGeometry {
  const count = segments.length / 6;
  const position = new Int8Array(3 * CORNERS * count);
  const uv = new Int8Array(2 * CORNERS * count);
  const start = new Float32Array(3 * CORNERS * count);
  const end = new Float32Array(3 * CORNERS * count);
  const indices = new Uint32Array(TRIANGLES.length * count);
  for (let segment = 0; segment < count; segment++) {
    const from = segments.subarray(6 * segment, 6 * segment + 3);
    const to = segments.subarray(6 * segment + 3, 6 * segment + 6);
    for (let corner = 0; corner < CORNERS; corner++) {
      const at = CORNERS * segment + corner;
      position[3 * at] = itemAt(ACROSS, corner);
      position[3 * at + 1] = itemAt(ALONG, corner);
      uv[2 * at] = itemAt(ACROSS, corner);
      uv[2 * at + 1] = itemAt(UP, corner);
      start.set(from, 3 * at);
      end.set(to, 3 * at);
    }
    TRIANGLES.forEach((corner, at) => {
      indices[TRIANGLES.length * segment + at] = CORNERS * segment + corner;
    });
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('uv', new BufferAttribute(uv, 2));
  geometry.setAttribute('instanceStart', new BufferAttribute(start, 3));
  geometry.setAttribute('instanceEnd', new BufferAttribute(end, 3));
  geometry.setIndex(new BufferAttribute(indices, 1));
  return geometry;
}
