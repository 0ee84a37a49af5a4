/** The etched sheet as a solid, each face in the colour of the stage that took the last metal there. */
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide, MeshLambertMaterial } from 'three';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { ReliefArrays } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';
import type { ShownStage } from '#handoff/plan-file.ts';
import { FatSegments } from './FatSegments.tsx';
import { ringSegments } from './plan-arrays.ts';
import type { SceneTheme } from './scene-theme.ts';

interface ReliefSceneProps {
  readonly arrays: ReliefArrays;
  readonly stages: readonly ShownStage[];
  readonly shapes: readonly RegionShape[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly exaggeration: number;
}

const SELECTION_WIDTH = 3.5;

export function ReliefScene(props: ReliefSceneProps) {
  const { arrays, stages, shapes, selection, theme, exaggeration } = props;
  const geometry = useMemo(() => groupedGeometry(arrays, stages.length), [arrays, stages.length]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const materials = useMemo(
    () =>
      [theme.metal, ...stages.map((stage) => stage.color)].map(
        (color) => new MeshLambertMaterial({ color, flatShading: true, side: DoubleSide }),
      ),
    [theme.metal, stages],
  );
  useEffect(
    () => () => {
      for (const material of materials) material.dispose();
    },
    [materials],
  );
  const chosen = useMemo(
    () =>
      shapes
        .filter((shape) => selection.includes(shape.region.id))
        .map(({ region, rings }) => ({
          id: region.id,
          positions: ringSegments(rings, -region.level * exaggeration),
        })),
    [shapes, selection, exaggeration],
  );
  return (
    <>
      <mesh geometry={geometry} material={materials} scale={[1, 1, exaggeration]} frustumCulled={false} />
      {chosen.map(({ id, positions }) => (
        <FatSegments
          key={id}
          positions={positions}
          color={theme.selection}
          width={SELECTION_WIDTH}
          order={1}
        />
      ))}
    </>
  );
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
