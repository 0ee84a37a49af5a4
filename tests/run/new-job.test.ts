/** A job begun from its drawing: what the drawing says is taken, what it leaves open stays open and is counted. */
import { describe, expect, test } from 'vitest';
import { type NewJobInput, newJob } from '#run/new-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import {
  box,
  buoyLid,
  buoyLidNotes,
  circle,
  dxf,
  line,
  note,
  outline,
} from '#support/drawings/small-drawing.ts';

function begun(
  entities: readonly string[],
  more: Partial<NewJobInput> & { readonly insunits?: number | undefined } = { insunits: 4 },
) {
  const { insunits, ...input } = more;
  return newJob({
    drawingName: 'lid.dxf',
    drawingBytes: bytesOf(dxf({ insunits, entities })),
    notePrefix: '',
    ...input,
  });
}

const LID = [...buoyLid, ...buoyLidNotes];
/** A hatch of a solar boat, all on one layer. */
const HATCH = [
  box('0', [0, 0], [260, 150]),
  box('0', [20, 30], [140, 120]),
  circle('0', [190, 75], 25),
  note('0', [30, 40], '1.20'),
  note('0', [185, 70], '2.1 +0.08 -0.05'),
];
const placeOf = (requirement: object | undefined): readonly number[] =>
  requirement !== undefined && 'at' in requirement ? (requirement.at as number[]) : [];
const codesOf = ({ findings }: ReturnType<typeof newJob>) => findings.map(({ code }) => code);

describe('a new job of a drawing with layers', () => {
  test('takes the layer of the outermost outline, and of the notes the one that says what it is', () => {
    const { jobFile, ...counts } = begun(LID);
    expect(jobFile).toEqual({
      format: 'isobath-job',
      version: 1,
      name: 'lid',
      drawing: 'lid.dxf',
      units: 'mm',
      layers: { outline: ['TRIM'], ignore: [] },
      stock: {},
      process: {},
      requirements: [{ at: expect.anything(), thickness: 1.6 }],
    });
    // DEEP from (45, 40) to (95, 80), where "t 1.6" stands.
    const [x = 0, y = 0] = placeOf(jobFile?.requirements[0]);
    expect([x > 45 && x < 95, y > 40 && y < 80]).toEqual([true, true]);
    expect(counts).toMatchObject({ ignored: [], regions: 4, taken: 1, waiting: 1, findings: [] });
    // Of the round pocket one note says 1.2, the other 1.3 ± 0.1.
    expect(counts.disputed).toEqual(['R04']);
    expect(counts.unread).toEqual([]);
  });

  test('names a text with a figure that it can’t read, and asks nothing of that region', () => {
    const { jobFile, taken, unread } = begun([
      box('TRIM', [0, 0], [90, 40]),
      box('BAYS', [5, 5], [35, 35]),
      box('BAYS', [45, 5], [85, 35]),
      note('W', [10, 20], 'T=1.1'),
      note('W', [50, 12], 'TAPER 1.6 TO 0.8'),
    ]);
    expect([taken, jobFile?.requirements.length]).toEqual([1, 1]);
    expect(unread.map(({ text }) => text)).toEqual(['TAPER 1.6 TO 0.8']);
  });

  test('alloy, bath and thickness stand in it where they are given', () => {
    const { jobFile } = begun(LID, {
      insunits: 4,
      alloy: 'al-2024-t3',
      bath: 'caustic-aluminium',
      thickness: 4.06,
    });
    expect(jobFile?.stock).toEqual({ alloy: 'al-2024-t3', thickness: 4.06 });
    expect(jobFile?.process).toEqual({ bath: 'caustic-aluminium' });
  });

  test('an alloy or a bath that Isobath has no figures for begins no job, and the nearest name is offered', () => {
    const { jobFile, findings } = begun(LID, { insunits: 4, alloy: '2024-T3', bath: 'caustic-aluminum' });
    expect(jobFile).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(['alloy-unknown', 'bath-unknown']);
    expect(findings[1]?.facts).toMatchObject({ meant: 'caustic-aluminium' });
  });

  test('bare figures are final thicknesses where the engineer says so; a figure that says depth stays one', () => {
    const parts = [
      ...buoyLid,
      note('W', [25, 25], '2.20 ±0.15'),
      note('W', [60, 60], 'DEPTH 1.9'),
      note('W', [150, 60], '2.8'),
    ];
    const asked = (notes: NewJobInput['notes']) =>
      begun(parts, { insunits: 4, notes }).jobFile?.requirements.map(({ at: _, ...rest }) => rest as object);
    expect(asked('thickness')).toEqual([
      { thickness: 2.2, plus: 0.15, minus: 0.15 },
      { depth: 1.9 },
      { thickness: 2.8 },
    ]);
    expect(asked('depth')).toEqual([{ depth: 2.2, plus: 0.15, minus: 0.15 }, { depth: 1.9 }, { depth: 2.8 }]);
    expect(asked(undefined)).toEqual([{ depth: 1.9 }]);
  });

  test('letters named as those before a depth make it one', () => {
    const parts = [...buoyLid, note('W', [25, 25], 'H2.3'), note('W', [150, 60], '1.2')];
    const { jobFile, waiting } = begun(parts, { insunits: 4, notePrefix: 'H' });
    expect(jobFile?.requirements).toEqual([{ at: expect.anything(), depth: 2.3 }]);
    expect(waiting).toBe(0);
  });

  test('centre lines and a frame are left out, and are not the outline however far out they lie', () => {
    const framed = [...buoyLid, box('FRAME', [-60, -50], [400, 300]), line('CENTER', [130, 60], [190, 60])];
    const { jobFile, ignored, regions } = begun(framed);
    expect(ignored.map(({ layer }) => layer).sort()).toEqual(['CENTER', 'FRAME']);
    expect([...(jobFile?.layers?.ignore ?? [])].sort()).toEqual(['CENTER', 'FRAME']);
    expect(jobFile?.layers?.outline).toEqual(['TRIM']);
    expect(regions).toBe(4);
  });

  test('an outline whose border lies on two layers is taken as the outermost', () => {
    const split = [
      line('LEFT', [0, 120], [0, 0]),
      line('LEFT', [0, 0], [200, 0]),
      line('RIGHT', [200, 0], [200, 120]),
      line('RIGHT', [200, 120], [0, 120]),
      box('POCKETS', [20, 20], [120, 100]),
    ];
    expect(begun(split).jobFile?.layers?.outline).toBe('outermost');
  });

  test('one drawn twice, on two layers of its own, as well', () => {
    const twice = [...buoyLid, box('EDGE', [0, 0], [200, 120])];
    expect(begun(twice).jobFile?.layers?.outline).toBe('outermost');
  });
});

describe('a new job of a plate on one layer', () => {
  test('takes the outermost closed outline, and requirements with their tolerances', () => {
    const { jobFile, regions, taken, waiting } = begun(HATCH, { insunits: 4, notes: 'depth' });
    expect(jobFile?.layers).toEqual({ outline: 'outermost', ignore: [] });
    expect(jobFile?.requirements).toEqual([
      { at: expect.anything(), depth: 1.2 },
      { at: expect.anything(), depth: 2.1, plus: 0.08, minus: 0.05 },
    ]);
    expect([regions, taken, waiting]).toEqual([3, 2, 0]);
  });

  test('what it does not say waits', () => {
    const { jobFile, taken, waiting, disputed } = begun(HATCH);
    expect([jobFile?.requirements, taken, waiting, disputed]).toEqual([[], 0, 2, []]);
  });

  test('a layer of centre lines beside it makes no other layer of it', () => {
    const { jobFile, ignored } = begun([...HATCH, line('Mittellinien', [150, 75], [230, 75])]);
    expect(jobFile?.layers).toEqual({ outline: 'outermost', ignore: ['Mittellinien'] });
    expect(ignored.map(({ layer }) => layer)).toEqual(['Mittellinien']);
  });
});

describe('a new job in other units', () => {
  /** A cover of 10 by 6 inches with one pocket. */
  const COVER = [
    box('TRIM', [0, 0], [10, 6]),
    box('POCKET', [1, 1], [4, 5]),
    note('WORDS', [2, 2], '.080 +.005 -.003'),
  ];

  test('in inches figures and places stay in inches', () => {
    const { jobFile } = begun(COVER, { insunits: 1, notes: 'depth' });
    expect(jobFile?.units).toBe('in');
    expect(jobFile).not.toHaveProperty('drawingUnits');
    const [asked] = jobFile?.requirements ?? [];
    expect(asked).toMatchObject({ depth: 0.08, plus: 0.005, minus: 0.003 });
    const [x = 0, y = 0] = placeOf(asked);
    expect([x > 1 && x < 4, y > 1 && y < 5]).toEqual([true, true]);
  });

  test('drawing-unit-missing: without a unit there is no job; with one given it is kept in the job', () => {
    const none = begun(COVER, { insunits: undefined, notes: 'depth' });
    expect(none.jobFile).toBeUndefined();
    expect(codesOf(none)).toContain('drawing-unit-missing');
    expect([none.regions, none.taken, none.waiting, none.disputed]).toEqual([0, 0, 0, []]);
    const given = begun(COVER, { insunits: undefined, notes: 'depth', unit: 'in' });
    expect(given.jobFile).toMatchObject({ units: 'in', drawingUnits: 'in' });
    expect(given.jobFile?.requirements).toMatchObject([{ depth: 0.08 }]);
  });

  test('far from the origin a requirement stands in the drawing’s own frame', () => {
    const at = [4_512_345, -37_654_321] as const;
    const far = [
      box('TRIM', at, [at[0] + 200, at[1] + 120]),
      box('POCKETS', [at[0] + 20, at[1] + 20], [at[0] + 120, at[1] + 100]),
      note('WORDS', [at[0] + 30, at[1] + 30], 't 1.7'),
      line('POCKETS', [at[0] + 150, at[1] + 40], [at[0] + 170, at[1] + 50]),
    ];
    const found = begun(far);
    const [x = 0, y = 0] = placeOf(found.jobFile?.requirements[0]);
    expect([x - at[0] > 20 && x - at[0] < 120, y - at[1] > 20 && y - at[1] < 100]).toEqual([true, true]);
    // And so does what is wrong with it: a line that ends at (150, 40) and at (170, 50) of the plate.
    const loose = found.findings.find(({ code }) => code === 'line-leads-nowhere');
    const ends = [at[0] + 150, at[0] + 170];
    expect(ends.some((end) => Math.abs(end - (loose?.place.at?.x ?? 0)) < 0.01)).toBe(true);
  });
});

test('drawing-too-big: no job is begun of more linework than a sheet can have', { tags: ['long'] }, () => {
  const teeth = Array.from({ length: 420_001 }, (_, i) => [i / 2100, i % 2 === 0 ? 0 : 3] as const);
  const found = begun([outline('TRIM', [...teeth, [200, 90], [0, 90]])]);
  expect(found.jobFile).toBeUndefined();
  const tooBig = found.findings.find(({ code }) => code === 'drawing-too-big');
  expect(tooBig?.facts).toMatchObject({ found: 420_003, limit: 420_000 });
});
