/** Plan or relief of the sheet, as the picture says. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import { ReliefScene } from '#app/scene/relief/ReliefScene.tsx';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { EdgeBand } from '#app/state/shown-bands.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { CameraRig } from './CameraRig.tsx';
import { PlanScene } from './PlanScene.tsx';
import type { NumberedPose, SceneAnswer, ScenePicture } from './scene-picture.ts';
import { sceneTheme } from './scene-theme.ts';

/** The picture, and what is made from it where it is drawn. */
export interface ScenePainted extends Omit<ScenePicture, 'lines'> {
  readonly linework: readonly Contour[];
  readonly number: number;
  readonly shapes: readonly RegionShape[];
}

const NONE: readonly string[] = [];
const NO_CONTOURS: readonly Contour[] = [];
const NO_BANDS: readonly EdgeBand[] = [];

export function SheetScene({
  painted,
  pose,
}: {
  readonly painted: StoreApi<ScenePainted>;
  readonly pose: StoreApi<NumberedPose>;
}) {
  const {
    plan,
    linework,
    behind,
    bands,
    returned,
    shapes,
    relief,
    cut,
    selection,
    lit,
    view,
    exaggeration,
    minute,
    onlyStage,
    marked,
    isDark,
  } = useStore(painted);
  const number = useStore(painted, (state) => state.number);
  useReportDrawn(number, pose);
  const theme = sceneTheme(isDark);
  return (
    <>
      <color attach="background" args={[theme.ground]} />
      <CameraRig pose={pose} />
      {view === 'plan' && (
        <PlanScene
          plan={plan}
          shapes={shapes}
          linework={linework}
          behind={behind ?? NO_CONTOURS}
          bands={bands ?? NO_BANDS}
          returned={returned ?? NO_CONTOURS}
          selection={selection}
          lit={lit ?? NONE}
          theme={theme}
          pose={pose}
          minute={minute}
          onlyStage={onlyStage}
          marked={marked}
        />
      )}
      {view === 'relief' && relief !== undefined && (
        <ReliefScene
          relief={relief}
          cut={cut}
          shapes={shapes}
          selection={selection}
          theme={theme}
          exaggeration={exaggeration}
          pose={pose}
        />
      )}
    </>
  );
}

/** Reports to the page which picture a frame showed, and from where; each picture has a frame. */
function useReportDrawn(number: number, pose: StoreApi<NumberedPose>): void {
  const invalidate = useThree((state) => state.invalidate);
  const reported = useRef({ drawn: -1, posed: -1 });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another picture is another frame
  useEffect(() => void invalidate(), [number, invalidate]);
  useFrame(() => {
    const posed = pose.getState().number;
    if (reported.current.drawn === number && reported.current.posed === posed) return;
    reported.current = { drawn: number, posed };
    // After this frame, which is still to be drawn.
    setTimeout(() => postMessage({ drawn: number, posed } satisfies SceneAnswer));
  });
}
