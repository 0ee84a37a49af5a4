/** The sheet as it goes into the bath at a stage: what is bare, with the lines of this stage alone. */
import { useMemo, useRef, useState } from 'react';
import { createStore } from 'zustand/vanilla';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { SheetPicture } from '#app/views/sheet/SheetPicture.tsx';
import { usePoseKeeper } from '#app/views/sheet/use-pose-keeper.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { useSize } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';

const UNPLACED: ViewPose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 };
const NONE: readonly never[] = [];

export function TankSheet({ stage }: { readonly stage: ShownStage }) {
  const frame = useRef<HTMLDivElement>(null);
  const [pose] = useState(() => createStore<ViewPose>(() => UNPLACED));
  const isDark = usePrefersDark();
  const page = useWorkbenchState((state) => state.derived.page);
  usePoseKeeper(pose, useSize(frame), { isFlat: true });
  const picture = useMemo<ScenePicture>(
    () => ({
      plan: page?.plan,
      lines: page?.lines ?? NONE,
      relief: undefined,
      selection: NONE,
      view: 'plan',
      exaggeration: 1,
      minute: stage.startMinute,
      onlyStage: stage.number,
      marked: NONE,
      isDark,
    }),
    [page, stage, isDark],
  );
  const bare =
    page?.plan?.masking === 're-mask' ? 'its window is' : 'its piece and what was peeled before are';
  const words = `The sheet at stage ${stage.number}: ${bare} bare`;
  return (
    <div className="tank-sheet" ref={frame} role="img" aria-label={words}>
      <SheetPicture picture={picture} pose={pose} />
    </div>
  );
}
