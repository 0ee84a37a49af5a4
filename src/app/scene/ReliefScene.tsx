/** The etched sheet as a solid, each face in the colour of the stage that took the last metal there. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, FrontSide, type Mesh, MeshLambertMaterial } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { ReliefArrays } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';
import { FatSegments } from './FatSegments.tsx';
import { ringSegments } from './plan-arrays.ts';
import { quickFrame } from './quick-frame.ts';
import type { SceneRelief } from './scene-picture.ts';
import type { SceneTheme } from './scene-theme.ts';
import type { ViewPose } from './view-pose.ts';

interface ReliefSceneProps {
  readonly relief: SceneRelief;
  readonly shapes: readonly RegionShape[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly exaggeration: number;
  readonly pose: StoreApi<ViewPose>;
}

const SELECTION_WIDTH = 3.5;
/** Triangles that any machine turns smoothly, also one that draws without a graphics processor. */
const EASY = 50_000;
/** A view that has not moved for so long is at rest, ms. */
const AT_REST = 250;

export function ReliefScene({ relief, shapes, selection, theme, exaggeration, pose }: ReliefSceneProps) {
  const { draft, fine, colors } = relief;
  const materials = useMemo(
    () =>
      [theme.land, ...colors].map(
        (color) => new MeshLambertMaterial({ color, flatShading: true, side: FrontSide }),
      ),
    [theme.land, colors],
  );
  useEffect(
    () => () => {
      for (const material of materials) material.dispose();
    },
    [materials],
  );
  const draftGeometry = useGeometry(draft, colors.length);
  const fineGeometry = useGeometry(fine, colors.length);
  const [draftMesh, fineMesh] = [useRef<Mesh>(null), useRef<Mesh>(null)];
  const isRough = useRoughWhileMoving(pose, fine === undefined || fine.stageOfTriangle.length > EASY);
  useFrame(() => {
    const showsFine = fine !== undefined && !isRough();
    if (draftMesh.current !== null) draftMesh.current.visible = !showsFine;
    if (fineMesh.current !== null) fineMesh.current.visible = showsFine;
  });
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
  const solid = { material: materials, scale: [1, 1, exaggeration] as const, frustumCulled: false };
  return (
    <>
      {draftGeometry !== undefined && (
        <mesh ref={draftMesh} geometry={draftGeometry} position={placeOf(draft)} {...solid} />
      )}
      {fineGeometry !== undefined && fine !== undefined && (
        <mesh ref={fineMesh} geometry={fineGeometry} position={placeOf(fine)} {...solid} />
      )}
      {chosen.map(({ id, positions }) => (
        <FatSegments key={id} positions={positions} color={theme.accent} width={SELECTION_WIDTH} order={1} />
      ))}
    </>
  );
}

function placeOf({ origin: { x, y } }: ReliefArrays): [number, number, number] {
  return [x, y, 0];
}

/**
 * Whether this frame is to be drawn in haste: a heavy solid is, from the first move of the view until it has been at rest for a
 * while. Hasty frames are not smoothed either.
 */
function useRoughWhileMoving(pose: StoreApi<ViewPose>, isHeavy: boolean): () => boolean {
  const invalidate = useThree((state) => state.invalidate);
  const isMoving = useRef(false);
  const quick = useMemo(quickFrame, []);
  useEffect(() => () => quick.dispose(), [quick]);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const leave = pose.subscribe(() => {
      isMoving.current = true;
      clearTimeout(timer);
      timer = setTimeout(() => {
        isMoving.current = false;
        invalidate();
      }, AT_REST);
    });
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [pose, invalidate]);
  const isRough = () => isHeavy && isMoving.current;
  // A frame of one's own: this one is drawn after all that is set for it.
  useFrame(({ gl, scene, camera }) => {
    if (isRough()) quick.draw(gl, scene, camera);
    else gl.render(scene, camera);
  }, 1);
  return isRough;
}

function useGeometry(arrays: ReliefArrays | undefined, stages: number): BufferGeometry | undefined {
  const geometry = useMemo(
    () => (arrays === undefined ? undefined : groupedGeometry(arrays, stages)),
    [arrays, stages],
  );
  useEffect(() => () => geometry?.dispose(), [geometry]);
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
