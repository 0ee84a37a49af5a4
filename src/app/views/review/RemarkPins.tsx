/** Where the remarks of a stage belong on the sheet; they stay on their places while the view moves. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import { drawingOrigin, onSheet } from '#app/state/region-targets.ts';
import type { Size } from '#app/views/use-size.ts';
import { useMode, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';

interface RemarkPinsProps {
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
  readonly stage: number;
  /** Of a remark being written. */
  readonly place: Point | undefined;
}

interface Pin {
  readonly number: number;
  readonly at: Point;
}

export function RemarkPins({ pose, size, stage, place }: RemarkPinsProps) {
  const remarks = useMode((state) => state.draft.remarks);
  const origin = useWorkbenchState(drawingOrigin);
  const holder = useRef<HTMLDivElement>(null);
  const pins = remarks.flatMap(({ at, stage: of }, index): Pin[] =>
    at === undefined || of !== stage ? [] : [{ number: index + 1, at: onSheet(at, origin) }],
  );
  const places = [...pins.map(({ at }) => at), ...(place === undefined ? [] : [place])];
  useEffect(() => {
    if (size === undefined) return undefined;
    const draw = (now: ViewPose) => {
      places.forEach((at, index) => {
        const pin = holder.current?.children[index];
        const { x, y } = pixelOf(now, size, at);
        if (pin instanceof HTMLElement) pin.style.translate = `${x}px ${y}px`;
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  });
  return (
    <div className="remark-pins" ref={holder} aria-hidden="true">
      {pins.map(({ number }) => (
        <span key={number} className="remark-pin">
          {number}
        </span>
      ))}
      {place !== undefined && <span className="remark-pin fresh" />}
    </div>
  );
}
