/** Flat pieces of the picture in their colours, small ones over large ones. */
import { useMemo } from 'react';
import { fillArrays, type Patch, type TriangleCache } from './plan-arrays.ts';

interface ColoredPatchesProps {
  readonly patches: readonly Patch[];
  readonly cache: TriangleCache;
}

export function ColoredPatches({ patches, cache }: ColoredPatchesProps) {
  const { positions, colors } = useMemo(() => fillArrays(patches, cache), [patches, cache]);
  if (positions.length === 0) return null;
  return (
    <mesh key={positions.length} frustumCulled={false} renderOrder={0}>
      <bufferGeometry>
        <bufferAttribute attach="attributes-position" args={[positions, 3]} />
        <bufferAttribute attach="attributes-color" args={[colors, 3]} />
      </bufferGeometry>
      <meshBasicMaterial vertexColors depthTest={false} depthWrite={false} side={2} />
    </mesh>
  );
}
