import { useEffect, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from './view-pose.ts';

/** A view that has not moved for so long is at rest, ms. */
const AT_REST = 140;
/** Times larger or smaller before what hangs on the scale is made again although the view still moves. */
const FAR_OFF = Math.SQRT2;

/** The scale that the view came to rest at: what has a size on screen is made for it, and keeps that size but for a moment. */
export function useRestScale(pose: StoreApi<ViewPose>): number {
  const [scale, setScale] = useState(() => pose.getState().pixelsPerMm);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let made = pose.getState().pixelsPerMm;
    const take = () => {
      made = pose.getState().pixelsPerMm;
      setScale(made);
    };
    take();
    const leave = pose.subscribe(({ pixelsPerMm }) => {
      clearTimeout(timer);
      if (pixelsPerMm === made) return;
      if (pixelsPerMm > made * FAR_OFF || pixelsPerMm < made / FAR_OFF) take();
      else timer = setTimeout(take, AT_REST);
    });
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [pose]);
  return scale;
}
