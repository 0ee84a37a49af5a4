import { expect, test } from 'vitest';
import { setLevels } from '#app/state/set-levels.ts';
import type { JobFile } from '#part/job-file.ts';

test('levels taken from the planning panel are listed in the job’s own unit, and locked ones go', () => {
  const job: JobFile = {
    format: 'isobath-job',
    version: 1,
    drawing: 'shutter.dxf',
    units: 'in',
    stock: { thickness: 0.125 },
    process: {},
    requirements: [],
    levels: 'fewest',
    lockedLevels: [0.04],
  };
  const { levels, lockedLevels } = setLevels(job, [2.54, 1.27]);
  expect(levels).toEqual([0.1, 0.05]);
  expect(lockedLevels).toBeUndefined();
});
