/** A ring round the place that was last flown to; it stays on its place while the view moves. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';

interface PlaceMarkProps {
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

export function PlaceMark({ pose, size }: PlaceMarkProps) {
  const flight = useWorkbenchState((state) => state.session.flight);
  const mark = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (flight === undefined || size === undefined) return undefined;
    const draw = (now: ViewPose) => {
      if (mark.current === null) return;
      const { x, y } = pixelOf(now, size, flight.to);
      mark.current.style.left = `${x}px`;
      mark.current.style.top = `${y}px`;
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [pose, size, flight]);
  return flight === undefined ? null : <div className="place-mark" ref={mark} />;
}
