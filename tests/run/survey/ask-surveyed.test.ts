/** What a sheet that bends asks of a floor of a final thickness (M8.2), by hand: each place has its own interval, and all of them together what they share. */
import { describe, expect, test } from 'vitest';
import { roomForRun } from '#checks/tolerance-budget.ts';
import type { Job } from '#job/job.ts';
import { fitSurvey, surveyDoubtAt } from '#job/sheet-survey.ts';
import { surveyedSheet } from '#job/surveyed-sheet.ts';
import type { Asked, RegionId } from '#part/part.ts';
import { askSurveyed } from '#run/survey/ask-surveyed.ts';
import { surveyRecord } from '#run/survey/survey-record.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

const COLUMNS = Array.from({ length: 9 }, (_, i) => 8 + 48 * i);
const ROWS = [6, 42, 78, 114];
const readings = (thickness: (x: number, y: number) => number) =>
  COLUMNS.flatMap((x) => ROWS.map((y) => ({ at: { x, y }, thickness: thickness(x, y) })));

/** Bends by 0.4 µm a square millimetre off x = 200; its best plane is even. */
const BOW = 4e-6;
const bowed = readings((x) => 4 + BOW * (x - 200) ** 2);
const mean = COLUMNS.reduce((sum, x) => sum + (x - 200) ** 2, 0) / COLUMNS.length;
const bend = (off: number) => BOW * (off ** 2 - mean);

/** One floor from x = 120 to 180: its bends lie between those 20 mm and 80 mm off the middle. */
const part = partOf({ sheet: rectangle(0, 0, 400, 120), outlines: [rectangle(120, 10, 180, 100)] });
const floor = part.regions.find(({ area }) => area < 6000)?.id ?? '';

function askFor(asked: Asked, of = bowed, levels: Job['levels'] = 'fewest') {
  const surveyed = { ...surveyedSheet(fitSurvey(of)), nominal: 4 };
  const job = { ...plainJob(), levels };
  const stock = { ...job.stock, thickness: surveyed.thickness, surveyed };
  const all = new Map<RegionId, Asked>([[floor, asked]]);
  const { face, findings } = askSurveyed({ part, asked: all }, { ...job, stock });
  return { own: face.asked.get(floor), findings, surveyed, process: job.process };
}
const left = (plus: number, minus: number, more: Partial<Asked> = {}): Asked => ({
  depth: 2,
  plus,
  minus,
  asThickness: true,
  ...more,
});

describe('M8.2 a floor where the sheet bends by 0.024 mm', () => {
  test('accepts from the most that any place asks to the least that any allows', () => {
    const { own, findings } = askFor(left(0.08, 0.05));
    expect(findings).toEqual([]);
    const { depth = 0, plus = 0, minus = 0 } = own ?? {};
    expect(depth - minus).toBeCloseTo(2 + bend(80) - 0.05, 6);
    expect(depth + plus).toBeCloseTo(2 + bend(20) + 0.08, 6);
    // Both sides shrink alike.
    expect(plus / minus).toBeCloseTo(0.08 / 0.05, 6);
  });

  test('survey-bends-too-much: a fifth of the tolerance, about the middle of the bend', () => {
    const { own, findings } = askFor(left(0.012, 0.008));
    expect(own).toMatchObject({
      depth: expect.closeTo(2 + (bend(20) + bend(80)) / 2, 6),
      plus: expect.closeTo(0.0024, 9),
      minus: expect.closeTo(0.0016, 9),
    });
    const { label } = part.regions.find(({ id }) => id === floor) ?? {};
    expect(findings.map(({ code, facts, place }) => [code, facts, place])).toEqual([
      [
        'survey-bends-too-much',
        { bend: expect.closeTo(BOW * (80 ** 2 - 20 ** 2), 6), tolerance: 0.02 },
        { at: label, regions: [floor] },
      ],
    ]);
  });

  test('an exact thickness bends too much as well', () => {
    const { own, findings } = askFor(left(0, 0));
    expect(findings.map(({ code }) => code)).toEqual(['survey-bends-too-much']);
    expect([own?.plus, own?.minus]).toEqual([0, 0]);
  });

  test('of tapers the first is moved by as much, the others stay', () => {
    const taper = (fromValue: number, toValue: number) => ({
      from: { x: 120, y: 0 },
      to: { x: 180, y: 0 },
      fromValue,
      toValue,
    });
    const { own } = askFor(left(0.08, 0.05, { tapers: [taper(1.4, 1.7), taper(0.5, 0.4)] }));
    const by = (own?.depth ?? 0) - 2;
    expect(Math.abs(by)).toBeGreaterThan(1e-3);
    expect(own?.tapers?.map(({ fromValue, toValue }) => [fromValue, toValue])).toEqual([
      [expect.closeTo(1.4 + by, 9), expect.closeTo(1.7 + by, 9)],
      [0.5, 0.4],
    ]);
  });
});

describe('M8.2 what levels leave to the run', () => {
  test('of a final thickness what the survey may be off besides, of a depth the run alone', () => {
    const { own, surveyed, process } = askFor(left(0.08, 0.05));
    expect(own?.reserve).toBeCloseTo(roomForRun(2, process, surveyed.doubt), 12);
    const depth = { depth: 1.7, plus: 0.08, minus: 0.05 };
    expect(askFor(depth).own).toEqual({ ...depth, reserve: roomForRun(1.7, process, 0) });
  });

  test('nothing where the engineer gives the levels', () => {
    expect(askFor(left(0.08, 0.05), bowed, [2.4]).own).not.toHaveProperty('reserve');
  });

  test('land is asked nothing', () => {
    const land = left(0.1, 0.1, { depth: 0 });
    expect(askFor(land).own).toEqual(land);
  });

  test('a sheet that is even asks what was asked', () => {
    const { own } = askFor(
      left(0.08, 0.05),
      readings((x) => 4 + 1e-4 * x),
    );
    expect(own).toMatchObject(left(0.08, 0.05));
  });
});

test('survey-does-not-reach: by how much more the thickness is in doubt there than among the readings', () => {
  const near = bowed.filter(({ at }) => at.x < 70);
  const { findings, surveyed } = askFor(left(0.3, 0.3), near);
  const doubts = [120, 180].flatMap((x) => [10, 100].map((y) => surveyDoubtAt(surveyed.survey, { x, y })));
  const [finding] = findings.filter(({ code }) => code === 'survey-does-not-reach');
  expect(finding).toMatchObject({
    facts: { doubt: expect.closeTo(Math.max(...doubts), 9), among: surveyed.doubt },
    place: { regions: [floor] },
  });
});

test('without a survey all stays as asked', () => {
  const asked = new Map([[floor, left(0.08, 0.05)]]);
  expect(askSurveyed({ part, asked }, plainJob())).toEqual({ face: { part, asked }, findings: [] });
});

test('a survey in plan.json: readings with what the fit is off at each, in the drawing’s frame', () => {
  const surveyed = surveyedSheet(
    fitSurvey(readings((x, y) => 4 + 1e-4 * x - 2e-4 * y + (x === 8 ? 0.004 : 0))),
  );
  const origin = { x: 1000, y: -500 };
  const { survey } = surveyed;
  const record = surveyRecord(surveyed, { regions: part.regions, gain: undefined, origin });
  expect(record.about).toEqual([1200, -440]);
  expect(record.readings).toHaveLength(36);
  const [first] = record.readings;
  expect(first).toMatchObject({ at: [1008, -494], thickness: expect.closeTo(4.0036, 6) });
  // The four at x = 8 are 0.004 too thick: the fit comes out below them.
  expect(first?.off).toBeGreaterThan(0.001);
  expect(record.tried.map(({ model, sigma }) => [model, sigma])).toEqual(
    survey.tried.map(({ model, sigma }) => [model, expect.closeTo(sigma, 6)]),
  );
  const bay = record.regions.find(({ id }) => id === floor);
  const { label = { x: 0, y: 0 } } = part.regions.find(({ id }) => id === floor) ?? {};
  expect(bay?.thickness).toBeCloseTo(4 + 1e-4 * label.x - 2e-4 * label.y, 2);
  expect(bay?.doubt).toBeGreaterThan(0);
});
