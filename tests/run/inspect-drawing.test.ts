/** What a drawing holds before there is a job: outlines, regions and depth notes, in millimetres and in its own unit. */
import { describe, expect, test } from 'vitest';
import { inspectDrawing } from '#run/inspect-drawing.ts';
import { RunCancelled } from '#run/run-options.ts';
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

const bytesOfLid = () => bytesOf(dxf({ insunits: 4, entities: [...buoyLid, ...buoyLidNotes] }));

describe('the buoy’s lid, looked at without a job', () => {
  test('its closed outlines with the metal inside, by layer', async () => {
    const { unit, closedOutlines } = await inspectDrawing(bytesOfLid());
    expect(unit).toBe('mm');
    expect(closedOutlines.map(({ layer, area }) => [layer, area])).toEqual([
      ['TRIM', 24_000],
      ['POCKETS', 8000],
      ['DEEP', 2000],
      // 25² π.
      ['ROUND', expect.closeTo(1963.495408, 6)],
    ]);
  });

  test('its regions with what is left of each beside the ones in it, and a place in each', async () => {
    const { regions, suggestedIgnore, findings } = await inspectDrawing(bytesOfLid());
    const byLayer = new Map(regions?.map((each) => [each.layer, each]));
    expect(byLayer.get('TRIM')).toMatchObject({
      area: expect.closeTo(24_000 - 8000 - 1963.495408, 5),
      holes: 2,
    });
    expect(byLayer.get('POCKETS')).toMatchObject({ area: 6000, holes: 1 });
    expect(byLayer.get('DEEP')).toMatchObject({ area: 2000, holes: 0 });
    const [x = 0, y = 0] = byLayer.get('DEEP')?.label ?? [];
    expect([x > 45 && x < 95, y > 40 && y < 80]).toEqual([true, true]);
    expect([suggestedIgnore, findings]).toEqual([[], []]);
  });

  test('texts that read like depths, with where they hang; two that differ are disputed', async () => {
    const { depthNotes, regions } = await inspectDrawing(bytesOfLid());
    const idOf = (layer: string) => regions?.find((each) => each.layer === layer)?.id;
    const plain = { plus: null, minus: null, disputed: false };
    expect(depthNotes).toHaveLength(4);
    expect(depthNotes).toEqual(
      expect.arrayContaining([
        { ...plain, region: idOf('POCKETS'), text: '2.20', asks: 'depth', length: 2.2, place: [25, 25] },
        { ...plain, region: idOf('DEEP'), text: 't 1.6', asks: 'thickness', length: 1.6, place: [60, 60] },
        {
          region: idOf('ROUND'),
          text: '1.3 ±0.1',
          asks: 'depth',
          length: 1.3,
          plus: 0.1,
          minus: 0.1,
          disputed: true,
          place: [150, 52],
        },
      ]),
    );
  });

  test('a text with a figure that is no depth is listed with its region; a word is not', async () => {
    const entities = [...buoyLid, note('W', [60, 60], 'TAPER 1.6 TO 0.8'), note('W', [25, 25], 'DATUM')];
    const { depthNotes, unreadNotes, regions } = await inspectDrawing(
      bytesOf(dxf({ insunits: 4, entities })),
    );
    const idOf = (layer: string) => regions?.find((each) => each.layer === layer)?.id;
    expect(depthNotes).toEqual([]);
    expect(unreadNotes).toEqual([{ region: idOf('DEEP'), text: 'TAPER 1.6 TO 0.8' }]);
  });

  test('with letters named for depths only texts that begin with them, or say thickness', async () => {
    const entities = [...buoyLid, note('W', [25, 25], 'H 2.3'), note('W', [150, 60], '1.2')];
    const { depthNotes } = await inspectDrawing(bytesOf(dxf({ insunits: 4, entities })), { notePrefix: 'H' });
    expect(depthNotes?.map(({ text, length }) => [text, length])).toEqual([['H 2.3', 2.3]]);
  });
});

describe('a drawing in inches, and one that does not say', () => {
  const COVER = [
    box('TRIM', [0, 0], [10, 6]),
    box('POCKET', [1, 1], [4, 5]),
    note('W', [2, 1.5], '.080 +.005 -.003'),
  ];

  test('lengths and areas are in millimetres, places of a job in inches', async () => {
    const { unit, closedOutlines, regions, depthNotes } = await inspectDrawing(
      bytesOf(dxf({ insunits: 1, entities: COVER })),
    );
    expect(unit).toBe('in');
    expect(closedOutlines.map(({ area }) => area)).toEqual(
      [60 * 645.16, 12 * 645.16].map((each) => expect.closeTo(each, 5)),
    );
    const pocket = regions?.find(({ layer }) => layer === 'POCKET');
    expect(pocket?.area).toBeCloseTo(12 * 645.16, 5);
    expect(pocket?.at.map((each) => each * 25.4)).toEqual(
      pocket?.label.map((each) => expect.closeTo(each, 4)),
    );
    expect(depthNotes).toMatchObject([{ length: 2.032, plus: 0.127, minus: 0.0762, place: [50.8, 38.1] }]);
  });

  test('drawing-unit-missing: no unit, and no areas in it; a unit given is taken', async () => {
    const bytes = bytesOf(dxf({ entities: COVER }));
    const { unit, closedOutlines, findings } = await inspectDrawing(bytes);
    expect(unit).toBeNull();
    expect(closedOutlines.map(({ area }) => area)).toEqual([null, null]);
    expect(findings.map(({ code }) => code)).toContain('drawing-unit-missing');
    const given = await inspectDrawing(bytes, { unit: 'cm' });
    expect(given.unit).toBe('cm');
    expect(given.closedOutlines.map(({ area }) => area)).toEqual([6000, 1200]);
  });
});

test('an arc that is left open is no closed outline', async () => {
  const entities = [...buoyLid, line('TRIM', [130, 10], [150, 15])];
  const { closedOutlines, findings } = await inspectDrawing(bytesOf(dxf({ insunits: 4, entities })));
  expect(closedOutlines).toHaveLength(4);
  expect(findings.map(({ code }) => code)).toContain('line-leads-nowhere');
});

test('far from the origin every place is in the drawing’s own frame', async () => {
  const at = [4_512_345, -37_654_321] as const;
  const entities = [
    box('TRIM', at, [at[0] + 200, at[1] + 120]),
    circle('ROUND', [at[0] + 160, at[1] + 60], 25),
    note('W', [at[0] + 150, at[1] + 55], '1.7'),
    line('TRIM', [at[0] + 30, at[1] + 40], [at[0] + 70, at[1] + 50]),
  ];
  const { regions, depthNotes, notes, findings } = await inspectDrawing(
    bytesOf(dxf({ insunits: 4, entities })),
  );
  const round = regions?.find(({ layer }) => layer === 'ROUND');
  for (const [x, y] of [round?.label ?? [0, 0], round?.at ?? [0, 0]]) {
    expect(Math.hypot(x - at[0] - 160, y - at[1] - 60)).toBeLessThan(25);
  }
  expect(depthNotes?.[0]?.place).toEqual([at[0] + 150, at[1] + 55]);
  expect(notes[0]?.at).toEqual({ x: at[0] + 150, y: at[1] + 55 });
  const { x = 0, y = 0 } = findings.find(({ code }) => code === 'line-leads-nowhere')?.place.at ?? {};
  const ends = [
    [30, 40],
    [70, 50],
  ] as const;
  expect(ends.some((end) => Math.hypot(x - at[0] - end[0], y - at[1] - end[1]) < 0.01)).toBe(true);
});

describe('what can’t be looked at', () => {
  test('a file that is no drawing: no regions, no notes of depth, the findings say why', async () => {
    const { regions, depthNotes, suggestedIgnore, findings } = await inspectDrawing(bytesOf('hello'));
    expect([regions, depthNotes, suggestedIgnore]).toEqual([null, null, []]);
    expect(findings.some(({ severity }) => severity === 'stop')).toBe(true);
  });

  test('drawing-too-big: outlines are listed, regions are not looked for', { tags: ['long'] }, async () => {
    const teeth = Array.from({ length: 420_001 }, (_, i) => [i / 2100, i % 2 === 0 ? 0 : 3] as const);
    const entities = [outline('TRIM', [...teeth, [200, 90], [0, 90]])];
    const { regions, depthNotes, closedOutlines, findings } = await inspectDrawing(
      bytesOf(dxf({ insunits: 4, entities })),
    );
    expect(findings.find(({ code }) => code === 'drawing-too-big')?.facts).toMatchObject({ found: 420_003 });
    expect([regions, depthNotes, closedOutlines.length]).toEqual([null, null, 1]);
  });
});

describe('whoever waits for it', () => {
  test('sees the share done rise to 1', async () => {
    const shares: number[] = [];
    let breaths = 0;
    await inspectDrawing(bytesOfLid(), {
      progress: (share) => shares.push(share),
      breathe: async () => {
        breaths++;
      },
    });
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    // The drawing is read by 0.6, and reading says so on its way.
    expect(shares.some((share) => share > 0 && share < 0.6)).toBe(true);
    expect(breaths).toBeGreaterThanOrEqual(3);
  });

  test('may cancel it', async () => {
    await expect(inspectDrawing(bytesOfLid(), { signal: { aborted: true } })).rejects.toThrow(RunCancelled);
    await expect(inspectDrawing(bytesOfLid(), { signal: { aborted: false } })).resolves.toBeDefined();
  });
});
