/** A drawing dropped on another open job: nothing of that job goes over to the new one. */
import { describe, expect, it } from 'vitest';
import { shopDefaultOf } from '#app/state/keeping/shop-default.ts';
import { jobForDrawing, UNSAID_THICKNESS } from '#app/state/opening/job-for-drawing.ts';
import { openFiles } from '#app/state/opening/open-files.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

const last: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  units: 'mm',
  drawingUnits: 'in',
  layers: { outline: { at: [12, 3] }, holes: [[40, 7]] },
  stock: { alloy: 'al-2024-t3', thickness: 4, minus: 0.2, measured: [4.1, { at: [3, 5], thickness: 4.13 }] },
  process: { bath: 'caustic-aluminium', etchFactor: 1.1, rate: 0.03 },
  rules: { minWeb: 0.762 },
  requirements: [{ at: [50, 5], thickness: 1.5 }],
  levels: [0.9, 1.2, 2.5],
  handoff: {
    files: ['template', 'section-svg'],
    paper: 'a3',
    date: '2026-05-31',
    issue: { number: 'C', by: 'planning' },
    sections: [{ from: [0, 17], to: [90, 17], name: 'A' }],
    template: { web: 6, holes: { diameter: 8, at: [[-20, 5]] } },
  },
};

describe('a job for a drawing just opened', () => {
  it('takes nothing over from the job before: no unit, sheet, bath, rule, file', () => {
    const drawing = { name: 'hatch.dxf', bytes: new Uint8Array() };
    const opened = openFiles(
      { job: last, jobFileName: 'lid.job.json', drawing: { name: 'buoy-lid.dxf', bytes: new Uint8Array() } },
      [drawing],
    );
    expect(opened.document?.job).toEqual(jobForDrawing('hatch.dxf', undefined));
    expect(opened.document?.job).toMatchObject({ name: 'hatch', drawing: 'hatch.dxf', process: {} });
    expect(opened.document?.job).not.toHaveProperty('rules');
    expect(opened.document?.job).not.toHaveProperty('handoff');
    expect(opened.document?.unsaid).toEqual(['unit', 'stock', 'circles', 'figures']);
    expect(opened.document?.jobFileName).toBe('hatch.job.json');
  });

  it('is begun by a drawing alone, with no job open at all', () => {
    const opened = openFiles(undefined, [{ name: 'hatch.dxf', bytes: new Uint8Array() }]);
    expect(opened.kind).toBe('job');
  });

  it('has the unit and the layers of the drawing: an inch drawing gives an inch job', () => {
    const layers = { outline: ['TRIM'], ignore: ['DIMS'] };
    const job = jobForDrawing('skin.dxf', { units: 'in', layers, far: [] });
    expect(job).toMatchObject({ units: 'in', layers, stock: { thickness: UNSAID_THICKNESS / 25.4 } });
    expect(JOB.schema.safeParse(job).success).toBe(true);
  });

  it('has the shop’s own default where one was saved on purpose, its lengths in the job’s unit', () => {
    const job = jobForDrawing(
      'skin.dxf',
      { units: 'in', layers: { outline: ['TRIM'] }, far: [] },
      shopDefaultOf(last),
    );
    // 0.762 mm is 0.03 in.
    expect(job.rules).toEqual({ minWeb: 0.03 });
    expect(job.process).toEqual({ bath: 'caustic-aluminium' });
    expect(job.handoff).toEqual({
      files: ['template', 'section-svg'],
      paper: 'a3',
      issue: { by: 'planning' },
      template: { web: 0.236220472 },
    });
    expect(placesIn(job)).toEqual([]);
    expect(job.stock).not.toHaveProperty('alloy');
  });
});

/** Pairs of figures: all that stands as one in a job is a place, but for rows of tables, which this job has none of. */
function placesIn(value: unknown): unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  const isPair =
    Array.isArray(value) && value.length === 2 && value.every((each) => typeof each === 'number');
  return isPair ? [value] : Object.values(value).flatMap(placesIn);
}
