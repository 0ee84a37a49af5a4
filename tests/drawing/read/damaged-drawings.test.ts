/** Whatever happens to a drawing on its way, reading it ends soon, throws nothing, and what it gives is sound. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MOST_BYTES, MOST_ENTITIES } from '#drawing/drawing-limits.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { hasStop } from '#findings/finding.ts';
import { ROUND_SPLINE, spline } from '#fixtures/tricky-splines.ts';
import { toBinary } from '#support/drawings/binary-drawing.ts';
import { brokenChains, measureDrawing } from '#support/drawings/measure-drawing.ts';
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
  tags,
} from '#support/drawings/raw-drawing.ts';

const TEXT =
  drawingText({
    layers: [{ name: 'SKIN' }, { name: 'OLD', flags: 1 }],
    blocks: block(
      'RIB',
      polyline(
        [
          [0, 0, 1],
          [10, 0],
          [10, 20],
        ],
        1,
      ) + circle(5, 10, 2),
    ),
    entities:
      insert('RIB', 10, 10, [41, 2], [42, 3], [50, 30]) +
      entity('POLYLINE', [66, 1], [70, 1]) +
      entity('VERTEX', [10, 0], [20, 0], [42, 0.5]) +
      entity('VERTEX', [10, 9], [20, 0]) +
      entity('VERTEX', [10, 9], [20, 9]) +
      tags([0, 'SEQEND']) +
      spline(ROUND_SPLINE) +
      entity('ELLIPSE', [10, 1], [20, 2], [11, 30], [21, 4], [40, 0.5], [41, 0], [42, 3]) +
      entity('TEXT', [10, 1], [20, 2], [1, 'Buoy lid, upper half']) +
      line(0, 0, 40, 0),
  }).replace(/0\nEOF\n$/, '') +
  section('OBJECTS', tags([0, 'DICTIONARY'], [5, 'C'])) +
  tags([0, 'EOF']);
const WHOLE = bytesOf(TEXT);
/** Where the last section that holds outlines is closed. */
const OUTLINES_END = TEXT.indexOf('0\nSECTION\n2\nOBJECTS');

function readSoundly(bytes: Uint8Array): ReturnType<typeof readDrawing> {
  const drawing = readDrawing(bytes);
  expect(brokenChains(drawing)).toEqual([]);
  for (const { spans } of drawing.curves) {
    for (const { start, end } of spans)
      expect([start.x, start.y, end.x, end.y].every(Number.isFinite)).toBe(true);
  }
  expect(drawing.curves.length > 0 || hasStop(drawing.findings)).toBe(true);
  return drawing;
}

test('the whole drawing has nothing wrong with it', () => {
  expect(readSoundly(WHOLE).findings).toEqual([]);
});

test.each(Array.from({ length: 9 }, (_, n) => n + 1))(
  'cut after %i tenths of its length: drawing-cut-short',
  (tenths) => {
    const drawing = readSoundly(WHOLE.subarray(0, Math.floor((WHOLE.length * tenths) / 10)));
    expect(drawing.findings.map(({ code }) => code)).toContain('drawing-cut-short');
  },
);

test('cut after every single byte: always a finding, and a stop as long as outlines may be missing', {
  tags: ['long'],
}, () => {
  for (let length = 0; length < WHOLE.length - 1; length++) {
    const { findings } = readSoundly(WHOLE.subarray(0, length));
    expect(findings.length, `after ${length} bytes`).toBeGreaterThan(0);
    // The blank after ENDSEC may be missing without any loss.
    if (length < OUTLINES_END - 1) expect(hasStop(findings), `after ${length} bytes`).toBe(true);
  }
});

test('a binary drawing cut after every single byte', () => {
  const binary = toBinary(TEXT, 'later');
  expect(readSoundly(binary).findings).toEqual([]);
  for (let length = 0; length < binary.length - 6; length += 7) {
    expect(readSoundly(binary.subarray(0, length)).findings.length, `after ${length} bytes`).toBeGreaterThan(
      0,
    );
  }
});

test('any line missing or doubled: the same curves, or a finding; never other curves in silence', {
  tags: ['long'],
}, () => {
  const lines = TEXT.split('\n');
  const whole = measureDrawing(readDrawing(WHOLE));
  for (let n = 0; n < lines.length - 1; n++) {
    for (const changed of [lines.toSpliced(n, 1), lines.toSpliced(n, 0, lines[n] ?? '')]) {
      const drawing = readSoundly(bytesOf(changed.join('\n')));
      if (drawing.findings.length === 0) expect(measureDrawing(drawing), `line ${n + 1}`).toEqual(whole);
    }
  }
});

test('bytes changed at random', { tags: ['long'] }, () => {
  const change = fc.tuple(fc.nat(WHOLE.length - 1), fc.integer({ min: 0, max: 255 }));
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
      const bytes = Uint8Array.from(WHOLE);
      for (const [at, value] of changes) bytes[at] = value;
      readSoundly(bytes);
    }),
    { numRuns: 1000 },
  );
});

test('bytes of no sense at all', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      expect(hasStop(readDrawing(bytes).findings)).toBe(true);
    }),
    { numRuns: 500 },
  );
});

test('lines of codes and values in any order', () => {
  const pieces = [
    '0',
    '10',
    '20',
    '70',
    '2',
    '8',
    'SECTION',
    'ENTITIES',
    'BLOCKS',
    'TABLES',
    'ENDSEC',
    'BLOCK',
    'ENDBLK',
    'LINE',
    'POLYLINE',
    'VERTEX',
    'SEQEND',
    'INSERT',
    'LAYER',
    'TABLE',
    'ENDTAB',
    'EOF',
    '5.5',
    '',
  ];
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 60 }), (lines) => {
      readDrawing(bytesOf(`0\nSECTION\n2\nENTITIES\n${lines.join('\n')}\n`));
    }),
    { numRuns: 2000 },
  );
});

test('a million entities: drawing-too-big, within five seconds of work', { tags: ['long'] }, () => {
  const million = line(0, 0, 5, 0).repeat(1_000_000);
  const bytes = bytesOf(drawingText({ entities: million }));
  const before = process.cpuUsage();
  const { findings, curves } = readDrawing(bytes);
  const { user, system } = process.cpuUsage(before);
  expect((user + system) / 1e6).toBeLessThan(5);
  expect(curves).toEqual([]);
  expect(findings.map(({ code, facts }) => ({ code, facts }))).toContainEqual({
    code: 'drawing-too-big',
    facts: { what: 'entities', found: MOST_ENTITIES + 1, limit: MOST_ENTITIES },
  });
});

test('a file past the size limit is not even looked at: drawing-too-big', () => {
  const { findings } = readDrawing(new Uint8Array(MOST_BYTES + 1));
  expect(findings.map(({ code }) => code)).toEqual(['drawing-too-big']);
});

test('a drawing of blank lines only, and one of blank pairs', () => {
  expect(readDrawing(bytesOf('\n'.repeat(2_000_000))).findings.map(({ code }) => code)).toEqual([
    'drawing-empty',
  ]);
  expect(readDrawing(bytesOf('0\n\n'.repeat(500_000))).findings.map(({ code }) => code)).toEqual([
    'drawing-not-dxf',
  ]);
});
