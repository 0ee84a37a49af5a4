/** The process of a job: etch factor in either convention, coupons, another bath temperature. */
import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

const LEAST: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'gauge-pod-cover.dxf',
  stock: { thickness: 4.06, minus: 0.05, plus: 0.05 },
  process: {},
  requirements: [{ layer: 'POCKETS', depth: 2.2 }],
};

const PLATE = { before: 3, after: 2.7, minutes: 10, faces: 1 as const, gauge: 0.005 };

function resolve(process: JobFile['process']) {
  const { job, filled, findings } = resolveJob({ ...LEAST, process }, 'mm');
  const of = Object.fromEntries((job?.provenance ?? []).map((each) => [each.quantity, each]));
  return { job, filled, of, reported: findings.map((each) => `${each.code} ${each.place.path}`), findings };
}

/** What is wrong with the process as written. */
function faults(process: object): string[] {
  return readJob(JSON.stringify({ ...LEAST, process })).findings.map(
    ({ code, place }) => `${code} ${place.path}`,
  );
}

describe('a process of which one figure is missing', () => {
  const at = (bath: string, process: JobFile['process'] = {}) => resolve({ bath, ...process });

  test('factor-without-rate: the known etch factor is filled in though no rate is known', () => {
    const { job, filled, reported } = at('acid-nickel');
    expect(job).toBeUndefined();
    expect(reported.filter((each) => !each.startsWith('bath-wrong'))).toContainEqual(
      expect.stringMatching(/rate|figure/),
    );
    // As with a rate of its own, where the same factor is taken.
    const whole = at('acid-nickel', { rate: 0.021 });
    expect(whole.job?.process.etchFactor).toEqual([[0, whole.filled.process.etchFactor]]);
    expect(filled.process.etchFactor).toBe(whole.filled.process.etchFactor);
    expect(filled.process.rate).toBeUndefined();
    expect(filled.assumed).toContain('process.etchFactor');
  });

  test('rate-without-factor: the known rate is filled in though no etch factor is known, in the job’s unit', () => {
    const { job, filled } = at('ferric-chloride-nickel');
    expect(job).toBeUndefined();
    const whole = at('ferric-chloride-nickel', { etchFactor: 0.9 });
    expect(filled.process.rate).toBe(whole.job?.process.rate);
    expect(filled.process.etchFactor).toBeUndefined();
    const inches = resolveJob(
      { ...LEAST, units: 'in', process: { bath: 'ferric-chloride-nickel' } },
      'mm',
    ).filled;
    expect((inches.process.rate ?? 0) * 25.4).toBeCloseTo(whole.job?.process.rate ?? Number.NaN, 9);
  });

  test('the spread that a coarse coupon leaves is filled in though no etch factor is known', () => {
    const coarse = { ...PLATE, gauge: 0.02 };
    const alone = resolve({ coupon: coarse });
    const whole = resolve({ coupon: coarse, etchFactor: 0.9 });
    expect(alone.job).toBeUndefined();
    expect(whole.job?.process.rateSpread).toBeGreaterThan(0.05);
    expect(alone.filled.process.rateSpread).toBe(whole.job?.process.rateSpread);
  });
});

describe('etch factor in either convention', () => {
  test('1.25 as depth / undercut is 0.8 as undercut / depth, and the plan says how it was given', () => {
    const { job, reported, filled, of } = resolve({ rate: 0.03, depthPerUndercut: 1.25 });
    expect(reported).toEqual([]);
    expect(job?.process.etchFactor).toEqual([[0, 0.8]]);
    expect(of['etch factor']).toMatchObject({
      unit: 'undercut / depth',
      source: 'job file, process.depthPerUndercut: 1.25 depth / undercut',
    });
    expect(filled.process.etchFactor).toBeUndefined();
  });
  test('a table is turned over row by row', () => {
    const rows: [number, number][] = [
      [1, 1.25],
      [3, 1],
    ];
    expect(resolve({ rate: 0.03, depthPerUndercut: rows }).job?.process.etchFactor).toEqual([
      [1, 0.8],
      [3, 1],
    ]);
  });
  test('etch-factor-impossible: a slip of the figure in either convention, or a coupon that shows one', () => {
    for (const given of [
      { etchFactor: 1e6 },
      { etchFactor: 0.0099 },
      { depthPerUndercut: 101 },
      { etchFactor: [[0.5, 0.9] as [number, number], [3, 140] as [number, number]] },
    ])
      expect(resolve({ rate: 1, ...given }).reported).toEqual([
        `etch-factor-impossible process.${Object.keys(given)[0]}`,
      ]);
    const opening = { before: 2, after: 9000, depth: 0.3 };
    const coupon = { before: 3.2, after: 2.9, minutes: 5, faces: 2 as const, opening };
    expect(resolve({ coupon }).reported).toContain('etch-factor-impossible process.coupon');
    expect(resolve({ rate: 1, etchFactor: 99 }).reported).toEqual([
      'etch-factor-doubtful process.etchFactor',
    ]);
  });

  test('job-choice-unclear: not both, and not beside a coupon that shows it', () => {
    expect(faults({ rate: 1, etchFactor: 1, depthPerUndercut: 1 })).toEqual([
      'job-choice-unclear process.depthPerUndercut',
    ]);
    const coupon = { ...PLATE, opening: { before: 10, after: 11.6, depth: 0.8 } };
    expect(faults({ etchFactor: 1, coupon })).toEqual(['job-choice-unclear process.coupon']);
    expect(faults({ coupon: [PLATE, { ...coupon, opening: { ...coupon.opening, depth: 4 } }] })).toEqual([
      'job-value-wrong process.coupon[1].opening.depth',
    ]);
  });
  test('M2.4 a table turned over may not let the undercut shrink either', () => {
    const rows = [
      [1, 0.5],
      [2, 4],
    ];
    expect(faults({ rate: 1, depthPerUndercut: rows })).toEqual([
      'job-value-wrong process.depthPerUndercut[1]',
    ]);
  });
  test('etch-factor-doubtful: a factor that no bath has, with the other convention as the likely cause', () => {
    const { job, findings } = resolve({ rate: 0.03, etchFactor: 3 });
    expect(findings.map(({ code }) => code)).toEqual(['etch-factor-doubtful']);
    expect(findings.map((each) => sayFinding(each))[0]).toMatchObject({ value: 3, limit: 2 });
    expect(findings.map((each) => sayFinding(each))[0]?.remedy).toContain('process.depthPerUndercut: 3');
    expect(job).toBeDefined();
    expect(resolve({ rate: 0.03, depthPerUndercut: 0.4 }).reported).toEqual([
      'etch-factor-doubtful process.depthPerUndercut',
    ]);
    expect(resolve({ rate: 0.03, etchFactor: 0.33 }).reported).toEqual([]);
  });
});

describe('coupons', () => {
  const opening = { before: 10, after: 11.5, depth: 0.8, gauge: 0.02 };

  test('give rate and etch factor as measured, with how far each may be off, and nothing is warned of', () => {
    const { job, reported, filled, of } = resolve({
      bath: 'caustic-aluminium',
      coupon: { ...PLATE, opening },
    });
    expect(reported).toEqual([]);
    expect(job?.process.etchFactor[0]?.[1]).toBeCloseTo(0.9375, 12);
    for (const name of ['etch factor', 'etch rate']) {
      expect(of[name]).toMatchObject({ kind: 'measured', plusMinus: expect.any(Number) });
    }
    expect(filled.process.etchFactor).toBeUndefined();
    expect(filled.process.rate).toBeUndefined();
  });
  test('without an opening the etch factor stays general, and is warned of: process-figure-not-measured', () => {
    const { reported } = resolve({ bath: 'caustic-aluminium', coupon: PLATE });
    expect(reported).toEqual(['process-figure-not-measured process.etchFactor']);
  });
  test('M5.7 several are averaged; what they leave open widens the rate spread, never narrows it', () => {
    const pair = (after: number) => ({ etchFactor: 1, coupon: [PLATE, { ...PLATE, after }] });
    expect(resolve(pair(2.7)).job?.process.rateSpread).toBe(0.05);
    const { job, reported, of } = resolve(pair(2.65));
    expect(job?.process.rate).toBeCloseTo(0.0325, 12);
    // Rates 0.030 and 0.035: s/√2 = 0.0025, t(95 %, 1) = 12.71: ± 0.031775, which is 97.8 %.
    expect(job?.process.rateSpread).toBeCloseTo(0.9777, 4);
    expect(reported).toEqual(['coupon-too-coarse process.coupon']);
    expect(of['rate spread']).toMatchObject({ kind: 'measured' });
  });
  test('M5.5 two good coupons that differ by little more than their gauges are not warned of', () => {
    const pair = (after: number) => ({ etchFactor: 1, coupon: [PLATE, { ...PLATE, after }] });
    for (const after of [2.705, 2.695, 2.69]) expect(resolve(pair(after)).reported).toEqual([]);
  });
  test('coupon-too-coarse: too little was etched for the gauge', () => {
    const { reported } = resolve({ etchFactor: 1, coupon: { ...PLATE, after: 2.95, gauge: 0.01 } });
    expect(reported).toEqual(['coupon-too-coarse process.coupon']);
  });
  test('opening-too-coarse: widths gauged too roughly for so little undercut', () => {
    // 1.96 · √2 · (0.25 / √3) / 1.5 = 0.267 of the factor; with 0.22 it is 0.235.
    const coupon = (gauge: number) => ({ coupon: { ...PLATE, opening: { ...opening, gauge } } });
    expect(resolve(coupon(0.25)).reported).toEqual(['opening-too-coarse process.coupon']);
    expect(resolve(coupon(0.22)).reported).toEqual([]);
    expect(resolve(coupon(1e7)).reported).toEqual(['opening-too-coarse process.coupon']);
  });
  test('etch-rate-doubtful: minutes or thickness of a coupon, or a rate, far from any bath', () => {
    const reported = (process: object) => resolve({ etchFactor: 1, ...process }).reported;
    expect(reported({ coupon: { ...PLATE, minutes: 1e6 } })).toEqual(['etch-rate-doubtful process.coupon']);
    expect(reported({ coupon: { ...PLATE, minutes: 0.001 } })).toEqual(['etch-rate-doubtful process.coupon']);
    expect(reported({ rate: 0.0004 })).toEqual(['etch-rate-doubtful process.rate']);
    expect(reported({ rate: 1.1 })).toEqual(['etch-rate-doubtful process.rate']);
    expect([reported({ rate: 0.0005 }), reported({ rate: 1 })]).toEqual([[], []]);
  });
  test('coupon-not-undercut, coupon-not-etched: each with its place in the list', () => {
    const flat = { ...PLATE, opening: { ...opening, after: 10 } };
    expect(resolve({ coupon: [PLATE, flat] }).reported).toEqual([
      'coupon-not-undercut process.coupon[1].opening',
    ]);
    expect(resolve({ etchFactor: 1, coupon: [PLATE, { ...PLATE, after: 3 }] }).reported).toEqual([
      'coupon-not-etched process.coupon[1]',
    ]);
  });
});

describe('a bath run at another temperature', () => {
  const caustic = { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.03 };

  test('M5.6 rate-turned-by-temperature: 0.030 mm/min at 80 °C is 0.0502 at 92 °C, and how sure that is', () => {
    const { job, reported, of } = resolve({ ...caustic, rateAtC: 80, bathC: 92 });
    expect(reported).toEqual(['rate-turned-by-temperature process.bathC']);
    expect(job?.process.rate).toBeCloseTo(0.03 * 1.6734, 5);
    expect(of['etch rate at 80 °C']).toMatchObject({ value: 0.03, kind: 'user' });
    expect(of['activation energy']).toMatchObject({ value: 46, kind: 'published' });
    // By Arrhenius' law 36 and 60 kJ/mol give 1.4962 and 1.9574 times; the further of the two counts.
    expect(of['etch rate']).toMatchObject({ kind: 'published' });
    expect(of['etch rate']?.plusMinus).toBeCloseTo(0.03 * (1.9574 - 1.6734), 4);
    expect(job?.process.rateSpread).toBeCloseTo((1.9574 - 1.6734) / 1.6734, 3);
  });
  test('is left alone at the coupon’s own temperature', () => {
    expect(resolve({ ...caustic, rateAtC: 80, bathC: 80 }).reported).toEqual([]);
    expect(resolve({ ...caustic, rateAtC: 80 }).job?.process.rate).toBe(0.03);
  });
  test('temperature-step-too-far, activation-energy-missing, job-key-missing: no rate is made up', () => {
    const far = resolve({ ...caustic, rateAtC: 60, bathC: 80 });
    expect(far.reported).toEqual(['temperature-step-too-far process.bathC']);
    expect(far.job).toBeUndefined();
    const steel = resolve({ ...caustic, bath: 'acid-steel', rateAtC: 60, bathC: 70 });
    expect(steel.reported).toEqual(['activation-energy-missing process.bathC']);
    expect(resolve({ ...caustic, bathC: 70 }).reported).toEqual(['job-key-missing process']);
    // The published rate of this bath holds at 45 °C.
    const nickel = resolve({ bath: 'ferric-chloride-nickel', etchFactor: 1, bathC: 50 });
    expect(nickel.reported).toContain('activation-energy-missing process.bathC');
  });
  test('the job with its defaults filled in is not turned twice', () => {
    const { job, filled } = resolve({ bath: 'caustic-aluminium', etchFactor: 1, rateAtC: 80, bathC: 85 });
    expect(filled.process.rate).toBeUndefined();
    expect(resolveJob(filled, 'mm').job).toEqual(job);
  });
});
