/** The one canvas of the workbench: plan or relief of the sheet, drawn only when something that it shows has changed. */
import { Canvas } from '@react-three/fiber';
import { memo } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { Derived, SheetView } from '#app/state/workbench-state.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import type { Contour, ShownPlan } from '#handoff/plan-file.ts';
import { CameraRig } from './CameraRig.tsx';
import { PlanScene } from './PlanScene.tsx';
import { ReliefScene } from './ReliefScene.tsx';
import { sceneTheme } from './scene-theme.ts';
import type { ViewPose } from './view-pose.ts';

interface SheetCanvasProps {
  readonly plan: ShownPlan | undefined;
  readonly lines: readonly DrawnLine[] | undefined;
  readonly shapes: Derived['shapes'];
  readonly relief: Derived['relief'];
  readonly selection: readonly string[];
  readonly view: SheetView;
  readonly exaggeration: number;
  readonly minute: number | undefined;
  /** Outline of the finding that was last flown to. */
  readonly marked: readonly Contour[];
  readonly isDark: boolean;
  readonly pose: StoreApi<ViewPose>;
}

const NO_LINES: readonly DrawnLine[] = [];

/** Twice the pixels of a fine screen are enough; more only costs time. */
const LARGEST_RATIO = 2;

export const SheetCanvas = memo(function SheetCanvas(props: SheetCanvasProps) {
  const { plan, lines, shapes, relief, selection, view, exaggeration, minute, marked, isDark, pose } = props;
  const theme = sceneTheme(isDark);
  return (
    <Canvas
      orthographic
      flat
      frameloop="demand"
      dpr={[1, LARGEST_RATIO]}
      gl={{ antialias: true }}
      aria-hidden="true"
    >
      <color attach="background" args={[theme.ground]} />
      <CameraRig pose={pose} />
      {view === 'plan' && (
        <PlanScene
          plan={plan}
          shapes={shapes}
          lines={lines ?? NO_LINES}
          selection={selection}
          theme={theme}
          pose={pose}
          minute={minute}
          marked={marked}
        />
      )}
      {view === 'relief' && relief !== undefined && (
        <ReliefScene
          arrays={relief.arrays}
          stages={relief.of.stages}
          shapes={shapes}
          selection={selection}
          theme={theme}
          exaggeration={exaggeration}
        />
      )}
    </Canvas>
  );
});
