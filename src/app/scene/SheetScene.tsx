/** Plan or relief of the sheet, as the picture says. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { Contour } from '#job/files/plan-file.ts';
import { CameraRig } from './CameraRig.tsx';
import { PlanScene } from './PlanScene.tsx';
import { ReliefScene } from './ReliefScene.tsx';
import type { SceneAnswer, ScenePicture } from './scene-picture.ts';
import { sceneTheme } from './scene-theme.ts';
import type { ViewPose } from './view-pose.ts';

/** The picture, and what is made from it where it is drawn. */
export interface ScenePainted extends Omit<ScenePicture, 'lines'> {
  readonly linework: readonly Contour[];
  readonly number: number;
  readonly shapes: readonly RegionShape[];
}

export function SheetScene({
  painted,
  pose,
}: {
  readonly painted: StoreApi<ScenePainted>;
  readonly pose: StoreApi<ViewPose>;
}) {
  const { plan, linework, shapes, relief, selection, view, exaggeration, minute, onlyStage, marked, isDark } =
    useStore(painted);
  const number = useStore(painted, (state) => state.number);
  useReportDrawn(number);
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
          selection={selection}
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

/** Tells the page which picture a frame showed; each picture has a frame. */
function useReportDrawn(number: number): void {
  const invalidate = useThree((state) => state.invalidate);
  const reported = useRef(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another picture is another frame
  useEffect(() => invalidate(), [number, invalidate]);
  useFrame(() => {
    if (reported.current === number) return;
    reported.current = number;
    // After this frame, which is still to be drawn.
    setTimeout(() => postMessage({ drawn: number } satisfies SceneAnswer));
  });
}
