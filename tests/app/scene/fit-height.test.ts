/** How much larger the relief draws heights; pixels by hand. */
import { describe, expect, it } from 'vitest';
import { fitHeight, leastStep } from '#app/scene/relief/fit-height.ts';
import { fitPose, pixelOf } from '#app/scene/view-pose.ts';
import { nearestLine } from '#app/views/sheet/rested-at.ts';

const look = { azimuth: -0.24, tilt: 0.506 };
const size = { width: 840, height: 380 };
const box = { minX: 0, minY: 0, maxX: 1200, maxY: 430 };
const points = [
  { x: 0, y: 0 },
  { x: 1200, y: 0 },
  { x: 1200, y: 430 },
  { x: 0, y: 430 },
];

describe('heights of the relief', () => {
  it('know the least step from the surface down', () => {
    expect(leastStep([2.4, 0.5, 2.05, 0.9])).toBeCloseTo(0.35, 9);
    expect(leastStep([])).toBeUndefined();
  });

  it('draw the least step 12 px where nothing hides, and the solid fits the view', () => {
    const factor = fitHeight({
      levels: [0.5, 0.9, 1.25],
      thickness: 2,
      points,
      size,
      look,
      deepest: { minX: 0, minY: 0, maxX: 300, maxY: 300 },
      hasNumbers: true,
    });
    const pose = fitPose(box, size, { ...look, height: 2 * factor });
    const step = 0.35 * factor * pose.pixelsPerMm * Math.sin(look.tilt);
    expect(step).toBeGreaterThan(11);
    expect(step).toBeLessThan(13);
    for (const corner of [
      { x: 0, y: 0 },
      { x: 1200, y: 430 },
      { x: 1200, y: 0 },
      { x: 0, y: 430 },
    ]) {
      for (const z of [0, -2 * factor]) {
        const { x, y } = pixelOf(pose, size, corner, z);
        expect(Math.min(x, y)).toBeGreaterThan(0);
        expect(x).toBeLessThan(size.width);
        expect(y).toBeLessThan(size.height);
      }
    }
  });

  it('draw it lower where a wall would hide the deepest floor, but not below what a number needs', () => {
    const narrow = {
      levels: [0.5, 0.9, 4.5],
      thickness: 5,
      points,
      size,
      look,
      deepest: { minX: 0, minY: 0, maxX: 60, maxY: 40 },
    };
    const without = fitHeight({ ...narrow, hasNumbers: false });
    // 4.5 mm × sin of the wall hides no more than 0.7 of 40 mm × cos.
    expect(4.5 * without * Math.sin(look.tilt)).toBeLessThan(0.72 * 40 * Math.cos(look.tilt));
    expect(fitHeight({ ...narrow, hasNumbers: true })).toBeGreaterThan(without);
  });

  it('are as they are where there is no level', () => {
    expect(
      fitHeight({ levels: [], thickness: 3, points, size, look, deepest: undefined, hasNumbers: true }),
    ).toBe(1);
  });
});

describe('the way to the next line', () => {
  it('is the shortest to any line of any stage, arcs too', () => {
    const stages = [
      {
        lines: [
          {
            closed: false,
            vertices: [
              [0, 0, 0],
              [40, 0, 0],
            ],
          },
        ],
      },
      {
        lines: [
          {
            closed: true,
            vertices: [
              [90, 10, 1],
              [110, 10, 1],
            ],
          },
        ],
      },
    ];
    const plan = { stages } as unknown as Parameters<typeof nearestLine>[0];
    expect(nearestLine(plan, { x: 13, y: 7.5 })).toBeCloseTo(7.5, 9);
    // A circle of radius 10 about (100, 10), seen from above it.
    expect(nearestLine(plan, { x: 100, y: 32 })).toBeCloseTo(12, 9);
    expect(nearestLine({ stages: [] }, { x: 1, y: 2 })).toBeUndefined();
  });
});
