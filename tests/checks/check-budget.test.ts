import { describe, expect, test } from 'vitest';
import { checkBudget } from '#checks/check-budget.ts';
import { toleranceBudgets } from '#checks/tolerance-budget.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { runJob } from '#run/run-job.ts';
import { plateDrawing } from '#support/drawings/plate-drawing.ts';
import { planOfFloors } from '#support/parts/plan-of-floors.ts';

/** A pocket of 2 mm in a sheet of 4 mm at 0.025 mm/min: ± 5 % are 0.1 mm, ± 0.25 min 0.00656 mm. */
async function reported(asked: object, change: { readonly stock?: object; readonly process?: object } = {}) {
  const { findings, planFile } = await runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'plate.dxf',
      layers: { outline: ['EDGE'] },
      stock: { thickness: 4, minus: 0.05, plus: 0.05, ...change.stock },
      process: { etchFactor: 1, rate: 0.025, ...change.process },
      requirements: [{ layer: 'POCKET', ...asked }],
    }),
    drawingName: 'plate.dxf',
    drawingBytes: new TextEncoder().encode(plateDrawing()),
  });
  const found = findings.filter(({ code }) => code.startsWith('tolerance-'));
  return {
    codes: found.map(({ code }) => code),
    said: found.map((each) => sayFinding(each)),
    found,
    planFile,
  };
}

const tolerance = (mm: number) => ({ plus: mm, minus: mm });

describe('M6 what the clock holds', () => {
  test('nothing is reported where even the worst case holds: 0.1066 mm of 0.107', async () => {
    expect((await reported({ depth: 2, ...tolerance(0.107) })).codes).toEqual([]);
  });

  test('tolerance-barely-held: root-sum-square 0.1002 mm of 0.103, worst 0.1066', async () => {
    const { codes, said } = await reported({ depth: 2, ...tolerance(0.103) });
    expect(codes).toEqual(['tolerance-barely-held']);
    expect(said[0]).toMatchObject({ value: expect.closeTo(0.1066, 4), limit: 0.103 });
    // Half the spread leaves 0.05 + 0.0068 at worst; a run gauged 0.08.
    expect(said[0]?.remedy).toMatch(/halve the rate spread to 2\.5 % .* the tolerance is then held/);
  });

  test('tolerance-needs-gauging: 0.1002 mm of 0.1, with its parts and place, and gauging as the remedy', async () => {
    const { codes, said, found } = await reported({ depth: 2, ...tolerance(0.1) });
    expect(codes).toEqual(['tolerance-needs-gauging']);
    expect(said[0]).toMatchObject({ value: expect.closeTo(0.1002, 4), limit: 0.1 });
    expect(said[0]?.reason).toContain('rate ± 0.1 mm (5 %), timing ± 0.007 mm');
    expect(found[0]?.place).toMatchObject({ at: { x: 70, y: 65 } });
    expect(said[0]?.remedy).toContain('gauge each stage after four fifths');
  });

  test('tolerance-needs-gauging: the same asked as a final thickness, in a sheet of ± 0.05, is too thin; too thick as likely', async () => {
    const { codes, said, planFile } = await reported({ thickness: 2, ...tolerance(0.103) });
    expect(codes).toEqual(['tolerance-needs-gauging']);
    expect(said[0]?.reason).toMatch(/metal too thin by 0\.112 mm.*sheet ± 0\.05 mm/);
    expect(planFile?.budgets?.[0]?.asked).toMatchObject({ what: 'thickness', low: 2, high: 2 });
  });

  test('tolerance-not-held: a final thickness to ± 0.03 mm in a sheet of ± 0.05 is not held by gauging either', async () => {
    const { codes, said, planFile } = await reported({ thickness: 2, ...tolerance(0.03) });
    expect(codes).toEqual(['tolerance-not-held']);
    expect(planFile?.budgets?.[0]?.gauged.share).toBeGreaterThan(1);
    expect(said[0]?.remedy).toContain('measure the sheet');
  });

  test('a measured sheet of ± 0.02 mm counts for less', async () => {
    const stock = { measured: [4.01, 3.99, 4], minus: undefined, plus: undefined };
    const { planFile } = await reported({ thickness: 2, ...tolerance(0.103) }, { stock });
    expect(planFile?.budgets?.[0]?.byClock.parts.sheet).toBeCloseTo(0.02, 9);
  });

  test('a better rate and clock of one’s own hold it', async () => {
    const process = { rateSpread: 0.02, timing: 0.1 };
    expect((await reported({ depth: 2, ...tolerance(0.05) }, { process })).codes).toEqual([]);
  });

  test('plan.json reports each part, both sides and the share; null where nothing is allowed', async () => {
    const { planFile } = await reported({ depth: 2, plus: 0, minus: 0.1 });
    const [budget] = planFile?.budgets ?? [];
    expect(budget).toMatchObject({ level: 2, asked: { what: 'depth', plus: 0, minus: 0.1 } });
    expect(budget?.byClock).toMatchObject({
      parts: { sheet: 0, rate: 0.1, timing: 0.006563, gauge: 0 },
      tooDeep: { shift: 0, worst: 0.106563, likely: 0.100215, allowed: 0 },
      share: null,
    });
    expect(budget?.remedy.changes[0]).toBe('gauge-run');
  });
});

test('tolerance-needs-gauging: of three floors past what they are allowed the worst speaks for all, a fourth holds', () => {
  // By the clock 0.05 over at 3 mm, 0.06 over at 2 mm and 0.02 over at 1 mm, about.
  const { plan, job } = planOfFloors([
    { depth: 1, plus: 0.03, minus: 0.035 },
    { depth: 3, plus: 0.1, minus: 0.11 },
    { depth: 2, plus: 0.04, minus: 0.045 },
    { depth: 0.5, plus: 0.4, minus: 0.5 },
  ]);
  const found = checkBudget(toleranceBudgets(plan, job), { plan, process: job.process });
  const idOf = (depth: number) => plan.regions.find(({ level }) => level === depth)?.id ?? '';
  expect(found.map(({ code }) => code)).toEqual(['tolerance-needs-gauging']);
  expect(found[0]?.facts).toMatchObject({
    level: 2,
    side: 'tooDeep',
    likely: expect.closeTo(Math.sqrt(0.1 ** 2 + 3 * 0.0105 ** 2), 9),
    allowed: 0.04,
    floors: 3,
    of: 4,
  });
  expect(found[0]?.place.regions).toEqual([idOf(3), idOf(2), idOf(1)]);
  expect(found[0]?.place.at).toEqual(plan.regions.find(({ level }) => level === 2)?.label);
});
