/**
 * The etched part as a binary STL: little-endian, an 80-byte heading, the number of triangles, then 50 bytes a triangle:
 * normal, three corners, two unused bytes. The format knows no unit: it is millimetres, in the drawing's frame, z up from the
 * as-received surface. Source of the layout: 3D Systems, StereoLithography Interface Specification (1989), from memory.
 */
import type { ReliefMesh } from '#front/relief-mesh.ts';
import { assert, itemAt } from '#geometry/assert.ts';

const HEADING = 80;
const TRIANGLE = 50;

/** @param planHash SHA-256 of plan.json, hexadecimal */
export function stlFile({ positions, indices }: ReliefMesh, planHash: string): Uint8Array {
  const count = indices.length / 3;
  const bytes = new Uint8Array(HEADING + 4 + TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  const heading = `Isobath mm plan ${planHash}`;
  // A heading that starts with "solid" would be taken for the text form.
  assert(heading.length <= HEADING, 'the heading has room for the hash');
  for (let i = 0; i < heading.length; i++) bytes[i] = heading.charCodeAt(i);
  view.setUint32(HEADING, count, true);
  const cornerAt = (corner: number): Corner => {
    const at = 3 * itemAt(indices, corner);
    return [itemAt(positions, at), itemAt(positions, at + 1), itemAt(positions, at + 2)];
  };
  for (let triangle = 0; triangle < count; triangle++) {
    const corners: Triple<Corner> = [
      cornerAt(3 * triangle),
      cornerAt(3 * triangle + 1),
      cornerAt(3 * triangle + 2),
    ];
    let at = HEADING + 4 + TRIANGLE * triangle;
    for (const place of [normalOf(corners), ...corners]) {
      for (const figure of place) {
        view.setFloat32(at, figure, true);
        at += 4;
      }
    }
  }
  return bytes;
}

type Triple<Value> = readonly [Value, Value, Value];
type Corner = Triple<number>;

/** Unit vector outwards; nought of a triangle without area. */
function normalOf([a, b, c]: Triple<Corner>): Corner {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(x, y, z);
  return length === 0 ? [0, 0, 0] : [x / length, y / length, z / length];
}
