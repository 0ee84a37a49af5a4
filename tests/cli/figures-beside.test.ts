/** A job that names a file of figures beside it: the shop's own bath, read as the drawing is. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { type Ran, runIsobath } from '#support/process/run-isobath.ts';

const home = mkdtempSync(join(tmpdir(), 'isobath-figures-'));
afterAll(() => rmSync(home, { recursive: true }));
let count = 0;

const SHOP = {
  format: 'isobath-figures',
  version: 1,
  baths: [
    {
      id: 'tank-2',
      name: 'our caustic tank',
      etches: 'aluminium',
      reaction: 'aluminium in caustic soda',
      etchFactor: { value: 1.25, unit: 'depth / undercut', source: 'coupons of May', kind: 'measured' },
      rate: { value: 0.15, unit: 'cm/h', source: 'coupons of May', kind: 'measured' },
    },
  ],
};

function plan(figures: string | undefined, process: object = {}): Ran & { readonly folder: string } {
  const folder = join(home, String(count++));
  mkdirSync(folder);
  const asked = { ...buoyLidJob, figures: 'shop.json', process: { bath: 'tank-2', ...process } };
  writeFileSync(join(folder, 'lid.job.json'), JSON.stringify(asked));
  writeFileSync(join(folder, 'buoy-lid.dxf'), buoyLidDrawing);
  if (figures !== undefined) writeFileSync(join(folder, 'shop.json'), figures);
  return { ...runIsobath(['plan', 'lid.job.json', '--out', 'out'], folder), folder };
}

describe('a file of figures beside the job', () => {
  it('gives the bath: 0.15 cm/h is 0.025 mm/min, 1.25 of depth / undercut is 0.8, and nothing is warned of', () => {
    const { code, error, folder } = plan(JSON.stringify(SHOP));
    expect(error).not.toContain('process-figure-not-measured');
    expect(code).toBe(0);
    const { job, provenance } = JSON.parse(readFileSync(join(folder, 'out', 'plan.json'), 'utf8'));
    expect(job.figures).toEqual(SHOP);
    const of = (name: string) =>
      provenance.find(({ quantity }: { readonly quantity: string }) => quantity === name);
    expect(of('etch rate')).toMatchObject({ value: 0.025, unit: 'mm/min', kind: 'measured' });
    expect(of('etch rate').source).toContain('coupons of May');
    expect(of('etch factor')).toMatchObject({ value: 0.8, kind: 'measured' });
  });

  it('that is not there is named, and nothing is written', () => {
    const { code, out, error } = plan(undefined);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(error).toMatch(/^stop [a-z-]+: .*shop\.json/m);
  });

  it.each([
    ['is no JSON', '{'],
    ['has a value without a source', JSON.stringify(SHOP).replaceAll('"source":"coupons of May",', '')],
    ['has a unit that nobody knows', JSON.stringify(SHOP).replace('cm/h', 'furlong/h')],
  ])('that %s is refused with its name, without a trace of the program', (_, text) => {
    const { code, out, error } = plan(text);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(error).toMatch(/^stop [a-z-]+: .*shop\.json/m);
    expect(error).not.toMatch(/^\s+at |Error:/m);
  });
});

describe('the terminal reports what the run does to the bath', () => {
  it('metal, caustic, hydrogen and air with their temperatures, and the load against its limit', () => {
    const tank = { litres: 10, dissolved: 30, dissolvedLimit: 75 };
    const { out, folder } = plan(JSON.stringify(SHOP), { tank });
    const { bathSheet } = JSON.parse(readFileSync(join(folder, 'out', 'plan.json'), 'utf8'));
    expect(out).toContain(`${bathSheet.metal.toFixed(1)} g dissolved`);
    expect(out).toMatch(/l hydrogen at 0 °C/);
    expect(out).toContain(`${bathSheet.hydrogen.at25C.toFixed(1)} l hydrogen at 25 °C`);
    expect(out).toMatch(/peak, in stage \d: \d+\.\d\d l\/min hydrogen at 25 °C, at least \d+ l\/min of air/);
    // 10 L more by a tenth of the grams.
    const after = (30 + bathSheet.metal / 10).toFixed(1);
    expect(out).toContain(`dissolved metal 30.0 g/L before, ${after} after, 75.0 at most`);
  });
});
