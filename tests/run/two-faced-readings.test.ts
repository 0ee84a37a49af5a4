/** Readings of a run that etches both faces: depths of either, and thicknesses, which are the sheet less both (M7.1). */
import { beforeAll, describe, expect, test } from 'vitest';
import { correctRun } from '#run/correct-run.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

let plans: { readonly even: string; readonly between: string };
async function planText(job: object) {
  const { files } = await runLid(job, LID);
  return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
}
beforeAll(async () => {
  plans = {
    even: await planText({ requirements }),
    // 2.2 mm between both faces at ROUND, of which the near one takes 0.7 of the 1.8 mm that go.
    between: await planText({
      layers: { outline: ['TRIM'], far: ['BACK'], both: ['ROUND'] },
      requirements: [
        { layer: 'POCKETS', depth: 0.7, plus: 0.1, minus: 0.1 },
        { layer: 'ROUND', thickness: 2.2, plus: 0.09, minus: 0.09, face: 'both', split: 0.7 },
        { layer: 'BACK', depth: 1.1, plus: 0.1, minus: 0.1, face: 'far' },
      ],
    }),
  };
});

const correct = (rows: readonly string[], of = plans.even) =>
  correctRun({ planText: of, readingsText: rows.join('\n'), recordText: undefined });
/** ROUND, 0.7 mm deep and opened in stage 2, over the far pocket, 1.2 mm deep and open from stage 1 on. */
const BOTH = '150,62';
/** Land over the far pocket. */
const FAR_ONLY = '110,25';
const minutesOf = (stage: number) => JSON.parse(plans.even).stages[stage - 1].minutes as number;

test('a depth on the far face gives the rate as one on the near face does', () => {
  // Level 1.2 is bare for 16.84 of its minutes in the first stage: 0.5 mm as planned, 0.49 read.
  const rates = ['R02', 'F02'].map(
    (region) => correct(['stage,region,depth', `1,${region},0.49`]).corrected?.stages[0]?.rate?.value,
  );
  expect(rates[0]).toBeCloseTo(0.0297 * 0.98, 4);
  expect(rates[1]).toBe(rates[0]);
});

describe('M7.1 a thickness over floors of both faces is the sheet less both', () => {
  const RATE = 0.0288;
  const run = () => {
    const [first, second] = [minutesOf(1), minutesOf(2)];
    // Only the far floor is open in stage 1, both in stage 2.
    return {
      sheet: 4.07,
      afterOne: 4.07 - RATE * first,
      afterTwo: 4.07 - RATE * (first + 2 * second),
      deepFar: RATE * (first + second),
    };
  };

  test('it gives the rate that both were etched at', () => {
    const { sheet, afterOne, afterTwo } = run();
    const { corrected, findings } = correct([
      'stage,x,y,thickness',
      `0,${BOTH},${sheet}`,
      `1,${BOTH},${afterOne}`,
      `2,${BOTH},${afterTwo}`,
    ]);
    expect(findings.filter(({ code }) => code.startsWith('reading'))).toEqual([]);
    expect(corrected?.rate.value).toBeCloseTo(RATE, 4);
    expect(corrected?.stages.map(({ rate }) => rate?.value)).toEqual([
      expect.closeTo(RATE, 4),
      expect.closeTo(RATE, 4),
    ]);
  });

  test('it says twice as much of a stage in which both are open as a depth of one', () => {
    const { sheet, afterOne, afterTwo, deepFar } = run();
    const before = [`0,${BOTH},${sheet},`, `1,${BOTH},${afterOne},`];
    const within = (last: string) =>
      correct(['stage,x,y,thickness,depth', ...before, last]).corrected?.stages[1]?.rate?.within ?? 0;
    const both = within(`2,${BOTH},${afterTwo},`);
    const one =
      correct([
        'stage,region,x,y,thickness,depth',
        ...before.map((row) => row.replace(',', ',,')),
        `2,F02,,,,${deepFar}`,
      ]).corrected?.stages[1]?.rate?.within ?? 0;
    // Two readings of 0.010 mm over twice the minutes, and the like over once.
    expect(both / one).toBeGreaterThan(0.4);
    expect(both / one).toBeLessThan(0.65);
  });

  test('by region it is taken at its label, from whichever face', () => {
    const { sheet, afterTwo } = run();
    const rates = ['R01', 'F02'].map(
      (id) =>
        correct(['stage,region,thickness', `0,${id},${sheet}`, `2,${id},${afterTwo}`]).corrected?.rate.value,
    );
    expect(rates[0]).toBeCloseTo(RATE, 4);
    expect(rates[1]).toBeCloseTo(rates[0] ?? 0, 9);
  });

  test('over land it is the far floor’s alone', () => {
    const { sheet, deepFar } = run();
    const { corrected, readings } = correct([
      'stage,x,y,thickness',
      `0,${FAR_ONLY},${sheet}`,
      `2,${FAR_ONLY},${sheet - deepFar}`,
    ]);
    expect(readings?.map(({ region, behind }) => [region, behind])).toEqual([
      ['F02', undefined],
      ['F02', undefined],
    ]);
    expect(corrected?.rate.value).toBeCloseTo(RATE, 4);
  });

  test('what is foreseen to be left is less by what both take', () => {
    const { sheet, afterOne } = run();
    const { corrected } = correct(['stage,x,y,thickness', `0,${BOTH},${sheet}`, `1,${BOTH},${afterOne}`]);
    const round = corrected?.regions.find(({ id }) => id === 'R01');
    const back = corrected?.regions.find(({ id }) => id === 'F02');
    expect(round?.thickness?.value).toBeCloseTo(
      sheet - (round?.depth.value ?? 0) - (back?.depth.value ?? 0),
      2,
    );
  });

  test('reading-in-question: one that forgets the far face', () => {
    const { sheet } = run();
    const { findings } = correct(['stage,x,y,thickness', `0,${BOTH},${sheet}`, `2,${BOTH},${sheet - 0.7}`]);
    const asked = findings.find(({ code }) => code === 'reading-in-question');
    expect(asked?.facts).toMatchObject({
      read: expect.closeTo(sheet - 0.7, 9),
      expected: expect.closeTo(sheet - 1.9, 1),
    });
  });

  test('reading-off-floor: where a wall of the other face lies behind it', () => {
    // The far pocket's wall is at x = 105; the near one reaches to 90, and ROUND from 129 to 171.
    const { findings } = correct(['stage,region,x,y,thickness', '2,R03,105.5,60,3.4', '2,R01,133.5,62,2.2']);
    expect(
      findings.flatMap(({ code, facts, place }) =>
        code === 'reading-off-floor' ? [[place.line, facts]] : [],
      ),
    ).toEqual([[2, { region: 'R03', why: 'behind' }]]);
  });

  test('reading-off-floor: a place that is not in the region that the row names', () => {
    const { findings } = correct(['stage,region,x,y,depth', '2,R02,150,62,0.7']);
    expect(findings.find(({ code }) => code === 'reading-off-floor')?.facts).toEqual({
      region: 'R02',
      why: 'wall',
    });
  });
});

describe('M9.3 of what the sheet is thicker than nominal, a final thickness between both faces', () => {
  test('asks each face for its share, whichever was named', () => {
    const { regions } = JSON.parse(plans.between);
    const round = (face: string) =>
      regions.find((each: { layer: string; face: string }) => each.layer === 'ROUND' && each.face === face)
        .id;
    for (const id of [round('near'), round('far')]) {
      const { corrected } = correct(['stage,region,thickness', `0,${id},4.18`], plans.between);
      const askedOf = (face: string) =>
        corrected?.regions.find((each) => each.id === round(face))?.asked.depth ?? 0;
      const [near, far] = [askedOf('near') - 0.7, askedOf('far') - 1.1];
      // 4.18 by a gauge of 0.010 mm, and 4 ± 0.23 by the sheet's tolerance: half a percent of 0.18 is believed of the latter.
      expect(near + far).toBeCloseTo(0.18, 2);
      expect(near / far).toBeCloseTo(0.7 / 1.1, 6);
    }
  });
});
