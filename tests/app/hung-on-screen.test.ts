import { expect, test } from 'vitest';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { boxOfHung, hungOnScreen } from '#app/views/sheet/words/hung-on-screen.ts';
import type { DrawnNote } from '#drawing/drawing.ts';

const size = { width: 800, height: 600 };
const plan: ViewPose = { target: { x: 10, y: 20 }, pixelsPerMm: 4, azimuth: 0, tilt: 0 };
/** Turned over about the upright, as the far face is seen. */
const far: ViewPose = { ...plan, azimuth: Math.PI, tilt: Math.PI };
const note: DrawnNote = {
  layer: 'NOTES',
  text: 'T=.063',
  at: { x: 31, y: 12 },
  // 3 across, 4 up.
  hung: { along: { x: 3, y: 4 }, across: 'end', up: 'base' },
};

test('a text runs along its line of writing and hangs by its own end', () => {
  const { x, y, turn, anchor } = hungOnScreen(note, plan, size);
  expect([x, y]).toEqual([484, 332]);
  // Upwards on the screen is against the clock.
  expect(turn).toBeCloseTo(-53.1301, 4);
  expect(anchor).toBe('end');
});

test('seen from the far face it falls the other way, upright, and hangs by its other end', () => {
  const { x, y, turn, anchor } = hungOnScreen(note, far, size);
  expect(x).toBeCloseTo(316, 9);
  expect(y).toBeCloseTo(332, 9);
  expect(turn).toBeCloseTo(53.1301, 4);
  expect(anchor).toBe('start');
});

test('what it takes of the screen follows its turn, and the end that it hangs by', () => {
  const upright: DrawnNote = { ...note, hung: { along: { x: 0, y: 1 }, across: 'end', up: 'base' } };
  const box = boxOfHung(upright, hungOnScreen(upright, plan, size), 40);
  // It ends at its place, coming from below; what stands over the base line is at its left.
  expect(box.minX).toBeCloseTo(484 - 9, 9);
  expect(box.maxX).toBeCloseTo(484 + 3, 9);
  expect(box.minY).toBeCloseTo(332, 9);
  expect(box.maxY).toBeCloseTo(372, 9);
});
