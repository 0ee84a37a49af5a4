/** The sheet: canvas, what hands and keys do on it, and the readings laid over it. */
import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { createStore } from 'zustand/vanilla';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { focusDepth } from '#app/views/requirements/focus-depth.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { contourOfPath } from '#handoff/contour.ts';
import { BathKey } from './BathKey.tsx';
import { CutLine } from './CutLine.tsx';
import { PlaceMark } from './PlaceMark.tsx';
import { ScaleBars } from './ScaleBars.tsx';
import { SheetChoices } from './SheetChoices.tsx';
import { SheetPicture } from './SheetPicture.tsx';
import { sheetKey } from './sheet-keys.ts';
import { usePoseKeeper } from './use-pose-keeper.ts';
import { useSheetHands } from './use-sheet-hands.ts';

const UNPLACED: ViewPose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 };
const NO_LINES: ScenePicture['lines'] = [];
const START_OF_FIGURE = /^[\d.,]$/;

export function SheetView() {
  const { store, actions, layout } = useWorkbench();
  const frame = useRef<HTMLDivElement>(null);
  const hover = useRef<HTMLParagraphElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const carried = useRef<HTMLParagraphElement>(null);
  const size = useSize(frame);
  const measured = useRef<Size>({ width: 1, height: 1 });
  if (size !== undefined) measured.current = size;
  const [pose] = useState(() => createStore<ViewPose>(() => UNPLACED));
  const isDark = usePrefersDark();
  const { view, selection, exaggeration, minute, flight } = useWorkbenchState((state) => state.session);
  const page = useWorkbenchState((state) => state.derived.page);
  const relief = useWorkbenchState((state) => state.derived.relief);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const marked = useMemo(() => (flight?.outline ?? []).map(contourOfPath), [flight]);
  const isReliefBehind = view === 'relief' && (relief?.of !== page?.plan || relief?.minute !== minute);
  const solid = useMemo(
    () => relief?.mesh && { ...relief.mesh, colors: relief.of.stages.map(({ color }) => color) },
    [relief],
  );
  const picture = useMemo<ScenePicture>(
    () => ({
      plan: page?.plan,
      lines: page?.lines ?? NO_LINES,
      relief: solid,
      selection,
      view,
      exaggeration,
      minute,
      marked,
      isDark,
    }),
    [page, solid, selection, view, exaggeration, minute, marked, isDark],
  );
  const { fitAll } = usePoseKeeper(pose, size);
  useSheetHands({ frame, hover, box, carried, pose, size: measured });

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const host = { store, actions, pose, size: measured.current, fitAll };
    if (sheetKey(event.nativeEvent, host)) event.preventDefault();
    else if (START_OF_FIGURE.test(event.key) && selection.length > 0) focusDepth(layout);
  };
  return (
    <section
      className={`sheet${isStale ? ' stale' : ''}${isReliefBehind ? ' behind' : ''}`}
      aria-label="Sheet"
    >
      <div
        className="sheet-frame"
        ref={frame}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing surface takes keys, as its role says
        tabIndex={0}
        role="application"
        aria-label={sheetName(view, selection)}
        aria-describedby="sheet-keys"
        onKeyDown={onKeyDown}
      >
        <SheetPicture picture={picture} pose={pose} />
        <div className="pick-box" ref={box} hidden />
        <PlaceMark pose={pose} size={size} />
      </div>
      <p id="sheet-keys" hidden>
        Arrow keys move or turn the sheet, plus and minus zoom, Home shows the whole part, Page Up and Page
        Down pick the region before or after, Escape picks none, a figure and Enter set the depth.
      </p>
      <CutLine pose={pose} size={size} />
      <SheetChoices fitAll={fitAll} />
      <BathKey />
      <ScaleBars pose={pose} />
      {view === 'relief' && relief?.heldBack !== undefined && <HeldBack finding={relief.heldBack} />}
      <p className="hover-reading" ref={hover} />
      <p className="carried" ref={carried} hidden />
    </section>
  );
}

function HeldBack({ finding }: { readonly finding: Finding }) {
  const { title, reason, remedy } = sayFinding(finding);
  return (
    <p className="held-back" role="alert">
      <strong>{title}.</strong> {reason} {remedy}
    </p>
  );
}

function sheetName(view: string, selection: readonly string[]): string {
  const picked = selection.length === 0 ? 'nothing picked' : `picked ${selection.join(', ')}`;
  return `Sheet in ${view}, ${picked}`;
}
