/**
 * The etched sheet as a solid, each face in the colour of the stage that took the last metal there, cut open along the section line
 * where it is required to be.
 */
import { useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import type { Group } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import { FatSegments } from '#app/scene/FatSegments.tsx';
import { KeptPictures } from '#app/scene/large/kept-pictures.ts';
import { isCutAway } from '#app/scene/pick-region.ts';
import { ringSegments } from '#app/scene/plan-arrays.ts';
import type { SceneCut, SceneRelief } from '#app/scene/scene-picture.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { mixed } from '#app/scene/stage-looks.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { CutFaceMesh } from './CutFaceMesh.tsx';
import {
  edgeMaterial,
  type ReliefLight,
  reliefLight,
  shadowMaterial,
  solidMaterial,
} from './relief-materials.ts';
import { SolidMesh } from './SolidMesh.tsx';
import { usePace } from './use-pace.ts';

interface ReliefSceneProps {
  readonly relief: SceneRelief;
  readonly cut: SceneCut | undefined;
  readonly shapes: readonly RegionShape[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly exaggeration: number;
  readonly pose: StoreApi<ViewPose>;
}

const SELECTION_WIDTH = 2.5;
/** px that the shadow at a wall's foot reaches into the floor. */
const SHADOW = 11;
/** Of metal in a floor's colour: at full chroma the shallowest is loud on large floors. */
const METAL_IN_FLOOR = 0.1;
const EDGE = { light: { color: '#11171c', opacity: 0.5 }, dark: { color: '#ffffff', opacity: 0.45 } };
/** Triangles that any machine turns smoothly, also one that draws without a graphics processor. */
const EASY = 50_000;
/** Triangles of a draft too many to be drawn for each frame without a graphics processor. */
const SLOW = 200_000;

export function ReliefScene(props: ReliefSceneProps) {
  const { relief, cut, shapes, selection, theme, exaggeration, pose } = props;
  const { draft, fine, colors } = relief;
  const light = useMemo(reliefLight, []);
  const materials = useReliefMaterials({ colors, theme, light, isCut: cut !== undefined });
  const [draftGroup, fineGroup] = [useRef<Group>(null), useRef<Group>(null)];
  const [draftDetails, fineDetails] = [useRef<Group>(null), useRef<Group>(null)];
  const all = useRef<Group>(null);
  const pictures = useMemo(() => new KeptPictures(), []);
  useEffect(() => () => pictures.dispose(), [pictures]);
  const kept = draft.stageOfTriangle.length > SLOW ? pictures : undefined;
  const isHeavy = fine === undefined || fine.stageOfTriangle.length > EASY;
  const pace = usePace(pose, { isHeavy, kept });
  useFrame(() => {
    const isPicture = kept?.isAny === true && pace() === 'moving';
    pictures.group.visible = isPicture;
    if (all.current !== null) all.current.visible = !isPicture;
    const showsFine = fine !== undefined && pace() === 'resting';
    if (draftGroup.current !== null) draftGroup.current.visible = !showsFine;
    if (fineGroup.current !== null) fineGroup.current.visible = showsFine;
    for (const { current } of [draftDetails, fineDetails]) {
      if (current !== null) current.visible = pace() !== 'moving';
    }
    aimLight(light, pose.getState(), cut);
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
  const look = { ...materials, light, exaggeration };
  return (
    <>
      <primitive object={pictures.group} />
      <group ref={all}>
        <SolidMesh arrays={draft} group={draftGroup} details={draftDetails} {...look} />
        {fine !== undefined && (
          <SolidMesh
            arrays={fine.edges.length === 0 ? { ...fine, edges: draft.edges, feet: draft.feet } : fine}
            group={fineGroup}
            details={fineDetails}
            {...look}
          />
        )}
        {cut !== undefined && (
          <CutFaceMesh cut={cut} colors={colors} theme={theme} exaggeration={exaggeration} pose={pose} />
        )}
        {chosen.map(({ id, positions }) => (
          <FatSegments
            key={id}
            positions={positions}
            color={theme.accent}
            width={SELECTION_WIDTH}
            order={6}
          />
        ))}
      </group>
    </>
  );
}

interface MaterialsAsk {
  readonly colors: readonly string[];
  readonly theme: SceneTheme;
  readonly light: ReliefLight;
  readonly isCut: boolean;
}

function useReliefMaterials({ colors, theme, light, isCut }: MaterialsAsk) {
  const materials = useMemo(() => {
    const floors = colors.map((color) => mixed(color, theme.land, METAL_IN_FLOOR));
    return {
      solid: [theme.land, ...floors].map((color) => solidMaterial(color, light, isCut)),
      edge: edgeMaterial(theme.isDark ? EDGE.dark : EDGE.light, light, isCut),
      shadow: shadowMaterial(light, isCut),
    };
  }, [colors, theme, light, isCut]);
  useEffect(
    () => () => {
      for (const each of [...materials.solid, materials.edge, materials.shadow]) each.dispose();
    },
    [materials],
  );
  return materials;
}

/** From the upper left of the view, whichever way it is turned; the cut takes away what lies before it. */
function aimLight(light: ReliefLight, pose: ViewPose, cut: SceneCut | undefined): void {
  const [c, s] = [Math.cos(pose.azimuth), Math.sin(pose.azimuth)];
  light.travel.value.set(0.8 * c + 0.6 * s, 0.8 * s - 0.6 * c);
  light.reach.value = SHADOW / pose.pixelsPerMm;
  if (cut === undefined) {
    light.cut.value.set(0, 0, 0, 0);
    return;
  }
  const length = Math.hypot(cut.to.x - cut.from.x, cut.to.y - cut.from.y);
  const normal = { x: -(cut.to.y - cut.from.y) / length, y: (cut.to.x - cut.from.x) / length };
  const isAway = isCutAway(cut, pose, { x: cut.from.x + normal.x, y: cut.from.y + normal.y });
  const side = isAway ? 1 : -1;
  const far = side * (normal.x * cut.from.x + normal.y * cut.from.y);
  light.cut.value.set(side * normal.x, side * normal.y, far, 1);
}
