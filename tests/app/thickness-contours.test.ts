/** Lines of equal thickness over a sheet of known shape: on a slope straight and evenly spaced, on a bow where its equation puts them. */
import { describe, expect, test } from 'vitest';
import { surveyLabels } from '#app/views/sheet/survey/survey-labels.ts';
import { thicknessContours } from '#app/views/sheet/survey/thickness-contours.ts';

const sheet = { minX: -300, minY: 40, maxX: 700, maxY: 460 };
/** 3.92 at x = -300, 4.08 at x = 700. */
const slope = { model: 'plane', about: { x: 200, y: 250 }, scale: 500, terms: [4, 0.08, 0] } as const;
/** Thickest on the line x = 200, thinner by 0.07 at its ends. */
const bow = {
  model: 'quadratic',
  about: { x: 200, y: 250 },
  scale: 500,
  terms: [4.03, 0, 0, -0.07, 0, 0],
} as const;

const isInside = ({ x, y }: { x: number; y: number }) =>
  x > sheet.minX && x < sheet.maxX && y > sheet.minY && y < sheet.maxY;

describe('a sheet of even slope', () => {
  const lines = thicknessContours(slope, sheet, 'mm');

  test('has lines at each round figure from thin to thick', () => {
    const within = lines.map(({ thickness }) => thickness).filter((each) => each > 3.92 && each < 4.08);
    expect(within.map((each) => Number(each.toFixed(6)))).toEqual([3.94, 3.96, 3.98, 4, 4.02, 4.04, 4.06]);
  });

  test('each straight, where the slope reaches its figure', () => {
    for (const { thickness, rings } of lines) {
      const along = 200 + ((thickness - 4) / 0.08) * 500;
      for (const { x } of rings.flat().filter(isInside)) expect(Math.abs(x - along)).toBeLessThan(1e-6);
    }
  });

  test('every fifth stronger, counted from nothing', () => {
    const strong = lines.filter(({ isFifth }) => isFifth).map(({ thickness }) => thickness.toFixed(2));
    expect(strong).toEqual(['4.00']);
  });

  test('in inches at round figures of inches', () => {
    const figures = thicknessContours(slope, sheet, 'in').map(({ thickness }) => thickness / 25.4);
    for (const each of figures)
      expect(Math.abs(each / 0.0005 - Math.round(each / 0.0005))).toBeLessThan(1e-6);
    expect(figures.length).toBe(15);
  });
});

test('a bowed sheet has its lines where its equation puts them', () => {
  for (const { thickness, rings } of thicknessContours(bow, sheet, 'mm')) {
    for (const { x } of rings.flat().filter(isInside)) {
      expect(Math.abs(4.03 - 0.07 * ((x - 200) / 500) ** 2 - thickness)).toBeLessThan(4e-5);
    }
  }
});

test('an even sheet has none', () => {
  expect(thicknessContours({ ...slope, model: 'constant', terms: [4] }, sheet, 'mm')).toEqual([]);
});

test('figures of readings come before those of lines, and none lies over another', () => {
  const lines = thicknessContours(slope, sheet, 'mm');
  const readings = [
    { at: { x: -250, y: 90 }, thickness: 3.928 },
    { at: { x: -249, y: 92 }, thickness: 3.927 },
    { at: { x: 640, y: 410 }, thickness: 4.07 },
  ];
  const labels = surveyLabels({ readings, lines, outline: null, pixelsPerMm: 0.6, unit: 'mm' });
  expect(labels.filter(({ isReading }) => isReading).map(({ says }) => says)).toEqual(['3.93', '4.07']);
  const lined = labels.filter(({ isReading }) => !isReading);
  expect(lined.length).toBeGreaterThan(4);
  for (const a of labels) {
    for (const b of labels) {
      if (a === b) continue;
      const apart = [Math.abs(a.at.x - b.at.x) * 0.6, Math.abs(a.at.y - b.at.y) * 0.6] as const;
      expect(apart[0] >= 46 || apart[1] >= 18).toBe(true);
    }
  }
});
