/**
 * The etched part as a binary STL: little-endian, an 80-byte heading, the number of triangles, then 50 bytes a triangle:
 * normal, three corners, two unused bytes. The format knows no unit: it is millimetres, in the mesh's own frame (the drawing's,
 * unless the part lies far from its origin: then the heading states from where), z up from the as-received surface. Source of the layout: 3D Systems, StereoLithography Interface Specification (1989), from memory.
 */

import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { assert } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';

const HEADING = 80;
const TRIANGLE = 50;

/** Triangles in a piece: 100 kB. */
const AT_ONCE = 2000;

/**
 * The bytes of the file, one piece after the other: a part of many pockets has tens of megabytes.
 * @param planHash SHA-256 of plan.json, hexadecimal
 */
export function* stlPieces(
  { positions, indices, origin }: ReliefMesh,
  planHash: string,
): Generator<Uint8Array> {
  const count = indices.length / 3;
  yield headOf(headingOf(origin, planHash), count);
  for (let first = 0; first < count; first += AT_ONCE) {
    const triangles = Math.min(AT_ONCE, count - first);
    const bytes = new Uint8Array(TRIANGLE * triangles);
    const view = new DataView(bytes.buffer);
    for (let triangle = 0; triangle < triangles; triangle++)
      writeTriangle(view, TRIANGLE * triangle, { positions, indices, at: 3 * (first + triangle) });
    yield bytes;
  }
}

function headOf(heading: string, count: number): Uint8Array {
  const bytes = new Uint8Array(HEADING + 4);
  // A heading that starts with "solid" would be taken for the text form.
  assert(heading.length <= HEADING, 'the heading has room for the hash');
  for (let i = 0; i < heading.length; i++) bytes[i] = heading.charCodeAt(i);
  new DataView(bytes.buffer).setUint32(HEADING, count, true);
  return bytes;
}

interface Corners extends Pick<ReliefMesh, 'positions' | 'indices'> {
  /** Where the three corners stand among the indices. */
  readonly at: number;
}

/** Unit vector outwards, zero of a triangle without area; then the corners. */
function writeTriangle(view: DataView, to: number, { positions, indices, at }: Corners): void {
  const a = 3 * (indices[at] ?? Number.NaN);
  const b = 3 * (indices[at + 1] ?? Number.NaN);
  const c = 3 * (indices[at + 2] ?? Number.NaN);
  const [ax, ay, az] = [positions[a] ?? 0, positions[a + 1] ?? 0, positions[a + 2] ?? 0];
  const [bx, by, bz] = [positions[b] ?? 0, positions[b + 1] ?? 0, positions[b + 2] ?? 0];
  const [cx, cy, cz] = [positions[c] ?? 0, positions[c + 1] ?? 0, positions[c + 2] ?? 0];
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
  const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = hypot(x, y, z);
  view.setFloat32(to, length === 0 ? 0 : x / length, true);
  view.setFloat32(to + 4, length === 0 ? 0 : y / length, true);
  view.setFloat32(to + 8, length === 0 ? 0 : z / length, true);
  view.setFloat32(to + 12, ax, true);
  view.setFloat32(to + 16, ay, true);
  view.setFloat32(to + 20, az, true);
  view.setFloat32(to + 24, bx, true);
  view.setFloat32(to + 28, by, true);
  view.setFloat32(to + 32, bz, true);
  view.setFloat32(to + 36, cx, true);
  view.setFloat32(to + 40, cy, true);
  view.setFloat32(to + 44, cz, true);
}

/** With the place that the corners are counted from, where that is not the drawing's origin; then the hash is cut to the room left. */
function headingOf({ x, y }: Point, planHash: string): string {
  const from = x === 0 && y === 0 ? '' : ` from ${x} ${y}`;
  return `Isobath mm${from} plan ${planHash}`.slice(0, HEADING);
}
