/** How a text of the drawing hangs on the screen: along its own line of writing, by its own end. Seen from the far face it is turned to read. */
import { pixelOf, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';
import type { DrawnNote, HungText } from '#drawing/drawing.ts';
import { type Box, boxOfPoints } from '#geometry/box.ts';
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

/** px over and under the place of a text of 11 px, by what of its height lies there. */
const REACH: Readonly<Record<HungText['up'], readonly [over: number, under: number]>> = {
  base: [9, 3],
  middle: [6, 6],
  top: [0, 12],
};
const BEFORE: Readonly<Record<HungText['across'], number>> = { start: 0, middle: 0.5, end: 1 };

/** What a text so wide takes of the screen, px. */
export function boxOfHung(note: DrawnNote, { x, y, turn, anchor }: HungOnScreen, width: number): Box {
  const angle = (turn * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const from = -BEFORE[anchor] * width;
  const [over, under] = REACH[note.hung.up];
  const corners = [from, from + width].flatMap((across) =>
    [-over, under].map((down) => ({ x: x + across * c - down * s, y: y + across * s + down * c })),
  );
  return boxOfPoints(corners);
}
