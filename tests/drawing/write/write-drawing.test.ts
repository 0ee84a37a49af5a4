/** Drawings as written: read back they are the same, and the frame round the entities hangs together as strict readers ask. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { DrawingOut } from '#drawing/write/drawing-out.ts';
import { fixedPoint } from '#drawing/write/fixed-point.ts';
import { coordinateDecimals, writeDrawing } from '#drawing/write/write-drawing.ts';
import { writeOldDrawing } from '#drawing/write/write-old-drawing.ts';
import { spanFromBulge } from '#geometry/span.ts';

const LID: DrawingOut = {
  unit: 'in',
  layers: [
    { name: 'CUT', color: 1, shown: true },
    { name: 'OLD-CUT', color: 5, shown: false },
  ],
  outlines: [
    {
      layer: 'CUT',
      closed: true,
      vertices: [
        [0.5, 0.25, 0],
        [3.125, 0.25, 0.375],
        [3.125, 2.75, 0],
        [0.5, 1.75, 0],
      ],
    },
    {
      layer: 'CUT',
      closed: false,
      vertices: [
        [-1.25, -0.75, -0.5],
        [4, 0.75, 0],
      ],
    },
    {
      layer: 'OLD-CUT',
      closed: true,
      vertices: [
        [9, 9, 0],
        [10, 9, 0],
        [10, 9.5, 0],
      ],
    },
  ],
  notes: [{ layer: 'CUT', at: [1.5, -2.25], height: 0.125, text: 'Lid Ø 3' }],
};

const MM = 25.4;

/** Its tags, as [code, value]. */
function tagsOf(bytes: Uint8Array): (readonly [code: number, value: string])[] {
  const lines = new TextDecoder().decode(bytes).split('\r\n');
  expect(lines.at(-1)).toBe('');
  return Array.from({ length: (lines.length - 1) / 2 }, (_, n) => [
    Number(lines[2 * n]),
    lines[2 * n + 1] ?? '',
  ]);
}

type Tags = ReturnType<typeof tagsOf>;

/** The values after a header variable's name, up to the next name. */
function variable(tags: Tags, name: string): string[] {
  const from = tags.findIndex(([code, value]) => code === 9 && value === name) + 1;
  const to = tags.findIndex(([code], at) => at >= from && (code === 9 || code === 0));
  return tags.slice(from, to).map(([, value]) => value);
}

describe.each([
  ['AC1015', writeDrawing, 'LWPOLYLINE', 'Lid Ø 3'],
  ['AC1009', writeOldDrawing, 'POLYLINE', 'Lid ? 3'],
] as const)('%s', (version, write, kind, note) => {
  const bytes = write(LID);
  const tags = tagsOf(bytes);

  test('outlines, bulges, layers and notes are read back as they were, in millimetres', () => {
    const { curves, layers, notes, passedOver, findings } = readDrawing(bytes, { unit: 'in' });
    expect(findings.map(({ code }) => code)).toEqual(['layer-not-shown']);
    expect(passedOver).toEqual([{ kind, layer: 'OLD-CUT', count: 1, why: 'its layer is off' }]);
    expect(layers.map(({ name, shown }) => [name, shown])).toEqual([
      ['0', true],
      ['CUT', true],
      ['OLD-CUT', false],
    ]);
    expect(curves.map((curve) => [curve.kind, curve.layer, curve.closed])).toEqual([
      [kind, 'CUT', true],
      [kind, 'CUT', false],
    ]);
    expect(curves.map(({ spans }) => spans.length)).toEqual([4, 1]);
    const arc = spanFromBulge({ x: 3.125 * MM, y: 0.25 * MM }, { x: 3.125 * MM, y: 2.75 * MM }, 0.375);
    const other = spanFromBulge({ x: -1.25 * MM, y: -0.75 * MM }, { x: 4 * MM, y: 0.75 * MM }, -0.5);
    for (const [found, wanted] of [
      [curves[0]?.spans[1], arc],
      [curves[1]?.spans[0], other],
    ]) {
      if (found?.kind !== 'arc' || wanted?.kind !== 'arc') throw new Error('arcs');
      expect(found.radius).toBeCloseTo(wanted.radius, 6);
      expect(found.center.x).toBeCloseTo(wanted.center.x, 6);
      expect(found.center.y).toBeCloseTo(wanted.center.y, 6);
      expect(found.sweep).toBeCloseTo(wanted.sweep, 9);
    }
    expect(curves[0]?.spans.at(-1)?.end).toEqual({
      x: expect.closeTo(0.5 * MM, 6),
      y: expect.closeTo(0.25 * MM, 6),
    });
    expect(notes.map(({ text, layer }) => [text, layer])).toEqual([[note, 'CUT']]);
    expect(notes[0]?.at).toEqual({ x: expect.closeTo(1.5 * MM, 6), y: expect.closeTo(-2.25 * MM, 6) });
  });

  test('its extents are those of the outlines, to eight decimals of an inch', () => {
    expect(variable(tags, '$ACADVER')).toEqual([version]);
    const [x, y, z] = variable(tags, '$EXTMAX');
    expect([x, y, z]).toEqual(['10.00000000', '9.50000000', '0.00000000']);
    expect(variable(tags, '$EXTMIN')).toEqual(['-1.25000000', '-0.75000000', '0.00000000']);
    const empty = tagsOf(write({ ...LID, outlines: [], notes: [] }));
    for (const name of ['$EXTMIN', '$EXTMAX', '$INSBASE']) {
      expect(variable(empty, name)).toEqual(['0.00000000', '0.00000000', '0.00000000']);
    }
  });

  test('sections open and close in turn, and every table says how many records it has', () => {
    const marks = tags.filter(([code]) => code === 0).map(([, value]) => value);
    expect(marks.at(-1)).toBe('EOF');
    const frame = marks.filter((mark) => mark === 'SECTION' || mark === 'ENDSEC');
    expect(frame).toEqual(frame.map((_, n) => (n % 2 === 0 ? 'SECTION' : 'ENDSEC')));
    const tables = tags.flatMap(([code, value], at) => (code === 0 && value === 'TABLE' ? [at] : []));
    expect(tables.length).toBeGreaterThanOrEqual(3);
    for (const at of tables) {
      const rest = tags.slice(at);
      const body = rest.slice(
        0,
        rest.findIndex(([, value]) => value === 'ENDTAB'),
      );
      const [, [, name] = []] = body;
      const count = body.find(([code]) => code === 70)?.[1];
      expect(body.filter(([code, value]) => code === 0 && value === name)).toHaveLength(Number(count));
    }
  });
});

describe('AC1015 alone', () => {
  const tags = tagsOf(writeDrawing(LID));
  const handles = tags.filter(([code]) => code === 5 || code === 105).map(([, value]) => value);
  const [seed, ...own] = handles;

  test('no handle twice, and the seed above all of them', () => {
    expect(new Set(own).size).toBe(own.length);
    for (const each of own) expect(Number.parseInt(each, 16)).toBeLessThan(Number.parseInt(seed ?? '', 16));
    expect(Number.parseInt(seed ?? '', 16)).toBe(own.length + 1);
  });

  test('whatever is pointed to is there, and entities belong to the model space', () => {
    const pointers = tags.filter(([code]) => [330, 340, 350, 390].includes(code)).map(([, value]) => value);
    expect(pointers.length).toBeGreaterThan(40);
    for (const each of pointers) expect([...own, '0']).toContain(each);
    const space = tags.findIndex(([code, value]) => code === 2 && value === '*Model_Space');
    const record = tags
      .slice(0, space)
      .reverse()
      .find(([code]) => code === 5)?.[1];
    const owners = tags.flatMap(([code, value], at) =>
      code === 0 && (value === 'LWPOLYLINE' || value === 'TEXT') ? [tags[at + 2]] : [],
    );
    expect(owners).toEqual(Array.from({ length: 4 }, () => [330, record]));
  });

  test.each([
    ['in', '1', '0'],
    ['us-ft', '21', '0'],
    ['mm', '4', '1'],
    ['cm', '5', '1'],
  ] as const)(
    'a drawing in %s says so, and whether its unit comes from the inch',
    (unit, insunits, measurement) => {
      const written = tagsOf(writeDrawing({ ...LID, unit }));
      expect(variable(written, '$INSUNITS')).toEqual([insunits]);
      expect(variable(written, '$MEASUREMENT')).toEqual([measurement]);
    },
  );
});

test.each([
  ['mm', 6],
  ['in', 8],
  ['cm', 7],
  ['ft', 9],
  ['m', 9],
  ['mil', 5],
  ['um', 3],
  ['nm', 0],
  ['angstrom', 0],
  ['pc', 15],
] as const)('a coordinate in %s is within half a nanometre with %d decimals', (unit, decimals) => {
  expect(coordinateDecimals(unit)).toBe(decimals);
});

test('numbers are written without an exponent, and 0 without a sign', () => {
  expect([0.000_000_4, -0.0004, -0.0006, 1e7, 12.3456].map(fixedPoint(3))).toEqual([
    '0.000',
    '0.000',
    '-0.001',
    '10000000.000',
    '12.346',
  ]);
});
