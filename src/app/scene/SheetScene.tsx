/** Plan or relief of the sheet, as the picture says. */

import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { Contour } from '#handoff/plan-file.ts';
import { CameraRig } from './CameraRig.tsx';
import { PlanScene } from './PlanScene.tsx';
import { ReliefScene } from './ReliefScene.tsx';
import type { ScenePicture } from './scene-picture.ts';
import { sceneTheme } from './scene-theme.ts';
import type { ViewPose } from './view-pose.ts';

/** The picture, and what is made from it where it is drawn. */
export interface ScenePainted extends Omit<ScenePicture, 'lines'> {
  readonly linework: readonly Contour[];
  readonly shapes: readonly RegionShape[];
}

export function SheetScene({
  painted,
  pose,
}: {
  readonly painted: StoreApi<ScenePainted>;
  readonly pose: StoreApi<ViewPose>;
}) {
  const { plan, linework, shapes, relief, selection, view, exaggeration, minute, marked, isDark } =
    useStore(painted);
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
