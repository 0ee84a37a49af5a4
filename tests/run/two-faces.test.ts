/** Jobs about both faces of a sheet (M9): regions, stages and lines by face. */
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { RunResult } from '#run/run-job.ts';
import { box, dxf } from '#support/drawings/small-drawing.ts';
import { codes, LID, requirements, runLid as run, stops } from '#support/parts/two-faced-lid.ts';

describe('M9.2: one list of levels over both faces', () => {
  test('regions of either face have their own ids, and share stages', async () => {
    const result = await run({ requirements }, LID);
    const { planFile } = result;
    expect(stops(result)).toEqual([]);
    expect(planFile?.regions.map(({ id, face, level }) => [id, face, level])).toEqual([
      ['R01', 'near', 0.7],
      ['R02', 'near', 1.2],
      ['R03', 'near', 0],
      ['F01', 'far', 0],
      ['F02', 'far', 1.2],
    ]);
    expect(planFile?.stages.map(({ level, regions }) => [level, regions])).toEqual([
      [1.2, ['R02', 'F02']],
      [0.7, ['R01']],
    ]);
    const [first, second] = planFile?.stages ?? [];
    expect(first?.lines.length).toBe(1);
    expect(first?.far?.lines.length).toBe(1);
    expect(second?.far?.lines).toEqual([]);
    expect(second?.far?.piece).toEqual([]);
    // What is bare on the far face stays so.
    expect(second?.far?.opening).toEqual(first?.far?.opening);
  });

  test('tolerances of both faces are pierced together: 1.2 ± 0.1 and 1.35 ± 0.1 are one level', async () => {
    const result = await run(
      {
        levels: 'fewest',
        requirements: [
          { layer: 'POCKETS', depth: 1.2, plus: 0.1, minus: 0.02 },
          { layer: 'ROUND', depth: 1.2, plus: 0.1, minus: 0.02 },
          { layer: 'BACK', depth: 1.35, plus: 0.03, minus: 0.1, face: 'far' },
        ],
      },
      LID,
    );
    expect(result.planFile?.stages.map(({ level }) => level)).toHaveLength(1);
    const level = result.planFile?.stages[0]?.level ?? 0;
    expect(level).toBeGreaterThanOrEqual(1.25);
    expect(level).toBeLessThanOrEqual(1.3);
  });

  test('an untouched far face changes neither levels nor lines of the near one', async () => {
    const one = await run(
      { layers: { outline: ['TRIM'] }, requirements: requirements.slice(0, 2) },
      LID.slice(0, 3),
    );
    const both = await run({ requirements }, LID);
    const lines = ({ planFile }: RunResult) => planFile?.stages.map((stage) => [stage.level, stage.lines]);
    expect(lines(both)).toEqual(lines(one));
    expect(JSON.stringify(one.planFile)).not.toContain('"far"');
  });

  test('metal goes from both faces', async () => {
    const removed = async (chosen: readonly object[]) =>
      (await run({ requirements: chosen }, LID)).planFile?.totals.removedVolume ?? 0;
    const [near, far, both] = [
      await removed(requirements.slice(0, 2)),
      await removed(requirements.slice(2)),
      await removed(requirements),
    ];
    expect(near).toBeGreaterThan(5000);
    expect(far).toBeGreaterThan(5000);
    expect(both).toBeCloseTo(near + far, 3);
  });
});

describe('M9.1: the far face in the frame of the near one', () => {
  const asFar = { requirements: [{ layer: 'BACK', depth: 1.2, face: 'far' }] };
  const openingOf = ({ plan }: RunResult) => plan?.far?.stages[0]?.opening ?? [];
  /** A pocket that no turn brings onto itself, seen through the part. */
  const seenThrough = (x: number, y: number) => isInsideLoops(openingOf(through), { x, y });
  let through: RunResult;

  test('seen through the part it is taken as drawn', async () => {
    through = await run(asFar, [box('TRIM', [0, 0], [200, 120]), box('BACK', [105, 17], [190, 83])]);
    expect(seenThrough(110, 22)).toBe(true);
    expect(seenThrough(90, 22)).toBe(false);
  });

  test('seen from the far face it is turned over about its mirror line', async () => {
    const turned = await run({ ...asFar, far: { view: 'far', mirror: { from: [101, 0], to: [101, 60] } } }, [
      box('TRIM', [0, 0], [200, 120]),
      box('BACK', [12, 17], [97, 83]),
    ]);
    expect(stops(turned)).toEqual([]);
    const areas = [through, turned].map(
      (each) => each.planFile?.regions.find(({ id, level }) => id[0] === 'F' && level > 0)?.label,
    );
    expect(areas[1]?.[0]).toBeCloseTo(areas[0]?.[0] ?? 0, 6);
    expect(areas[1]?.[1]).toBeCloseTo(areas[0]?.[1] ?? 0, 6);
  });

  test('far-view-unclear: seen from the far face, and nothing says how it is turned', async () => {
    expect(stops(await run({ ...asFar, far: { view: 'far' } }, LID))).toEqual(['far-view-unclear']);
  });

  test('a far drawing of its own, turned and shifted, comes to the near one by two points', async () => {
    // Near (x, y) is at far (300 − y, x + 40), seen from the far face: (−x, y) turned by a quarter.
    const own = dxf({
      insunits: 4,
      entities: [box('UNDERSIDE', [300 - 83, -105 + 40], [300 - 17, -190 + 40])],
    });
    const points = {
      near: [
        [10, 20],
        [180, 95],
      ],
      far: [
        [300 - 20, -10 + 40],
        [300 - 95, -180 + 40],
      ],
    };
    const job = {
      layers: { outline: ['TRIM'] },
      far: { drawing: 'back.dxf', view: 'far', points },
      requirements: [{ layer: 'UNDERSIDE', depth: 1.2, face: 'far' }],
    };
    const bytes = new TextEncoder().encode(own);
    const found = await run(job, [box('TRIM', [0, 0], [200, 120])], { farDrawingBytes: bytes });
    expect(stops(found)).toEqual([]);
    const [label] = found.planFile?.regions.filter(({ id, level }) => id[0] === 'F' && level > 0) ?? [];
    expect(label?.area).toBeCloseTo(85 * 66, 6);
    expect(label?.label).toEqual([expect.closeTo(147.5, 6), expect.closeTo(50, 6)]);

    const off = {
      ...points,
      near: [
        [10, 20],
        [180.06, 95],
      ],
    };
    const reported = await run(
      { ...job, far: { ...job.far, points: off } },
      [box('TRIM', [0, 0], [200, 120])],
      {
        farDrawingBytes: bytes,
      },
    );
    const misfit = reported.findings.find(({ code }) => code === 'far-misfit');
    // 185.812… and 185.867… apart: each end is off by half of that.
    expect(misfit?.facts).toMatchObject({
      misfit: expect.closeTo((Math.hypot(170.06, 75) - Math.hypot(170, 75)) / 2, 9),
    });
  });

  test('file-missing: the far drawing was not given', async () => {
    const far = { drawing: 'back.dxf' };
    expect(stops(await run({ ...asFar, layers: { outline: ['TRIM'] }, far }, LID))).toContain('file-missing');
  });

  test('region-outside-sheet: a far region off the sheet', async () => {
    expect(codes(await run({ requirements }, [...LID, box('BACK', [230, 10], [260, 44])]))).toContain(
      'region-outside-sheet',
    );
  });
});

describe('M9.3: a thickness between both faces', () => {
  const PLATE = [box('TRIM', [0, 0], [200, 120]), box('FLOOR', [30, 25], [160, 90])];
  const asked = (more: object) =>
    run(
      {
        layers: { outline: ['TRIM'], regions: [], both: ['FLOOR'] },
        requirements: [{ layer: 'FLOOR', thickness: 1.4, plus: 0.08, minus: 0.06, ...more }],
      },
      PLATE,
    );
  const asksOf = ({ planFile }: RunResult) =>
    planFile?.regions.filter(({ level }) => level > 0).map(({ id, asked: each }) => [id, each]);

  test('is shared out evenly, tolerance and all', async () => {
    const result = await asked({ face: 'both' });
    expect(asksOf(result)).toEqual([
      ['R02', { depth: 1.3, plus: 0.04, minus: 0.03 }],
      ['F02', { depth: 1.3, plus: 0.04, minus: 0.03 }],
    ]);
    expect(stops(result)).toEqual([]);
  });

  test('or as the split says: a depth of the near face, the rest of the far one', async () => {
    expect(asksOf(await asked({ face: 'both', split: 0.65 }))).toEqual([
      ['R02', { depth: 0.65, plus: 0.02, minus: 0.015 }],
      ['F02', { depth: 1.95, plus: 0.06, minus: 0.045 }],
    ]);
  });

  test('split-beyond-depth: more than both together take', async () => {
    expect(stops(await asked({ face: 'both', split: 2.7 }))).toEqual(['split-beyond-depth']);
  });

  test('thickness-of-one-face: the other is etched right behind it', async () => {
    const result = await run(
      {
        requirements: [
          { layer: 'ROUND', thickness: 2.9 },
          { layer: 'BACK', depth: 0.6, face: 'far' },
        ],
      },
      LID,
    );
    expect(stops(result)).toEqual(['thickness-of-one-face']);
  });
});

describe('M9.4: cut out', () => {
  const SLOT = [box('TRIM', [0, 0], [60, 40]), box('SLOTS', [20, 12], [26, 31])];
  const slot = (through: true | number, more: object = {}) =>
    run(
      {
        layers: { outline: ['TRIM'], regions: [], both: ['SLOTS'] },
        stock: { thickness: 1, plus: 0.04, minus: 0.02 },
        requirements: [{ layer: 'SLOTS', through, face: 'both', ...more }],
      },
      SLOT,
    );

  test('true is 1.4 times half the sheet from both faces, and nobody warns of its walls', async () => {
    const result = await slot(true);
    expect(result.planFile?.stages.map(({ level }) => level)).toEqual([0.7]);
    // Corners come out round, and stock of no alloy has no gas: nothing else is said.
    expect([...new Set(codes(result))]).toEqual(['bath-sheet-missing', 'corner-drawn-sharp', 'line-doubt']);
    // All of the slot is gone, and of the cusp what stands over the drawn line.
    const area = 6 * 19;
    const removed = result.planFile?.totals.removedVolume ?? 0;
    expect(removed).toBeGreaterThan(area);
    // The walls: at most the cusp, φ (0.7 − √(0.7² − 0.5²)) = 0.21 mm, outside all round.
    expect(removed).toBeLessThan(area + 50 * 0.2101 + 1);
  });

  test('from one face it goes all the way', async () => {
    const result = await slot(true, { face: 'near' });
    expect(result.planFile?.stages.map(({ level }) => level)).toEqual([1.2]);
    expect(stops(result)).toEqual([]);
    expect(result.planFile?.totals.removedVolume).toBeGreaterThan(6 * 19);
  });

  test('through-too-shallow: the thickest sheet takes more than half of 1.04', async () => {
    expect(stops(await slot(0.515))).toEqual(['through-too-shallow', 'through-too-shallow']);
    expect(stops(await slot(0.53))).toEqual([]);
  });

  test('through-at-worst: not in a bath slower by its spread of 5 %', async () => {
    expect(codes(await slot(0.53))).toContain('through-at-worst');
    expect(codes(await slot(0.56))).not.toContain('through-at-worst');
  });
});

describe('M9.6: what is left between the faces', () => {
  const behind = (near: number, far: number, registration = 0) =>
    run(
      {
        layers: { outline: ['TRIM'], regions: ['FRONT'], far: ['BACK'] },
        far: { registration },
        rules: { minWeb: 0.8 },
        requirements: [
          { layer: 'FRONT', depth: near },
          { layer: 'BACK', depth: far, face: 'far' },
        ],
      },
      [
        box('TRIM', [0, 0], [200, 120]),
        box('FRONT', [20, 20], [90, 100]),
        box('BACK', [92.5, 15], [180, 103]),
      ],
    );
  /** Lines keep back by the whole depth from land: openings are 2.5 mm and both depths apart. */
  const between = (near: number, far: number, gap: number) =>
    4 - Math.sqrt((near + far) ** 2 - (gap + near + far) ** 2);

  test('walls beside each other leave all of it', async () => {
    expect(between(1.4, 1.5, 2.5)).toBeNaN();
    expect(stops(await behind(1.4, 1.5))).toEqual([]);
  });

  test('faces-web-too-thin, with the far face off by its registration', async () => {
    const overlapping = await run(
      {
        layers: { outline: ['TRIM'], regions: ['FRONT'], far: ['BACK'] },
        far: { registration: 0.5 },
        rules: { minWeb: 0.8 },
        requirements: [
          { layer: 'FRONT', depth: 1.6 },
          { layer: 'BACK', depth: 1.7, face: 'far' },
        ],
      },
      [box('TRIM', [0, 0], [200, 120]), box('FRONT', [20, 20], [90, 100]), box('BACK', [87, 15], [180, 103])],
    );
    // Openings end at 88.4 and begin at 88.7: 0.3 apart, less than they may come nearer.
    const found = overlapping.findings.find(({ code }) => code === 'faces-web-too-thin');
    expect(found?.facts).toMatchObject({ web: expect.closeTo(0.7, 6), limit: 0.8, registration: 0.5 });
    expect(found?.place.regions).toHaveLength(2);
    expect(found?.place.at?.x).toBeCloseTo(88.55, 1);
  });

  test('faces-web-at-worst: 0.9 mm as planned, less 0.23 of the sheet and 5 % of 3.1 mm', async () => {
    const result = await run(
      {
        rules: { minWeb: 0.8 },
        requirements: [
          { layer: 'ROUND', depth: 1.5 },
          { layer: 'BACK', depth: 1.6, face: 'far' },
        ],
      },
      LID,
    );
    expect(stops(result)).toEqual([]);
    const found = result.findings.find(({ code }) => code === 'faces-web-at-worst');
    expect(found?.facts).toMatchObject({ web: expect.closeTo(0.9 - 0.23 - 0.05 * 3.1, 6) });
  });

  test('floors-meet, where nothing asks for a hole', async () => {
    const met = await run(
      {
        requirements: [
          { layer: 'ROUND', depth: 2.2 },
          { layer: 'BACK', depth: 2.1, face: 'far' },
        ],
      },
      LID,
    );
    expect(stops(met)).toContain('floors-meet');
  });
});
