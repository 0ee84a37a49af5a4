/** One mesh of the relief with the edges of its floors and walls and the shadows at their feet. */
import { useFrame } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, type Group, type Material, type Vector4 } from 'three';
import type { ReliefArrays } from '#app/worker/planned-page.ts';
import type { ReliefLight } from './relief-materials.ts';
import { solidGeometry } from './solid-geometry.ts';

interface SolidMeshProps {
  readonly arrays: ReliefArrays;
  readonly group: RefObject<Group | null>;
  /** Edges and shadows, which a frame drawn in haste goes without. */
  readonly details: RefObject<Group | null>;
  /** Land first, then by stage. */
  readonly solid: readonly Material[];
  readonly edge: Material;
  readonly shadow: Material;
  readonly light: ReliefLight;
  readonly exaggeration: number;
}

/** Before a frame is drawn (`ReliefScene.tsx`), after it is settled what it shows. */
const SETTLED = 0.5;

export function SolidMesh(props: SolidMeshProps) {
  const { arrays, group, details, solid, edge, shadow, light, exaggeration } = props;
  const stages = solid.length - 1;
  const { geometry, keepUncut } = useMemo(() => solidGeometry(arrays, stages), [arrays, stages]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const kept = useRef<{ geometry: BufferGeometry; cut: Vector4 }>(undefined);
  useFrame(() => {
    const cut = light.cut.value;
    if (group.current?.visible !== true) return;
    if (kept.current?.geometry === geometry && kept.current.cut.equals(cut)) return;
    kept.current = { geometry, cut: cut.clone() };
    keepUncut(cut);
  }, SETTLED);
  const edges = useGeometry(arrays, edgeGeometry);
  const shadows = useGeometry(arrays, shadowGeometry);
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

function useGeometry(arrays: ReliefArrays, make: (arrays: ReliefArrays) => BufferGeometry): BufferGeometry {
  const geometry = useMemo(() => make(arrays), [arrays, make]);
  useEffect(() => () => geometry.dispose(), [geometry]);
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
