/** What is reported of a run's readings: place and figures of each finding, by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Finding, FindingCode } from '#findings/finding.ts';
import { correctRun } from '#run/correct-run.ts';
import { runJob } from '#run/run-job.ts';
import { box, buoyLidDrawing, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

const RATE = 0.0297;
/** Stage 1 takes 1.2 mm. */
const MINUTES = 1.2 / RATE;

async function planText(job: object, drawing: string): Promise<string> {
  const { files } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(drawing),
  });
  return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
}

let plan = '';
let ids: Readonly<Record<string, string>> = {};
beforeAll(async () => {
  plan = await planText(buoyLidJob, buoyLidDrawing);
  const { regions } = JSON.parse(plan) as { regions: { id: string; layer: string }[] };
  ids = Object.fromEntries(regions.map(({ id, layer }) => [layer, id]));
});

const correct = (rows: readonly string[], of = plan) =>
  correctRun({ planText: of, readingsText: rows.join('\n'), recordText: undefined });
function found(findings: readonly Finding[], code: FindingCode) {
  return findings.filter((each) => each.code === code).map(({ facts, place }) => ({ facts, place }));
}
const HEAD = 'stage,minutes,region,depth';
const deep = (minutes: number, factor = 1) =>
  `1,${minutes},${ids['DEEP']},${(minutes * RATE * factor).toFixed(6)}`;

describe('what a row says that can’t be', () => {
  const fault = (header: string, row: string, of = plan) => {
    const faults = correct([header, row], of).findings.filter(({ place }) => place.line !== undefined);
    expect(faults).toHaveLength(1);
    return faults.flatMap(({ code, facts, place }) => [code, facts, place]);
  };

  test('reading-unclear: a stage that the plan has not', () => {
    expect(fault(HEAD, `3,12,${ids['DEEP']},0.3`)).toEqual([
      'reading-unclear',
      { column: 'stage', found: '3', expected: 'at most 2' },
      { line: 2 },
    ]);
  });

  test('reading-unclear: a region that the plan has not, with the one that was meant; a point beside the part', () => {
    expect(fault(HEAD, '1,12,RO2,0.3')).toMatchObject([
      'reading-unclear',
      { column: 'region', found: 'RO2', expected: 'perhaps R02' },
      { line: 2 },
    ]);
    const [, far] = fault(HEAD, '1,12,the sump,0.3');
    const [, beside] = fault('stage,x,y,depth', '1,230,60,0.3');
    expect([far, beside]).toMatchObject([
      { column: 'region', found: 'the sump' },
      { column: 'region', found: 'a point outside every region' },
    ]);
    expect((far as { expected: string }).expected).toBe((beside as { expected: string }).expected);
  });

  test('reading-off-floor: on land, before its peel, on a wall', () => {
    expect(fault(HEAD, `1,12,${ids['TRIM']},0.3`).slice(0, 2)).toEqual([
      'reading-off-floor',
      { region: ids['TRIM'], why: 'land' },
    ]);
    expect(fault(HEAD, `1,12,${ids['ROUND']},0.3`).slice(1)).toEqual([
      { region: ids['ROUND'], why: 'not-open' },
      { line: 2 },
    ]);
    // POCKETS begins at x = 20, and its wall reaches 1.2 mm out and in of the line.
    expect(fault('stage,x,y,depth', '2,20.4,60,0.3').slice(0, 2)).toEqual([
      'reading-off-floor',
      { region: ids['POCKETS'], why: 'wall' },
    ]);
  });

  test('a thickness on land says what the sheet is, and nothing of the rate', () => {
    const { corrected, readings, findings } = correct([
      'stage,minutes,region,thickness',
      `1,20,${ids['TRIM']},4.01`,
    ]);
    expect(found(findings, 'reading-off-floor')).toEqual([]);
    expect(corrected?.next.value).toBeCloseTo(RATE, 9);
    expect(readings).toMatchObject([{ kind: 'thickness', expected: expect.closeTo(4, 9), rate: undefined }]);
  });

  test('with a new coat for each stage no floor is open before the first dip, each is from stage 1 on', async () => {
    const process = { ...buoyLidJob.process, masking: 're-mask' };
    const remasked = await planText({ ...buoyLidJob, process }, buoyLidDrawing);
    expect(fault(HEAD, `0,,${ids['DEEP']},0.3`, remasked)[1]).toEqual({
      region: ids['DEEP'],
      why: 'not-open',
    });
    expect(correct([HEAD, deep(24)], remasked).corrected?.stages[0]?.rate?.value).toBeCloseTo(RATE, 5);
  });

  test('reading-unclear: a row with a cell too many, of a part of both faces as well', async () => {
    const { files } = await runLid({ requirements }, LID);
    const both = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
    const header = 'stage,region,thickness';
    expect(found(correct([header, '0,,F02,4'], both).findings, 'reading-unclear')).not.toEqual([]);
    expect(found(correct([header, '0,F02,4'], both).findings, 'reading-unclear')).toEqual([]);
  });
});

describe('what the readings say of the run', () => {
  test('rate-outside-spread: only beyond the plan’s spread and what the rate is known by', () => {
    const rates = [0.88, 0.97, 1.03, 1.12].map((factor) =>
      found(correct([HEAD, deep(32, factor)]).findings, 'rate-outside-spread'),
    );
    expect(rates.map((each) => each.length)).toEqual([1, 0, 0, 1]);
    expect(rates[3]?.[0]?.facts).toEqual({
      rate: expect.closeTo(1.12 * RATE, 5),
      planned: RATE,
      spread: expect.closeTo(JSON.parse(plan).job.process.rateSpread ?? 0.05, 9),
    });
  });

  test('no-metal-taken: the rate found beside the planned one', () => {
    const rows = [`${HEAD},confirm,note`, `1,32,${ids['DEEP']},0`, ',,,,1,twice'];
    expect(found(correct(rows).findings, 'no-metal-taken')).toMatchObject([
      { facts: { rate: expect.closeTo(0, 4), planned: RATE } },
    ]);
  });

  test('depth-out-of-reach and depth-in-doubt: the depth foreseen between what is asked', () => {
    const asked = { plus: 0.09, minus: 0.06 };
    const lax = {
      ...buoyLidJob,
      requirements: buoyLidJob.requirements.map((each) => ({ ...each, ...asked })),
    };
    return planText(lax, buoyLidDrawing).then((own) => {
      const [doubt] = found(correct([HEAD, deep(12)], own).findings, 'depth-in-doubt').filter(
        ({ place }) => place.regions?.[0] === ids['DEEP'],
      );
      expect(doubt?.facts).toEqual({
        depth: expect.closeTo(2.4, 2),
        low: expect.closeTo(2.34, 9),
        high: expect.closeTo(2.49, 9),
        within: expect.any(Number),
      });
      // One reading of 0.010 mm in 12 min is a thousandth or so of each mm: more than 0.06 in 2.4.
      const { within } = { within: 0, ...doubt?.facts };
      expect(within).toBeGreaterThan(0.06);
      const over = [`${HEAD},confirm,note`, deep(96), ',,,,1,gauged again'];
      const [lost] = found(correct(over, own).findings, 'depth-out-of-reach');
      expect(lost).toMatchObject({
        place: { regions: [ids['DEEP']] },
        facts: { low: expect.closeTo(2.34, 9), high: expect.closeTo(2.49, 9) },
      });
      const { depth } = { depth: 0, ...lost?.facts };
      expect(depth).toBeGreaterThan(2.49);
    });
  });

  test('reading-in-question: its line and region, and no other’s', () => {
    const rows = [HEAD, deep(16), deep(32, 1.4), deep(32)];
    expect(found(correct(rows).findings, 'reading-in-question')).toMatchObject([
      { place: { line: 3, regions: [ids['DEEP']] }, facts: { number: 2 } },
    ]);
  });

  test('a slip that came first is asked about, not the repeats after it, and the minutes are those without it', () => {
    const order = (...rows: readonly string[]) => correct([HEAD, ...rows]);
    const slip = deep(32, 0.86);
    const first = order(slip, deep(32), deep(32));
    expect(found(first.findings, 'reading-in-question')).toMatchObject([
      { place: { line: 2 }, facts: { number: 1, why: 'repeat' } },
    ]);
    const without = order(deep(32), deep(32));
    for (const each of [first, order(deep(32), slip, deep(32)), order(deep(32), deep(32), slip)]) {
      expect(each.corrected?.stages[0]?.left.value).toBeCloseTo(
        without.corrected?.stages[0]?.left.value ?? 0,
        9,
      );
    }
  });

  test('readings-disagree: the one that stands apart, by how much', () => {
    const slip = `1,32,${ids['DEEP']},${(32 * RATE + 0.3).toFixed(6)}`;
    const rows = [
      `${HEAD},confirm,note`,
      ...Array.from({ length: 40 }, () => deep(32)),
      slip,
      ',,,,41,again',
    ];
    expect(found(correct(rows).findings, 'readings-disagree')).toEqual([
      { place: { line: 42 }, facts: { off: expect.closeTo(0.3, 2), noise: expect.anything() } },
    ]);
  });

  test('a stage had the most minutes that any of its rows gives it', () => {
    const { corrected } = correct([HEAD, deep(16), deep(32), deep(24)]);
    expect(corrected?.stages.map(({ had }) => had)).toEqual([32, 0]);
  });

  test('one that the run has passed without a word had its planned minutes', () => {
    const { corrected } = correct([HEAD, `2,10,${ids['ROUND']},${10 * RATE}`]);
    expect(corrected?.stages.map(({ had }) => had)).toEqual([expect.closeTo(MINUTES, 3), 10]);
  });

  test('readings in inches count in millimetres', () => {
    const inches = ((24 * RATE) / 25.4).toFixed(7);
    const { corrected, readings } = correct([`${HEAD},unit`, `1,24,${ids['DEEP']},${inches},in`]);
    expect(readings).toMatchObject([{ read: expect.closeTo(24 * RATE, 4), unit: 'in', kind: 'depth' }]);
    expect(corrected?.rate.value).toBeCloseTo(RATE, 5);
  });
});

describe('a drawing and a job in inches', () => {
  /** 10 by 6 inches, with one pocket. */
  const COVER = dxf({ insunits: 1, entities: [box('TRIM', [0, 0], [10, 6]), box('DEEP', [1, 1], [4, 5])] });

  test('points are inches of the drawing, depths inches of the job', async () => {
    const job = {
      ...buoyLidJob,
      units: 'in',
      stock: { alloy: 'al-2024-t3', thickness: 0.16 },
      process: { ...buoyLidJob.process, rate: 0.00117 },
      requirements: [{ layer: 'DEEP', depth: 0.08 }],
    };
    const own = await planText(job, COVER);
    const { readings, corrected } = correct(['stage,minutes,x,y,depth', '1,32,3.4,4.2,0.03744'], own);
    expect(readings).toMatchObject([{ unit: 'in', read: expect.closeTo(32 * 0.00117 * 25.4, 6) }]);
    expect(readings?.[0]?.region).toBe(
      JSON.parse(own).regions.find((each: { layer: string }) => each.layer === 'DEEP').id,
    );
    expect(corrected?.rate.value).toBeCloseTo(0.00117 * 25.4, 6);
  });
});

describe('a sheet that tapers', () => {
  test('sheet-not-gauged: by line and region, where a thickness was read; a depth needs no sheet', () => {
    const tapered = JSON.parse(plan);
    tapered.job.stock.thickness = { from: [0, 0], to: [100, 0], thicknessFrom: 5, thicknessTo: 4 };
    const own = JSON.stringify(tapered);
    const header = 'stage,minutes,region,depth,thickness';
    const rows = [header, `0,,${ids['ROUND']},,4.4`, `1,32,${ids['DEEP']},,3.65`];
    expect(found(correct(rows, own).findings, 'sheet-not-gauged')).toEqual([
      { facts: { region: ids['DEEP'] }, place: { line: 3, regions: [ids['DEEP']] } },
    ]);
    const { findings, corrected } = correct([header, `${deep(32)},`], own);
    expect(found(findings, 'sheet-not-gauged')).toEqual([]);
    expect(corrected?.rate.value).toBeCloseTo(RATE, 5);
  });
});
