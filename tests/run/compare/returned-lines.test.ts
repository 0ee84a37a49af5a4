/** Which lines of a file that came back count, and where they lie in the frame of the plan. */
import { describe, expect, test } from 'vitest';
import { returnedLines } from '#run/compare/returned-lines.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, dxf, line } from '#support/drawings/small-drawing.ts';

const HERE = { unit: 'mm', origin: { x: 0, y: 0 } } as const;
const drawing = (entities: readonly string[], insunits?: number) =>
  ({ kind: 'scribe', name: 'back.dxf', bytes: bytesOf(dxf({ insunits, entities })) }) as const;
const program = (text: string) => ({ kind: 'program', name: 'back.nc', bytes: bytesOf(text) }) as const;
const startsOf = (
  file: Parameters<typeof returnedLines>[0],
  frame: Parameters<typeof returnedLines>[1] = HERE,
) => returnedLines(file, frame).paths.map(({ spans }) => [spans[0]?.start.x, spans[0]?.start.y]);

const PIECES = [
  box('OUTLINE', [0, 0], [200, 120]),
  line('Scribe-01', [20, 21], [70, 21]),
  line('CUTS', [30, 31], [80, 31]),
  line('scribe', [40, 41], [90, 41]),
  line('SCRIBED', [50, 51], [60, 51]),
];

describe('of a drawing', () => {
  test('the lines on layers SCRIBE-… count where there are such, and no others', () => {
    expect(startsOf(drawing(PIECES, 4))).toEqual([
      [20, 21],
      [40, 41],
    ]);
  });

  test('else all that are not on layers of outlines and notes', () => {
    const others = [
      ...PIECES.filter((_, index) => index !== 1 && index !== 3),
      line('NOTES', [1, 2], [3, 4]),
      line('Dimensions', [5, 6], [7, 8]),
      line('MARK-2', [9, 10], [11, 12]),
      line('HOLES', [13, 14], [15, 16]),
      line('DEFPOINTS', [17, 18], [19, 20]),
      line('SCALES', [60, 61], [65, 61]),
      line('MY-NOTES', [70, 71], [75, 71]),
    ];
    expect(startsOf(drawing(others, 4))).toEqual([
      [30, 31],
      [50, 51],
      [60, 61],
      [70, 71],
    ]);
  });

  test('a drawing that names no unit is in that of the part’s drawing; one that does, in its own', () => {
    const cut = [line('SCRIBE-01', [2, 3], [5, 3])];
    const inches = { unit: 'in', origin: { x: 0, y: 0 } } as const;
    const millimetres = [expect.closeTo(50.8, 9), expect.closeTo(76.2, 9)];
    expect(startsOf(drawing(cut), inches)).toEqual([millimetres]);
    expect(startsOf(drawing(cut, 4), inches)).toEqual([[2, 3]]);
    expect(startsOf(drawing(cut, 1), HERE)).toEqual([millimetres]);
  });

  test('returned-without-lines: how many curves there were, in which file', () => {
    const { findings, paths } = returnedLines(
      drawing([box('OUTLINE', [0, 0], [9, 7]), box('SHEET', [1, 1], [2, 2])], 4),
      HERE,
    );
    expect(paths).toEqual([]);
    expect(findings).toMatchObject([
      { code: 'returned-without-lines', facts: { curves: 2 }, place: { file: 'back.dxf' } },
    ]);
  });

  test('a file that is no drawing is reported once, as that', () => {
    const { findings } = returnedLines({ kind: 'scribe', name: 'back.dxf', bytes: bytesOf('hello') }, HERE);
    expect(findings.every(({ severity }) => severity === 'stop')).toBe(true);
    expect(findings.map(({ code }) => code)).not.toContain('returned-without-lines');
    expect(findings.map(({ place }) => place.file)).toEqual(findings.map(() => 'back.dxf'));
  });

  test('what else the reader says of a file that can be used is left out', () => {
    const text = [line('SCRIBE-01', [20, 21], [70, 21]), '0\nWIPEOUT\n8\nSCRIBE-01\n'];
    expect(returnedLines(drawing(text, 4), HERE)).toMatchObject({ findings: [], paths: [{}] });
  });
});

describe('in the frame of a part that was drawn far out', () => {
  const FAR = { unit: 'mm', origin: { x: 4_512_000, y: -37_654_000 } } as const;

  test('a program and a drawing lie where they do beside the part', () => {
    const [x, y] = [FAR.origin.x + 20, FAR.origin.y + 31];
    expect(startsOf(program(`G21 G90\nG0 X${x} Y${y}\nG1 Z-1\nX${x + 9}`), FAR)).toEqual([[20, 31]]);
    expect(startsOf(drawing([line('SCRIBE-01', [x, y], [x + 9, y])], 4), FAR)).toEqual([
      [expect.closeTo(20, 6), expect.closeTo(31, 6)],
    ]);
  });

  test('far along one axis alone, as well', () => {
    const along = { unit: 'mm', origin: { x: 4_512_000, y: 0 } } as const;
    expect(startsOf(program('G21 G90\nG0 X4512020 Y31\nG1 Z-1\nX4512029'), along)).toEqual([[20, 31]]);
    const up = { unit: 'mm', origin: { x: 0, y: 4_512_000 } } as const;
    expect(startsOf(program('G21 G90\nG0 X20 Y4512031\nG1 Z-1\nX29'), up)).toEqual([[20, 31]]);
  });
});

test('a program’s own findings name its file', () => {
  const { findings } = returnedLines(program('G21 G90\nG41 D1\nG0 X0 Y0\nG1 Z-1\nX5'), HERE);
  expect(findings).toMatchObject([{ code: 'program-word-unknown', place: { line: 2, file: 'back.nc' } }]);
});
