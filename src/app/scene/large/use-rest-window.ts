import { useThree } from '@react-three/fiber';
import { useEffect, useMemo, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { type ViewWindow, windowOf } from './view-window.ts';

/** A view that has not moved for so long is at rest, ms. */
const AT_REST = 200;

/** The window of the view as it last came to rest. */
export function useRestWindow(pose: StoreApi<ViewPose>): ViewWindow {
  const size = useThree((state) => state.size);
  const [rested, setRested] = useState(() => pose.getState());
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const take = () => setRested(pose.getState());
    take();
    const leave = pose.subscribe(() => {
      clearTimeout(timer);
      timer = setTimeout(take, AT_REST);
    });
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [pose]);
  return useMemo(() => windowOf(rested, size), [rested, size]);
}
