import { describe, expect, it } from 'vitest';
import { setRate, setSheetReadings, setTaperEnd } from '#app/state/edits/edit-figures.ts';
import { setField } from '#job/fields/edit-field.ts';
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
    expect(setSheetReadings(job, [4.064, 3.81]).stock.measured).toEqual([0.16, 0.15]);
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
    const set = (before: JobFile, path: string, value: unknown) => setField(before, path.split('.'), value);
    const ruled = set(set(job, 'rules.minWeb', 0.02), 'rules.minLandWidth', 0.1);
    expect(ruled.rules).toEqual({ minWeb: 0.02, minLandWidth: 0.1 });
    expect(set(ruled, 'rules.minWeb', undefined).rules).toEqual({ minLandWidth: 0.1 });
    expect(set(set(ruled, 'rules.minWeb', undefined), 'rules.minLandWidth', undefined)).toEqual(job);
    const tank = { litres: 900, dissolved: 0, dissolvedLimit: 75 };
    expect(set(job, 'process.tank', tank).process).toEqual({ ...job.process, tank });
    expect(set(job, 'handoff.template.knife.width', 0.06).handoff).toEqual({
      template: { knife: { width: 0.06 } },
    });
    for (const [path, value] of [
      ['stock.plus', 0],
      ['joinTolerance', 0],
      ['process.edgeDatum', 'mid-wall'],
      ['process.masking', 're-mask'],
      ['process.rateSpread', 0.1],
      ['process.tank', tank],
      ['drawingUnits', 'cm'],
      ['handoff.template.knife.width', 0.06],
    ] as const) {
      expect(set(job, path, value), path).not.toEqual(job);
      expect(set(set(job, path, value), path, undefined), path).toEqual(job);
    }
    expect('alloy' in set(job, 'stock.alloy', undefined).stock).toBe(false);
    // A key that the file must hold stays, empty as it may be.
    expect(set({ ...job, process: { rate: 1 } }, 'process.rate', undefined).process).toEqual({});
  });

  it('replace the same figure given in another way', () => {
    const inverse = setField(job, ['process', 'depthPerUndercut'], 1.25);
    expect(inverse.process).toEqual({ bath: 'caustic-aluminium', rate: 0.001, depthPerUndercut: 1.25 });
    const coupon = { before: 0.16, after: 0.15, minutes: 8, faces: 2 };
    expect(setField(job, ['process', 'coupon'], coupon).process).toEqual({
      bath: 'caustic-aluminium',
      etchFactor: 1,
      coupon,
    });
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
