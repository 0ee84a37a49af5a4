/** The part of the sheet that a view shows when it rests, for which what is drawn of a large part is made. */
import type { ViewPose, ViewSize } from '#app/scene/view-pose.ts';
import type { Box } from '#geometry/box.ts';

export interface ViewWindow {
  /** Scale of what is drawn in it, in steps of a factor √2. */
  readonly pixelsPerMm: number;
  /** Scale of the view itself. */
  readonly restScale: number;
  readonly box: Box;
}

/** px about the view, for what is wider on screen than on the sheet. */
const BEYOND = 8;

/** The view's own box on the sheet, however it is turned about the vertical. */
export function windowOf(
  { target, pixelsPerMm, azimuth }: ViewPose,
  { width, height }: ViewSize,
): ViewWindow {
  const [c, s] = [Math.abs(Math.cos(azimuth)), Math.abs(Math.sin(azimuth))];
  const across = ((c * width + s * height) / 2 + BEYOND) / pixelsPerMm;
  const along = ((s * width + c * height) / 2 + BEYOND) / pixelsPerMm;
  return {
    pixelsPerMm: 2 ** (Math.round(2 * Math.log2(pixelsPerMm)) / 2),
    restScale: pixelsPerMm,
    box: {
      minX: target.x - across,
      minY: target.y - along,
      maxX: target.x + across,
      maxY: target.y + along,
    },
  };
}
