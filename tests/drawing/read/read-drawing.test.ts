/** What reading a drawing gives besides its curves: layers, notes, places, letters, what was passed over; and that it gives the same every time. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import {
  block,
  bytesOf,
  circle,
  drawingText,
  entity,
  insert,
  line,
  polyline,
  section,
  type Tag,
  tags,
} from '#support/drawings/raw-drawing.ts';

const GONDOLA = drawingText({
  layers: [
    { name: 'Rim', color: 1 },
    { name: 'OLD', color: -2 },
    { name: 'Ice', flags: 1 },
  ],
  blocks: block('RIB', line(0, 0, 5, 0, [8, '0']) + circle(0, 0, 1, [8, 'Rim'])),
  entities:
    polyline(
      [
        [0, 0],
        [10, 0],
        [10, 10],
      ],
      1,
      [5, '2A'],
      [8, 'RIM'],
    ) +
    insert('RIB', 0, 0, [8, 'Ribs']) +
    entity('HATCH', [5, '2F'], [10, 0], [8, 'Rim']) +
    entity('HATCH', [10, 0], [8, 'Rim']) +
    entity('REGION', [5, '30'], [8, 'Rim']) +
    circle(0, 0, 3, [8, 'OLD']) +
    circle(0, 0, 4, [8, 'ICE']) +
    circle(0, 0, 5, [8, 'Frame'], [67, 1]) +
    circle(0, 0, 0, [5, '31'], [8, 'Rim']) +
    entity('TEXT', [8, 'Rim'], [10, 3], [20, 4], [1, '%%c12 %%p0.05, 45%%d']),
});

test('layers come in the order of the table, names as declared, with counts of what ends up on them', () => {
  expect(readDrawing(bytesOf(GONDOLA)).layers).toEqual([
    { name: 'Rim', shown: true, counts: { CIRCLE: 2, HATCH: 2, LWPOLYLINE: 1, REGION: 1, TEXT: 1 } },
    { name: 'OLD', shown: false, counts: { CIRCLE: 1 } },
    { name: 'Ice', shown: false, counts: { CIRCLE: 1 } },
    { name: 'Ribs', shown: true, counts: { INSERT: 1, LINE: 1 } },
    { name: 'Frame', shown: true, counts: {} },
  ]);
});

test('curves know kind, handle, layer and line; layer 0 of a block is the layer of its insertion', () => {
  const { curves } = readDrawing(bytesOf(GONDOLA));
  expect(curves.map(({ kind, handle, layer }) => ({ kind, handle, layer }))).toEqual([
    { kind: 'LWPOLYLINE', handle: '2A', layer: 'Rim' },
    { kind: 'LINE', handle: undefined, layer: 'Ribs' },
    { kind: 'CIRCLE', handle: undefined, layer: 'Rim' },
  ]);
  const lines = GONDOLA.split('\n');
  for (const { kind, line: at } of curves) expect([lines[at - 1], lines[at]]).toEqual(['0', kind]);
});

test('all that is passed over is counted by kind, layer and reason', () => {
  expect(readDrawing(bytesOf(GONDOLA)).passedOver).toEqual([
    { kind: 'CIRCLE', layer: 'Frame', count: 1, why: 'it lies in paper space' },
    { kind: 'CIRCLE', layer: 'Ice', count: 1, why: 'its layer is frozen' },
    { kind: 'CIRCLE', layer: 'OLD', count: 1, why: 'its layer is off' },
    {
      kind: 'HATCH',
      layer: 'Rim',
      count: 2,
      why: 'it is a filled area; its outline is usually drawn as well',
    },
    {
      kind: 'REGION',
      layer: 'Rim',
      count: 1,
      why: 'it is a solid or surface, whose data only its own program can read',
    },
  ]);
});

test('findings know their place', () => {
  const { findings } = readDrawing(bytesOf(GONDOLA));
  const lines = GONDOLA.split('\n');
  const lineOf = (handle: string): number => lines.indexOf(handle) - 2;
  expect(findings.find(({ code }) => code === 'entity-without-size')).toEqual({
    code: 'entity-without-size',
    severity: 'warn',
    facts: { kind: 'CIRCLE', handle: '31', what: 'a radius of 0' },
    place: { line: lineOf('31'), layer: 'Rim', at: { x: 0, y: 0 } },
  });
  expect(findings.find(({ code }) => code === 'entity-cannot-be-read')?.facts).toMatchObject({
    kind: 'REGION',
    count: 1,
    firstHandle: '30',
  });
});

test('lines are counted through blank lines, comments and every kind of line end', () => {
  for (const end of ['\n', '\r\n', '\r', '\r\r\n']) {
    const text = GONDOLA.replace('0\nLWPOLYLINE', '999\nby hand\n\n0\nLWPOLYLINE');
    const { curves } = readDrawing(bytesOf(text.replaceAll('\n', end)));
    expect(curves[0]?.line, JSON.stringify(end)).toBe(text.split('\n').indexOf('LWPOLYLINE'));
  }
});

test('notes have their signs, their place in millimetres and no formatting', () => {
  const inch: readonly Tag[] = [
    [9, '$INSUNITS'],
    [70, 1],
  ];
  const notes = readDrawing(
    bytesOf(
      drawingText({
        header: inch,
        blocks: block('TAG', entity('TEXT', [8, '0'], [10, 1], [20, 0], [1, 'tag'])),
        entities:
          entity('TEXT', [10, 1], [20, 2], [1, '%%c12 %%p0.05, 45%%d, 100%%%']) +
          entity('TEXT', [10, 1], [20, 2], [11, 3], [21, 4], [72, 1], [1, 'centred']) +
          entity('TEXT', [10, 1], [20, 2], [1, 'from below'], [230, -1]) +
          entity(
            'MTEXT',
            [10, 5],
            [20, 6],
            [3, '{\\fArial|b0;MASK} to '],
            [1, '\\A1;line\\Pthen \\S1^2; in\\~all'],
          ) +
          insert('TAG', 2, 0, [50, 90]),
      }),
    ),
  ).notes;
  expect(
    notes.map(({ text, at }) => [text, Math.round(at.x * 1e6) / 25.4e6, Math.round(at.y * 1e6) / 25.4e6]),
  ).toEqual([
    ['Ø12 ±0.05, 45°, 100%', 1, 2],
    ['centred', 3, 4],
    ['from below', -1, 2],
    ['MASK to line then 1/2 in all', 5, 6],
    ['tag', 2, 1],
  ]);
});

describe('a text hangs as it is drawn', () => {
  const hungOf = (text: string, blocks = '') =>
    readDrawing(bytesOf(drawingText({ blocks, entities: text }))).notes.map(({ at, hung }) => {
      const turn = (Math.atan2(hung.along.y, hung.along.x) * 180) / Math.PI;
      return [
        Number(at.x.toFixed(6)),
        Number(at.y.toFixed(6)),
        Number(turn.toFixed(6)),
        hung.across,
        hung.up,
      ];
    });
  const text = (...groups: readonly Tag[]) => entity('TEXT', [10, 2], [20, 5], [1, '1.6'], ...groups);
  const second: readonly Tag[] = [
    [11, 8],
    [21, 13],
  ];

  test.each([
    ['on its base line, level', text(), [2, 5, 0, 'start', 'base']],
    ['turned', text([50, 37.5]), [2, 5, 37.5, 'start', 'base']],
    ['centred on its second point', text(...second, [72, 1], [50, 90]), [8, 13, 90, 'middle', 'base']],
    ['by its end, at the top', text(...second, [72, 2], [73, 3]), [8, 13, 0, 'end', 'top']],
    ['by the middle of its start', text(...second, [73, 2], [50, -12]), [8, 13, -12, 'start', 'middle']],
    ['by its bottom', text(...second, [72, 1], [73, 1]), [8, 13, 0, 'middle', 'base']],
    ['by its very middle', text(...second, [72, 4]), [8, 13, 0, 'middle', 'middle']],
    // From (2, 5) to (8, 13): 6 across and 8 up.
    ['fitted between two points', text(...second, [72, 5]), [5, 9, 53.130102, 'middle', 'base']],
    [
      'seen from behind: it reads, and hangs by its other end',
      text([50, 20], [230, -1]),
      [-2, 5, -20, 'end', 'base'],
    ],
  ] as const)('TEXT %s', (_, drawn, expected) => {
    expect(hungOf(drawn)).toEqual([expected]);
  });

  const multiline = (...groups: readonly Tag[]) => entity('MTEXT', [10, 2], [20, 5], [1, '1.6'], ...groups);
  test.each([
    ['by its top left where nothing is said', multiline(), [2, 5, 0, 'start', 'top']],
    ['by its middle, turned', multiline([71, 5], [50, 30]), [2, 5, 30, 'middle', 'middle']],
    ['by its bottom right', multiline([71, 9]), [2, 5, 0, 'end', 'base']],
    [
      'along the direction that comes last',
      multiline([71, 3], [50, 30], [11, 0], [21, -2]),
      [2, 5, -90, 'end', 'top'],
    ],
    [
      'by the angle that comes last',
      multiline([71, 4], [11, 0], [21, 1], [50, 30]),
      [2, 5, 30, 'start', 'middle'],
    ],
    [
      'level, beside heights of columns',
      multiline([75, 1], [76, 2], [50, 40], [50, 25]),
      [2, 5, 0, 'start', 'top'],
    ],
  ] as const)('MTEXT %s', (_, drawn, expected) => {
    expect(hungOf(drawn)).toEqual([expected]);
  });

  test('turned with its block, and in a mirrored one turned to read', () => {
    const tag = block('TAG', entity('TEXT', [8, '0'], [10, 1], [20, 0], [50, 10], [1, 'tag']));
    expect(hungOf(insert('TAG', 2, 3, [50, 90]), tag)).toEqual([[2, 4, 100, 'start', 'base']]);
    expect(hungOf(insert('TAG', 2, 3, [41, -1]), tag)).toEqual([[1, 3, -10, 'end', 'base']]);
  });
});

test.each([
  ['windows-1252 by its codepage', 'AC1015', 'ANSI_1252', [0xc4, 0x75, 0xdf], 'Äuß'],
  ['windows-1252 when nothing is said', 'AC1015', undefined, [0xc4, 0x75, 0xdf], 'Äuß'],
  ['windows-1251', 'AC1015', 'ansi_1251', [0xca, 0xf0, 0xe0, 0xe9], 'Край'],
  ['Shift_JIS', 'AC1015', 'ANSI_932', [0x8a, 0x4f, 0x8c, 0x60], '外形'],
  ['UTF-8 from AC1021 on', 'AC1021', 'ANSI_1252', [0xc3, 0x84], 'Ä'],
  ['UTF-8 promised, windows-1252 kept', 'AC1027', 'ANSI_1252', [0xc4, 0x75], 'Äu'],
  ['UTF-8 without being asked', 'AC1009', undefined, [0xc3, 0x84], 'Ä'],
  ['a codepage that nobody knows', 'AC1015', 'klingon', [0xc4], 'Ä'],
  ['\\U+ escapes', 'AC1015', 'ANSI_1252', [...'\\U+00C4\\U+5916'].map((c) => c.charCodeAt(0)), 'Ä外'],
  ['\\M+ escapes', 'AC1015', 'ANSI_1252', [...'\\M+18A4F'].map((c) => c.charCodeAt(0)), '外'],
] as const)('layer names in %s', (_, version, codepage, letters, name) => {
  const head = tags(
    [9, '$ACADVER'],
    [1, version],
    ...(codepage === undefined
      ? []
      : ([
          [9, '$DWGCODEPAGE'],
          [3, codepage],
        ] as const)),
    [9, '$INSUNITS'],
    [70, 4],
  );
  const layer = String.fromCharCode(...letters);
  const drawing = readDrawing(
    bytesOf(section('HEADER', head) + section('ENTITIES', line(0, 0, 5, 0, [8, layer])) + tags([0, 'EOF'])),
  );
  expect(drawing.curves[0]?.layer).toBe(name);
  expect(drawing.findings).toEqual([]);
});

test('the unit of the drawing, of the job, and what the file said itself', () => {
  const inch = bytesOf(
    drawingText({
      header: [
        [9, '$INSUNITS'],
        [70, 1],
      ],
      entities: line(0, 0, 1, 0),
    }),
  );
  expect(readDrawing(inch)).toMatchObject({ unit: 'in', statedUnit: 'in' });
  expect(readDrawing(inch, { unit: 'mm' })).toMatchObject({ unit: 'mm', statedUnit: 'in' });
  const none = bytesOf(drawingText({ header: [], entities: line(0, 0, 1, 0) }));
  expect(readDrawing(none)).toMatchObject({ unit: undefined, statedUnit: undefined });
});

test('the same bytes give the same drawing, and progress rises from 0 to 1', () => {
  const bytes = bytesOf(GONDOLA);
  const shares: number[] = [];
  const first = readDrawing(bytes, { progress: (share) => shares.push(share) });
  expect(JSON.stringify(readDrawing(bytes))).toBe(JSON.stringify(first));
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBe(1);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
});
