import { expect, test } from 'vitest';
import { turnedRelief } from '#app/worker/turned-relief.ts';

test('a triangle 0.75 deep in the far face of a sheet of 3 stands 2.25 below the near one, seen from below', () => {
  const turned = turnedRelief(
    {
      origin: { x: 5, y: 7 },
      positions: Float32Array.of(0, 0, -0.75, 4, 0, -0.75, 0, 3, 0, 9, 9, 0),
      indices: Uint32Array.of(0, 1, 2, 1, 3, 2),
      stageOfTriangle: Uint8Array.of(2, 0),
      edges: Float32Array.of(0, 0, -0.75, 4, 0, 0),
      feet: Float32Array.of(0, 0, -0.75, 0.25, 1, 4, 0, -0.5, 0.125, -1),
    },
    3,
  );
  expect([...turned.positions]).toEqual([0, 0, -2.25, 4, 0, -2.25, 0, 3, -3, 9, 9, -3]);
  expect([...turned.indices]).toEqual([0, 2, 1, 1, 2, 3]);
  expect([...turned.edges]).toEqual([0, 0, -2.25, 4, 0, -3]);
  expect([...turned.feet]).toEqual([0, 0, -2.25, 0.25, 1, 4, 0, -2.5, 0.125, -1]);
  expect(turned.origin).toEqual({ x: 5, y: 7 });
});
