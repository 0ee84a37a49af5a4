import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { FIGURES_FORMAT } from '#job/formats/check-figures.ts';
import { fillInFiles } from '#job/formats/files-beside.ts';
import { readFormat } from '#job/formats/read-format.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

/** A shop with a tank of its own, and a zinc plate that Isobath knows nothing of. */
const SHOP = {
  format: 'isobath-figures',
  version: 1,
  alloys: [
    {
      id: 'zinc-plate',
      name: 'engraver’s zinc',
      metal: 'zinc',
      density: { value: 7140, unit: 'kg/m³', source: 'mill certificate', kind: 'published' },
    },
  ],
  baths: [
    {
      id: 'zinc-nitric',
      name: 'dilute nitric acid for zinc',
      etches: 'zinc',
      etchFactor: { value: 2, unit: 'depth / undercut', source: 'trial plates of May', kind: 'measured' },
      rate: {
        value: 0.002,
        unit: 'in/min',
        source: 'trial plates of May',
        kind: 'measured',
        plusMinus: 0.0002,
      },
    },
    {
      id: 'caustic-aluminium',
      name: 'our caustic tank',
      etches: 'aluminium',
      etchFactor: { value: 0.8, unit: 'undercut / depth', source: 'shop notes', kind: 'common-practice' },
      rate: { value: 0.15, unit: 'cm/h', source: 'shop notes', kind: 'common-practice' },
    },
  ],
} as const;

const JOB = {
  format: 'isobath-job',
  version: 1,
  drawing: 'plate.dxf',
  stock: { alloy: 'zinc-plate', thickness: 2, minus: 0.02, plus: 0.02 },
  process: { bath: 'zinc-nitric' },
  requirements: [],
  figures: 'shop.figures.json',
} as const;

function reading(job: object): JobFile {
  const { jobFile, findings } = readJob(JSON.stringify(job));
  expect(findings).toEqual([]);
  if (jobFile === undefined) throw new Error('the job must read');
  return jobFile;
}

function resolved(job: object, figures: object) {
  const { jobFile, findings } = fillInFiles(
    reading(job),
    new Map([['shop.figures.json', JSON.stringify(figures)]]),
  );
  if (jobFile === undefined) throw new Error(`figures refused: ${JSON.stringify(findings)}`);
  const { job: made, findings: reported, filled } = resolveJob(jobFile, 'mm');
  return { job: made, reported: reported.map(({ code, place }) => `${code} ${place.path}`), filled };
}

/** Code and place of every fault of the spoilt file. */
function faults(figures: unknown): string[] {
  const text = typeof figures === 'string' ? figures : JSON.stringify(figures, undefined, 1);
  const { value: read, findings } = readFormat(text, FIGURES_FORMAT, 'shop.figures.json');
  expect(read === undefined).toBe(findings.length > 0);
  expect(findings.every(({ place }) => place.file === 'shop.figures.json')).toBe(true);
  return findings.map(({ code, place }) => `${code} ${place.path ?? place.line}`);
}

describe('a shop’s own figures', () => {
  test('are used in the units that are calculated in, and the plan says that they are the job’s', () => {
    const { job, reported } = resolved(JOB, SHOP);
    expect(reported).toEqual([]);
    expect(job?.stock.density).toBeCloseTo(7.14, 12);
    expect(job?.process.etchFactor).toEqual([[0, 0.5]]);
    expect(job?.process.rate).toBeCloseTo(0.0508, 12);
    expect(job?.provenance).toContainEqual({
      quantity: 'etch rate',
      value: 0.0508,
      unit: 'mm/min',
      source: 'job’s figures, zinc-nitric: trial plates of May: 0.002 in/min',
      kind: 'measured',
      plusMinus: expect.closeTo(0.00508, 12),
      field: 'process.rate',
    });
    expect(job?.provenance.find(({ quantity }) => quantity === 'etch factor')?.source).toContain(
      '2 depth / undercut',
    );
  });

  test('take the place of built-in ones of the same id, and the plan says so', () => {
    const { job, reported } = resolved(
      { ...JOB, stock: { ...JOB.stock, alloy: 'al-2024-t3' }, process: { bath: 'caustic-aluminium' } },
      SHOP,
    );
    expect(job?.process).toMatchObject({ etchFactor: [[0, 0.8]], rate: 0.025 });
    expect(job?.provenance.find(({ quantity }) => quantity === 'etch rate')?.source).toBe(
      'job’s figures in place of the built-in, caustic-aluminium: shop notes: 0.15 cm/h',
    );
    // Shop notes are no measurement of today's bath.
    expect(reported).toEqual([
      'process-figure-not-measured process.etchFactor',
      'process-figure-not-measured process.rate',
    ]);
    // The entry is the shop's, whole: it does not say what goes on in the bath.
    expect(job?.process.reaction).toBeUndefined();
  });

  test('stand in the job as well as in a file of their own: the same job comes out', () => {
    const named = resolved(JOB, SHOP);
    const { job, filled } = resolveJob(reading({ ...JOB, figures: SHOP }), 'mm');
    expect(job).toEqual(named.job);
    expect(filled).toEqual(named.filled);
  });

  test('are suggested where a name is nearly right', () => {
    const { jobFile } = fillInFiles(
      reading({ ...JOB, process: { bath: 'zinc-nitrik', etchFactor: 1, rate: 0.1 } }),
      new Map([['shop.figures.json', JSON.stringify(SHOP)]]),
    );
    const reported =
      jobFile === undefined ? [] : resolveJob(jobFile, 'mm').findings.map((each) => sayFinding(each));
    expect(reported[0]?.remedy).toContain('Did you mean "zinc-nitric"?');
  });
});

describe('figures that can’t be used are reported with the file, the path and the reason', () => {
  test('file-missing: the job names a file that is not there', () => {
    expect(fillInFiles(reading(JOB), new Map()).findings.map(({ code }) => code)).toEqual(['file-missing']);
  });
  test('job-not-json, job-format-unknown, job-version-unknown', () => {
    expect(faults('{ "format": ')).toEqual(['job-not-json 1']);
    expect(faults('')).toEqual(['job-not-json 1']);
    expect(faults([])).toEqual(['job-format-unknown undefined']);
    expect(faults('null')).toEqual(['job-format-unknown undefined']);
    expect(faults({ ...SHOP, format: 'isobath-job' })).toEqual(['job-format-unknown format']);
    expect(faults({ ...SHOP, version: 2 })).toEqual(['job-version-unknown version']);
  });

  const [zinc] = SHOP.alloys;
  const [bath] = SHOP.baths;
  const spoilt: readonly (readonly [string, object, string])[] = [
    [
      'a value without a source',
      { alloys: [{ ...zinc, density: { value: 7, unit: 'g/cm³', kind: 'user' } }] },
      'job-key-missing alloys[0].density.source',
    ],
    [
      'a unit that is none',
      { alloys: [{ ...zinc, density: { ...zinc.density, unit: 'g' } }] },
      'job-value-wrong alloys[0].density.unit',
    ],
    [
      'a grade that is none',
      { baths: [{ ...bath, rate: { ...bath.rate, kind: 'certain' } }] },
      'job-value-wrong baths[0].rate.kind',
    ],
    [
      'a negative rate',
      { baths: [{ ...bath, rate: { ...bath.rate, value: -1 } }] },
      'job-value-wrong baths[0].rate.value',
    ],
    [
      'a key mistyped',
      { baths: [{ ...bath, etchfactor: bath.etchFactor }] },
      'job-key-unknown baths[0].etchfactor',
    ],
    ['an id twice', { baths: [bath, bath] }, 'job-value-wrong baths[1].id'],
    [
      'a value outside its range',
      { baths: [{ ...bath, rate: { ...bath.rate, from: 0.01, to: 0.02 } }] },
      'job-value-wrong baths[0].rate',
    ],
  ];
  test.each(spoilt)('%s', (_, change, reported) => {
    expect(faults({ format: SHOP.format, version: 1, ...change })).toEqual([reported]);
  });

  test('job-value-wrong: a hundred thousand baths are refused by their number', { tags: ['long'] }, () => {
    const { findings } = readFormat(
      JSON.stringify({ ...SHOP, baths: Array.from({ length: 100_000 }, () => SHOP.baths[0]) }),
      FIGURES_FORMAT,
      'shop.json',
    );
    expect(findings.map(({ code, place }) => [code, place.path])).toEqual([['job-value-wrong', 'baths']]);
  });
  test('inline ones with the path in the job', () => {
    const figures = {
      ...SHOP,
      alloys: [{ ...SHOP.alloys[0], metal: 5 }],
      baths: [SHOP.baths[0], SHOP.baths[0]],
    };
    const { findings } = readJob(JSON.stringify({ ...JOB, figures }));
    expect(findings.map(({ code, place }) => `${code} ${place.path}`)).toEqual([
      'job-value-wrong figures.alloys[0].metal',
      'job-value-wrong figures.baths[1].id',
    ]);
  });
});
