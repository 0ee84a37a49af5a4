import { expect, test } from 'vitest';
import { facesOf } from '#app/worker/plan-faces.ts';
import { itemAt } from '#geometry/assert.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

test('a part etched on both faces comes apart into two plans with the stages of both', async () => {
  const { planFile } = await runLid({ requirements }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  const { near, far } = facesOf(planFile);
  if (far === undefined) throw new Error('the lid has a far face');
  expect(near.regions.map(({ id }) => id)).toEqual(['R01', 'R02', 'R03']);
  expect(far.regions.map(({ id }) => id)).toEqual(['F01', 'F02']);
  expect(near.stages.map(({ regions }) => regions)).toEqual([['R02'], ['R01']]);
  expect(far.stages.map(({ regions }) => regions)).toEqual([['F02'], []]);
  const lines = (plan: typeof near) => plan.stages.map((stage) => stage.lines);
  expect(lines(near)).toEqual(planFile.stages.map((stage) => stage.lines));
  expect(lines(far)).toEqual(planFile.stages.map((stage) => stage.far?.lines));
  // The pocket of the far face, 105 to 190 wide, less its undercut.
  const xs = itemAt(itemAt(lines(far), 0), 0).vertices.map(([x]) => x);
  expect([Math.min(...xs) > 105, Math.max(...xs) < 190]).toEqual([true, true]);
});

test('a part of one face is the plan itself', async () => {
  const { planFile } = await runLid(
    { layers: { outline: ['TRIM'], ignore: ['BACK'] }, requirements: requirements.slice(0, 2) },
    LID,
  );
  if (planFile === undefined) throw new Error('the lid can be planned');
  expect(facesOf(planFile)).toEqual({ near: planFile, far: undefined });
  expect(facesOf(planFile).near).toBe(planFile);
});
