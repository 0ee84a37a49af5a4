/** What the checks say of a run that is masked again for each stage: each coat by itself, and walls that stand on each other. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkMaking } from '#checks/check-making.ts';
import type { Finding } from '#findings/finding.ts';
import type { EdgeDatum } from '#job/job.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

const anyDatum = fc.constantFrom<EdgeDatum>('shallow-edge', 'mid-wall', 'deep-foot');
const SHEET = rectangle(-60, -60, 200, 120);
const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
const both = (drawn: CheckedPart) => ({
  oneCoat: checkPart(drawn),
  coatByCoat: checkPart({ ...drawn, masking: 're-mask' }),
});

test('M3.5 the plan of a random part is never region-over-etched, loses no maskant, and every opened region reaches its least depth', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, anyDatum, (drawn, edgeDatum) => {
      const plan = planOf(drawn, edgeDatum, undefined, 're-mask');
      const job = plainJob({ etchFactor: plan.etchFactor, masking: 're-mask', edgeDatum });
      const { groups, regions: reached } = measurePlan(plan, job);
      const found = codes(checkMaking({ plan, job, reached }, groups));
      expect(found).not.toContain('region-over-etched');
      // Walls that stand outside their lines may meet under a strip of land that was drawn too narrow for them.
      if (edgeDatum === 'shallow-edge') expect(found).not.toContain('maskant-comes-off');
      const closed = new Set(plan.findings.flatMap(({ place }) => place.regions ?? []));
      for (const { id, level, asked } of plan.regions) {
        if (level === 0 || closed.has(id)) continue;
        expect(reached.get(id)?.deepest ?? 0, id).toBeGreaterThanOrEqual(asked.depth - asked.minus);
      }
    }),
    { numRuns: Number(process.env['RUNS'] ?? 80) },
  );
});

test('a window that is not where it should be is found: region-over-etched', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    masking: 're-mask',
    outlines: [rectangle(0, 0, 80, 60), rectangle(20, 15, 60, 45)],
    depths: [
      [5, 30, 1],
      [40, 30, 2],
    ],
  };
  expect(codes(checkPart(drawn))).not.toContain('region-over-etched');
  const shifted = checkPart(drawn, (plan) => ({
    ...plan,
    stages: plan.stages.map((stage) =>
      stage.number === 2 ? { ...stage, opening: [rectangle(20.8, 16, 59, 44)] } : stage,
    ),
  }));
  const reported = shifted.find(({ code }) => code === 'region-over-etched');
  // The window stands 0.2 mm nearer than φ · 1 to the line on its left.
  expect(reported?.facts).toMatchObject({ limit: expect.closeTo(1.04, 6) });
  const near = reported?.code === 'region-over-etched' ? reported.facts.near : 0;
  expect(near).toBeGreaterThan(0.1);
});

test('corners drawn tighter than the whole depth come out as drawn where the first stage is shallow', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 60, 60, 1.5), roundedRectangle(80, 0, 120, 60, 9)],
    depths: [
      [30, 30, 4],
      [100, 30, 1.2],
    ],
  };
  const { oneCoat, coatByCoat } = both(drawn);
  expect(codes(oneCoat)).toContain('corner-sharper-than-undercut');
  expect(codes(coatByCoat)).not.toContain('corner-sharper-than-undercut');
});

test('a pocket whose step to its neighbour is wider than it is long with one coat opens with a new coat for each stage', () => {
  // At 3 beside 2.9 one coat keeps back √(3² − 2.9²) = 0.7681 on either side, a coat of its own 0.1.
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [rectangle(0, 0, 80, 60), rectangle(30, 20, 31.4, 40)],
    depths: [
      [5, 30, 2.9],
      [30.7, 30, 3],
    ],
    tolerance: 0.01,
  };
  const { oneCoat, coatByCoat } = both(drawn);
  expect(codes(oneCoat)).toContain('opening-missing');
  expect(codes(coatByCoat)).not.toContain('opening-missing');
});

test('lines of two coats may run as near to each other as they like; lines of one may not', () => {
  const margin = (gap: number): CheckedPart => ({
    sheet: SHEET,
    outlines: [rectangle(0, 0, 80, 60), rectangle(gap, gap, 80 - gap, 60 - gap)],
    depths: [
      [gap / 2, 30, 1],
      [40, 30, 1.2],
    ],
  });
  const { oneCoat, coatByCoat } = both(margin(0.4));
  expect(codes(oneCoat)).toContain('lines-too-close');
  expect(codes(coatByCoat)).not.toContain('lines-too-close');
  // Two windows of one stage 1.2 mm apart, over land of 3.2 mm.
  const near = checkPart({
    sheet: SHEET,
    masking: 're-mask',
    outlines: [rectangle(0, 0, 40, 40), rectangle(39.2, 0, 80, 40)],
    depths: [
      [20, 20, 1],
      [60, 20, 1],
    ],
    rules: { minLineSpacing: 5 },
  });
  expect(codes(near)).toContain('lines-too-close');
});

test('maskant overhangs as far as its own stage etches, and no farther', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [rectangle(0, 0, 60, 60), rectangle(80, 0, 140, 60)],
    depths: [
      [30, 30, 12],
      [100, 30, 6],
    ],
    stock: { thickness: 20 },
  };
  const { oneCoat, coatByCoat } = both(drawn);
  expect(codes(oneCoat)).toContain('maskant-overhang-long');
  expect(codes(coatByCoat)).not.toContain('maskant-overhang-long');
  const [one] = checkPart({ ...drawn, masking: 're-mask', depths: [[30, 30, 12]] }).filter(
    ({ code }) => code === 'maskant-overhang-long',
  );
  expect(one?.facts).toMatchObject({ overhang: 12, stage: 1, level: 12 });
});

test('strips of a coat over a floor are reported by the metal that stage leaves untouched', () => {
  // A floor 1 mm deep, 2.5 wide, between two of 2 mm: on the second coat the strip over it is 4.5 mm wide, on the first none.
  const found = checkPart({
    sheet: SHEET,
    masking: 're-mask',
    outlines: [rectangle(0, 0, 80, 60), rectangle(38.75, 0, 41.25, 60)],
    depths: [
      [20, 30, 2],
      [60, 30, 2],
      [40, 30, 1],
    ],
    rules: { minLandWidth: 5 },
  });
  const [strip] = found.filter(({ code }) => code === 'maskant-too-narrow');
  expect(strip?.facts).toMatchObject({ width: expect.closeTo(4.5, 3), footing: expect.closeTo(2.5, 3) });
});

test('land is judged by the depth of the floor beside it, however many stages made its wall', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [rectangle(0, 0, 40, 60), rectangle(45, 0, 90, 60), rectangle(100, 80, 130, 110)],
    depths: [
      [20, 30, 4],
      [60, 30, 4],
      [115, 95, 1],
    ],
  };
  for (const found of Object.values(both(drawn))) {
    const [land] = found.filter(({ code }) => code === 'land-too-narrow');
    expect(land?.facts).toMatchObject({ width: expect.closeTo(5, 6), limit: 8, depth: 4 });
  }
});
