import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { compareOpenings } from '#support/geometry/compare-openings.ts';

test.each(['gauge-pod-cover', 'shutter-bay-grid', 'glider-wing-skin', 'hatch-from-supplier'])(
  'M3.1 M3.2 openings of the sample %s agree with buffers of an independent library (JSTS 2.12.1)',
  async (name) => {
    const jobText = readFileSync(`samples/${name}.job.json`, 'utf8');
    const drawingName = `${name}.dxf`;
    const { plan } = await runJob({
      jobText,
      drawingName,
      drawingBytes: readFileSync(`samples/${drawingName}`),
    });
    expect(plan?.stages.length).toBeGreaterThan(1);
    const { edgeDatum = 'shallow-edge' } = JSON.parse(jobText).process;
    if (plan !== undefined) compareOpenings(plan, { etchFactor: plan.etchFactor, edgeDatum });
  },
);
