import { expect, test } from 'vitest';
import { nearFaceOf, tellNearFace } from '#app/worker/near-face.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

test('near-face-shown: the page has the near face of a part etched on both, and reports it', async () => {
  const { planFile, plan, findings } = await runLid({ requirements }, LID);
  if (planFile === undefined) throw new Error('the lid can be planned');
  const shown = nearFaceOf(planFile);
  expect(shown.regions.map(({ id }) => id)).toEqual(['R01', 'R02', 'R03']);
  expect(shown.stages.map(({ regions }) => regions)).toEqual([['R02'], ['R01']]);
  expect(shown.stages.every((stage) => stage.far === undefined)).toBe(true);
  expect(tellNearFace(findings, plan).map(({ code }) => code)).toContain('near-face-shown');
  expect(tellNearFace(findings, { ...plan, far: undefined })).toBe(findings);
});
