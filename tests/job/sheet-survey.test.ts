/** A sheet's thickness from place to place, held to least squares done the long way. */
import { describe, expect, test } from 'vitest';
import { fitSurvey, surveyDoubtAt, surveyedAt } from '#job/sheet-survey.ts';
import { isSurveyText, readSurvey } from '#job/survey-csv.ts';
import { bendAt, surveyedSheet } from '#job/surveyed-sheet.ts';
import { BASES, leastSquares, leftOut, type Reading, valueAt } from '#oracle/least-squares.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

/** Even numbers from −1 to 1: the multiplier and increment of Numerical Recipes' 32-bit generator, from memory. */
function sampler(seed = PROPERTY_SEED): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state / 2 ** 32) * 2 - 1;
  };
}

const survey = (readings: readonly Reading[]) =>
  fitSurvey(readings.map(({ x, y, z }) => ({ at: { x, y }, thickness: z })));

/** 14 places over 400 × 130 mm, somewhere on the drawing. */
function readingsOf(thickness: (x: number, y: number) => number, noise = 0): Reading[] {
  const even = sampler();
  return Array.from({ length: 14 }, () => {
    const [x, y] = [120 + 200 * even(), -40 + 65 * even()];
    return { x, y, z: thickness(x, y) + noise * even() };
  });
}

describe('M8.1 the fit', () => {
  const bent = (x: number, y: number) => 4 + 4e-4 * x - 3e-4 * y + 2e-6 * x * x - 3e-6 * x * y + 1e-6 * y * y;

  test.each(['constant', 'plane', 'quadratic'] as const)(
    '%s: terms and left-out error as by Cramer and by fits made again',
    (model) => {
      const readings = readingsOf(bent, 0.02);
      const fit = survey(readings).tried.find((each) => each.model === model);
      if (fit === undefined) throw new Error('14 readings allow every model');
      const terms = leastSquares(readings, BASES[model]);
      for (const { x, y } of readings) {
        expect(surveyedAt(fit, { x, y })).toBeCloseTo(valueAt(terms, BASES[model], x, y), 8);
      }
      expect(fit.sigma).toBeCloseTo(leftOut(readings, BASES[model]), 8);
    },
  );

  test('the model is taken that predicts left-out readings best', () => {
    const even = readingsOf(() => 3.97, 0.004);
    expect(survey(even).sigma).toBe(Math.min(...survey(even).tried.map(({ sigma }) => sigma)));
    expect(survey(readingsOf((x, y) => 4 + 4e-4 * x - 2e-4 * y, 0.004)).model).toBe('plane');
    expect(survey(readingsOf(bent, 0.004)).model).toBe('quadratic');
  });

  test('three readings in a line are one thickness with their own spread, and lack three more beside it', () => {
    const three = survey([3.91, 4, 4.06].map((z, index) => ({ x: 40 + 210 * index, y: 100, z })));
    expect(three.model).toBe('constant');
    // Mean 3.99: 0.08 below it, 0.07 above.
    expect(surveyedSheet(three)).toMatchObject({ thickness: 3.99, doubt: 0.08 });
    expect(three.lacks).toEqual({ more: 3, areInLine: true });
  });

  test('what readings lack for a plane: number, a second line, or nothing', () => {
    const row = (count: number, z: (index: number) => number, y = (_: number) => 0) =>
      survey(Array.from({ length: count }, (_, i) => ({ x: 50 * i, y: y(i), z: z(i) })));
    const sloping = (i: number) => 4 + 0.013 * i;
    expect(row(5, sloping, (i) => (i % 2) * 80).lacks).toEqual({ more: 1, areInLine: false });
    expect(row(7, sloping).lacks).toEqual({ more: 0, areInLine: true });
    expect(row(6, sloping, (i) => (i % 2) * 80).lacks).toBeUndefined();
    // An even sheet has no slope to follow: 0.02 either way is within one reading.
    expect(row(3, (i) => 4 + 0.01 * i).lacks).toBeUndefined();
  });

  test('a plane that leaves more open than the readings differ is not taken', () => {
    const bumpy = [0.05, -0.05, -0.03, 0.04, -0.02, 0.07].map((off, i) => ({
      x: 100 * (i % 3),
      y: 90 * Math.floor(i / 3),
      z: 4 + off,
    }));
    const fit = survey(bumpy);
    const mean = bumpy.reduce((sum, { z }) => sum + z, 0) / 6;
    expect(surveyedSheet(fit).doubt).toBeLessThanOrEqual(
      Math.max(...bumpy.map(({ z }) => Math.abs(z - mean))) + 1e-6,
    );
  });

  test('a model needs twice as many readings as it has coefficients, and readings that are not in a line', () => {
    const readings = readingsOf(bent);
    expect(survey(readings.slice(0, 11)).tried.map(({ model }) => model)).toEqual(['constant', 'plane']);
    expect(survey(readings.slice(0, 5)).tried.map(({ model }) => model)).toEqual(['constant']);
    const inLine = Array.from({ length: 14 }, (_, i) => ({ x: 10 * i, y: 3 * i, z: 4 + 0.001 * i }));
    expect(survey(inLine).tried.map(({ model }) => model)).toEqual(['constant']);
  });

  test('readings that fit exactly leave the fit open by the gauge alone: 2 · 0.01 √(1/n) in the middle of n of them', () => {
    const grid = [-2, -1, 0, 1, 2].flatMap((i) =>
      [-1, 0, 1].map((j) => ({ x: 30 * i, y: 20 * j, z: 4 + 1e-3 * i })),
    );
    const fit = survey(grid);
    expect(surveyDoubtAt({ ...fit, sigma: 0 }, { x: 0, y: 0 })).toBeCloseTo(0.02 / Math.sqrt(15), 9);
    expect(surveyDoubtAt(fit, { x: 300, y: 0 })).toBeGreaterThan(3 * surveyDoubtAt(fit, { x: 60, y: 20 }));
  });

  test('one reading is a sheet of that thickness, ± 0.02', () => {
    const { thickness, doubt, bow } = surveyedSheet(survey([{ x: 7, y: 9, z: 4.03 }]));
    expect([thickness, doubt, bow]).toEqual([4.03, 0.02, 0]);
  });
});

describe('M8.2 the sheet of a fit', () => {
  test('a plane is even between the ends of its readings, and held beyond', () => {
    const readings = readingsOf((x, y) => 4 + 3e-4 * x + 4e-4 * y);
    const { thickness } = surveyedSheet(survey(readings));
    if (typeof thickness === 'number') throw new Error('it slopes');
    const length = Math.hypot(thickness.to.x - thickness.from.x, thickness.to.y - thickness.from.y);
    expect((thickness.toValue - thickness.fromValue) / length).toBeCloseTo(5e-4, 8);
    expect((thickness.to.x - thickness.from.x) / length).toBeCloseTo(0.6, 6);
  });

  test('what a quadratic bends beside its plane is known place by place', () => {
    const readings = readingsOf((x) => 4 + 1e-3 * x + 4e-6 * x * x);
    const sheet = surveyedSheet(survey(readings));
    const [first] = readings;
    const at = { x: first?.x ?? 0, y: first?.y ?? 0 };
    const plane = leastSquares(readings, BASES.plane);
    expect(bendAt(sheet, at)).toBeCloseTo((first?.z ?? 0) - valueAt(plane, BASES.plane, at.x, at.y), 6);
    expect(sheet.bow).toBeGreaterThan(0);
  });
});

describe('the file beside the job', () => {
  test.each([
    ['commas', 'x,y,thickness\n1,2,4.05\n-3,4.5,3.98\n'],
    ['semicolons and decimal commas', 'X;Y;Thickness\r\n1;2;4,05\r\n-3;4,5;3,98'],
    [
      'tabs, other columns, marks and empty lines',
      '# gauge 7\nno\tthickness\ty\tx\n\n1\t4.05\t2\t1\n2\t3.98\t4.5\t-3',
    ],
  ])('is read with %s', (_, text) => {
    expect(isSurveyText(text)).toBe(true);
    expect(readSurvey(text, 'sheet.csv')).toEqual({
      value: [
        [1, 2, 4.05],
        [-3, 4.5, 3.98],
      ],
      findings: [],
    });
  });

  test.each([
    ['no column of thickness', 'x,y,t\n1,2,4', 1],
    ['a word for a figure', 'x,y,thickness\n1,2,4\n1,2,four', 3],
    ['a thickness of nothing', 'x,y,thickness\n1,2,0', 2],
    ['no readings', 'x,y,thickness\n', 1],
  ])('survey-unclear: %s', (_, text, line) => {
    const { value, findings } = readSurvey(text, 'sheet.csv');
    expect(value).toBeUndefined();
    expect(findings).toMatchObject([{ code: 'survey-unclear', place: { file: 'sheet.csv', line } }]);
  });
});
