/** The cut face of the relief, standing where the section line runs. */
import { useEffect, useMemo } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { FatSegments } from '#app/scene/FatSegments.tsx';
import type { SceneCut } from '#app/scene/scene-picture.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { useScaleStep } from '#app/scene/use-scale-step.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { cutFace } from './cut-face.ts';
import { cutFaceMaterial } from './relief-materials.ts';

interface CutFaceMeshProps {
  readonly cut: SceneCut;
  readonly colors: readonly string[];
  readonly theme: SceneTheme;
  readonly exaggeration: number;
  readonly pose: StoreApi<ViewPose>;
}

const WIDTH = { outline: 2, front: 1 };

export function CutFaceMesh({ cut, colors, theme, exaggeration, pose }: CutFaceMeshProps) {
  const pixelsPerMm = useScaleStep(pose);
  const face = useMemo(() => {
    const scale = { along: pixelsPerMm, down: pixelsPerMm * exaggeration };
    return cutFace(cut, { metal: theme.metal, stages: colors }, scale);
  }, [cut, colors, theme.metal, pixelsPerMm, exaggeration]);
  const material = useMemo(cutFaceMaterial, []);
  useEffect(() => () => material.dispose(), [material]);
  const [outline, front] = useMemo(
    () => [raised(face.outline, exaggeration), raised(face.front, exaggeration)],
    [face, exaggeration],
  );
  if (face.positions.length === 0) return null;
  return (
    <>
      <mesh
        key={face.positions.length}
        material={material}
        scale={[1, 1, exaggeration]}
        frustumCulled={false}
        renderOrder={3}
      >
        <bufferGeometry>
          <bufferAttribute attach="attributes-position" args={[face.positions, 3]} />
          <bufferAttribute attach="attributes-color" args={[face.colors, 4]} />
        </bufferGeometry>
      </mesh>
      <FatSegments positions={front} color={theme.ground} width={WIDTH.front} order={4} />
      <FatSegments positions={outline} color={theme.accent} width={WIDTH.outline} order={5} />
    </>
  );
}

function raised(segments: Float32Array, by: number): Float32Array {
  return segments.map((value, index) => (index % 3 === 2 ? value * by : value));
}
