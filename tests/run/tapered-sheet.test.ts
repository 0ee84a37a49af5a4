/** A plate of 200 × 120 whose sheet tapers from 4 to 3 mm over its length, with a pocket of 80 × 50 from x = 30 to 110. */
import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { depthsOf } from '#run/depth-job.ts';
import { etchedPart } from '#run/etched-part.ts';
import { runJob } from '#run/run-job.ts';
import { sectionOf } from '#run/section-job.ts';
import { plateDrawing } from '#support/drawings/plate-drawing.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

const TAPER = { from: [0, 0], to: [200, 0], thicknessFrom: 4, thicknessTo: 3 };
const sheetAt = (x: number) => 4 - x / 200;

async function planned(asked: object, thickness: unknown = TAPER, handoff: object = {}) {
  const run = await runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'plate.dxf',
      layers: { outline: ['EDGE'] },
      stock: { alloy: 'al-2024-t3', thickness, minus: 0.05, plus: 0.05 },
      process: { etchFactor: 1, rate: 0.025 },
      requirements: [{ layer: 'POCKET', plus: 0.1, minus: 0.1, ...asked }],
      levels: 'fewest',
      handoff,
    }),
    drawingName: 'plate.dxf',
    drawingBytes: new TextEncoder().encode(plateDrawing()),
  });
  const { plan, planFile, kit } = run;
  if (plan === undefined || planFile === undefined || run.thickness === undefined)
    throw new Error('the plan must come');
  return { ...run, planFile, part: etchedPart(plan, run.thickness, kit) };
}

const even = await planned({ thickness: 2 });

describe('a final thickness of 2 mm all over the pocket', () => {
  const { part, plan, planFile } = even;
  const cut = { from: { x: 0, y: 65 }, to: { x: 200, y: 65 } };

  test('is asked as the depth that the sheet leaves for it at each place, and not as a strip’s one depth', () => {
    expect(plan?.stages.length).toBeGreaterThan(1);
    for (const { x, target } of sectionOf(part, cut).points) {
      if (x > 31 && x < 109) expect(target).toBeCloseTo(sheetAt(x) - 2, 6);
      if (x < 29 || x > 111) expect(target).toBe(0);
    }
  });

  test('leaves of the sheet what it is thick there, less the depth', () => {
    for (const { x, depth, thickness } of sectionOf(part, cut).points)
      expect(thickness).toBeCloseTo(sheetAt(x) - depth, 6);
    const sampled = sectionOf(part, { ...cut, samples: 41 }).points;
    for (const { x, depth, thickness } of sampled) expect(thickness).toBeCloseTo(sheetAt(x) - depth, 6);
    const [land, floor, beside] = depthsOf(part, { points: Float64Array.of(150, 20, 70, 65, 250, 20) });
    expect(land).toMatchObject({ depth: 0, target: 0, thickness: 3.25 });
    expect(floor?.target).toBeCloseTo(1.65, 9);
    expect(floor?.thickness).toBeCloseTo(sheetAt(70) - (floor?.depth ?? 0), 9);
    expect(beside).toMatchObject({ target: undefined, thickness: 0 });
  });

  test('a section holds the places where a taper ends, so that straight lines between its rows are true', async () => {
    const short = { ...TAPER, from: [50, 0], to: [90, 0] };
    const { part: other } = await planned({ thickness: 2 }, short);
    const xs = sectionOf(other, cut).points.map(({ x }) => Math.round(x * 1e4) / 1e4);
    expect(xs).toContain(50);
    expect(xs).toContain(90);
    for (const { x, target } of sectionOf(other, cut).points)
      if (x > 31 && x < 109) expect(target).toBeCloseTo(2 - Math.min(1, Math.max(0, (x - 50) / 40)), 6);
  });

  test('its mass is the wedge’s, 3.5 mm thick on average, less what is removed', () => {
    const { partMass, removedMass } = planFile.totals;
    expect(partMass).toBeCloseTo(200 * 120 * 3.5 * 0.00278 - (removedMass ?? 0), 4);
  });
});

describe('a final thickness near that of the sheet', () => {
  test('sheet-thinner-than-asked: 3.7 mm where the sheet falls to 3.45 mm', async () => {
    const { findings } = await planned({ thickness: 3.7 });
    const reported = findings.find(({ code }) => code === 'sheet-thinner-than-asked');
    expect(findings.filter(({ severity }) => severity === 'stop')).toHaveLength(1);
    expect(reported?.place.at?.x).toBeCloseTo(110, 1);
    if (reported === undefined) throw new Error('it must be reported');
    expect(sayFinding(reported)).toMatchObject({ value: expect.closeTo(0.25, 6), limit: 0.1 });
    expect(sayFinding(reported).remedy).toContain('0.150 mm less');
  });

  test('within its tolerance the thin end is land', async () => {
    const { findings, plan } = await planned({ thickness: 3.5 });
    expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(plan?.stages.length).toBeGreaterThan(0);
  });

  test('sheet-thinner-than-asked also where the sheet is even over the region but too thin', async () => {
    const { findings } = await planned({ thickness: 3.7 }, { ...TAPER, from: [0, 0], to: [20, 0] });
    expect(findings.map(({ code }) => code)).toContain('sheet-thinner-than-asked');
  });
});

test('the traveller reports what is left below each floor from its thinnest to its thickest place', {
  tags: ['long'],
}, async () => {
  const { files } = await planned({ depth: 1.2 }, TAPER, { files: ['traveller'] });
  const pages = await readPdf(files.find(({ name }) => name === 'traveller.pdf')?.bytes ?? new Uint8Array());
  expect(pages[0]?.text).toContain('tapered, 4.00 mm to 3.00 mm');
  // The pocket lies from x = 30 to 110: 3.85 down to 3.45 of sheet.
  expect(pages[0]?.text).toMatch(/1\.20 .*2\.25 to 2\.65/);
});
