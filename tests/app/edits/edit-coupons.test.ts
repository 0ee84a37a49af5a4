import { describe, expect, it } from 'vitest';
import { couponReadings, removeCoupon, setCoupon } from '#app/state/edits/edit-coupons.ts';
import { setEtchFactor } from '#app/state/edits/edit-factor.ts';
import { setRate } from '#app/state/edits/edit-figures.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'shutter.dxf',
  units: 'in',
  stock: { alloy: 'al-2024-t3', thickness: 0.16 },
  process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.001 },
  requirements: [],
};

/** In mm: 0.16 in before, 0.15 in after. */
const first = { before: 4.064, after: 3.81, minutes: 5, faces: 2 } as const;
const second = { ...first, minutes: 4, faces: 1 } as const;
const opening = { openingBefore: 10.16, openingAfter: 10.414, openingDepth: 0.127 } as const;

const faultsOf = (given: JobFile) => readJob(JSON.stringify(given)).findings;

describe('coupons of a job in inches', () => {
  it('take the place of a rate, and a rate takes theirs', () => {
    const measured = setCoupon(job, 0, first);
    expect(measured.process.coupon).toEqual({ before: 0.16, after: 0.15, minutes: 5, faces: 2 });
    expect('rate' in measured.process).toBe(false);
    expect(faultsOf(measured)).toEqual([]);
    expect(setRate(setCoupon(measured, 1, second), 0.0254)).toEqual(job);
  });

  it('are one alone or a list of several, and a list of one again is one alone', () => {
    const one = setCoupon(job, 0, first);
    const two = setCoupon(one, 1, second);
    expect(two.process.coupon).toEqual([
      { before: 0.16, after: 0.15, minutes: 5, faces: 2 },
      { before: 0.16, after: 0.15, minutes: 4, faces: 1 },
    ]);
    expect(faultsOf(two)).toEqual([]);
    expect(removeCoupon(two, 1)).toEqual(one);
    expect('coupon' in removeCoupon(one, 0).process).toBe(false);
  });

  it('are read back as they were written, gauge and opening too', () => {
    const gauged = { ...first, ...opening, gauge: 0.00508, openingGauge: 0.0254 };
    const made = setCoupon(setCoupon(job, 0, gauged), 1, second);
    expect(faultsOf(made)).toEqual([]);
    const readings = couponReadings(made);
    expect(readings).toEqual([gauged, second].map((each) => closeTo(each)));
    expect(readings.reduce((done, each, index) => setCoupon(done, index, each), made)).toEqual(made);
  });

  it('count only when whole, and an opening only when whole', () => {
    expect(setCoupon(job, 0, { before: 4.064, minutes: 5 })).toBe(job);
    const { openingDepth, ...half } = opening;
    expect(setCoupon(job, 0, { ...first, ...half })).toEqual(setCoupon(job, 0, first));
  });

  it('give the etch factor by an opening in place of one given, and one given takes its place', () => {
    const one = setCoupon(job, 0, { ...first, ...opening });
    expect('etchFactor' in one.process).toBe(false);
    expect(faultsOf(one)).toEqual([]);
    const stated = setEtchFactor(setCoupon(one, 1, { ...second, ...opening }), 1.1, 'etchFactor');
    expect(stated.process.etchFactor).toBe(1.1);
    expect(faultsOf(stated)).toEqual([]);
    expect(couponReadings(stated)).toEqual([first, second].map((each) => closeTo(each)));
    expect('etchFactor' in setEtchFactor(one, undefined, 'etchFactor').process).toBe(false);
  });
});

function closeTo(readings: Readonly<Record<string, number>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(readings).map(([key, value]) => [key, expect.closeTo(value, 9)]));
}
