/** How a text of the drawing hangs on the screen: along its own line of writing, by its own end. Seen from the far face it is turned to read. */
import { pixelOf, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';
import type { DrawnNote, HungText } from '#drawing/drawing.ts';
import { add } from '#geometry/point.ts';

export interface HungOnScreen {
  /** px */
  readonly x: number;
  readonly y: number;
  /** Clockwise, degrees. */
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

const OTHER_END: Readonly<Record<HungText['across'], HungText['across']>> = {
  start: 'end',
  middle: 'middle',
  end: 'start',
};

export function hungOnScreen({ at, hung }: DrawnNote, pose: ViewPose, size: ViewSize): HungOnScreen {
  const { x, y } = pixelOf(pose, size, at);
  const ahead = pixelOf(pose, size, add(at, hung.along));
  const isMirrored = Math.cos(pose.tilt) < 0;
  const side = isMirrored ? -1 : 1;
  const turn = (Math.atan2(side * (ahead.y - y), side * (ahead.x - x)) * 180) / Math.PI;
  return { x, y, turn, anchor: isMirrored ? OTHER_END[hung.across] : hung.across };
}
