/** Words and shapes of the sheet for the pose that the view rests at; while it moves the ones before stay on their places. */
import { useEffect, useMemo, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { type MarksAsk, NO_MARKS, type SheetMarks, sheetMarks } from './sheet-marks.ts';

/** Words are placed again so long after a move of the view, ms; of many regions only once the view is at rest. */
const AFTER = 90;
const MANY = 300;

export type RestingAsk = Omit<MarksAsk, 'measure' | 'seen'> & {
  readonly seen: Omit<MarksAsk['seen'], 'pose'>;
};

export function useSheetMarks(pose: StoreApi<ViewPose>, ask: RestingAsk | undefined): SheetMarks {
  const [marks, setMarks] = useState<SheetMarks>(NO_MARKS);
  const measure = useMemo(textMeasure, []);
  useEffect(() => {
    if (ask === undefined) {
      setMarks(NO_MARKS);
      return undefined;
    }
    const place = () =>
      setMarks(sheetMarks({ ...ask, measure, seen: { ...ask.seen, pose: pose.getState() } }));
    const waitsForRest = ask.shapes.length > MANY;
    let timer: ReturnType<typeof setTimeout> | undefined = setTimeout(run);
    function run() {
      timer = undefined;
      place();
    }
    const leave = pose.subscribe(() => {
      if (timer !== undefined && !waitsForRest) return;
      clearTimeout(timer);
      timer = setTimeout(run, AFTER);
    });
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [pose, ask, measure]);
  return marks;
}

/** Widths as the page's own typeface has them, each measured once. */
function textMeasure(): MarksAsk['measure'] {
  const context = document.createElement('canvas').getContext('2d');
  const known = new Map<string, number>();
  const family = getComputedStyle(document.body).fontFamily;
  return (text, isBold) => {
    const key = `${isBold} ${text}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    if (context === null) return text.length * 8;
    context.font = isBold ? `600 13px ${family}` : `13px ${family}`;
    const width = context.measureText(text).width;
    known.set(key, width);
    return width;
  };
}
