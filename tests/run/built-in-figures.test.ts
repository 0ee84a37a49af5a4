/** Every figure that is built in and used stands in plan.json's provenance, with its grade and its source. */

import { beforeAll, describe, expect, test } from 'vitest';
import { ALUMINIUM_WEIGHT, CAUSTIC_WEIGHT, MOLAR_VOLUME } from '#bath/aluminium-chemistry.ts';
import { GAS_CONSTANT, LONGEST_TEMPERATURE_STEP } from '#bath/arrhenius.ts';
import { FLAMMABLE_FROM, SAFE_SHARE } from '#bath/bath-sheet.ts';
import { COARSEST_COUPON, COARSEST_OPENING, THICKNESS_GAUGE, WIDTH_GAUGE } from '#bath/coupon.ts';
import { knownFigures } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { sheetTolerance } from '#bath/sheet-tolerance.ts';
import * as limits from '#checks/making-limits.ts';
import * as defaults from '#job/process-assumptions.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing } from '#support/drawings/small-drawing.ts';
import { jobRows } from '#support/jobs/job-rows.ts';

const { alloys: ALLOYS, baths: BATHS } = knownFigures();

type Given = Readonly<Record<string, unknown>>;

/** A job that leaves to Isobath whatever can be left. */
async function provenanceWith(alloy: string, bath: string, more: Given = {}): Promise<readonly Provenance[]> {
  return (await planWith(alloy, bath, more)).planFile?.provenance ?? [];
}

function planWith(alloy: string | undefined, bath: string, { process = {}, handoff }: Given = {}) {
  return runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'buoy-lid.dxf',
      layers: { outline: ['TRIM'] },
      stock: { alloy, thickness: 4 },
      process: { bath, ...(hasBoth(bath) ? {} : { rate: 0.02, etchFactor: 1 }), ...(process as object) },
      handoff,
      requirements: [{ layer: 'POCKETS', depth: 1.2 }],
    }),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
}

function hasBoth(id: string): boolean {
  const bath = BATHS.find((each) => each.id === id);
  return bath?.rate !== undefined && bath.etchFactor !== undefined;
}

function isSourced(value: unknown): value is Sourced {
  return typeof value === 'object' && value !== null && 'kind' in value && 'source' in value;
}

let plain: readonly Provenance[] = [];
beforeAll(async () => {
  plain = await provenanceWith('al-2024-t3', 'caustic-aluminium');
});

describe('plan.json says of built-in figures where they are from', () => {
  const declared = jobRows().flatMap(({ path, field }): [string, unknown][] =>
    typeof field.usual?.value === 'number' && field.quantity !== undefined ? [[path, field.usual]] : [],
  );
  test('a field whose default is a figure of the world names it in the provenance', () => {
    const nameless = jobRows().filter(
      ({ field }) => typeof field.usual?.value === 'number' && field.quantity === undefined,
    );
    // Of a requirement the plan names the tolerance once, of the far face the registration where there is one; no overcut is no figure; overrun and blade shape files alone.
    expect(nameless.map(({ path }) => path)).toEqual([
      'far.registration',
      'requirements[].plus',
      'requirements[].minus',
      'handoff.overrun',
      'handoff.scribe.overcut',
      'handoff.program.overcut',
      'handoff.template.knife.blade',
    ]);
  });

  test.each([...Object.entries(defaults), ...declared])('%s', (_, value) => {
    expect(isSourced(value), 'a default that is a figure carries its source').toBe(true);
    expect(plain).toContainEqual(expect.objectContaining(value as Sourced));
  });

  test.each(ALLOYS.map((alloy) => [alloy.id, alloy] as const))(
    'density and sheet of %s',
    async (id, alloy) => {
      const bath = BATHS.find(({ etches }) => etches === alloy.metal)?.id ?? '';
      const provenance = await provenanceWith(id, bath);
      expect(provenance).toContainEqual(expect.objectContaining(alloy.density));
      const sheet = sheetTolerance(alloy, 4);
      if (sheet !== undefined) {
        expect(
          provenance.filter(({ source, value }) => source === sheet.source && value === sheet.value),
        ).toHaveLength(2);
      }
    },
  );

  test.each(BATHS.filter(({ id }) => hasBoth(id)).map((bath) => [bath.id, bath] as const))(
    'figures of %s',
    async (id, bath) => {
      const alloy = ALLOYS.find(({ metal }) => metal === bath.etches)?.id ?? '';
      const provenance = await provenanceWith(alloy, id);
      for (const figure of [bath.etchFactor, bath.rate])
        expect(provenance).toContainEqual(expect.objectContaining(figure));
    },
  );

  test.each(Object.entries(limits).filter(([, value]) => isSourced(value)))('limit %s', (_, value) => {
    expect(plain).toContainEqual(expect.objectContaining(value));
  });

  test('what the bath sheet is calculated with', () => {
    for (const figure of [FLAMMABLE_FROM, SAFE_SHARE, ALUMINIUM_WEIGHT, CAUSTIC_WEIGHT, MOLAR_VOLUME])
      expect(plain).toContainEqual(expect.objectContaining(figure));
  });

  test('what the hand-off is shaped with, whichever files are made', async () => {
    const own = await provenanceWith('al-2024-t3', 'caustic-aluminium', {
      handoff: { template: { web: 7 } },
    });
    expect(own).toContainEqual(expect.objectContaining({ quantity: 'template web', value: 7, kind: 'user' }));
  });

  test('what coupons and a temperature are judged with', async () => {
    const coupon = {
      before: 4,
      after: 3.7,
      minutes: 10,
      faces: 1,
      opening: { before: 10, after: 10.6, depth: 0.3 },
    };
    const process = { coupon, rateAtC: 80, bathC: 85 };
    const provenance = await provenanceWith('al-2024-t3', 'caustic-aluminium', { process });
    for (const figure of [
      THICKNESS_GAUGE,
      WIDTH_GAUGE,
      COARSEST_COUPON,
      COARSEST_OPENING,
      GAS_CONSTANT,
      LONGEST_TEMPERATURE_STEP,
    ])
      expect(provenance).toContainEqual(expect.objectContaining(figure));
    expect(provenance).toContainEqual(expect.objectContaining({ quantity: 'activation energy', value: 46 }));
  });

  test('each has a source and a grade', () => {
    expect(plain.length).toBeGreaterThan(10);
    for (const { source, kind } of plain) {
      expect(source).not.toBe('');
      expect(['published', 'common-practice', 'memory', 'user', 'measured']).toContain(kind);
    }
  });
});

describe('and makes up none that a bath lacks', () => {
  const LACKING = [
    ['ferricyanide-aluminium', 'al-2024-t3', ['process.rate']],
    ['acid-nickel', 'nickel-718', ['process.rate']],
    ['ferric-chloride-nickel', 'nickel-718', ['process.etchFactor']],
    ['cupric-chloride-copper', undefined, ['process.rate']],
  ] as const;
  test('process-figure-missing: these are all the baths that lack one', () => {
    expect(
      BATHS.filter(({ id }) => !hasBoth(id))
        .map(({ id }) => id)
        .sort(),
    ).toEqual(LACKING.map(([id]) => id as string).sort());
  });
  test.each(LACKING)('process-figure-missing: %s', async (bath, alloy, lacks) => {
    const nothing = { process: { rate: undefined, etchFactor: undefined } };
    const { planFile, findings } = await planWith(alloy, bath, nothing);
    const missing = findings.filter(({ code }) => code === 'process-figure-missing');
    expect(missing.map(({ place }) => place?.path)).toEqual(lacks);
    expect(planFile).toBeUndefined();
  });
});

describe('and warns while a general figure stands in for a measured one', () => {
  test('process-figure-not-measured: once for the etch factor, once for the rate', async () => {
    const findings = (await planWith('al-2024-t3', 'caustic-aluminium')).planFile?.findings ?? [];
    const reported = findings.filter(({ code }) => code === 'process-figure-not-measured');
    expect(reported).toHaveLength(2);
    expect(new Set(reported.map(({ path }) => path))).toEqual(
      new Set(['process.etchFactor', 'process.rate']),
    );
  });
  test('sheet-tolerance-missing: the table holds no titanium', async () => {
    const findings = (await planWith('ti-6al-4v', 'hydrofluoric-nitric-titanium')).planFile?.findings ?? [];
    expect(findings.map(({ code }) => code)).toContain('sheet-tolerance-missing');
  });
});
