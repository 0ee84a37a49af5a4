/** A drawing dropped on another open job: what goes over to the new job, and what stays with the old drawing. */
import { describe, expect, it } from 'vitest';
import { jobForDrawing } from '#app/state/job-for-drawing.ts';
import { openFiles } from '#app/state/open-files.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  drawingUnits: 'in',
  wideLines: 'borders',
  layers: { outline: { at: [12, 3] }, holes: [[40, 7]] },
  stock: { alloy: 'al-2024-t3', thickness: 4, minus: 0.2, measured: [4.1, { at: [3, 5], thickness: 4.13 }] },
  process: { etchFactor: 1.1, rate: 0.03 },
  rules: { minWeb: 0.7 },
  requirements: [{ at: [50, 5], thickness: 1.5 }],
  levels: [0.9, 1.2, 2.5],
  lockedLevels: [2.5],
  handoff: {
    files: ['template', 'section-svg'],
    paper: 'a3',
    date: '2026-05-31',
    issue: { number: 'C', by: 'planning' },
    sections: [{ from: [0, 17], to: [90, 17], name: 'A' }],
    template: {
      web: 6,
      holes: {
        diameter: 8,
        at: [
          [-20, 5],
          [110, 5],
        ],
      },
    },
  },
};

describe('a job for a drawing just opened', () => {
  const fresh = jobForDrawing(job, 'hatch.dxf');

  it('keeps sheet, bath and rules, and asks nothing yet', () => {
    expect(fresh.requirements).toEqual([]);
    expect(fresh.stock).toEqual({ alloy: 'al-2024-t3', thickness: 4, minus: 0.2 });
    expect(fresh.process).toEqual(job.process);
    expect(fresh.rules).toEqual(job.rules);
    expect([fresh.name, fresh.drawing, fresh.levels]).toEqual(['hatch', 'hatch.dxf', 'as-drawn']);
  });

  it('keeps how files are made, but no cut, tooling hole, day or number of the drawing before', () => {
    expect(fresh.handoff).toEqual({
      files: ['template', 'section-svg'],
      paper: 'a3',
      issue: { by: 'planning' },
      template: { web: 6, holes: { diameter: 8 } },
    });
  });

  it('holds no place of the drawing before, wherever a job can name one', () => {
    expect(placesIn(fresh)).toEqual([]);
    expect(placesIn(job).length).toBe(8);
  });

  it('says nothing of a hand-off where the job before said nothing', () => {
    const { handoff, ...silent } = job;
    expect('handoff' in jobForDrawing(silent, 'hatch.dxf')).toBe(false);
  });
});

describe('a drawing dropped on a job with a tapered sheet', () => {
  it('keeps the taper and says that its places are those of the drawing before', () => {
    const thickness = { from: [0, 0], to: [90, 0], thicknessFrom: 4, thicknessTo: 3 } as const;
    const tapered: JobFile = { ...job, stock: { thickness: { ...thickness, from: [0, 0], to: [90, 0] } } };
    const opened = openFiles(
      {
        job: tapered,
        jobFileName: 'lid.job.json',
        drawing: { name: 'buoy-lid.dxf', bytes: new Uint8Array() },
      },
      [{ name: 'hatch.dxf', bytes: new Uint8Array() }],
    );
    expect(opened.notice?.text).toContain('The sheet’s taper runs between places of buoy-lid.dxf');
    expect(opened.document?.job.stock.thickness).toEqual(thickness);
  });
});

/** Pairs of figures: all that stands as one in a job is a place, but for rows of tables, which this job has none of. */
function placesIn(value: unknown): unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  const isPair =
    Array.isArray(value) && value.length === 2 && value.every((each) => typeof each === 'number');
  return isPair ? [value] : Object.values(value).flatMap(placesIn);
}
