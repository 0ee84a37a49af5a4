import { expect, test } from 'vitest';
import { facesToLookAt } from '#app/state/faces-looked-at.ts';
import type { PlanFaces } from '#app/worker/plan-faces.ts';

const line = { closed: true, vertices: [] };
const stage = (number: number, lines: number) => ({
  number,
  lines: Array.from({ length: lines }, () => line),
});
/** Stage 1 has lines on both faces, 2 on the far one, 3 on neither. */
const faces = {
  near: { stages: [stage(1, 2), stage(2, 0), stage(3, 0)] },
  far: { stages: [stage(1, 1), stage(2, 4), stage(3, 0)] },
} as unknown as PlanFaces;

test('a stage is to be looked at on each face that has lines in it', () => {
  expect(facesToLookAt(1, [], faces)).toEqual(['near', 'far']);
  expect(facesToLookAt(1, [{ stage: 1, face: 'near' }], faces)).toEqual(['far']);
  expect(
    facesToLookAt(
      1,
      [
        { stage: 2, face: 'far' },
        { stage: 1, face: 'near' },
      ],
      faces,
    ),
  ).toEqual(['far']);
  expect(facesToLookAt(2, [{ stage: 2, face: 'near' }], faces)).toEqual(['far']);
  expect(facesToLookAt(2, [{ stage: 2, face: 'far' }], faces)).toEqual([]);
});

test('a stage that cuts nothing is to be seen once; one face is the whole part', () => {
  expect(facesToLookAt(3, [], faces)).toEqual(['near']);
  expect(facesToLookAt(3, [{ stage: 3, face: 'far' }], faces)).toEqual([]);
  const one = { near: faces.near, far: undefined };
  expect(facesToLookAt(1, [{ stage: 1, face: 'near' }], one)).toEqual([]);
});
