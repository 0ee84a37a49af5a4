import { describe, expect, test } from 'vitest';
import { knownFigures } from '#bath/known-figures.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

const { alloys: ALLOYS, baths: BATHS } = knownFigures();

/** The least that a job can say. */
const LEAST: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'shapes/gauge-pod-cover.dxf',
  stock: { thickness: 4.06, minus: 0.05, plus: 0.05 },
  process: { etchFactor: 1, rate: 0.0297 },
  requirements: [{ layer: 'POCKETS', depth: 2.2 }],
};

/** The job and the codes with their paths; the job must be there. */
function resolve(change: Partial<JobFile>, unit: 'mm' | 'in' = 'mm') {
  const { job, filled, findings } = resolveJob({ ...LEAST, ...change }, unit);
  return { job, filled, reported: findings.map((each) => `${each.code} ${each.place.path}`), findings };
}

test('either way of masking takes every edge datum', () => {
  for (const masking of ['peel-next', 're-mask'] as const) {
    for (const edgeDatum of ['shallow-edge', 'mid-wall', 'deep-foot'] as const) {
      const { job, reported } = resolve({ process: { etchFactor: 1, rate: 0.0297, masking, edgeDatum } });
      expect(reported).toEqual([]);
      expect(job?.process).toMatchObject({ masking, edgeDatum });
    }
  }
});

describe('what a job means where it says nothing', () => {
  test('every default is filled in and recorded with its source', () => {
    const { job, reported } = resolve({});
    expect(reported).toEqual([]);
    expect(job).toMatchObject({
      name: 'gauge-pod-cover',
      joinTolerance: 0.05,
      layers: { outline: [], regions: undefined, ignore: [] },
      process: { rateSpread: 0.05, edgeDatum: 'shallow-edge', masking: 'peel-next', etchFactor: [[0, 1]] },
      requirements: [{ path: 'requirements[0]', depth: 2.2, plus: 0.05, minus: 0.05 }],
      rules: { minWeb: 0.5, minLineSpacing: 1.5, minPieceWidth: 3, minLandWidth: 3 },
      levels: 'as-drawn',
    });
    const kinds = Object.fromEntries((job?.provenance ?? []).map((each) => [each.quantity, each.kind]));
    expect(kinds).toMatchObject({
      'sheet thickness': 'user',
      'sheet tolerance, minus': 'user',
      'sheet tolerance, plus': 'user',
      'etch factor': 'user',
      'least etch factor seen': 'published',
      'greatest etch factor seen': 'memory',
      'etch rate': 'user',
      'rate spread': 'memory',
      'timing of an immersion, ±': 'memory',
      'gauge reading, standard deviation': 'memory',
      'step in which gauges are read': 'memory',
      'time in which the rate drifts by its spread': 'memory',
      'depth tolerance where none is asked, ±': 'common-practice',
      'gap that is joined': 'memory',
      'thinnest web': 'memory',
      'least distance of scribe lines': 'memory',
      'narrowest piece': 'memory',
      'narrowest land': 'memory',
    });
  });

  // SAWE paper 477 (1965), abstract: stainless steel to 0.008 in; aluminium 0.020 in, common practice; for other metals nothing is known.
  test.each([
    ['steel-304', 0.2, 'published'],
    ['al-7075-t6', 0.5, 'common-practice'],
    ['ti-6al-4v', 0.5, 'memory'],
    ['mg-az31b', 0.5, 'memory'],
    ['nickel-718', 0.5, 'memory'],
  ] as const)('the thinnest web of %s is %f mm, %s', (alloy, web, kind) => {
    const { job } = resolve({ stock: { alloy, thickness: 1.02, minus: 0.02, plus: 0.03 } });
    expect(job?.rules.minWeb).toBe(web);
    expect(job?.provenance.find(({ quantity }) => quantity === 'thinnest web')?.kind).toBe(kind);
  });

  test('an alloy of the job’s own brings its thinnest web, in its unit; the job’s own rule counts before it', () => {
    const density = { value: 0.286, unit: 'lb/in³', source: 'mill sheet', kind: 'user' } as const;
    const thinnestWeb = { value: 0.012, unit: 'in', source: 'shop notes', kind: 'common-practice' } as const;
    const own = { id: 'steel-410', name: 'steel 410', metal: 'steel', density, thinnestWeb };
    const figures: JobFile['figures'] = { format: 'isobath-figures', version: 1, alloys: [own] };
    const stock = { alloy: 'steel-410', thickness: 1.02, minus: 0.02, plus: 0.03 };
    expect(resolve({ figures, stock }).job?.rules.minWeb).toBeCloseTo(0.3048, 9);
    expect(resolve({ figures, stock, rules: { minWeb: 0.41 } }).job?.rules.minWeb).toBe(0.41);
  });

  const full: readonly (readonly [string, JobFile])[] = [
    ['in millimetres', LEAST],
    [
      'in inches, from bath and alloy',
      {
        ...LEAST,
        units: 'in',
        stock: { alloy: 'al-2024-t3', thickness: 0.16 },
        process: { bath: 'caustic-aluminium' },
        requirements: [
          { layer: 'POCKETS', thickness: 0.06 },
          { at: [1, 2], depth: 0.05, plus: 0.001 },
        ],
        levels: [0.1, 0.05],
      },
    ],
    [
      'with a coupon and a table',
      {
        ...LEAST,
        process: {
          etchFactor: [
            [1, 0.9],
            [3, 1.1],
          ],
          coupon: { before: 4.06, after: 3.9, minutes: 5, faces: 1 },
        },
      },
    ],
  ];
  test.each(full)('the job with its defaults filled in reads back to the same job: %s', (_, given) => {
    const first = resolveJob(given, 'in');
    const { jobFile, findings } = readJob(JSON.stringify(first.filled));
    expect(findings).toEqual([]);
    expect(jobFile).toEqual(first.filled);
    if (jobFile === undefined || first.job === undefined) throw new Error('both must be there');
    const again = resolveJob(jobFile, 'in');
    expect(again.job).toEqual(first.job);
    expect(again.filled).toEqual(first.filled);
  });
});

describe('units', () => {
  test('lengths in inches become millimetres, points follow the drawing', () => {
    const { job } = resolve(
      {
        units: 'in',
        stock: { thickness: 0.16, minus: 0.002, plus: 0.002 },
        process: { etchFactor: 1, rate: 0.001 },
        requirements: [{ at: [10, 20], depth: 0.1, plus: 0.004, minus: 0.002 }],
      },
      'mm',
    );
    expect(job?.stock).toMatchObject({ thickness: 4.064, minus: 0.0508, plus: 0.0508 });
    expect(job?.process.rate).toBeCloseTo(0.0254, 12);
    expect(job?.requirements[0]).toMatchObject({
      names: { at: { x: 10, y: 20 } },
      depth: 2.54,
      plus: 0.1016,
      minus: 0.0508,
    });
  });
  test('points of an inch drawing are in inches whatever the job is written in', () => {
    const { job } = resolve({ requirements: [{ at: [10, 20], depth: 1 }] }, 'in');
    expect(job?.requirements[0]).toMatchObject({ names: { at: { x: 254, y: 508 } }, depth: 1 });
  });
  test('without a drawing unit there is no job, but its faults are reported', () => {
    const { job, findings } = resolveJob({ ...LEAST, requirements: [{ at: [1, 1], depth: 5 }] }, undefined);
    expect(job).toBeUndefined();
    expect(findings.map((each) => each.code)).toEqual(['depth-beyond-stock']);
  });
});

describe('depth and final thickness', () => {
  test('a final thickness is what the sheet has left: the same level as its depth, to the last digit', () => {
    const { job } = resolve({
      requirements: [
        { layer: 'A', thickness: 1.6 },
        { layer: 'B', depth: 2.46 },
        { layer: 'C', thickness: 4.06 },
      ],
    });
    expect(job?.requirements.map((each) => each.depth)).toEqual([2.46, 2.46, 0]);
  });
  test('depth-beyond-stock: nothing would be left', () => {
    const { job, reported, findings } = resolve({
      requirements: [
        { layer: 'A', depth: 4.06 },
        { layer: 'B', depth: 4.05 },
      ],
    });
    expect(reported).toEqual(['depth-beyond-stock requirements[0].depth']);
    expect(findings.map((each) => sayFinding(each))[0]).toMatchObject({ value: 4.06, limit: 4.06 });
    expect(job?.requirements.map((each) => each.path)).toEqual(['requirements[1]']);
  });
  test('thickness-beyond-stock: metal is not put on', () => {
    expect(resolve({ requirements: [{ layer: 'A', thickness: 4.1 }] }).reported).toEqual([
      'thickness-beyond-stock requirements[0].thickness',
    ]);
  });
  test('level-beyond-stock', () => {
    expect(resolve({ levels: [4.06, 2] }).reported).toEqual(['level-beyond-stock levels[0]']);
  });
});

describe('tapers', () => {
  type GivenTaper = JobFile['requirements'][number]['taper'];
  const along = { from: [20, 0] as [number, number], to: [220, 0] as [number, number] };
  const sheet = {
    from: [0, 0] as [number, number],
    to: [100, 0] as [number, number],
    thicknessFrom: 5,
    thicknessTo: 4,
  };
  const depthOf = (taper: GivenTaper, stock?: JobFile['stock']) =>
    resolve({ requirements: [{ layer: 'A', taper }], ...(stock === undefined ? {} : { stock }) }).job
      ?.requirements[0]?.depth;

  test('a depth taper is its own depth; its points are in the drawing’s unit', () => {
    const { job, reported } = resolve(
      { requirements: [{ layer: 'A', taper: { ...along, depthFrom: 2.6, depthTo: 1 } }] },
      'in',
    );
    expect(reported).toEqual([]);
    expect(job?.requirements[0]?.depth).toEqual([
      { from: { x: 508, y: 0 }, to: { x: 5588, y: 0 }, fromValue: 2.6, toValue: 1 },
    ]);
  });
  test('a thickness taper is what it leaves of a flat sheet of 4.06 mm', () => {
    expect(depthOf({ ...along, thicknessFrom: 1, thicknessTo: 3 })).toMatchObject([
      { fromValue: 3.06, toValue: 1.06 },
    ]);
  });
  test('a flat thickness of a tapered sheet, and a tapered one: sheet less thickness', () => {
    const stock = { thickness: sheet, minus: 0, plus: 0 };
    const flat = resolve({ stock, requirements: [{ layer: 'A', thickness: 1.5 }] });
    expect(flat.reported).toEqual([]);
    expect(flat.job?.requirements[0]?.depth).toMatchObject([{ fromValue: 3.5, toValue: 2.5 }]);
    expect(depthOf({ ...along, thicknessFrom: 2, thicknessTo: 1 }, stock)).toMatchObject([
      { fromValue: 5, toValue: 4 },
      { fromValue: -2, toValue: -1 },
    ]);
  });
  test('from and to are one point: taper-without-length', () => {
    const taper = { from: along.from, to: along.from, depthFrom: 1, depthTo: 2 };
    expect(resolve({ requirements: [{ layer: 'A', taper }] }).reported).toEqual([
      'taper-without-length requirements[0].taper',
    ]);
    const stock = { thickness: { ...sheet, to: sheet.from }, minus: 0, plus: 0 };
    expect(resolve({ stock }).reported).toContain('taper-without-length stock.thickness');
  });
  test('depth-beyond-stock and thickness-beyond-stock hold for the ends of a taper too', () => {
    const reported = (taper: GivenTaper) => resolve({ requirements: [{ layer: 'A', taper }] }).reported;
    expect(reported({ ...along, depthFrom: 1, depthTo: 4.1 })).toEqual([
      'depth-beyond-stock requirements[0].taper',
    ]);
    expect(reported({ ...along, thicknessFrom: 1, thicknessTo: 5 })).toEqual([
      'thickness-beyond-stock requirements[0].taper',
    ]);
  });
});

describe('alloys and baths', () => {
  test('process-figure-not-measured: a bath gives general figures, with their sources and a warning', () => {
    const { job, reported } = resolve({
      stock: { alloy: 'al-2024-t3', thickness: 4.06 },
      process: { bath: 'caustic-aluminium' },
    });
    expect(reported).toEqual([
      'process-figure-not-measured process.etchFactor',
      'process-figure-not-measured process.rate',
    ]);
    expect(job?.stock).toMatchObject({ density: 2.78, minus: 0.25, plus: 0.25 });
    // 0.178 cm/h, common practice.
    expect(job?.process.rate).toBeCloseTo(0.02967, 5);
    const sources = Object.fromEntries((job?.provenance ?? []).map((each) => [each.quantity, each]));
    expect(sources['density']).toMatchObject({ value: 2.78, unit: 'g/cm³', kind: 'common-practice' });
    expect(sources['sheet tolerance, plus']).toMatchObject({ kind: 'published' });
    expect(sources['etch factor']).toMatchObject({ value: 1, kind: 'memory' });
    expect(sources['etch rate']).toMatchObject({ unit: 'mm/min', kind: 'common-practice' });
  });
  test('the engineer’s own figures win', () => {
    const { job, reported } = resolve({
      stock: { alloy: 'al-2024-t3', density: 2.77, thickness: 4.06, minus: 0.1, plus: 0.2 },
      process: { bath: 'caustic-aluminium', etchFactor: 0.9, rate: 0.03 },
    });
    expect(reported).toEqual([]);
    expect(job?.stock).toMatchObject({ density: 2.77, minus: 0.1, plus: 0.2 });
    expect(job?.process).toMatchObject({ etchFactor: [[0, 0.9]], rate: 0.03 });
  });
  test('alloy-unknown, bath-unknown: with the one that was meant', () => {
    const { reported, findings } = resolve({
      stock: { alloy: 'al-2024-t4', thickness: 4, minus: 0, plus: 0 },
      process: { bath: 'caustic-aluminum', etchFactor: 1, rate: 0.03 },
    });
    expect(reported).toEqual(['alloy-unknown stock.alloy', 'bath-unknown process.bath']);
    expect(findings.map((each) => sayFinding(each).remedy.slice(0, 33))).toEqual([
      'Did you mean "al-2024-t3"? Known ',
      'Did you mean "caustic-aluminium"?',
    ]);
  });
  test('bath-wrong-for-alloy', () => {
    const { reported } = resolve({
      stock: { alloy: 'ti-6al-4v', thickness: 4, minus: 0, plus: 0 },
      process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.03 },
    });
    expect(reported).toEqual(['bath-wrong-for-alloy process.bath']);
  });
  test('process-figure-missing: without etch factor or rate there is no job', () => {
    expect(resolve({ process: {} }).reported).toEqual([
      'process-figure-missing process.etchFactor',
      'process-figure-missing process.rate',
    ]);
    expect(resolve({ process: {} }).job).toBeUndefined();
    expect(resolve({ process: { bath: 'acid-nickel' } }).reported).toEqual([
      'process-figure-not-measured process.etchFactor',
      'process-figure-missing process.rate',
    ]);
  });
  test('sheet-tolerance-missing: a sheet of unknown tolerance is taken as nominal, and that is said', () => {
    const { job, reported } = resolve({ stock: { alloy: 'ti-6al-4v', thickness: 4 } });
    expect(reported).toEqual(['sheet-tolerance-missing stock']);
    expect(job?.stock).toMatchObject({ minus: 0, plus: 0 });
  });
  test('every alloy and bath resolves by its id', () => {
    for (const { id } of ALLOYS) {
      expect(resolve({ stock: { alloy: id, thickness: 3, minus: 0, plus: 0 } }).reported).toEqual([]);
    }
    for (const { id } of BATHS) {
      expect(resolve({ process: { bath: id, etchFactor: 1, rate: 0.03 } }).reported).toEqual([]);
    }
  });
});

describe('a coupon', () => {
  test('gives the rate of one surface as measured', () => {
    // Glass, Measurement of Pre-penetrant Etch Rate, Materials Evaluation 66(12) (2008): 0.00075 in/min a surface.
    const { job, reported } = resolve({
      units: 'in',
      stock: { thickness: 0.16, minus: 0, plus: 0 },
      process: { etchFactor: 1, coupon: { before: 0.1, after: 0.094, minutes: 4, faces: 2 } },
      requirements: [{ layer: 'POCKETS', depth: 0.08 }],
    });
    expect(reported).toEqual([]);
    expect(job?.process.rate).toBeCloseTo(0.00075 * 25.4, 9);
    expect(job?.provenance.find((each) => each.quantity === 'etch rate')?.kind).toBe('measured');
  });
  test('coupon-not-etched', () => {
    const { job, reported } = resolve({
      process: { etchFactor: 1, coupon: { before: 2, after: 2, minutes: 4, faces: 2 } },
    });
    expect(reported).toEqual(['coupon-not-etched process.coupon']);
    expect(job).toBeUndefined();
  });
});
