import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { compareOpenings } from '#support/geometry/compare-openings.ts';

test.each(['gauge-pod-cover', 'shutter-bay-grid', 'glider-wing-skin', 'hatch-from-supplier'])(
  'M3.1 M3.2 openings of the sample %s agree with buffers of an independent library (JSTS 2.12.1)',
  async (name) => {
    const job = jobOf(name);
    const drawingName = `${name}.dxf`;
    const { plan } = await runJob({
      jobText: JSON.stringify(job),
      drawingName,
      drawingBytes: readFileSync(`samples/${drawingName}`),
    });
    expect(plan?.stages.length).toBeGreaterThan(1);
    const { edgeDatum = 'shallow-edge' } = job.process;
    if (plan !== undefined) compareOpenings(plan, { etchFactor: plan.etchFactor, edgeDatum });
  },
);

/** Of the wing skin in few stages: the comparison takes time with the cube of their number, 13 of them ten minutes. */
function jobOf(name: string) {
  const job = JSON.parse(readFileSync(`samples/${name}.job.json`, 'utf8'));
  if (name !== 'glider-wing-skin') return job;
  const requirements = job.requirements.map((each: object) => ({ ...each, plus: 0.13, minus: 0.13 }));
  return { ...job, requirements, levels: 'fewest' };
}
