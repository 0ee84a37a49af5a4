/** The one canvas of the workbench: plan or relief of the sheet, drawn only when something changed. */
import { Canvas } from '@react-three/fiber';
import type { StoreApi } from 'zustand/vanilla';
import type { Derived, SheetView } from '#app/state/workbench-state.ts';
import type { Contour } from '#handoff/plan-file.ts';
import { CameraRig } from './CameraRig.tsx';
import { PlanScene } from './PlanScene.tsx';
import { ReliefScene } from './ReliefScene.tsx';
import { sceneTheme } from './scene-theme.ts';
import type { ViewPose } from './view-pose.ts';

interface SheetCanvasProps {
  readonly derived: Derived;
  readonly selection: readonly string[];
  readonly view: SheetView;
  readonly exaggeration: number;
  readonly minute: number | undefined;
  /** Outline of the finding that was last flown to. */
  readonly marked: readonly Contour[];
  readonly isDark: boolean;
  readonly pose: StoreApi<ViewPose>;
}

/** Twice the pixels of a fine screen are enough; more only costs time. */
const LARGEST_RATIO = 2;

export function SheetCanvas(props: SheetCanvasProps) {
  const { derived, selection, view, exaggeration, minute, marked, isDark, pose } = props;
  const { page, shapes, relief } = derived;
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
          plan={page?.plan}
          shapes={shapes}
          lines={page?.lines ?? []}
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
}
