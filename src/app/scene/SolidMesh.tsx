/** One mesh of the relief with the edges of its floors and walls and the shadows at their feet. */
import { type RefObject, useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Group, type Material } from 'three';
import type { ReliefArrays } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';

interface SolidMeshProps {
  readonly arrays: ReliefArrays;
  readonly group: RefObject<Group | null>;
  /** Edges and shadows, which a frame drawn in haste goes without. */
  readonly details: RefObject<Group | null>;
  /** Land first, then by stage. */
  readonly solid: readonly Material[];
  readonly edge: Material;
  readonly shadow: Material;
  readonly exaggeration: number;
}

export function SolidMesh({ arrays, group, details, solid, edge, shadow, exaggeration }: SolidMeshProps) {
  const geometry = useGeometry(arrays, (each) => groupedGeometry(each, solid.length - 1), solid.length);
  const edges = useGeometry(arrays, edgeGeometry, 0);
  const shadows = useGeometry(arrays, shadowGeometry, 0);
  const { x, y } = arrays.origin;
  const own = { frustumCulled: false };
  return (
    <group ref={group} position={[x, y, 0]} scale={[1, 1, exaggeration]}>
      <mesh geometry={geometry} material={[...solid]} {...own} />
      <group ref={details}>
        <mesh geometry={shadows} material={shadow} renderOrder={1} {...own} />
        <lineSegments geometry={edges} material={edge} renderOrder={2} {...own} />
      </group>
    </group>
  );
}

function useGeometry(
  arrays: ReliefArrays,
  make: (arrays: ReliefArrays) => BufferGeometry,
  key: number,
): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a mesh is made once from its arrays
  const geometry = useMemo(() => make(arrays), [arrays, key]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** The triangles sorted by stage, so that each stage is one run with one material. */
function groupedGeometry(
  { positions, indices, stageOfTriangle }: ReliefArrays,
  stages: number,
): BufferGeometry {
  const counts = new Uint32Array(stages + 1);
  for (const stage of stageOfTriangle) counts[stage] = itemAt(counts, stage) + 1;
  const geometry = new BufferGeometry();
  const next = new Uint32Array(stages + 1);
  let start = 0;
  counts.forEach((count, stage) => {
    geometry.addGroup(start * 3, count * 3, stage);
    next[stage] = start;
    start += count;
  });
  const sorted = new Uint32Array(indices.length);
  stageOfTriangle.forEach((stage, triangle) => {
    const place = itemAt(next, stage);
    sorted.set(indices.subarray(triangle * 3, triangle * 3 + 3), place * 3);
    next[stage] = place + 1;
  });
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(sorted, 1));
  return geometry;
}

function edgeGeometry({ edges }: ReliefArrays): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(edges, 3));
  return geometry;
}

/** A strip along each foot: at the wall, and as far into the floor as the shadow reaches. */
function shadowGeometry({ feet }: ReliefArrays): BufferGeometry {
  const count = feet.length / 10;
  const positions = new Float32Array(count * 12);
  const inward = new Float32Array(count * 12);
  const indices = new Uint32Array(count * 6);
  for (let foot = 0; foot < count; foot++) {
    for (let corner = 0; corner < 4; corner++) {
      const end = 10 * foot + (corner % 2 === 0 ? 0 : 5);
      const at = 12 * foot + 3 * corner;
      positions.set(feet.subarray(end, end + 3), at);
      inward.set(feet.subarray(end + 3, end + 5), at);
      inward[at + 2] = corner < 2 ? 0 : 1;
    }
    indices.set(
      [0, 1, 2, 1, 3, 2].map((each) => 4 * foot + each),
      6 * foot,
    );
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('inward', new BufferAttribute(inward, 3));
  geometry.setIndex(new BufferAttribute(indices, 1));
  return geometry;
}
