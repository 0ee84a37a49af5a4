/** Edges, lands and fillets of a hand-made part, and the sheet that lists them, read back by pdf.js. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lineBudgets } from '#checks/line-budget.ts';
import { type InspectionItem, inspectionItems } from '#handoff/inspection/inspection-items.ts';
import { lineBudgetRecord } from '#handoff/line-budget-record.ts';
import { makePlan } from '#plan/make-plan.ts';
import { runJob } from '#run/run-job.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

const part = partOf({
  sheet: rectangle(10, 5, 210, 125),
  outlines: [rectangle(30, 25, 90, 85), rectangle(106, 40, 170, 100), rectangle(30, 101, 90, 118)],
});
const plan = makePlan({
  part,
  asked: askedAt(part, [
    [60, 50, 3],
    [130, 60, 1.8],
    [60, 110, 3],
  ]),
  job: plainJob(),
});
/** Moved by the factor, ± 0.1, and by the cut, ± 0.2 mm, alone. */
function budgetsOf(lineTolerance?: number) {
  const plain = plainJob();
  const scribing = { ...plain.process.scribing, cut: 0.2 };
  const still = { rateSpread: 0, timing: 0, factorSpread: 0.1, scribing };
  const rules = { ...plain.rules, ...(lineTolerance === undefined ? {} : { lineTolerance }) };
  return lineBudgets(plan, { process: { ...plain.process, ...still }, rules }).map(lineBudgetRecord);
}

const deep = plan.regions.find(({ label, level }) => level === 3 && label.y < 90)?.id;
const other = plan.regions.find(({ level }) => Math.abs(level - 1.8) < 1e-9)?.id;
const above = plan.regions.find(({ label, level }) => level === 3 && label.y > 90)?.id;

test('edges are counted from the sheet’s own left and lower edge, lands between sides that face each other', () => {
  const items = inspectionItems(plan, budgetsOf()).map(({ what, nominal }) => [what, nominal]);
  const first = plan.stages[0]?.regions[0] === deep ? deep : above;
  const lower = first === deep ? 20 : 96;
  expect(items).toEqual(
    expect.arrayContaining([
      [`D1 to left edge of ${first}`, 20],
      [`D2 to lower edge of ${first}`, lower],
      [`D1 to left edge of ${other}`, 96],
      [`D2 to lower edge of ${other}`, 35],
      // 16 mm either way between the deep floors and to the one beside them.
      [
        `land between ${deep} and ${[above, other].find((id) => items.some(([what]) => what === `land between ${deep} and ${id}`))}`,
        16,
      ],
      [`fillet at the foot of ${first}`, 3],
      [`fillet at the foot of ${other}`, 1.8],
    ]),
  );
});

describe('± of an edge, and of a land that of both its edges', () => {
  const toleranceOf = (items: readonly InspectionItem[], pick: (item: InspectionItem) => boolean) =>
    items.find(pick)?.tolerance ?? 0;
  const ofDeep = ({ what }: InspectionItem) => what.startsWith('D1') && !what.endsWith(`${other}`);

  test('where the drawing gives none, the root-sum-square of factor and cut: 0.1 · 3 mm and 0.2 mm', () => {
    const items = inspectionItems(plan, budgetsOf());
    const [edge, shallow] = [Math.hypot(0.3, 0.2), Math.hypot(0.18, 0.2)];
    // And the little that a gauge leaves open of the depth.
    expect(toleranceOf(items, ofDeep)).toBeGreaterThan(edge);
    expect(toleranceOf(items, ofDeep)).toBeLessThan(edge + 0.001);
    const land = toleranceOf(items, ({ kind }) => kind === 'land');
    const off = [Math.hypot(edge, edge), Math.hypot(edge, shallow)].map((each) => land - each);
    expect(off.some((each) => each > 0 && each < 0.002)).toBe(true);
  });

  test('where it gives one, that', () => {
    expect(toleranceOf(inspectionItems(plan, budgetsOf(0.4)), ofDeep)).toBe(0.4);
  });
});

test('the sheet has every row with least and most, in inches too, and as many balloons', {
  tags: ['long'],
}, async () => {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const handoff = {
    files: ['inspection'],
    units: 'both',
    heading: { part: 'GP-771', drawing: 'GP-700', revision: 'D' },
  };
  const { files } = await runJob({
    jobText: JSON.stringify({ ...job, handoff }),
    drawingName: job.drawing,
    drawingBytes: readFileSync(`samples/${job.drawing}`),
  });
  const pages = await readPdf(
    files.find(({ name }) => name === 'inspection-sheet.pdf')?.bytes ?? new Uint8Array(),
  );
  const text = pages
    .map((page) => page.text)
    .join(' ')
    .replaceAll(/\s+/g, ' ');
  expect(text).toContain('GP-700 rev D');
  // 1.06 ± 0.08: 0.98 is 0.03858 in, 1.14 is 0.04488 in.
  expect(text).toMatch(/Thickness floor of R02 1\.06 0\.0417 0\.08 0\.0031 0\.98 0\.0386 1\.14 0\.0448/);
  const rows = [...text.matchAll(/(Thickness|Edge|Land|Fillet) /g)].length;
  for (let number = 1; number <= rows - 2; number++) {
    // Once in its balloon and once in its row.
    expect(
      pages.flatMap(({ words }) => words).filter((word) => word.text === String(number)).length,
    ).toBeGreaterThanOrEqual(2);
  }
});

test('one column, one number of places; and the usual ± is not called the drawing’s', {
  tags: ['long'],
}, async () => {
  const sheetOf = async (tolerance: object) => {
    const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
    const requirements = job.requirements.map(({ plus, minus, ...asked }: Record<string, unknown>) => ({
      ...asked,
      ...tolerance,
    }));
    const { files } = await runJob({
      jobText: JSON.stringify({ ...job, requirements, handoff: { files: ['inspection'] } }),
      drawingName: job.drawing,
      drawingBytes: readFileSync(`samples/${job.drawing}`),
    });
    const bytes = files.find(({ name }) => name === 'inspection-sheet.pdf')?.bytes ?? new Uint8Array();
    return (await readPdf(bytes)).map(({ text }) => text.replaceAll(/\s+/g, ' ')).join(' ');
  };
  const usual = await sheetOf({});
  expect(usual).toContain(
    'where it says “usual” the job gives none, and ± 0.05 mm stands in (common practice)',
  );
  const rows = [
    ...usual.matchAll(/(floor of|edge of|foot of|and) R\d+ ([\d.]+ [\d.]+ (?:usual )?[\d.]+ [\d.]+)/g),
  ];
  expect(rows.length).toBeGreaterThan(8);
  for (const [, what, figures = ''] of rows) {
    const words = figures.split(' ');
    // Said where the tolerance stands, and of floors alone.
    expect(words.includes('usual')).toBe(what === 'floor of');
    for (const figure of words.filter((word) => word !== 'usual')) expect(figure).toMatch(/^\d+\.\d\d$/);
  }
  const given = await sheetOf({ plus: 0.07, minus: 0.06 });
  expect(given).toContain('± of thickness: the drawing’s.');
  expect(given).not.toContain('usual');
});
