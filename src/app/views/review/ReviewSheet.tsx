/** The sheet at one stage of the run: what is bare, and the lines of this stage alone. A click sets where a remark belongs. */

import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import { createStore } from 'zustand/vanilla';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { listenToHands } from '#app/scene/sheet-gestures.ts';
import { pointSeenAt, type ViewPose } from '#app/scene/view-pose.ts';
import { FaceSwitch } from '#app/views/sheet/FaceSwitch.tsx';
import { ScaleBars } from '#app/views/sheet/ScaleBars.tsx';
import { SectionLineView } from '#app/views/sheet/SectionLineView.tsx';
import { SheetPicture } from '#app/views/sheet/SheetPicture.tsx';
import { sheetKey } from '#app/views/sheet/sheet-keys.ts';
import { usePoseKeeper } from '#app/views/sheet/use-pose-keeper.ts';
import { useStagePicture } from '#app/views/sheet/use-stage-picture.ts';
import { FigureWords } from '#app/views/sheet/words/FigureWords.tsx';
import { SheetLabels } from '#app/views/sheet/words/SheetLabels.tsx';
import { useRegionFigure } from '#app/views/sheet/words/use-region-figure.ts';
import { type RestingAsk, useSheetMarks } from '#app/views/sheet/words/use-sheet-marks.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { contourOfPath } from '#handoff/contour.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { EarlierLines } from './EarlierLines.tsx';
import { RemarkPins } from './RemarkPins.tsx';

interface ReviewSheetProps {
  readonly stage: ShownStage;
  readonly place: Point | undefined;
  readonly onPlace: (place: Point) => void;
}

const UNPLACED: ViewPose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 };
const NONE: readonly never[] = [];

export function ReviewSheet({ stage, place, onPlace }: ReviewSheetProps) {
  const { store, actions } = useWorkbench();
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const measured = useRef<Size>({ width: 1, height: 1 });
  if (size !== undefined) measured.current = size;
  const [pose] = useState(() => createStore<ViewPose>(() => UNPLACED));
  const isDark = usePrefersDark();
  const { selection, flight } = useWorkbenchState((state) => state.session);
  const { fitAll } = usePoseKeeper(pose, size, { isFlat: true });
  const marked = useMemo(() => (flight?.outline ?? []).map(contourOfPath), [flight]);
  // What was picked in planning would stand out among what is to be looked at.
  const ringed = flight === undefined ? NONE : selection;
  const picture = useStagePicture({ stage, selection: ringed, marked });
  const ask = useNames(stage, size, isDark);
  const marks = useSheetMarks(pose, ask);
  useEffect(() => {
    if (frame.current === null) return undefined;
    return listenToHands(frame.current, {
      pose,
      size: () => measured.current,
      view: () => 'plan',
      onPick: (pixel) => onPlace(pointSeenAt(pose.getState(), measured.current, pixel)),
      onHover: () => undefined,
      onBox: () => undefined,
      // A review changes nothing.
      isPicked: () => false,
      onCarry: () => undefined,
    });
  }, [pose, onPlace]);

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    // Plain arrows go from stage to stage.
    if (event.key.startsWith('Arrow') && !event.shiftKey) return;
    if (!sheetKey(event.nativeEvent, { store, actions, pose, size: measured.current, fitAll })) return;
    event.preventDefault();
    if (!event.key.startsWith('Page')) return;
    const { session, derived } = store.getState();
    const picked = derived.shapes.find(({ region }) => region.id === session.selection[0])?.region.label;
    if (picked !== undefined) onPlace({ x: picked[0], y: picked[1] });
  };
  return (
    <section className="sheet" aria-label="Sheet">
      <div className="sheet-view">
        <div
          className="sheet-frame"
          ref={frame}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing surface takes keys, as its role says
          tabIndex={0}
          role="application"
          aria-label={`Sheet at stage ${stage.number}`}
          aria-describedby="review-sheet-keys"
          onKeyDown={onKeyDown}
        >
          <SheetPicture picture={picture} pose={pose} />
          <EarlierLines stage={stage.number} pose={pose} size={size} />
          <SheetLabels marks={marks} pose={pose} size={size} />
          <RemarkPins pose={pose} size={size} stage={stage.number} place={place} />
        </div>
        <p id="review-sheet-keys" hidden>
          Shift and arrow keys move the sheet, plus and minus zoom, Home shows the whole part, Page Up and
          Page Down choose a region as the place of a remark.
        </p>
        <SectionLineView pose={pose} size={size} />
      </div>
      <div className="sheet-strip">
        <button type="button" onClick={fitAll}>
          whole part
        </button>
        <FaceSwitch />
        <ScaleBars pose={pose} />
        <span className="spring" />
        <span className="aside">
          <FigureWords />
        </span>
        <span>
          lines of stage <strong>{stage.number}</strong> alone
        </span>
      </div>
    </section>
  );
}

/** Names with what each floor will be in the end, and tags of lines too short for their mark. */
function useNames(stage: ShownStage, size: Size | undefined, isDark: boolean): RestingAsk | undefined {
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const cut = useWorkbenchState((state) => state.session.cut);
  const figureOf = useRegionFigure();
  return useMemo(() => {
    if (plan === undefined || size === undefined) return undefined;
    return {
      plan,
      shapes,
      findings: NONE,
      seen: { size, exaggeration: 0 },
      isRelief: false,
      cut,
      section: undefined,
      theme: sceneTheme(isDark),
      figureOf,
      lined: [stage],
      isMasked: ({ startMinute }) => startMinute > stage.startMinute,
    };
  }, [plan, shapes, size, cut, isDark, figureOf, stage]);
}
