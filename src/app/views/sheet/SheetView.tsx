/** The sheet: canvas, what hands and keys do on it, words and shapes on their places, and the strip under it. */

import { useRef, useState } from 'react';
import { createStore } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { figureMeaning } from '#app/state/figure-meaning.ts';
import { SheetWords } from '#app/views/sheet/words/SheetWords.tsx';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Finding } from '#findings/finding.ts';
import { sayInLabels } from '#job/field-labels.ts';
import { BathKey } from './BathKey.tsx';
import { DepthKey } from './DepthKey.tsx';
import { HoverCard, type Rested } from './HoverCard.tsx';
import { Measure } from './Measure.tsx';
import { PlaceMark } from './PlaceMark.tsx';
import { SectionLineView } from './SectionLineView.tsx';
import { SheetPicture } from './SheetPicture.tsx';
import { SheetStrip } from './SheetStrip.tsx';
import { usePoseKeeper } from './use-pose-keeper.ts';
import { useScenePicture } from './use-scene-picture.ts';
import { useSheetHands } from './use-sheet-hands.ts';
import { useSheetKeys } from './use-sheet-keys.ts';

const UNPLACED: ViewPose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 };

export function SheetView() {
  const frame = useRef<HTMLDivElement>(null);
  const hover = useRef<HTMLParagraphElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const carried = useRef<HTMLParagraphElement>(null);
  const size = useSize(frame);
  const measured = useRef<Size>({ width: 1, height: 1 });
  if (size !== undefined) measured.current = size;
  const [pose] = useState(() => createStore<ViewPose>(() => UNPLACED));
  const [rested, setRested] = useState<Rested>();
  const [showsTexts, showTexts] = useState(false);
  const figures = useWorkbenchState(figureMeaning);
  const { view, selection } = useWorkbenchState((state) => state.session);
  const { page, relief, isStale } = useWorkbenchState((state) => state.derived);
  const { picture, isBehind } = useScenePicture();
  const { fitAll } = usePoseKeeper(pose, size);
  useSheetHands({ frame, hover, box, carried, pose, size: measured, onRest: setRested });
  const onKeyDown = useSheetKeys({ pose, size: measured, fitAll });
  return (
    <section className={`sheet${isStale ? ' stale' : ''}${isBehind ? ' behind' : ''}`} aria-label="Sheet">
      <div className="sheet-view">
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
          Arrow keys move or turn the sheet, plus and minus zoom, Home shows the whole part, T turns it over
          where both faces are etched, Page Up and Page Down pick the region before or after, Escape picks
          none, a figure and Enter set the depth, M held down measures from where the pointer is.
        </p>
        <SheetWords pose={pose} size={size} showsTexts={showsTexts} />
        <SectionLineView pose={pose} size={size} />
        <Measure frame={frame} pose={pose} size={measured} />
        <BathKey />
        {view === 'relief' && size !== undefined && <DepthKey width={size.width} />}
        {view === 'relief' && relief?.heldBack !== undefined && <HeldBack finding={relief.heldBack} />}
        {rested !== undefined && size !== undefined && page?.plan !== undefined && (
          <HoverCard rested={rested} plan={page.plan} size={size} says={figures} />
        )}
        <p className="carried" ref={carried} hidden />
      </div>
      <SheetStrip
        pose={pose}
        fitAll={fitAll}
        hover={hover}
        hasTexts={(page?.notes.length ?? 0) > 0}
        showsTexts={showsTexts}
        onTexts={showTexts}
      />
    </section>
  );
}

function HeldBack({ finding }: { readonly finding: Finding }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const { title, reason, remedy } = sayInLabels(finding, unit);
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
