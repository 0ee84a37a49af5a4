/** The view of the sheet as the transform of an SVG group that is drawn in millimetres, y down (`contour-path.ts`). */
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';

/** Keeps a group where the view is, without drawing it again; returns what ends it. */
export function keepInPose(
  group: { readonly current: SVGGElement | null },
  pose: StoreApi<ViewPose>,
  size: ViewSize,
): () => void {
  const move = (now: ViewPose) => group.current?.setAttribute('transform', poseMatrix(now, size));
  move(pose.getState());
  return pose.subscribe(move);
}

export function poseMatrix(pose: ViewPose, size: ViewSize): string {
  const from = pixelOf(pose, size, { x: 0, y: 0 });
  const alongX = pixelOf(pose, size, { x: 1, y: 0 });
  const alongY = pixelOf(pose, size, { x: 0, y: -1 });
  const numbers = [
    alongX.x - from.x,
    alongX.y - from.y,
    alongY.x - from.x,
    alongY.y - from.y,
    from.x,
    from.y,
  ];
  return `matrix(${numbers.join(' ')})`;
}
