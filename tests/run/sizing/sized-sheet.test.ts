/** A sheet etched all over before it is masked: worked by hand, and what of it is reported. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NEAR_EDGE, plannedCover } from '#support/parts/sized-cover.ts';
import { trials } from '#support/seeds/property-runs.ts';

describe('M8.7 sized before masking', () => {
  test('4.10 to 4.00 with both faces bare: 0.05 off each in 1.667 min, edges in by 0.06', async () => {
    const { planFile, findings } = await plannedCover({ sizing: { to: 4 } });
    expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(planFile?.sizing).toMatchObject({
      amount: 0.05,
      faces: 'both',
      // 0.05 / 0.03
      minutes: 1.666667,
      // φ 1.2
      edge: 0.06,
      // 2 · (0.05 · 0.05 + 0.03 · 1.05 · 0.2)
      doubt: 0.0176,
      before: { least: 4.1, most: 4.1 },
      after: { least: 4, most: 4 },
    });
    // Lines start at the near face's own surface: 4.00 − 2.00 is left to etch, and a depth asked as such stays.
    expect(planFile?.stages.map(({ level }) => level)).toEqual([2, 1.5]);
    const drawn = 180 * 110 - Math.PI * 6 * 6;
    const left = (180 - 0.12) * (110 - 0.12) - Math.PI * 6.06 * 6.06;
    expect(planFile?.sizing?.removedVolume).toBeCloseTo(drawn * 4.1 - left * 4, 4);
    expect(planFile?.sizing?.removedMass).toBeCloseTo(((drawn * 4.1 - left * 4) * 2.78) / 1000, 5);
  });

  test('totals, gas and heat have the sizing in them; the part weighs the sheet less all of it', async () => {
    const { planFile } = await plannedCover({ sizing: { amount: 0.05 } });
    const { totals, stages, sizing, bathSheet } = planFile ?? {};
    const staged = (stages ?? []).reduce((sum, { removedVolume }) => sum + removedVolume, 0);
    const all = staged + (sizing?.removedVolume ?? 0);
    expect(totals?.minutes).toBeCloseTo(2 / 0.03 + 0.05 / 0.03, 5);
    expect(totals?.removedVolume).toBeCloseTo(all, 4);
    const drawn = 180 * 110 - Math.PI * 6 * 6;
    expect(totals?.partMass).toBeCloseTo(((drawn * 4.1 - all) * 2.78) / 1000, 4);
    // M5.3: 1.246 m³ of hydrogen a kilogram.
    expect(totals?.hydrogenLitres).toBeCloseTo(((all * 2.78) / 1000) * 1.246, 1);
    expect(bathSheet?.metal).toBeCloseTo((all * 2.78) / 1000, 4);
    expect(bathSheet?.sizing?.metal).toBeCloseTo(sizing?.removedMass ?? 0, 5);
    // Both faces bare at once: nothing later gives off so much.
    expect(bathSheet?.peak.stage).toBe(0);
  });

  test('one face: the sheet loses it once, in the minutes that it takes', async () => {
    const { planFile } = await plannedCover({ sizing: { to: 4, faces: 'one' } });
    expect(planFile?.sizing).toMatchObject({ amount: 0.1, edge: 0.12, after: { least: 4, most: 4 } });
    expect(planFile?.sizing?.minutes).toBeCloseTo(0.1 / 0.03, 5);
    // 0.1 · 0.05 + 0.03 · 1.05 · 0.2
    expect(planFile?.sizing?.doubt).toBeCloseTo(0.0113, 6);
  });

  test('a region drawn over the edge ends at the moved edge; one clear of it stays to the micrometre', async () => {
    const { planFile, findings } = await plannedCover({ sizing: { to: 4 } });
    const bare = await plannedCover({});
    const areaOf = (file: typeof planFile, layer: string) =>
      file?.regions.find((region) => region.layer === layer)?.area;
    expect(areaOf(planFile, 'NOTCH')).toBeCloseTo(19.94 * 25, 6);
    expect(areaOf(planFile, 'POCKETS')).toBe(areaOf(bare.planFile, 'POCKETS'));
    expect(findings.map(({ code }) => code)).not.toContain('sizing-reaches-region');
    // No maskant lies beyond the edge: the line of the notch runs to it, and not along it.
    const ends = planFile?.stages
      .filter(({ level }) => level === 1.5)
      .flatMap(({ lines }) => lines)
      .flatMap(({ vertices }) => vertices.map(([x]) => x));
    expect(Math.max(...(ends ?? []))).toBeCloseTo(179.94, 6);
  });

  test('the outline of the plan is the sized one, its hole wider', async () => {
    const { planFile } = await plannedCover({ sizing: { to: 4 } });
    const xs = planFile?.outline?.vertices.map(([x]) => x) ?? [];
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([0.06, 179.94]);
    const [hole] = planFile?.cutouts ?? [];
    const across = hole?.vertices.map(([x]) => x) ?? [];
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(12.12, 6);
  });

  test('a tapered sheet keeps its slope, and a target counts from its middle', async () => {
    const taper = { from: [0, 0], to: [180, 0], thicknessFrom: 4.3, thicknessTo: 3.9 };
    const { planFile } = await plannedCover({ sizing: { to: 4 }, stock: { thickness: taper } });
    expect(planFile?.sizing).toMatchObject({
      amount: 0.05,
      before: { least: 3.9, most: 4.3 },
      after: { least: 3.8, most: 4.2 },
    });
  });

  test('until it is gauged the sizing is in the sheet’s part of the budget', async () => {
    const share = async (sizing?: object) => {
      const { planFile } = await plannedCover(sizing === undefined ? {} : { sizing });
      return planFile?.budgets?.find(({ asked }) => asked.what === 'thickness')?.byClock.parts.sheet;
    };
    // (0.06 + 0.04) / 2, and 0.0176 more.
    expect(await share()).toBeCloseTo(0.05, 6);
    expect(await share({ amount: 0.05 })).toBeCloseTo(0.0676, 6);
  });

  test('its plan planned again is the same', async () => {
    const { planFile } = await plannedCover({ sizing: { to: 4, faces: 'one' } });
    const again = await plannedCover({ job: planFile?.job });
    expect(again.planFile).toEqual(planFile);
  });
});

test('M8.7 whatever is taken, metal adds up and the outline moves in by φ times it', {
  tags: ['long'],
}, async () => {
  const drawn = 180 * 110 - Math.PI * 6 * 6;
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 5, max: 400 }),
      fc.constantFrom('both' as const, 'one' as const),
      fc.integer({ min: 70, max: 150 }),
      async (microns, faces, percent) => {
        const [amount, etchFactor] = [microns / 1000, percent / 100];
        const { planFile } = await plannedCover({ sizing: { amount, faces }, process: { etchFactor } });
        const bare = faces === 'both' ? 2 : 1;
        const { sizing, stages = [], totals, outline } = planFile ?? {};
        const edge = etchFactor * amount;
        const xs = outline?.vertices.map(([x]) => x) ?? [];
        // Less than a line may be off moves none.
        const moved = edge < 0.005 ? 0 : edge;
        expect(Math.min(...xs)).toBeCloseTo(moved, 6);
        const left = (180 - 2 * moved) * (110 - 2 * moved) - Math.PI * (6 + moved) * (6 + moved);
        expect(sizing?.removedVolume).toBeCloseTo(drawn * 4.1 - left * (4.1 - bare * amount), 3);
        const etched = stages.reduce((sum, { removedVolume }) => sum + removedVolume, 0);
        expect(totals?.partMass).toBeCloseTo(
          ((drawn * 4.1 - (sizing?.removedVolume ?? 0) - etched) * 2.78) / 1000,
          3,
        );
        // The pocket is to leave 2.00 of what there is.
        const pocket = planFile?.regions.find(({ layer }) => layer === 'POCKETS');
        expect(pocket?.asked.depth).toBeCloseTo(2.1 - bare * amount, 6);
      },
    ),
    { numRuns: trials(12) },
  );
});

describe('what of a sizing is reported', () => {
  const codes = async (...given: Parameters<typeof plannedCover>) =>
    (await plannedCover(...given)).findings
      .filter(({ code }) => code.startsWith('sizing'))
      .map(({ code }) => code);

  test('sizing-first: what is planned for, and by how much edges move', async () => {
    const { findings } = await plannedCover({ sizing: { amount: 0.05 } });
    expect(findings.find(({ code }) => code === 'sizing-first')?.facts).toEqual({
      thinner: 0.1,
      edge: 0.06,
      doubt: 0.0176,
    });
  });

  test('sizing-not-thinner: 4.10 to 4.15', async () => {
    expect(await codes({ sizing: { to: 4.15 } })).toEqual(['sizing-not-thinner']);
  });

  test('sizing-takes-sheet: 2.03 off each face of 4.04', async () => {
    expect(await codes({ sizing: { amount: 2.03 } })).toEqual(['sizing-takes-sheet']);
  });

  test('sizing-parts-sheet: a neck of 0.5 loses 0.3 from either side', async () => {
    const found = await codes({ sizing: { amount: 0.25 } }, NEAR_EDGE.neck);
    expect(found).toEqual(['sizing-parts-sheet', 'sizing-first']);
  });

  test('sizing-meets-hole: 0.5 between hole and edge', async () => {
    expect(await codes({ sizing: { amount: 0.25 } }, NEAR_EDGE.nearEdge)).toContain('sizing-meets-hole');
    expect(await codes({ sizing: { amount: 0.2 } }, NEAR_EDGE.nearEdge)).not.toContain('sizing-meets-hole');
  });

  test('sizing-reaches-region: a pocket 0.2 from the edge', async () => {
    expect(await codes({ sizing: { amount: 0.2 } }, NEAR_EDGE.nearPocket)).toContain('sizing-reaches-region');
    expect(await codes({ sizing: { amount: 0.15 } }, NEAR_EDGE.nearPocket)).toEqual(['sizing-first']);
  });

  test('sizing-takes-region: one 0.2 wide along the edge', async () => {
    expect(await codes({ sizing: { amount: 0.2 } }, NEAR_EDGE.rim)).toContain('sizing-takes-region');
  });
});
