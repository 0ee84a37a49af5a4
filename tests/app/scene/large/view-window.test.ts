/** The part of the sheet that a view of a large part is drawn for, by hand: 8 px more on every side. */
import { expect, test } from 'vitest';
import { windowOf } from '#app/scene/large/view-window.ts';

const size = { width: 840, height: 480 };
const pose = { target: { x: 100, y: -30 }, pixelsPerMm: 4, azimuth: 0, tilt: 0 };

test('the window is what the view shows, and a little more', () => {
  const { box, restScale } = windowOf(pose, size);
  expect(box).toEqual({ minX: -7, minY: -92, maxX: 207, maxY: 32 });
  expect(restScale).toBe(4);
});

test('its scale goes in steps of √2, so that what was made for one is good for the next', () => {
  expect(windowOf(pose, size).pixelsPerMm).toBe(4);
  expect(windowOf({ ...pose, pixelsPerMm: 4.7 }, size).pixelsPerMm).toBe(4);
  expect(windowOf({ ...pose, pixelsPerMm: 4.9 }, size).pixelsPerMm).toBeCloseTo(4 * Math.SQRT2, 12);
});

test('of a view turned by a right angle it lies across', () => {
  const { box } = windowOf({ ...pose, azimuth: Math.PI / 2 }, size);
  expect(box.maxX - box.minX).toBeCloseTo(124, 9);
  expect(box.maxY - box.minY).toBeCloseTo(214, 9);
});

test('of one turned by 30° it holds all four corners', () => {
  const { box } = windowOf({ ...pose, azimuth: Math.PI / 6 }, size);
  expect(box.maxX - 100).toBeCloseTo((Math.cos(Math.PI / 6) * 840 + 0.5 * 480) / 8 + 2, 9);
  expect(box.maxY + 30).toBeCloseTo((0.5 * 840 + Math.cos(Math.PI / 6) * 480) / 8 + 2, 9);
});
