/**
 * Where the sheet is looked at from: a point of the surface in the middle of the view, a scale, and how far the view is turned
 * and tilted. Plan is tilt 0; relief is the same view tilted. The projection is parallel, so that one scale holds everywhere.
 */
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';

export interface ViewPose {
  readonly target: Point;
  readonly pixelsPerMm: number;
  /** Turn about the vertical, radians. */
  readonly azimuth: number;
  /** 0 looks straight down; radians. */
  readonly tilt: number;
}

export interface ViewSize {
  readonly width: number;
  readonly height: number;
}

/** Share of the view that a fitted box may fill. */
export const FILL = 0.86;
const SMALLEST_SCALE = 1e-3;
const LARGEST_SCALE = 1e4;
/** Flatter than this the surface is seen edge on and cannot be pointed at; past the upright it is seen from below. */
const LARGEST_TILT = 1.35;

interface FitLook extends Pick<ViewPose, 'azimuth' | 'tilt'> {
  /** How far down from the surface what is shown reaches, as drawn, mm. */
  readonly height?: number;
}

export function fitPose(box: Box, size: ViewSize, look: FitLook): ViewPose {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
  return fitPoints(corners, size, look);
}

/** All the points, and what reaches down from them, as large as the view has room for. */
export function fitPoints(points: readonly Point[], size: ViewSize, look: FitLook): ViewPose {
  const { azimuth, tilt } = look;
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const rights = points.map(({ x, y }) => x * c + y * s);
  const aheads = points.map(({ x, y }) => y * c - x * s);
  const [left, right] = [Math.min(...rights), Math.max(...rights)];
  const [near, far] = [Math.min(...aheads), Math.max(...aheads)];
  const deep = (look.height ?? 0) * Math.sin(tilt);
  const flat = Math.cos(tilt);
  const scale = Math.min(
    (size.width * FILL) / (right - left),
    (size.height * FILL) / ((far - near) * Math.abs(flat) + deep),
  );
  // Half of the way down lies in the middle of the view.
  const [across, ahead] = [(left + right) / 2, (near + far) / 2 - deep / 2 / flat];
  return {
    target: { x: across * c - ahead * s, y: across * s + ahead * c },
    pixelsPerMm: Number.isFinite(scale) ? boundScale(scale) : 1,
    azimuth,
    tilt,
  };
}

/** The point at height `z` that is seen at a pixel (from the top left). */
export function pointSeenAt(pose: ViewPose, size: ViewSize, pixel: Point, z = 0): Point {
  const right = (pixel.x - size.width / 2) / pose.pixelsPerMm;
  const up = (size.height / 2 - pixel.y) / pose.pixelsPerMm;
  const ahead = (up - z * Math.sin(pose.tilt)) / Math.cos(pose.tilt);
  const [c, s] = [Math.cos(pose.azimuth), Math.sin(pose.azimuth)];
  return { x: pose.target.x + right * c - ahead * s, y: pose.target.y + right * s + ahead * c };
}

/** The pixel at which a point is seen. */
export function pixelOf(pose: ViewPose, size: ViewSize, point: Point, z = 0): Point {
  const [dx, dy] = [point.x - pose.target.x, point.y - pose.target.y];
  const [c, s] = [Math.cos(pose.azimuth), Math.sin(pose.azimuth)];
  const right = dx * c + dy * s;
  const up = (dy * c - dx * s) * Math.cos(pose.tilt) + z * Math.sin(pose.tilt);
  return { x: size.width / 2 + right * pose.pixelsPerMm, y: size.height / 2 - up * pose.pixelsPerMm };
}

/** The surface goes with the hand: by so many pixels. */
export function panned(pose: ViewPose, size: ViewSize, by: Point): ViewPose {
  const middle = { x: size.width / 2 - by.x, y: size.height / 2 - by.y };
  return { ...pose, target: pointSeenAt(pose, size, middle) };
}

/** Larger by a factor, the point under the pixel staying where it is. */
export function zoomed(pose: ViewPose, size: ViewSize, pixel: Point, factor: number): ViewPose {
  const held = pointSeenAt(pose, size, pixel);
  const nearer = { ...pose, pixelsPerMm: boundScale(pose.pixelsPerMm * factor) };
  const slipped = pointSeenAt(nearer, size, pixel);
  const target = {
    x: nearer.target.x + held.x - slipped.x,
    y: nearer.target.y + held.y - slipped.y,
  };
  return { ...nearer, target };
}

export function turned(pose: ViewPose, by: { readonly azimuth: number; readonly tilt: number }): ViewPose {
  const isBelow = pose.tilt > Math.PI / 2;
  const [least, most] = isBelow ? [Math.PI - LARGEST_TILT, Math.PI] : [0, LARGEST_TILT];
  const tilt = Math.min(most, Math.max(least, pose.tilt + by.tilt));
  return { ...pose, azimuth: pose.azimuth + by.azimuth, tilt };
}

function boundScale(scale: number): number {
  return Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, scale));
}
