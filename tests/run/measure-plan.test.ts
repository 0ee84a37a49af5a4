import { describe, expect, it } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

async function planOf(entities: readonly string[], requirements: readonly unknown[]) {
  const { planFile, findings } = await runJob({
    jobText: JSON.stringify({ ...buoyLidJob, stock: { ...buoyLidJob.stock, thickness: 6 }, requirements }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
  });
  if (planFile === undefined) throw new Error(JSON.stringify(findings));
  return planFile;
}

const sheet = box('TRIM', [-20, -20], [200, 120]);
const exact = { plus: 0, minus: 0 };

describe('what a plan comes to', () => {
  it('removes Aℓ + πLℓ²/4 + 2πℓ³/3 through a square opening of 20 × 20, ℓ = 2 (Steiner; method.md 6: 1068.083 mm³)', async () => {
    // The drawn pocket is the opening grown by φℓ: 24 × 24 with the corners that the undercut rounds.
    const plan = await planOf([sheet, box('POCKETS', [0, 0], [24, 24])], [{ layer: 'POCKETS', depth: 2 }]);
    expect(plan.totals.removedVolume).toBeCloseTo(1068.083, 2);
    expect(plan.stages[0]?.removedMass).toBeCloseTo(1068.083 * 0.00278, 4);
    expect(plan.totals.partMass).toBeCloseTo((220 * 140 * 6 - 1068.083) * 0.00278, 3);
  });

  it('reaches the floor over the opening alone when the depth must be met exactly', async () => {
    const plan = await planOf(
      [sheet, box('POCKETS', [0, 0], [24, 24])],
      [{ layer: 'POCKETS', depth: 2, ...exact }],
    );
    const pocket = plan.regions.find(({ layer }) => layer === 'POCKETS');
    expect(pocket?.reached.floorArea).toBeCloseTo(400, 6);
    expect(pocket?.reached.share).toBeCloseTo(400 / 576, 6);
    expect(pocket?.reached).toMatchObject({ deepest: 2, shallowest: 0 });
  });

  it('counts the wall in as far as the tolerance allows: down to 1.9 of 2.0 mm', async () => {
    const plan = await planOf(
      [sheet, circle('ROUND', [60, 60], 12)],
      [{ layer: 'ROUND', depth: 2, plus: 0.1, minus: 0.1 }],
    );
    const round = plan.regions.find(({ layer }) => layer === 'ROUND');
    const radius = 12 - 2 + Math.sqrt(2 ** 2 - 1.9 ** 2);
    expect(round?.reached.floorArea).toBeCloseTo(Math.PI * radius ** 2, 3);
  });

  it('leaves land as it was, and never goes deeper than asked', async () => {
    const plan = await planOf(
      [sheet, box('POCKETS', [0, 0], [100, 80]), circle('DEEP', [50, 40], 20), circle('ISLAND', [20, 60], 8)],
      [
        { layer: 'POCKETS', depth: 1 },
        { layer: 'DEEP', depth: 3 },
        { layer: 'ISLAND', depth: 0 },
      ],
    );
    for (const { layer, level, reached } of plan.regions) {
      expect(reached.deepest).toBeLessThanOrEqual(level + 1e-6);
      if (level === 0) expect(reached, layer).toMatchObject({ share: 1, deepest: 0, shallowest: 0 });
      else expect(reached.share).toBeGreaterThan(0.7);
    }
    const sum = plan.stages.reduce((total, { removedVolume }) => total + removedVolume, 0);
    expect(sum).toBeCloseTo(plan.totals.removedVolume, 5);
  });
});
