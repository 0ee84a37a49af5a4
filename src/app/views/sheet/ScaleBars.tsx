/** The scale bar: a round length, with its middle. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { roundStep } from '#app/views/ladder/ladder-layout.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { millimetresIn } from '#units/length-unit.ts';

/** Shortest the bar may be, px; the longest is two and a half times that. */
const SHORTEST = 52;

export function ScaleBars({ pose }: { readonly pose: StoreApi<ViewPose> }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const bar = useRef<HTMLElement>(null);
  const words = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const draw = ({ pixelsPerMm }: ViewPose) => {
      const pixels = pixelsPerMm * millimetresIn(unit);
      const length = roundStep(SHORTEST / pixels);
      if (bar.current !== null) bar.current.style.width = `${length * pixels}px`;
      if (words.current !== null) words.current.textContent = `${Number(length.toPrecision(3))} ${unit}`;
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [pose, unit]);
  return (
    <div className="scale-bars" aria-hidden="true">
      <i ref={bar} />
      <span ref={words} />
    </div>
  );
}
