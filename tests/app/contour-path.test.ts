import { expect, test } from 'vitest';
import { contourPath } from '#app/views/handoff/contour-path.ts';

test('a half round of bulge 1 turns counter-clockwise on the drawing, which is upside down on screen', () => {
  const half = { closed: false, vertices: [[10, 0, 1] as const, [-10, 0, 0] as const] };
  expect(contourPath(half)).toBe('M10 0A10 10 0 0 0 -10 0');
});

test('a closed outline comes back to its start', () => {
  const square = { closed: true, vertices: [[0, 0, 0] as const, [4, 0, 0] as const, [4, 4, 0] as const] };
  expect(contourPath(square)).toBe('M0 0L4 0L4 -4L0 0Z');
});
