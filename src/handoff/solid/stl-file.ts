/**
 * The etched part as a binary STL: little-endian, an 80-byte heading, the number of triangles, then 50 bytes a triangle:
 * normal, three corners, two unused bytes. The format knows no unit: it is millimetres, in the mesh's own frame (the drawing's,
 * unless the part lies far from its origin: then the heading states from where), z up from the as-received surface. Source of the layout: 3D Systems, StereoLithography Interface Specification (1989), from memory.
 */

import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { assert, itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';

const HEADING = 80;
const TRIANGLE = 50;

/** @param planHash SHA-256 of plan.json, hexadecimal */
export function stlFile({ positions, indices, origin }: ReliefMesh, planHash: string): Uint8Array {
  const count = indices.length / 3;
  const bytes = new Uint8Array(HEADING + 4 + TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  const heading = headingOf(origin, planHash);
  // A heading that starts with "solid" would be taken for the text form.
  assert(heading.length <= HEADING, 'the heading has room for the hash');
  for (let i = 0; i < heading.length; i++) bytes[i] = heading.charCodeAt(i);
  view.setUint32(HEADING, count, true);
  for (let triangle = 0; triangle < count; triangle++) {
    const at = HEADING + 4 + TRIANGLE * triangle;
    // Where the three corners begin among the positions.
    const a = 3 * itemAt(indices, 3 * triangle);
    const b = 3 * itemAt(indices, 3 * triangle + 1);
    const c = 3 * itemAt(indices, 3 * triangle + 2);
    const normal = normalOf(positions, a, b, c);
    for (let axis = 0; axis < 3; axis++) {
      view.setFloat32(at + 4 * axis, itemAt(normal, axis), true);
      view.setFloat32(at + 4 * axis + 12, itemAt(positions, a + axis), true);
      view.setFloat32(at + 4 * axis + 24, itemAt(positions, b + axis), true);
      view.setFloat32(at + 4 * axis + 36, itemAt(positions, c + axis), true);
    }
  }
  return bytes;
}

/** With the place that the corners are counted from, where that is not the drawing's origin; then the hash is cut to the room left. */
function headingOf({ x, y }: Point, planHash: string): string {
  const from = x === 0 && y === 0 ? '' : ` from ${x} ${y}`;
  return `Isobath mm${from} plan ${planHash}`.slice(0, HEADING);
}

/** Unit vector outwards; zero of a triangle without area. */
function normalOf(positions: Float32Array, a: number, b: number, c: number): readonly number[] {
  const along = (to: number, axis: number): number =>
    itemAt(positions, to + axis) - itemAt(positions, a + axis);
  const [ux, uy, uz] = [along(b, 0), along(b, 1), along(b, 2)];
  const [vx, vy, vz] = [along(c, 0), along(c, 1), along(c, 2)];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = hypot(x, y, z);
  return length === 0 ? [0, 0, 0] : [x / length, y / length, z / length];
}
