/** What is wrong with a mesh as the border of a solid, found without any help from the code that made it. */

interface Mesh {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
}

/** Edges that are not shared by exactly two triangles running opposite ways along them. */
export function looseEdges({ positions, indices }: Mesh): number {
  const count = positions.length / 3;
  const seen = new Map<number, number>();
  for (let i = 0; i < indices.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const edge = cornerAt(indices, i + k) * count + cornerAt(indices, i + ((k + 1) % 3));
      seen.set(edge, (seen.get(edge) ?? 0) + 1);
    }
  }
  let loose = 0;
  for (const [edge, times] of seen) {
    const from = Math.floor(edge / count);
    const to = edge % count;
    if (times !== 1 || seen.get(to * count + from) !== 1) loose++;
  }
  return loose;
}

/** Volume enclosed by the triangles, by the divergence theorem, mm³. */
export function enclosedVolume({ positions, indices }: Mesh): number {
  let six = 0;
  const at = (corner: number, axis: number): number =>
    positions[3 * cornerAt(indices, corner) + axis] ?? Number.NaN;
  for (let i = 0; i < indices.length; i += 3) {
    const [ax, ay, az] = [at(i, 0), at(i, 1), at(i, 2)];
    const [bx, by, bz] = [at(i + 1, 0), at(i + 1, 1), at(i + 1, 2)];
    const [cx, cy, cz] = [at(i + 2, 0), at(i + 2, 1), at(i + 2, 2)];
    six += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

function cornerAt(indices: Uint32Array, i: number): number {
  return indices[i] ?? Number.NaN;
}
