/** The one canvas of the workbench, drawn on by a worker. */
import { memo, useEffect, useRef, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ScenePicture } from './scene-picture.ts';
import { type Painter, startPainter } from './start-painter.ts';
import type { ViewPose } from './view-pose.ts';

interface SheetCanvasProps {
  readonly picture: ScenePicture;
  readonly pose: StoreApi<ViewPose>;
  /** Called where the canvas can't be drawn on after all. */
  readonly onUnable: () => void;
}

export const SheetCanvas = memo(function SheetCanvas({ picture, pose, onUnable }: SheetCanvasProps) {
  const holder = useRef<HTMLDivElement>(null);
  const painter = useRef<Painter>(undefined);
  const [failure, setFailure] = useState<string>();
  const unable = useRef(onUnable);
  useEffect(() => {
    if (holder.current === null) return undefined;
    painter.current = startPainter(holder.current, {
      pose,
      onFail: setFailure,
      onUnable: () => unable.current(),
    });
    return () => painter.current?.stop();
  }, [pose]);
  useEffect(() => void painter.current?.show(picture), [picture]);
  if (failure !== undefined) throw new Error(failure);
  return <div className="sheet-canvas" ref={holder} />;
});
