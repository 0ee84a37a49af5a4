/** The job that plan.json shows, planned again: the same plan, and what was a default is one still. */
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing } from '#support/drawings/small-drawing.ts';

const LID = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  layers: { outline: ['TRIM'] },
  stock: { alloy: 'al-2024-t3', thickness: 4 },
  process: { bath: 'caustic-aluminium' },
  requirements: [{ layer: 'POCKETS', depth: 1.2 }],
};

async function plan(job: unknown) {
  const { files, findings } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
  const text = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
  return { text, findings, file: text === '' ? undefined : JSON.parse(text) };
}

const INCHES = {
  ...LID,
  units: 'in',
  stock: { ...LID.stock, thickness: 0.157 },
  requirements: [{ layer: 'POCKETS', depth: 0.047 }],
};
const COPPER = {
  ...LID,
  stock: { thickness: 4 },
  process: { bath: 'cupric-chloride-copper', rate: 0.02 },
};

describe('the job of a plan, planned again', () => {
  test.each([
    ['in millimetres', LID],
    ['in inches', INCHES],
    ['with a sheet of unknown tolerance and a factor turned over', COPPER],
  ])('%s gives the same plan.json, byte for byte', async (_, job) => {
    const first = await plan(job);
    expect(first.file.job.assumed).toContain('process.etchFactor');
    const again = await plan(first.file.job);
    expect(again.text).toBe(first.text);
  });

  test('keeps the grades and the warnings of what nobody measured', async () => {
    const { file } = await plan(LID);
    const again = await plan(file.job);
    const codes = again.findings.map(({ code }) => code);
    expect(codes.filter((code) => code === 'process-figure-not-measured')).toHaveLength(2);
    const kinds = Object.fromEntries(
      again.file.provenance.map(({ quantity, kind }: { quantity: string; kind: string }) => [quantity, kind]),
    );
    expect(kinds).toMatchObject({
      'etch factor': 'memory',
      'etch rate': 'common-practice',
      'sheet tolerance, plus': 'published',
      'thinnest web': 'common-practice',
      'sheet thickness': 'user',
    });
  });

  test('lists what was filled in, and nothing that was decided', async () => {
    const { assumed } = (await plan(LID)).file.job;
    expect(assumed).toEqual(
      expect.arrayContaining(['process.rate', 'stock.minus', 'rules.minWeb', 'requirements[0].plus']),
    );
    for (const path of ['stock.thickness', 'process.bath', 'drawing', 'requirements[0].depth']) {
      expect(assumed).not.toContain(path);
    }
  });

  test('assumed-value-differs: an edited value is the engineer’s, and so is one of another bath', async () => {
    const { job } = (await plan(LID)).file;
    const edited = await plan({ ...job, process: { ...job.process, rate: 0.025 } });
    const reported = edited.findings.filter(({ code }) => code === 'assumed-value-differs');
    expect(reported.map(({ place }) => place.path)).toEqual(['process.rate']);
    const rate = edited.file.provenance.find((each: { quantity: string }) => each.quantity === 'etch rate');
    expect(rate).toMatchObject({ value: 0.025, kind: 'user' });
    expect(edited.file.job.assumed).not.toContain('process.rate');
    // The plan that came of it stands by itself.
    expect((await plan(edited.file.job)).findings.map(({ code }) => code)).not.toContain(
      'assumed-value-differs',
    );
  });

  test('job-value-wrong: what has no default cannot be assumed', async () => {
    for (const path of ['stock.thickness', 'requirements[0].depth', 'drawing']) {
      const { findings, file } = await plan({ ...LID, assumed: [path] });
      expect(findings.map(({ code, place }) => `${code} ${place.path}`)).toContain('job-value-wrong assumed');
      expect(file).toBeUndefined();
    }
    expect((await plan({ ...LID, assumed: ['nowhere'] })).file).toBeDefined();
  });
});
