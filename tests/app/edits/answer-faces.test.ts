import { expect, test } from 'vitest';
import { answerFaces } from '#app/state/edits/answer-faces.ts';
import type { LayerRole } from '#app/state/edits/edit-job.ts';
import { jobForDrawing } from '#app/state/opening/job-for-drawing.ts';

const job = jobForDrawing('cover.dxf', {
  units: 'mm',
  layers: { outline: ['TRIM'], ignore: ['DIMS'] },
  far: ['BACK'],
});
const answers = (...each: [string, LayerRole][]) => new Map(each);

test('each layer plays the part that it is answered; what stays near is not named', () => {
  const said = answerFaces(
    job,
    answers(['BACK', 'far'], ['SLOTS', 'both'], ['FRONT', 'regions'], ['AXES', 'ignore']),
  );
  expect(said.layers).toEqual({
    outline: ['TRIM'],
    ignore: ['DIMS', 'AXES'],
    far: ['BACK'],
    both: ['SLOTS'],
  });
});

test('answered as it is already the job stays as it was', () => {
  expect(answerFaces(job, answers(['FRONT', 'regions'], ['DIMS', 'ignore']))).toBe(job);
});
