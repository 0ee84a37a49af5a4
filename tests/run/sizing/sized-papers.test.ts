/** The papers of a sized part, read back by pdf.js; both faces of one; one drawn far from its origin; a surveyed one. */

import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { box, circle, dxf } from '#support/drawings/small-drawing.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { plannedCover } from '#support/parts/sized-cover.ts';
import { LID, requirements, runLid, stops } from '#support/parts/two-faced-lid.ts';

const process = { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.0297 };

test('the traveller sizes and gauges between receiving and cleaning; scribe.dxf has the outline that is left', {
  tags: ['long'],
}, async () => {
  const { files } = await runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'lid.dxf',
      layers: { outline: ['TRIM'] },
      stock: { alloy: 'al-2024-t3', thickness: 4.13, minus: 0.06, plus: 0.04 },
      process: { ...process, sizing: { to: 4.03, faces: 'one' } },
      requirements: [{ layer: 'POCKETS', depth: 1.2 }],
      handoff: { files: ['traveller'] },
    }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(
      dxf({ insunits: 4, entities: [box('TRIM', [0, 0], [180, 110]), box('POCKETS', [20, 25], [95, 90])] }),
    ),
  });
  const bytesOf = (name: string) => files.find((file) => file.name === name)?.bytes ?? new Uint8Array();
  const [cover = '', steps = ''] = (await readPdf(bytesOf('traveller.pdf'))).map(({ text }) =>
    text.replaceAll(/\s+/g, ' '),
  );
  expect(cover).toContain('Sheet as measured once sized');
  expect(cover).toContain('ordered 4.13 mm +0.04 mm −0.06 mm');
  // 0.1 / 0.0297
  expect(steps).toMatch(/10 Receive .* 12 Size .* 3\.4 min .* 14 Gauge it sized .* 20 Clean /);
  expect(steps).toContain('by the coupon (mean − 4.03 mm) ÷ rate');
  expect(steps).toContain('Far face covered');
  const drawn = parseString(new TextDecoder().decode(bytesOf('scribe.dxf'))).entities;
  const outline = drawn.find(({ layer }) => layer === 'OUTLINE');
  const xs = (outline?.vertices ?? []).map(({ x }) => x);
  expect([Math.min(...xs), Math.max(...xs)]).toEqual([0.1, 179.9]);
});

test('both faces of a sheet move in alike, and what both tell of its edge is said once', async () => {
  const hole = circle('TRIM', [3.4, 60], 3);
  const result = await runLid(
    { requirements, process: { ...process, sizing: { amount: 0.25 } } },
    [...LID, hole],
    {},
  );
  expect(stops(result)).toEqual([]);
  expect(result.findings.filter(({ code }) => code === 'sizing-meets-hole')).toHaveLength(1);
  const { planFile } = result;
  const areaOf = (face: string) =>
    planFile?.regions.filter((each) => each.face === face).reduce((sum, { area }) => sum + area, 0) ?? 0;
  expect(areaOf('near')).toBeCloseTo(areaOf('far'), 6);
  expect(areaOf('near')).toBeLessThan(199.5 * 119.5);
});

describe('M8.7 where the drawing lies far out', () => {
  test('the plan is the same, moved', async () => {
    const far = [
      box('TRIM', [700_000, 300_000], [700_180, 300_110]),
      circle('TRIM', [700_150, 300_020], 6),
      box('POCKETS', [700_020, 300_025], [700_095, 300_090]),
      box('NOTCH', [700_160, 300_060], [700_190, 300_085]),
    ];
    const [there, here] = [
      await plannedCover({ sizing: { to: 4 } }, far),
      await plannedCover({ sizing: { to: 4 } }),
    ];
    expect(there.planFile?.sizing?.removedVolume).toBeCloseTo(here.planFile?.sizing?.removedVolume ?? 0, 3);
    expect(there.planFile?.totals.minutes).toBe(here.planFile?.totals.minutes);
    const xs = there.planFile?.outline?.vertices.map(([x]) => x) ?? [];
    expect(Math.max(...xs)).toBeCloseTo(700_179.94, 5);
  });
});

describe('M8.7 a surveyed sheet', () => {
  test('keeps what the survey shows: the depths are less by the sizing alike', async () => {
    const survey = Array.from({ length: 18 }, (_, i) => {
      const [x, y] = [10 + 32 * (i % 6), 10 + 45 * Math.floor(i / 6)];
      return [x, y, 4.1 + 0.0006 * (x - 90)];
    });
    const stock = { minus: undefined, plus: undefined, survey };
    const asked = async (sizing?: object) => {
      const { planFile } = await plannedCover({ stock, ...(sizing === undefined ? {} : { sizing }) });
      const pockets = planFile?.regions.filter(({ layer }) => layer === 'POCKETS') ?? [];
      return { pockets: pockets.map((each) => each.asked.depth), planFile };
    };
    const [bare, sized] = [await asked(), await asked({ amount: 0.03 })];
    expect(sized.planFile?.sizing?.before.most).toBeCloseTo(
      (sized.planFile?.sizing?.after.most ?? 0) + 0.06,
      6,
    );
    expect(Math.max(...bare.pockets) - Math.max(...sized.pockets)).toBeCloseTo(0.06, 2);
    // The readings stand as they were taken.
    expect(sized.planFile?.survey?.readings).toEqual(bare.planFile?.survey?.readings);
  });
});

test('planned again with another depth or amount the plan is the one of a first run', async () => {
  const memory = createRunMemory();
  const input = (sizing: object | undefined, depth: number) => ({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      drawing: 'lid.dxf',
      layers: { outline: ['TRIM'] },
      stock: { alloy: 'al-2024-t3', thickness: 4.13, minus: 0.06, plus: 0.04 },
      process: { ...process, ...(sizing === undefined ? {} : { sizing }) },
      requirements: [{ layer: 'POCKETS', depth }],
    }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(
      dxf({ insunits: 4, entities: [box('TRIM', [0, 0], [180, 110]), box('POCKETS', [20, 25], [95, 90])] }),
    ),
  });
  for (const each of [
    input({ amount: 0.05 }, 1.2),
    input({ amount: 0.05 }, 1.4),
    input({ amount: 0.07 }, 1.4),
    input(undefined, 1.4),
  ]) {
    const again = await runJob(each, { memory, withoutFiles: true });
    expect(again.planFile).toEqual((await runJob(each, { withoutFiles: true })).planFile);
  }
});
