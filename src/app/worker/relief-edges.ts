/**
 * What the eye needs to read a relief, from its mesh: the edges of floors and walls, and the feet of walls, where the floor lies in
 * their shadow. Cost: once through the triangles, and a table of their sides.
 */
import { itemAt } from '#geometry/assert.ts';

interface Mesh {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
}

export interface ReliefEdges {
  /** Six numbers a segment. */
  readonly edges: Float32Array;
  /** Feet of walls, ten numbers each: an end as x, y, z and there the unit way into the floor, and the same of the other end. */
  readonly feet: Float32Array;
}

/** Sides of more triangles than this are too many to draw one by one, and too near each other to be seen. */
const MOST_TRIANGLES = 500_000;
/** Level within this slope, as a floor is that tapers. */
const LEVEL_SLOPE = 0.02;
/** Cosine of the bend at which two faces of a wall meet in a crest: 35°. */
const CREST = Math.cos((35 * Math.PI) / 180);

export function reliefEdges(mesh: Mesh): ReliefEdges {
  const count = mesh.indices.length / 3;
  if (count > MOST_TRIANGLES) return { edges: new Float32Array(), feet: new Float32Array() };
  const normals = faceNormals(mesh);
  const edges: number[] = [];
  const feet: FootEdge[] = [];
  forEachSharedSide(mesh.indices, (a, b, one, other) => {
    if (!isEdge(normals, one, other)) return;
    for (const vertex of [a, b]) edges.push(...vertexOf(mesh, vertex));
    const [floor, wall] = isFloor(normals, one) ? [one, other] : [other, one];
    if (isFloor(normals, wall) || !isFloor(normals, floor)) return;
    if (topOf(mesh, wall) > itemAt(mesh.positions, 3 * a + 2) + 1e-4) feet.push({ a, b, floor });
  });
  return { edges: new Float32Array(edges), feet: footArray(mesh, feet) };
}

/** Unit normals, three numbers a triangle. */
function faceNormals({ positions, indices }: Mesh): Float32Array {
  const normals = new Float32Array(indices.length);
  for (let at = 0; at < indices.length; at += 3) {
    const [a, b, c] = [3 * itemAt(indices, at), 3 * itemAt(indices, at + 1), 3 * itemAt(indices, at + 2)];
    const [ux, uy, uz] = [0, 1, 2].map((k) => itemAt(positions, b + k) - itemAt(positions, a + k));
    const [vx, vy, vz] = [0, 1, 2].map((k) => itemAt(positions, c + k) - itemAt(positions, a + k));
    const [u1 = 0, u2 = 0, u3 = 0, v1 = 0, v2 = 0, v3 = 0] = [ux, uy, uz, vx, vy, vz].map(
      (each) => each ?? 0,
    );
    const [x, y, z] = [u2 * v3 - u3 * v2, u3 * v1 - u1 * v3, u1 * v2 - u2 * v1];
    const length = Math.hypot(x, y, z) || 1;
    normals[at] = x / length;
    normals[at + 1] = y / length;
    normals[at + 2] = z / length;
  }
  return normals;
}

function isFloor(normals: Float32Array, triangle: number): boolean {
  return itemAt(normals, 3 * triangle + 2) > 1 - (LEVEL_SLOPE * LEVEL_SLOPE) / 2;
}

function isEdge(normals: Float32Array, one: number, other: number): boolean {
  if (isFloor(normals, one) !== isFloor(normals, other)) return true;
  let cosine = 0;
  for (let k = 0; k < 3; k++) cosine += itemAt(normals, 3 * one + k) * itemAt(normals, 3 * other + k);
  return cosine < CREST;
}

/** Calls back for each side that two triangles share, with its corners and both triangles. */
function forEachSharedSide(
  indices: Uint32Array,
  visit: (a: number, b: number, one: number, other: number) => void,
): void {
  const size = 2 ** Math.ceil(Math.log2(2 * indices.length + 2));
  const low = new Uint32Array(size);
  const high = new Uint32Array(size);
  const first = new Int32Array(size).fill(-1);
  for (let side = 0; side < indices.length; side++) {
    const triangle = Math.floor(side / 3);
    const from = itemAt(indices, side);
    const to = itemAt(indices, side % 3 === 2 ? side - 2 : side + 1);
    const [a, b] = from < to ? [from, to] : [to, from];
    let slot = (Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b)) & (size - 1);
    while (itemAt(first, slot) !== -1 && (itemAt(low, slot) !== a || itemAt(high, slot) !== b))
      slot = (slot + 1) & (size - 1);
    const other = itemAt(first, slot);
    if (other === -1) {
      low[slot] = a;
      high[slot] = b;
      first[slot] = triangle;
    } else visit(a, b, other, triangle);
  }
}

interface FootEdge {
  readonly a: number;
  readonly b: number;
  readonly floor: number;
}

/** The ways into the floor of the edges that meet in a corner are averaged there, so that shadows join. */
function footArray(mesh: Mesh, feet: readonly FootEdge[]): Float32Array {
  const ways = new Map<number, { x: number; y: number }>();
  for (const foot of feet) {
    const way = wayIn(mesh, foot);
    for (const vertex of [foot.a, foot.b]) {
      const sum = ways.get(vertex) ?? { x: 0, y: 0 };
      ways.set(vertex, { x: sum.x + way.x, y: sum.y + way.y });
    }
  }
  const numbers: number[] = [];
  for (const { a, b } of feet) {
    for (const vertex of [a, b]) {
      const { x, y } = ways.get(vertex) ?? { x: 0, y: 0 };
      const length = Math.hypot(x, y) || 1;
      numbers.push(...vertexOf(mesh, vertex), x / length, y / length);
    }
  }
  return new Float32Array(numbers);
}

/** Across the foot to the side on which the floor's third corner lies. */
function wayIn(mesh: Mesh, { a, b, floor }: FootEdge): { x: number; y: number } {
  const corner = [0, 1, 2]
    .map((k) => itemAt(mesh.indices, 3 * floor + k))
    .find((each) => each !== a && each !== b);
  const [ax, ay] = vertexOf(mesh, a);
  const [bx, by] = vertexOf(mesh, b);
  const [cx, cy] = vertexOf(mesh, corner ?? a);
  const length = Math.hypot(bx - ax, by - ay) || 1;
  const [nx, ny] = [-(by - ay) / length, (bx - ax) / length];
  const side = Math.sign(nx * (cx - ax) + ny * (cy - ay));
  return { x: nx * side, y: ny * side };
}

function vertexOf({ positions }: Mesh, vertex: number): [number, number, number] {
  return [
    itemAt(positions, 3 * vertex),
    itemAt(positions, 3 * vertex + 1),
    itemAt(positions, 3 * vertex + 2),
  ];
}

function topOf({ positions, indices }: Mesh, triangle: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < 3; k++)
    top = Math.max(top, itemAt(positions, 3 * itemAt(indices, 3 * triangle + k) + 2));
  return top;
}
