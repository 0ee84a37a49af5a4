import { expect, test } from 'vitest';
import { chooseFile } from '#app/state/opening/choose-file.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'hatch.dxf',
  stock: { thickness: 3 },
  process: {},
  requirements: [],
};

test('chosen files keep one order, whatever the order of the ticks, and the key goes with the last of them', () => {
  const both = chooseFile(chooseFile(job, 'program', true), 'traveller', true);
  expect(both.handoff).toEqual({ files: ['traveller', 'program'] });
  const none = chooseFile(chooseFile(both, 'program', false), 'traveller', false);
  expect(none).toEqual(job);
});

test('other keys of the hand-off stay', () => {
  const paper: JobFile = { ...job, handoff: { paper: 'a3', files: ['traveller'] } };
  expect(chooseFile(paper, 'traveller', false).handoff).toEqual({ paper: 'a3' });
});
