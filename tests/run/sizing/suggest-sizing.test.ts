/** Where a sheet is planned that nobody sizes, and would better be: the plan says so, and what it says is what a sized plan comes to. */
import { describe, expect, test } from 'vitest';
import { box, circle } from '#support/drawings/small-drawing.ts';
import { plannedCover } from '#support/parts/sized-cover.ts';

const EVERYWHERE = [
  { layer: 'POCKETS', thickness: 2, plus: 0.1, minus: 0.08 },
  { layer: 'NOTCH', thickness: 2.5, plus: 0.1, minus: 0.08 },
  { layer: 'TRIM', thickness: 4, plus: 0.03, minus: 0.02 },
];

describe('M8.8 where sizing is suggested', () => {
  const suggested = async (...given: Parameters<typeof plannedCover>) => {
    const { findings } = await plannedCover(...given);
    return findings.find(({ code }) => code.startsWith('sizing-saves'));
  };

  test('sized-unasked: land too is to be thinner, by 0.10; the plan is the one of a sheet sized by 0.05 a face', async () => {
    const { planFile, findings } = await plannedCover({ requirements: EVERYWHERE });
    const told = findings.find(({ code }) => code === 'sized-unasked');
    expect(told?.facts).toEqual({
      amount: expect.closeTo(0.05, 6),
      edge: expect.closeTo(0.06, 6),
      before: 3,
      after: 2,
      minutesBefore: expect.closeTo(2.1 / 0.03, 6),
      minutesAfter: expect.closeTo(2 / 0.03 + 0.05 / 0.03, 6),
      pockets: 0,
    });
    expect(planFile?.totals.minutes).toBeCloseTo(2 / 0.03 + 0.05 / 0.03, 5);
    const asked = await plannedCover({
      requirements: EVERYWHERE,
      sizing: { amount: 0.05, faces: 'both' },
    });
    const { findings: _, ...plan } = asked.planFile ?? {};
    expect(planFile).toMatchObject(plan);
  });

  test('with an amount of 0 the sheet stays as it comes, and nothing is suggested', async () => {
    const { planFile, findings } = await plannedCover({ requirements: EVERYWHERE, sizing: { amount: 0 } });
    expect(planFile?.stages).toHaveLength(3);
    expect(planFile?.sizing).toBeUndefined();
    expect(findings.filter(({ code }) => code.startsWith('siz'))).toEqual([]);
  });

  test('nothing is sized where the sheet has no outline: of the land about the pockets nobody can ask anything', async () => {
    const job = {
      format: 'isobath-job',
      version: 1,
      drawing: 'cover.dxf',
      stock: { alloy: 'al-2024-t3', thickness: 4.1, minus: 0.06, plus: 0.04 },
      process: { bath: 'caustic-aluminium', etchFactor: 1.2, rate: 0.03 },
      requirements: EVERYWHERE.slice(0, 2),
      levels: 'fewest',
    };
    const entities = [box('POCKETS', [20, 25], [95, 90]), box('NOTCH', [160, 60], [190, 85])];
    const { planFile, findings } = await plannedCover({ job }, entities);
    expect(planFile?.stages).toHaveLength(2);
    expect(planFile?.sizing).toBeUndefined();
    expect(findings.filter(({ code }) => code.startsWith('siz'))).toEqual([]);
  });

  test('sizing-saves-stage: where the sized edge would reach a hole, it is suggested only', async () => {
    const { planFile, findings } = await plannedCover({ requirements: EVERYWHERE }, [
      box('TRIM', [0, 0], [180, 110]),
      circle('TRIM', [6.1, 50], 6),
      box('POCKETS', [20, 25], [95, 90]),
      box('NOTCH', [160, 60], [190, 85]),
    ]);
    expect(findings.find(({ code }) => code === 'sizing-saves-stage')?.facts).toEqual({
      thinner: expect.closeTo(0.1, 6),
      before: 3,
      after: 2,
      minutesBefore: expect.closeTo(2.1 / 0.03, 6),
      minutesAfter: expect.closeTo(2 / 0.03 + 0.05 / 0.03, 6),
    });
    expect(planFile?.stages).toHaveLength(3);
    expect(planFile?.sizing).toBeUndefined();
  });

  test('sized-unasked: a slot of 5.8 opens in a sheet whose land is to be thinner too', async () => {
    const slot = [box('TRIM', [0, 0], [180, 110]), box('POCKETS', [20, 25], [95, 30.8])];
    const requirements = [EVERYWHERE[0] ?? {}, { layer: 'TRIM', thickness: 4.44, plus: 0.1, minus: 0.08 }];
    const { planFile, findings } = await plannedCover({ stock: { thickness: 4.5 }, requirements }, slot);
    expect(findings.find(({ code }) => code === 'sized-unasked')?.facts).toMatchObject({ pockets: 1 });
    expect(findings.map(({ code }) => code)).not.toContain('opening-missing');
    expect(planFile?.sizing?.amount).toBeCloseTo(0.05, 6);
  });

  test('nothing is said where a depth counts from the surface, land is left as it is, or the sheet is sized', async () => {
    const [pockets = {}, notch = {}] = EVERYWHERE;
    const depth = { layer: 'TRIM', depth: 0.1, plus: 0.03, minus: 0.02 };
    expect(await suggested({ requirements: [pockets, notch, depth] })).toBeUndefined();
    expect(await suggested({ requirements: [pockets, notch] })).toBeUndefined();
    expect(await suggested({ requirements: EVERYWHERE, sizing: { amount: 0.05 } })).toBeUndefined();
  });

  test('sizing-saves-stop: a slot of 5.8 has no opening at 2.5, and one at 2.4', async () => {
    const slot = [
      box('TRIM', [0, 0], [180, 110]),
      circle('TRIM', [150, 20], 6),
      box('POCKETS', [20, 25], [95, 30.8]),
      box('NOTCH', [160, 60], [190, 85]),
    ];
    const stock = { thickness: 4.5 };
    const found = await suggested({ stock }, slot);
    expect(found?.code).toBe('sizing-saves-stop');
    // 2.5 − 2.9 / 1.2 = 0.0833: 0.09, and 0.01 more.
    expect(found?.facts).toEqual({ thinner: expect.closeTo(0.1, 9), pockets: 1 });
    const sized = await plannedCover({ stock, sizing: { amount: 0.05 } }, slot);
    expect(sized.findings.map(({ code }) => code)).not.toContain('opening-missing');
    expect(await suggested({ stock: { thickness: 4.3 } }, slot)).toBeUndefined();
  });
});
