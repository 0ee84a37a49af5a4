/** Brings a place of the sheet into view: not at all when it is well in view already. */
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';
import type { Point } from '#geometry/point.ts';

/** Share of the view's edge that counts as out of view. */
const EDGE = 0.08;
const FLIGHT_MS = 320;

export function pointAt(pose: StoreApi<ViewPose>, size: ViewSize, place: Point): void {
  const { x, y } = pixelOf(pose.getState(), size, place);
  const isSeen =
    x > size.width * EDGE &&
    x < size.width * (1 - EDGE) &&
    y > size.height * EDGE &&
    y < size.height * (1 - EDGE);
  if (!isSeen) flyTo(pose, { ...pose.getState(), target: place });
}

/** The flight under way of each view: a newer one takes its place. */
const underWay = new WeakMap<StoreApi<ViewPose>, ViewPose>();

/** Moves the view evenly, the last flight asked for winning; at once for people who asked for less motion. */
export function flyTo(pose: StoreApi<ViewPose>, goal: ViewPose): void {
  underWay.set(pose, goal);
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
    pose.setState(goal, true);
    return;
  }
  const start = pose.getState();
  let expected = start;
  let began: number | undefined;
  const step = (now: number) => {
    // Another flight, or the user, is moving the view: stop.
    if (underWay.get(pose) !== goal || pose.getState() !== expected) return;
    began ??= now;
    const share = Math.min(1, (now - began) / FLIGHT_MS);
    expected = share === 1 ? goal : between(start, goal, share * share * (3 - 2 * share));
    pose.setState(expected, true);
    if (share < 1) requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
}

function between(a: ViewPose, b: ViewPose, share: number): ViewPose {
  const mix = (from: number, to: number) => from + (to - from) * share;
  return {
    target: { x: mix(a.target.x, b.target.x), y: mix(a.target.y, b.target.y) },
    pixelsPerMm: a.pixelsPerMm * (b.pixelsPerMm / a.pixelsPerMm) ** share,
    azimuth: mix(a.azimuth, b.azimuth),
    tilt: mix(a.tilt, b.tilt),
  };
}
