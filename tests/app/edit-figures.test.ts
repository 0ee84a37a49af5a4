import { describe, expect, it } from 'vitest';
import {
  setAlloy,
  setBath,
  setDrawingUnits,
  setEdgeDatum,
  setJoinTolerance,
  setMasking,
  setRate,
  setRateSpread,
  setRule,
  setSheetTolerance,
  setTank,
  setTaperEnd,
} from '#app/state/edit-figures.ts';
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

describe('sheet, bath and rules of a job in inches', () => {
  it('are written in its own unit: 0.254 mm is 0.01 in', () => {
    expect(setSheetTolerance(job, 'minus', 0.254).stock.minus).toBe(0.01);
    expect(setRule(job, 'minWeb', 0.508).rules).toEqual({ minWeb: 0.02 });
    expect(setJoinTolerance(job, 0).joinTolerance).toBe(0);
    expect(setRate(job, 0.0254).process.rate).toBe(0.001);
  });

  it('rate-in-inches: keep the rate that was typed, whether in inches a minute or in millimetres', () => {
    const back = (rate: number) => (setRate(job, rate).process.rate ?? 0) * 25.4;
    for (const rate of [0.00507, 0.0297, 0.000313, 0.0767, 0.004131]) {
      expect(back(rate) / rate).toBeCloseTo(1, 6);
      // Typed in inches it stands as it was typed.
      expect(setRate(job, rate * 25.4).process.rate).toBe(rate);
      expect(setRate({ ...job, units: 'mm' }, rate).process.rate).toBe(rate);
    }
    expect('rate' in setRate(job, undefined).process).toBe(false);
  });

  it('leave the job when they are taken back, so that the default counts', () => {
    const ruled = setRule(setRule(job, 'minWeb', 0.508), 'minLandWidth', 2.54);
    expect(setRule(ruled, 'minWeb', undefined).rules).toEqual({ minLandWidth: 0.1 });
    expect(setRule(setRule(ruled, 'minWeb', undefined), 'minLandWidth', undefined)).toEqual(job);
    expect(setSheetTolerance(setSheetTolerance(job, 'plus', 0), 'plus', undefined)).toEqual(job);
    expect(setEdgeDatum(setEdgeDatum(job, 'mid-wall'), undefined)).toEqual(job);
    const tank = { litres: 900, dissolved: 0, dissolvedLimit: 75 };
    expect(setTank(job, tank).process).toEqual({ ...job.process, tank });
    expect(setTank(setTank(job, tank), undefined)).toEqual(job);
    expect(setMasking(job, 're-mask').process).toEqual({ ...job.process, masking: 're-mask' });
    expect(setMasking(setMasking(job, 're-mask'), undefined)).toEqual(job);
    expect(setRateSpread(setRateSpread(job, 0.1), undefined)).toEqual(job);
    expect(setDrawingUnits(setDrawingUnits(job, 'cm'), undefined)).toEqual(job);
    expect('alloy' in setAlloy(job, undefined).stock).toBe(false);
    expect('bath' in setBath(job, undefined).process).toBe(false);
  });

  it('keep the taper of a sheet when one end of it changes', () => {
    const thickness = { from: [0, 0], to: [9, 0], thicknessFrom: 0.2, thicknessTo: 0.1 } as const;
    const tapered = { ...job, stock: { thickness: { ...thickness, from: [0, 0], to: [9, 0] } } } as JobFile;
    expect(setTaperEnd(tapered, 'thicknessTo', 2.54 * 1.2).stock.thickness).toEqual({
      ...thickness,
      thicknessTo: 0.12,
    });
    expect(setTaperEnd(job, 'thicknessTo', 1)).toBe(job);
  });
});
