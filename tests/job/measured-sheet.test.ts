import { describe, expect, test } from 'vitest';
import { readJob } from '#job/formats/read-job.ts';
import { measuredSheet } from '#job/measured-sheet.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

const JOB = {
  format: 'isobath-job',
  version: 1,
  drawing: 'hatch.dxf',
  process: { etchFactor: 1, rate: 0.025 },
  requirements: [{ layer: 'A', thickness: 1.6 }],
};
const TAPER = { from: [0, 0], to: [100, 0], thicknessFrom: 4, thicknessTo: 3 };

function resolved(stock: object) {
  const { jobFile, findings } = readJob(JSON.stringify({ ...JOB, stock }));
  if (jobFile === undefined) throw new Error(`the job must read: ${JSON.stringify(findings)}`);
  return resolveJob(jobFile, 'mm');
}

describe('M6.1 a sheet as it was measured', () => {
  test('three readings about 4.12 of a sheet ordered as 4.06: the mean, and how far they stand from it', () => {
    const { job } = resolved({ alloy: 'al-2024-t3', thickness: 4.06, measured: [4.12, 4.09, 4.15] });
    expect(job?.stock).toMatchObject({ thickness: 4.12, minus: 0.03, plus: 0.03, isMeasured: true });
    expect(job?.requirements[0]).toMatchObject({ depth: 2.52, asThickness: true });
    const reported = job?.provenance.filter(({ source }) => source.includes('stock.measured')) ?? [];
    expect(reported.map(({ quantity, kind }) => [quantity, kind])).toEqual([
      ['sheet thickness', 'measured'],
      ['sheet tolerance, minus', 'measured'],
      ['sheet tolerance, plus', 'measured'],
    ]);
  });

  test('readings that agree are no better than a gauge: ± 0.02 mm, twice its standard deviation', () => {
    expect(measuredSheet(4, [{ at: undefined, thickness: 4.01 }])).toEqual({
      thickness: 4.01,
      minus: 0.02,
      plus: 0.02,
    });
  });

  test('a minus or plus of one’s own wins over the readings’', () => {
    const { job } = resolved({ thickness: 4.06, measured: [4.12, 4.1], minus: 0.08 });
    expect(job?.stock).toMatchObject({ thickness: 4.11, minus: 0.08, plus: 0.02 });
  });

  test('readings on a tapered sheet move it as a whole, each held against the sheet at its place', () => {
    const measured = [
      { at: [0, 5], thickness: 4.1 },
      { at: [50, 5], thickness: 3.54 },
    ];
    const { stock } = resolved({ thickness: TAPER, measured }).job ?? {};
    expect(stock?.thickness).toMatchObject({ fromValue: 4.07, toValue: 3.07 });
    expect(stock).toMatchObject({ minus: 0.03, plus: 0.03 });
  });

  test('the filled-in job says the same job again', () => {
    const { job, filled } = resolved({ thickness: 4.06, measured: [4.12, 4.09, 4.15] });
    const again = resolveJob(filled, 'mm').job;
    expect(again?.stock).toEqual(job?.stock);
    expect(again?.requirements).toEqual(job?.requirements);
    expect(again?.process).toEqual(job?.process);
  });

  test('job-value-wrong: a reading on a tapered sheet without its place', () => {
    const stock = { thickness: TAPER, measured: [4.1, { at: [50, 5], thickness: 3.5 }, { thickness: 3.4 }] };
    const { findings } = readJob(JSON.stringify({ ...JOB, stock }));
    expect(findings.map(({ code, place }) => [code, place.path])).toEqual([
      ['job-value-wrong', 'stock.measured[0]'],
      ['job-value-wrong', 'stock.measured[2]'],
    ]);
  });

  test('job-value-wrong: no reading at all, or one that is none', () => {
    const { findings } = readJob(JSON.stringify({ ...JOB, stock: { thickness: 4, measured: [] } }));
    expect(findings.map(({ code }) => code)).toEqual(['job-value-wrong']);
    const { findings: others } = readJob(
      JSON.stringify({ ...JOB, stock: { thickness: 4, measured: ['4'] } }),
    );
    expect(others.map(({ code }) => code)).toEqual(['job-value-wrong']);
  });
});

test('a final thickness is reported from a depth, tapers too', () => {
  const requirements = [
    { layer: 'A', depth: 1 },
    { layer: 'B', thickness: 3 },
    { layer: 'C', taper: TAPER },
    { layer: 'D', taper: { from: [0, 0], to: [100, 0], depthFrom: 1, depthTo: 2 } },
  ];
  const { jobFile } = readJob(JSON.stringify({ ...JOB, stock: { thickness: 4 }, requirements }));
  if (jobFile === undefined) throw new Error('the job must read');
  const { job } = resolveJob(jobFile, 'mm');
  expect(job?.requirements.map(({ asThickness = false }) => asThickness)).toEqual([false, true, true, false]);
});
