/** Flights of the view: the last one asked for wins, and a hand on the view ends any of them. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { flyTo } from '#app/views/sheet/sheet-fly.ts';

const WHOLE: ViewPose = { target: { x: 120, y: 45 }, pixelsPerMm: 2, azimuth: 0, tilt: 0 };
const NEAR: ViewPose = { ...WHOLE, target: { x: 31, y: 72 }, pixelsPerMm: 17 };
const LONG_AFTER = 1000;

let waiting: ((now: number) => void)[] = [];

beforeEach(() => {
  waiting = [];
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  vi.stubGlobal('requestAnimationFrame', (step: (now: number) => void) => waiting.push(step));
});
afterEach(() => vi.unstubAllGlobals());

function frame(now: number): void {
  const due = waiting;
  waiting = [];
  for (const step of due) step(now);
}

test('a flight ends at its goal', () => {
  const pose = createStore<ViewPose>(() => WHOLE);
  flyTo(pose, NEAR);
  frame(0);
  frame(160);
  expect(pose.getState().pixelsPerMm).toBeGreaterThan(WHOLE.pixelsPerMm);
  expect(pose.getState().pixelsPerMm).toBeLessThan(NEAR.pixelsPerMm);
  frame(LONG_AFTER);
  expect(pose.getState()).toEqual(NEAR);
});

test('fitting the whole part while the view still flies to a place ends at the whole part', () => {
  const pose = createStore<ViewPose>(() => WHOLE);
  flyTo(pose, NEAR);
  frame(0);
  frame(100);
  flyTo(pose, WHOLE);
  for (const now of [116, 132, 300, LONG_AFTER, 2 * LONG_AFTER]) frame(now);
  expect(pose.getState()).toEqual(WHOLE);
});

test('a hand on the view ends the flight', () => {
  const pose = createStore<ViewPose>(() => WHOLE);
  flyTo(pose, NEAR);
  frame(0);
  const held = { ...WHOLE, pixelsPerMm: 5 };
  pose.setState(held, true);
  frame(LONG_AFTER);
  expect(pose.getState()).toEqual(held);
});
