/** After the run, by hand: which readings count, the dips one after the other, and what is covered before each. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { reworkRun } from '#run/rework/rework-run.ts';
import { runJob } from '#run/run-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, buoyLidDrawing, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';
import { LID, requirements as ofBothFaces, runLid } from '#support/parts/two-faced-lid.ts';

const RATE = 0.0297;

async function planned(job: object, drawing: string) {
  const { files, planFile } = await runJob({
    jobText: JSON.stringify({ ...buoyLidJob, ...job }),
    drawingName: 'lid.dxf',
    drawingBytes: bytesOf(drawing),
  });
  if (planFile === undefined) throw new Error('the lid can be planned');
  return { planFile, text: new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes) };
}

let lid: { planFile: PlanFile; text: string };
beforeAll(async () => {
  const requirements = buoyLidJob.requirements.map((each) => ({ ...each, plus: 0.06, minus: 0.04 }));
  lid = await planned({ requirements }, buoyLidDrawing);
});
const idAt = (layer: string) => lid.planFile.regions.find((region) => region.layer === layer)?.id ?? '';
const rework = (rows: readonly string[], text = lid.text) => reworkRun(text, rows.join('\n'));
const HEAD = 'stage,minutes,region,x,y,thickness';
/** What each floor reads at the end: 2.80 is to be left of POCKETS and ROUND, 1.60 of DEEP, + 0.04 − 0.06 mm. */
const readings = (pockets: number, deep: number, round: number) => [
  HEAD,
  `2,,${idAt('POCKETS')},,,${pockets}`,
  `2,,${idAt('DEEP')},,,${deep}`,
  `2,,${idAt('ROUND')},,,${round}`,
];

describe('M8.5 dips one after the other', () => {
  test('a floor that needs 0.11 to 0.21 more and one that needs 0.36 to 0.46: two dips, the third floor covered', () => {
    const { rework: found, findings } = rework(readings(2.95, 1.62, 3.2));
    expect(findings).toEqual([]);
    // Both sides of each tolerance used alike: 0.16 and 0.41.
    expect(found?.dips).toEqual([
      {
        etch: expect.closeTo(0.16, 6),
        minutes: expect.closeTo(0.16 / RATE, 4),
        cover: [idAt('DEEP')],
        open: [idAt('POCKETS'), idAt('ROUND')],
      },
      {
        etch: expect.closeTo(0.25, 6),
        minutes: expect.closeTo(0.25 / RATE, 4),
        cover: [idAt('POCKETS')],
        open: [idAt('ROUND')],
      },
    ]);
    expect(found?.floors.map(({ id, extra, after }) => [id, extra, after])).toEqual([
      [idAt('POCKETS'), expect.closeTo(0.16, 6), expect.closeTo(2.79, 6)],
      [idAt('DEEP'), 0, 1.62],
      [idAt('ROUND'), expect.closeTo(0.41, 6), expect.closeTo(2.79, 6)],
    ]);
    // Edges of 1.2 mm beside land go out with the floor that is etched on farthest; that of 2.4 beside 1.2 stays.
    expect(found?.edges).toEqual([{ level: 1.2, beside: 0, off: expect.closeTo(0.41, 6) }]);
  });

  test('the deeper floor etched on moves its own edge by √(ℓ′² − d²) − √(ℓ² − d²)', () => {
    const { rework: found } = rework(readings(2.8, 1.75, 2.8));
    // From 0.11 to 0.21, in the middle 0.16; the others, up to 0.06 deeper, are covered.
    const off = Math.sqrt(2.56 ** 2 - 1.2 ** 2) - Math.sqrt(2.4 ** 2 - 1.2 ** 2);
    expect(found?.edges).toEqual([{ level: 2.4, beside: 1.2, off: expect.closeTo(off, 3) }]);
  });

  test('floors as they should be need nothing, and no edge moves', () => {
    const { rework: found, findings } = rework(readings(2.82, 1.58, 2.76));
    expect([found?.dips, found?.edges, findings]).toEqual([[], [], []]);
  });
});

describe('which readings count', () => {
  const readOf = (rows: readonly string[], text?: string) =>
    rework([HEAD, ...rows], text).rework?.floors.map(({ id, read }) => [id, read]);

  test('by place in the drawing, of the region that holds it', () => {
    expect(readOf(['2,,,160,65,2.91', '2,,,70,60,1.66'])).toEqual([
      [idAt('DEEP'), 1.66],
      [idAt('ROUND'), 2.91],
    ]);
    // On land and beside the part no floor is read.
    expect(readOf(['2,,,5,5,4.01', '2,,,260,60,4.02'])).toEqual([]);
  });

  test('rows of minutes alone, and of a depth, say nothing of what is left', () => {
    const rows = ['stage,minutes,region,depth,thickness', '2,20,,,', `2,21,${idAt('ROUND')},1.1,`];
    expect(rework(rows).rework?.floors).toEqual([]);
  });

  test('of more minutes the later, of as many the mean, whichever row comes first', () => {
    const id = idAt('ROUND');
    expect(readOf([`2,31,${id},,,2.9`, `2,20,${id},,,3.1`])).toEqual([[id, 2.9]]);
    expect(readOf([`2,20,${id},,,3.1`, `2,31,${id},,,2.9`, `2,31,${id},,,2.94`])).toEqual([
      [id, expect.closeTo(2.92, 9)],
    ]);
    // A row without minutes was read at the end of its stage.
    expect(readOf([`2,,${id},,,2.88`, `2,31,${id},,,2.9`])).toEqual([[id, 2.88]]);
    expect(readOf([`1,,${id},,,3.3`, `2,4,${id},,,2.9`])).toEqual([[id, 2.9]]);
    // Before the first dip it is the sheet.
    expect(readOf([`0,,${id},,,4.02`])).toEqual([[id, 4.02]]);
  });

  test('in the job’s unit where a row names none', async () => {
    const job = {
      units: 'in',
      stock: { alloy: 'al-2024-t3', thickness: 0.16 },
      process: { ...buoyLidJob.process, rate: 0.00117 },
      requirements: [{ layer: 'DEEP', depth: 0.08 }],
    };
    const drawing = dxf({
      insunits: 1,
      entities: [box('TRIM', [0, 0], [10, 6]), box('DEEP', [1, 1], [4, 5])],
    });
    const { text } = await planned(job, drawing);
    // At (3.4, 4.2) inches.
    expect(readOf(['1,,,3.4,4.2,0.085'], text)).toMatchObject([
      [expect.any(String), expect.closeTo(0.085 * 25.4, 9)],
    ]);
    const { units: _, ...without } = JSON.parse(lid.text).job;
    const plain = JSON.stringify({ ...JSON.parse(lid.text), job: without });
    expect(readOf([`2,,${idAt('ROUND')},,,2.9`], plain)).toEqual([[idAt('ROUND'), 2.9]]);
  });

  test('a place is one of the near face', async () => {
    const { files } = await runLid({ requirements: ofBothFaces }, LID);
    const text = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
    // ROUND about (150, 62) of the near face, and BACK on the far one.
    const ids = readOf(['2,,,150,62,2.4', '2,,,60,60,2.9'], text)?.map(([id]) => String(id));
    expect(ids).toHaveLength(2);
    for (const id of ids ?? []) expect(id).toMatch(/^R/);
  });
});

describe('what is reported', () => {
  test('floor-not-read and floor-too-thin: region and place', () => {
    const { findings } = rework([HEAD, `2,,${idAt('DEEP')},,,1.5`, `2,,${idAt('ROUND')},,,2.8`]);
    const place = (layer: string) => {
      const [x = 0, y = 0] = lid.planFile.regions.find((region) => region.layer === layer)?.label ?? [];
      return { regions: [idAt(layer)], at: { x, y } };
    };
    expect(findings.map(({ code, place: at }) => [code, at])).toEqual(
      expect.arrayContaining([
        ['floor-not-read', place('POCKETS')],
        ['floor-too-thin', place('DEEP')],
      ]),
    );
    expect(findings).toHaveLength(2);
    expect(findings.find(({ code }) => code === 'floor-too-thin')?.facts).toEqual({
      read: 1.5,
      least: expect.closeTo(1.54, 9),
      area: expect.closeTo(2000, 3),
    });
  });

  test('readings that can’t be read stop it', () => {
    const { rework: found, findings } = rework([HEAD, '2,,R01,,,thick']);
    expect(found).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(['reading-unclear']);
  });
});
