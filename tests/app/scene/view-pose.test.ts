import { describe, expect, it } from 'vitest';
import {
  fitPose,
  panned,
  pixelOf,
  pointSeenAt,
  turned,
  type ViewPose,
  zoomed,
} from '#app/scene/view-pose.ts';

const size = { width: 800, height: 600 };
const plan: ViewPose = { target: { x: 10, y: 20 }, pixelsPerMm: 4, azimuth: 0, tilt: 0 };
const relief: ViewPose = { target: { x: 10, y: 20 }, pixelsPerMm: 4, azimuth: 0.7, tilt: 0.9 };

describe('the view of the sheet', () => {
  it('shows the target in the middle, y up', () => {
    expect(pixelOf(plan, size, { x: 10, y: 20 })).toEqual({ x: 400, y: 300 });
    expect(pixelOf(plan, size, { x: 11, y: 21 })).toEqual({ x: 404, y: 296 });
  });

  it.each([
    ['plan', plan],
    ['relief', relief],
  ])('points at what it shows: %s', (_name, pose) => {
    for (const z of [0, -3]) {
      const pixel = pixelOf(pose, size, { x: 31, y: -7 }, z);
      const point = pointSeenAt(pose, size, pixel, z);
      expect(point.x).toBeCloseTo(31, 9);
      expect(point.y).toBeCloseTo(-7, 9);
    }
  });

  it.each([
    ['plan', plan],
    ['relief', relief],
  ])('keeps the point under the pointer when zooming: %s', (_name, pose) => {
    const pixel = { x: 123, y: 456 };
    const held = pointSeenAt(pose, size, pixel);
    const after = pixelOf(zoomed(pose, size, pixel, 2.5), size, held);
    expect(after.x).toBeCloseTo(pixel.x, 6);
    expect(after.y).toBeCloseTo(pixel.y, 6);
  });

  it('takes the surface along with the hand', () => {
    const held = pointSeenAt(relief, size, { x: 200, y: 200 });
    const after = pixelOf(panned(relief, size, { x: 30, y: -40 }), size, held);
    expect(after.x).toBeCloseTo(230, 6);
    expect(after.y).toBeCloseTo(160, 6);
  });

  it('fits a part with a margin, and keeps tilt in bounds', () => {
    const box = { minX: 0, minY: 0, maxX: 400, maxY: 50 };
    const fitted = fitPose(box, size, plan);
    expect(pixelOf(fitted, size, { x: 0, y: 25 }).x).toBeCloseTo(56, 6);
    expect(pixelOf(fitted, size, { x: 400, y: 25 }).x).toBeCloseTo(744, 6);
    expect(turned(plan, { azimuth: 0, tilt: -1 }).tilt).toBe(0);
    expect(turned(plan, { azimuth: 0, tilt: 9 }).tilt).toBeLessThan(Math.PI / 2);
  });
});
