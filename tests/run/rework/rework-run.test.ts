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
    // POCKETS lies beside DEEP, is shallower and etched 0.16 on; ROUND lies in land.
    expect(found?.laps).toEqual([
      {
        cover: idAt('DEEP'),
        onto: idAt('POCKETS'),
        height: expect.closeTo(0.16, 6),
        undercut: expect.closeTo(0.16, 6),
      },
    ]);
    // Beside land both floors of 1.2 end at 1.21. DEEP is covered at 2.38 with its wall, and POCKETS beside it goes on to 1.21.
    const off = Math.sqrt(2.38 ** 2 - 1.21 ** 2) - Math.sqrt(2.4 ** 2 - 1.2 ** 2);
    expect(found?.edges).toEqual([
      { level: 2.4, beside: 1.2, regions: [idAt('DEEP')], off: expect.closeTo(off, 6) },
      {
        level: 1.2,
        beside: 0,
        regions: expect.arrayContaining([idAt('POCKETS'), idAt('ROUND')]),
        off: expect.closeTo(0.01, 6),
      },
    ]);
  });

  test('the deeper floor etched on, its neighbour covered: 2.25 and 0.16 more beside 1.23', () => {
    const { rework: found } = rework(readings(2.77, 1.75, 2.8));
    // From 0.11 to 0.21, in the middle 0.16; the others, up to 0.06 deeper, are covered.
    const off = Math.sqrt(2.41 ** 2 - 1.23 ** 2) - Math.sqrt(2.4 ** 2 - 1.2 ** 2);
    expect(found?.edges).toEqual([
      { level: 2.4, beside: 1.2, regions: [idAt('DEEP')], off: expect.closeTo(off, 6) },
    ]);
  });

  test('a run that was short alike everywhere: one dip with all open puts every edge back on its line', () => {
    // 0.01 deeper than needed, in the middle of + 0.04 − 0.06 mm.
    const { rework: found } = rework(readings(2.85, 1.65, 2.85));
    expect(found?.dips.map(({ etch, cover }) => [etch, cover])).toEqual([[expect.closeTo(0.06, 6), []]]);
    const off = Math.sqrt(2.41 ** 2 - 1.21 ** 2) - Math.sqrt(2.4 ** 2 - 1.2 ** 2);
    expect(found?.edges.map((each) => [each.level, each.beside, each.off])).toEqual([
      [2.4, 1.2, expect.closeTo(off, 6)],
      [1.2, 0, expect.closeTo(0.01, 6)],
    ]);
  });

  test('a neighbour that is done is covered before the second dip, which only the deeper floor gets', () => {
    // POCKETS needs 0.11 to 0.21, DEEP 0.27 to 0.37: 1.05 + 0.16 beside 2.09 + 0.32.
    const { rework: found } = rework(readings(2.95, 1.91, 2.79));
    expect(found?.dips.map(({ cover, open }) => [cover, open])).toEqual([
      [[idAt('ROUND')], expect.arrayContaining([idAt('POCKETS'), idAt('DEEP')])],
      [[idAt('POCKETS')], [idAt('DEEP')]],
    ]);
    const off = Math.sqrt(2.41 ** 2 - 1.21 ** 2) - Math.sqrt(2.4 ** 2 - 1.2 ** 2);
    expect(found?.edges.map((each) => [each.level, each.beside, each.off])).toEqual([
      [2.4, 1.2, expect.closeTo(off, 6)],
      [1.2, 0, expect.closeTo(0.01, 6)],
    ]);
  });

  test('the sheet read before the first dip says how deep a floor is: 4.03 less 2.95, and 0.16 more', async () => {
    const requirements = [{ layer: 'ROUND', thickness: 2.8, plus: 0.06, minus: 0.04 }];
    const { planFile, text } = await planned({ requirements }, buoyLidDrawing);
    const id = planFile.regions.find((region) => region.layer === 'ROUND')?.id ?? '';
    const { rework: found, findings } = rework([HEAD, `0,,${id},,,4.03`, `1,,${id},,,2.95`], text);
    expect(findings).toEqual([]);
    expect(found?.edges).toEqual([{ level: 1.2, beside: 0, regions: [id], off: expect.closeTo(0.04, 6) }]);
  });

  test('where a depth is asked, what is to be left follows the sheet as it was read', async () => {
    const requirements = [{ layer: 'ROUND', depth: 1.2, plus: 0.06, minus: 0.04 }];
    const { planFile, text } = await planned({ requirements }, buoyLidDrawing);
    const id = planFile.regions.find((region) => region.layer === 'ROUND')?.id ?? '';
    // 1.18 deep in 4.05 as in 4.00: within 1.16 to 1.26.
    for (const [sheet, left] of [
      [4.05, 2.87],
      [4, 2.82],
    ]) {
      const { rework: found } = rework([HEAD, `0,,${id},,,${sheet}`, `1,,${id},,,${left}`], text);
      expect(found?.dips).toEqual([]);
    }
  });

  test('a floor that nobody read is covered before the first dip', () => {
    const { rework: found } = rework([HEAD, `2,,${idAt('ROUND')},,,2.95`]);
    expect(new Set(found?.dips[0]?.cover)).toEqual(new Set([idAt('POCKETS'), idAt('DEEP')]));
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
    // On land no floor is read.
    expect(readOf(['2,,,5,5,4.01'])).toEqual([]);
    expect(rework([HEAD, '2,,,260,60,4.02']).findings.map(({ code }) => code)).toEqual(['reading-unclear']);
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
    // Before the last stage is over, and before the first dip, it says nothing of what is left then.
    expect(readOf([`0,,${id},,,4.02`, `1,,${id},,,4.01`])).toEqual([]);
    expect(readOf([`0,,${id},,,4.02`, `2,,${id},,,2.9`])).toEqual([[id, 2.9]]);
  });

  test('reading-in-question: what correct asks about counts no more here, until it is confirmed', () => {
    const id = idAt('ROUND');
    const [wild, good] = [`2,,${id},,,12.7`, `2,,${id},,,2.95`];
    const withWild = rework([HEAD, wild, good, good]);
    expect(withWild.rework?.floors.map(({ read }) => read)).toEqual([2.95]);
    expect(withWild.rework?.dips).toHaveLength(1);
    expect(withWild.findings.filter(({ code }) => code === 'reading-in-question')).toMatchObject([
      { place: { line: 2, regions: [id] }, facts: { number: 1, read: 12.7, why: 'sheet' } },
    ]);
    // Nothing but that one: the floor was not read, whatever it read before.
    const alone = rework([HEAD, `2,20,${id},,,3.4`, `2,40,${id},,,3.9`]);
    expect(alone.rework?.floors).toEqual([]);
    expect(alone.findings.map(({ code, place }) => [code, place.regions])).toContainEqual([
      'floor-not-read',
      [id],
    ]);
    const answered = rework([`${HEAD},confirm,note`, `2,,${id},,,3.5`, ',,,,,,1,gauged again']);
    expect(answered.rework?.floors.map(({ read }) => read)).toEqual([3.5]);
    expect(rework([HEAD, `2,,${id},,,3.5`]).rework?.floors).toEqual([]);
  });

  test('only floors whose last stage is over are spoken of: with one coat after the last, re-masked after their own', async () => {
    const rows = readings(2.95, 1.62, 3.2).join('\n');
    expect(reworkRun(lid.text, rows, 1)).toEqual({
      rework: { floors: [], dips: [], edges: [], laps: [] },
      findings: [],
    });
    expect(reworkRun(lid.text, rows, 2).rework?.floors).toHaveLength(3);
    const masked = await planned({ process: { ...buoyLidJob.process, masking: 're-mask' } }, buoyLidDrawing);
    const [deep, round] = ['DEEP', 'ROUND'].map(
      (layer) => masked.planFile.regions.find((region) => region.layer === layer)?.id ?? '',
    );
    const early = [HEAD, `1,,${round},,,2.83`, `1,,${deep},,,2.81`].join('\n');
    const { rework: first, findings } = reworkRun(masked.text, early, 1);
    expect(first?.floors.map(({ id }) => id)).toEqual([round]);
    expect(findings.flatMap(({ place }) => place.regions ?? [])).not.toContain(deep);
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
    const ids = readOf(['2,,,150,62,2.13', '2,,,60,60,2.9'], text)?.map(([id]) => String(id));
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

describe('M9.1 a part that is etched on both faces', () => {
  const bothText = async () => {
    const requirements = ofBothFaces.map((each) => ({ ...each, plus: 0.06, minus: 0.04 }));
    const { files } = await runLid({ requirements }, LID);
    return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
  };
  const end = (id: string, value: number) => `2,,${id},,,${value}`;

  /** In drawing coordinates: ROUND over BACK, and BACK with land in front of it. */
  const both = (value: number) => `2,,,150,62,${value}`;
  const farOnly = (value: number) => `2,,,110,25,${value}`;
  const left = (found: ReturnType<typeof rework>['rework']) =>
    found?.floors.map(({ id, over, extra, extraBehind, after }) => [id, over, extra, extraBehind, after]);

  test('0.7 over 1.2 of 4 mm is to leave 2.10 +0.08 −0.12: read at 2.30, each face gets half of what is too much', async () => {
    const text = await bothText();
    for (const row of [both(2.3), end('F02', 2.3), end('R01', 2.3)]) {
      const { rework: found, findings } = rework([HEAD, row], text);
      expect(findings.filter(({ code }) => code === 'reading-in-question')).toEqual([]);
      // 0.12 to 0.32 of metal in all: 0.11 from each face, both in the bath at once.
      expect(left(found)).toEqual([
        ['R01', 'F02', expect.closeTo(0.11, 6), expect.closeTo(0.11, 6), expect.closeTo(2.08, 6)],
      ]);
      expect(found?.floors[0]?.thickness).toBeCloseTo(2.1, 6);
      expect([found?.floors[0]?.plus, found?.floors[0]?.minus]).toEqual([
        expect.closeTo(0.12, 9),
        expect.closeTo(0.08, 9),
      ]);
      expect(found?.dips.map(({ etch }) => etch)).toEqual([expect.closeTo(0.11, 6)]);
    }
  });

  test('each overlap by itself: the far floor gets what it needs under land, the near one the rest', async () => {
    const { rework: found, findings } = rework(
      [HEAD, both(2.37), farOnly(3.01), end('R02', 2.8)],
      await bothText(),
    );
    expect(findings).toEqual([]);
    // 0.17 to 0.27 of the far floor, 0.19 to 0.39 of both.
    for (const { id, over, thickness, plus, minus, after } of found?.floors ?? []) {
      expect(after, `${id} ${over}`).toBeGreaterThan(thickness - plus - 1e-6);
      expect(after, `${id} ${over}`).toBeLessThan(thickness + minus + 1e-6);
    }
    const get = (id: string, over?: string) =>
      found?.floors.find((each) => each.id === id && each.over === over);
    expect(get('F02')?.extra).toBeGreaterThan(0.17 - 1e-6);
    expect(get('R01', 'F02')?.extraBehind).toBe(get('F02')?.extra);
    expect(get('R01', 'F02')?.extra).toBeLessThan(0.12);
  });

  test('floor-not-served: what one place needs is too much for another, and that is never passed', async () => {
    const { rework: found, findings } = rework(
      [HEAD, both(2.0), farOnly(3.1), end('R02', 2.8)],
      await bothText(),
    );
    const over = found?.floors.find((each) => each.over === 'F02');
    expect(over?.after).toBeGreaterThan(1.98 - 1e-6);
    const [notServed] = findings.filter(({ code }) => code === 'floor-not-served');
    expect(notServed?.place.regions).toEqual(['F02']);
    expect(notServed?.facts).toMatchObject({
      after: expect.closeTo(3.08, 2),
      least: expect.closeTo(2.74, 6),
      most: expect.closeTo(2.84, 6),
    });
  });

  test('floor-not-read: an overlap that nobody gauged, with a place in it', async () => {
    const { findings } = rework([HEAD, farOnly(2.8), end('R02', 2.8)], await bothText());
    expect(findings.map(({ code, place: { regions } }) => [code, regions])).toEqual([
      ['floor-not-read', ['R01', 'F02']],
    ]);
    const at = findings[0]?.place.at;
    expect(Math.hypot((at?.x ?? 0) - 150, (at?.y ?? 0) - 62)).toBeLessThan(21);
  });

  test('where nothing is etched behind, all of it comes off one face', async () => {
    const text = await bothText();
    const id = JSON.parse(text).regions.find(({ layer }: { layer: string }) => layer === 'POCKETS').id;
    const { rework: found } = rework([HEAD, end(id, 2.95)], text);
    expect(found?.floors.map(({ extra }) => extra)).toEqual([expect.closeTo(0.16, 6)]);
  });

  test('reading-in-question: in the figure that was read', async () => {
    const { findings } = rework([HEAD, end('F02', 3.3)], await bothText());
    expect(findings.find(({ code }) => code === 'reading-in-question')?.facts).toMatchObject({
      read: expect.closeTo(3.3, 9),
      expected: expect.closeTo(2.1, 1),
    });
  });
});
