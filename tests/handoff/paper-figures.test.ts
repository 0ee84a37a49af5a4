/** Figures as papers print them, against limits worked out by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inBoth, paperFigures } from '#handoff/paper-figures.ts';

const both = paperFigures('both', 'mm');
const inches = paperFigures('job', 'in');

describe('a tolerance', () => {
  test('is printed as given: 0.05 and 0.075 mm, 0.002 in', () => {
    expect(both.tolerances(0.05)[0]).toBe('0.05');
    expect(both.tolerances(0.075)[0]).toBe('0.075');
    expect(inches.toleranceSaid(0.0508)).toBe('0.0020 in');
  });

  test('never looks wider than it is: 0.05 mm is 0.001968 in, 0.0669 mm 0.002634 in', () => {
    expect(both.toleranceSaid(0.05)).toBe('0.05 mm, 0.0019 in');
    expect(both.tolerances(0.0669)).toEqual(['0.066', '0.0026']);
  });

  test('any loses less than its last place, and gains nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 3, noNaN: true }), (tolerance) => {
        const [millimetres, inch] = both.tolerances(tolerance).map(Number);
        for (const [printed = 0, place] of [
          [millimetres, 0.001],
          [(inch ?? 0) * 25.4, 0.0001 * 25.4],
        ] as const) {
          expect(printed).toBeLessThanOrEqual(tolerance + 1e-9);
          expect(printed).toBeGreaterThan(tolerance - place - 1e-9);
        }
      }),
    );
  });
});

test('limits rounded inward leave three quarters of the tolerance at least, from a hundredth of a millimetre on', () => {
  const limits = fc.record({
    nominal: fc.double({ min: 0.3, max: 900, noNaN: true }),
    tolerance: fc.double({ min: 0.0102, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(limits, ({ nominal, tolerance }) => {
      const least = both.lengths(nominal - tolerance, { tolerance, round: 'up' }).map(Number);
      const most = both.lengths(nominal + tolerance, { tolerance, round: 'down' }).map(Number);
      [1, 25.4].forEach((unit, index) => {
        const [low, high] = [(least[index] ?? 0) * unit, (most[index] ?? 0) * unit];
        expect(low).toBeGreaterThanOrEqual(nominal - tolerance - 1e-9 * unit);
        expect(high).toBeLessThanOrEqual(nominal + tolerance + 1e-9 * unit);
        expect(low - nominal + tolerance).toBeLessThanOrEqual(0.2501 * tolerance);
        expect(nominal + tolerance - high).toBeLessThanOrEqual(0.2501 * tolerance);
      });
    }),
  );
});

test('a thousandth that the job gives is printed, one that is worked out is not', () => {
  expect(both.said(3.175, { isGiven: true })).toBe('3.175 mm, 0.1250 in');
  expect(both.said(3.17, { isGiven: true })).toBe('3.17 mm, 0.1248 in');
  expect(both.said(1.93764, { isGiven: true })).toBe('1.94 mm, 0.0763 in');
  expect(both.said(3.175 - 0.024)).toBe('3.15 mm, 0.1241 in');
});

test('a bar of whole millimetres has its inches where the papers have inches', () => {
  expect(inBoth(100, inches)).toBe('100 mm (3.937 in)');
  expect(inBoth(50, both)).toBe('50 mm (1.969 in)');
  expect(inBoth(50, paperFigures('job', 'mm'))).toBe('50 mm');
});
