/** A job written in another unit reads as the same job: judged by the core's own reading of both. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setJobUnit } from '#app/state/edits/job-unit.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

const SAMPLES = ['gauge-pod-cover', 'shutter-bay-grid', 'glider-wing-skin', 'glider-wing-skin-tapered'];
const sample = (name: string): JobFile =>
  JSON.parse(readFileSync(`samples/${name}.job.json`, 'utf8')) as JobFile;

/** Every key that a job can have and that holds a length, each with a figure of its own. */
const full: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'lid.dxf',
  units: 'mm',
  joinTolerance: 0.07,
  layers: { outline: ['TRIM'] },
  stock: {
    alloy: 'al-2024-t3',
    thickness: { from: [0, 0], to: [900, 3], thicknessFrom: 4.1, thicknessTo: 3.2 },
    minus: 0.06,
    plus: 0.09,
    measured: [{ at: [10, 4], thickness: 4.07 }],
  },
  process: {
    coupon: [
      {
        before: 4.06,
        after: 3.71,
        minutes: 6,
        faces: 2,
        gauge: 0.004,
        opening: { before: 11, after: 11.34, depth: 0.16, gauge: 0.03 },
      },
    ],
    hoist: { slowest: 13, fastest: 77 },
    tank: { litres: 900, dissolved: 21, dissolvedLimit: 75 },
  },
  requirements: [
    { layer: 'POCKETS', depth: 1.3, plus: 0.11, minus: 0.07 },
    { at: [40, 7], thickness: 1.9 },
    { at: [50, 8], taper: { from: [5, 6], to: [80, 9], depthFrom: 0.6, depthTo: 2.2 } },
    { at: [70, 11], thickness: 1.4, face: 'both', split: 0.9 },
    { at: [80, 12], through: 2.1, tabs: { width: 1.3, at: [[81, 12]] } },
    { at: [60, 9], taper: { from: [5, 6], to: [80, 9], thicknessFrom: 3.1, thicknessTo: 2.4 } },
  ],
  rules: { minWeb: 0.61, minLineSpacing: 1.7, minPieceWidth: 3.3, minLandWidth: 2.9 },
  levels: [0.6, 1.3, 2.2],
  far: { registration: 0.31 },
  handoff: {
    inspection: { margin: 4.5, spacing: 120 },
    scribe: { overcut: 1.1 },
    program: { overcut: 2.3 },
    template: {
      knife: { width: 1.4 },
      bridge: { width: 5.5, apart: 140, clear: 4.4 },
      holes: { diameter: 6.4, at: [[-30, 12]] },
      web: 5.1,
      margin: 27,
    },
  },
};

/** Figures to five digits: finer than anything that is measured. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toPrecision(5));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

/** Without tolerances that nobody gave, and where they come from: a usual one is a round figure of the unit. */
function withoutUsual(job: ReturnType<typeof resolveJob>['job']): object | undefined {
  if (job === undefined) return undefined;
  return {
    ...job,
    provenance: job.provenance.filter(({ quantity }) => !quantity.startsWith('depth tolerance')),
    requirements: job.requirements.map(({ plus, minus, ...asked }) =>
      asked.isToleranceUsual ? asked : { plus, minus, ...asked },
    ),
  };
}

describe('the unit of a job', () => {
  const jobs: readonly (readonly [string, JobFile])[] = [
    ['a job with every length', full],
    [
      'one with locked levels, a rate and factors by depth',
      {
        ...full,
        levels: 'fewest',
        lockedLevels: [1.3],
        process: {
          rate: 0.0297,
          etchFactor: [
            [0.5, 0.9],
            [2, 1.1],
          ],
        },
      },
    ],
    ...SAMPLES.map((name) => [name, sample(name)] as const),
  ];

  it.each(jobs)('changed, leaves every length as long as it was: %s', (_, job) => {
    const other = job.units === 'in' ? 'mm' : 'in';
    const turned = setJobUnit(job, other);
    expect(turned.units).toBe(other);
    expect(JOB.schema.safeParse(turned).error).toBeUndefined();
    const resolved = (each: JobFile) => rounded(withoutUsual(resolveJob(each, 'mm').job));
    expect(resolved(job)).toBeDefined();
    expect(resolved(turned)).toEqual(resolved(job));
  });

  it('changed, a tolerance that nobody gave is the trade’s in that unit: 0.05 mm, or 0.002 in', () => {
    const usual = (each: JobFile) => {
      const { requirements = [] } = resolveJob(each, 'mm').job ?? {};
      return requirements.flatMap((asked) => (asked.isToleranceUsual ? [asked.plus, asked.minus] : []));
    };
    const plain: JobFile = { ...full, requirements: [{ layer: 'POCKETS', depth: 1.3 }] };
    expect(usual(plain)).toEqual([0.05, 0.05]);
    expect(usual(setJobUnit(plain, 'in'))).toEqual([0.0508, 0.0508]);
  });

  it('taken twice is the same job again', () => {
    expect(setJobUnit(setJobUnit(full, 'in'), 'mm').rules).toEqual(full.rules);
    expect(setJobUnit(full, 'mm')).toEqual(full);
  });

  it('turns thicknesses of a survey, and leaves its places alone', () => {
    const { measured: _, ...stock } = full.stock;
    const surveyed: JobFile = { ...full, stock: { ...stock, survey: [[30, 7, 4.0132]] } };
    expect(setJobUnit(surveyed, 'in').stock.survey).toEqual([[30, 7, 0.158]]);
  });

  it('leaves places alone: they are in the drawing’s own unit', () => {
    const { stock, requirements } = setJobUnit(full, 'in');
    expect(stock.measured).toEqual([{ at: [10, 4], thickness: 0.16023622 }]);
    expect(requirements[1]).toEqual({ at: [40, 7], thickness: 0.07480315 });
  });
});
