/** The sheet as it goes into the bath at a stage: what is bare, with the lines of this stage alone; a floor touched is the one gauged. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { createStore } from 'zustand/vanilla';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { pointSeenAt, type ViewPose } from '#app/scene/view-pose.ts';
import { shapeAt } from '#app/state/shape-finder.ts';
import { SheetPicture } from '#app/views/sheet/SheetPicture.tsx';
import { usePoseKeeper } from '#app/views/sheet/use-pose-keeper.ts';
import { useStagePicture } from '#app/views/sheet/use-stage-picture.ts';
import { SheetLabels } from '#app/views/sheet/words/SheetLabels.tsx';
import { type RestingAsk, useSheetMarks } from '#app/views/sheet/words/use-sheet-marks.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { useSize } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { useTank } from './tank-context.ts';

const UNPLACED: ViewPose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 };
const NONE: readonly never[] = [];
const NO_FIGURE = () => '';

export function TankSheet() {
  const { stage, floors, own, plan, gaugeAt, setGaugeRegion } = useTank();
  const frame = useRef<HTMLDivElement>(null);
  const [pose] = useState(() => createStore<ViewPose>(() => UNPLACED));
  const isDark = usePrefersDark();
  const size = useSize(frame);
  const allShapes = useWorkbenchState((state) => state.derived.shapes);
  usePoseKeeper(pose, size, { isFlat: true, isBare: true });
  const isGauging = own.step === 'gauge' || own.step === 'sheet';
  const selection = useMemo(() => (isGauging ? [gaugeAt.region] : NONE), [isGauging, gaugeAt.region]);
  const picture = useStagePicture({ stage, selection, marked: NONE });
  const shapes = useMemo(() => {
    const ids = new Set(floors.map(({ id }) => id));
    return allShapes.filter(({ region }) => ids.has(region.id));
  }, [allShapes, floors]);
  const ask = useMemo<RestingAsk | undefined>(
    () =>
      size && {
        plan,
        shapes,
        findings: NONE,
        seen: { size, exaggeration: 0 },
        isRelief: false,
        cut: undefined,
        theme: sceneTheme(isDark),
        figureOf: NO_FIGURE,
        section: undefined,
        lined: [stage],
      },
    [plan, shapes, size, isDark, stage],
  );
  const marks = useSheetMarks(pose, ask);
  useEffect(() => {
    const element = frame.current;
    if (element === null || size === undefined || !isGauging) return undefined;
    const onClick = ({ offsetX: x, offsetY: y }: MouseEvent) => {
      const at = pointSeenAt(pose.getState(), size, { x, y });
      const touched = shapeAt(shapes, at);
      if (touched !== undefined) setGaugeRegion(touched.region.id);
    };
    element.addEventListener('click', onClick);
    return () => element.removeEventListener('click', onClick);
  });
  const bare = plan.masking === 're-mask' ? 'its window is' : 'its piece and what was peeled before are';
  return (
    <div
      className="tank-sheet"
      ref={frame}
      role="img"
      aria-label={`The sheet at stage ${stage.number}: ${bare} bare`}
    >
      <SheetPicture picture={picture} pose={pose} />
      <SheetLabels marks={marks} pose={pose} size={size} />
    </div>
  );
}
