/** Machine programs read back, block by block (NISTIR 6556, sections 3.3 to 3.5): lines, arcs and what ends them, by hand. */
import { describe, expect, test } from 'vitest';
import { spansLength } from '#geometry/span.ts';
import { readProgram } from '#run/compare/read-program.ts';

/** Cuts start at (2, 3), 1 mm deep, in millimetres and absolute, from 5 mm above. */
const START = ['G21 G90 G17', 'G0 Z5', 'G0 X2 Y3', 'G1 Z-1 F300'];
const read = (...blocks: readonly string[]) => readProgram([...START, ...blocks].join('\n'));
const spansOf = (...blocks: readonly string[]) => read(...blocks).paths.flatMap(({ spans }) => spans);
const unknownOf = (...blocks: readonly string[]) =>
  read(...blocks).findings.map(({ code, facts, place }) => [code, facts, place.line]);

describe('straight moves', () => {
  test('a start, and ends one after the other, without a height among them', () => {
    expect(spansOf('X9.5 Y3', 'Y-.5', 'X2')).toEqual([
      { kind: 'line', start: { x: 2, y: 3 }, end: { x: 9.5, y: 3 } },
      { kind: 'line', start: { x: 9.5, y: 3 }, end: { x: 9.5, y: -0.5 } },
      { kind: 'line', start: { x: 9.5, y: -0.5 }, end: { x: 2, y: -0.5 } },
    ]);
  });

  test('inches and millimetres, absolute and by increments, change where they are named', () => {
    const ends = spansOf('G20 X1', 'G91 X.5 Y-0.25', 'G21 X4', 'G90 X4').map(({ end }) => [end.x, end.y]);
    expect(ends).toEqual([
      [25.4, 3],
      [expect.closeTo(38.1, 12), expect.closeTo(3 - 6.35, 12)],
      [expect.closeTo(42.1, 12), expect.closeTo(-3.35, 12)],
      [4, expect.closeTo(-3.35, 12)],
    ]);
  });

  test('lower case, blanks inside words, line numbers and comments count for nothing', () => {
    const plain = spansOf('X9.5 Y4', 'X1');
    expect(spansOf('n40 g1 x 9 . 5 y4 (to X12)', 'X1 ; back from Y9')).toEqual(plain);
    expect(spansOf('(first) X9.5 (second) Y4', '%', '/X99', '%X77', 'X1')).toEqual(plain);
    expect(read('(first) X9.5 (second) Y4').findings).toEqual([]);
  });

  test('every end of line is one', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const { paths } = readProgram([...START, 'X9', 'Y8'].join(end));
      expect(paths.map(({ spans }) => spans.length)).toEqual([2]);
    }
  });

  test('words that move nothing, I and J of a straight move among them, cut nothing', () => {
    expect(spansOf('X9', 'S8000 M3', 'F450', 'I4 J5', 'Y8')).toHaveLength(2);
  });
});

describe('arcs', () => {
  test('to the left about a centre from the start: a quarter from (2, 3) about (2, 7)', () => {
    expect(spansOf('G3 X6 Y7 I0 J4')).toEqual([
      {
        kind: 'arc',
        start: { x: 2, y: 3 },
        end: { x: 6, y: 7 },
        center: { x: 2, y: 7 },
        radius: 4,
        sweep: expect.closeTo(Math.PI / 2, 12),
      },
    ]);
  });

  test('to the right the other three quarters, in two spans of which none is more than half a turn', () => {
    const spans = spansOf('G2 X6 Y7 J4');
    expect(spans.map((span) => span.kind === 'arc' && span.sweep)).toEqual(
      [1, 2].map(() => expect.closeTo(-0.75 * Math.PI, 12)),
    );
    expect(spansLength(spans)).toBeCloseTo(1.5 * Math.PI * 4, 9);
    // From below by the left to the right: the middle lies up and to the left.
    const { x = 0, y = 0 } = spans[0]?.end ?? {};
    expect([x, y]).toEqual([2 - Math.sqrt(8), 7 + Math.sqrt(8)].map((each) => expect.closeTo(each, 9)));
    expect(spans[1]?.start).toEqual(spans[0]?.end);
  });

  test('by a radius: the short way where it is positive, the long way where it is negative', () => {
    // From (2, 3) to (8, 3) with 5 mm: centres 4 mm above and below the chord.
    const centerOf = (block: string) => {
      const [span] = spansOf(block);
      return span?.kind === 'arc' ? [span.center.x, span.center.y] : undefined;
    };
    const lengthOf = (block: string) => spansLength(spansOf(block));
    const short = 2 * 5 * Math.asin(3 / 5);
    const long = 2 * Math.PI * 5 - short;
    const [above, below] = [7, -1].map((y) => [5, y].map((each) => expect.closeTo(each, 9)));
    expect(centerOf('G3 X8 R5')).toEqual(above);
    expect(centerOf('G2 X8 R5')).toEqual(below);
    expect(centerOf('G3 X8 R-5')).toEqual(below);
    expect(centerOf('G2 X8 R-5')).toEqual(above);
    expect(lengthOf('G3 X8 R5')).toBeCloseTo(short, 9);
    expect(lengthOf('G2 X8 R5')).toBeCloseTo(short, 9);
    expect(lengthOf('G3 X8 R-5')).toBeCloseTo(long, 9);
    expect(lengthOf('G2 X8 R-5')).toBeCloseTo(long, 9);
  });

  test('by a radius along a chord that leans, too: from (2, 3) to (5, 7), 2.5 mm about its middle', () => {
    const [left, right] = ['G3 X5 Y7 R2.5', 'G2 X5 Y7 R2.5'].map((block) => spansOf(block)[0]);
    for (const span of [left, right]) {
      expect(span).toMatchObject({ center: { x: expect.closeTo(3.5, 6), y: expect.closeTo(5, 6) } });
    }
    // 6.5 mm: 6 mm off the middle, square to the chord.
    expect(spansOf('G3 X5 Y7 R6.5')[0]).toMatchObject({
      center: { x: expect.closeTo(3.5 - 4.8, 9), y: expect.closeTo(5 + 3.6, 9) },
      radius: expect.closeTo(6.5, 9),
    });
  });

  test('a whole circle ends where it starts, either way', () => {
    for (const [block, turn] of [
      ['G2 I3', -1],
      ['G3 J-2', 1],
    ] as const) {
      const { paths } = read(block);
      expect(paths.map(({ closed }) => closed)).toEqual([true]);
      const sweeps = paths[0]?.spans.map((span) => (span.kind === 'arc' ? span.sweep : 0));
      expect(sweeps).toEqual([expect.closeTo(turn * Math.PI, 12), expect.closeTo(turn * Math.PI, 12)]);
    }
  });

  test('in inches centre and radius are inches', () => {
    expect(spansOf('G20', 'G3 X0.5 J0.25')[0]).toMatchObject({
      center: { x: 2, y: expect.closeTo(9.35, 9) },
    });
    expect(spansOf('G20', 'G91 G3 X0.3 Y0.4 R0.25')[0]).toMatchObject({
      radius: expect.closeTo(6.35, 6),
      center: { x: expect.closeTo(2 + 3.81, 6), y: expect.closeTo(3 + 5.08, 6) },
    });
  });

  test('the way stays an arc in blocks that name none', () => {
    expect(spansOf('G3 X6 Y7 J4', 'X2 Y11 I-4').map(({ kind }) => kind)).toEqual(['arc', 'arc']);
  });
});

describe('what ends a path', () => {
  test('a lift, a travel, a move at feed above the lowest; a path that comes back is closed', () => {
    const { paths } = read(
      'X9',
      'Y8',
      'X2 Y3',
      'G0 Z5',
      'G0 X20 Y20',
      'G1 Z-1',
      'X25',
      'Z2',
      'X31',
      'Z-1',
      'X40',
    );
    expect(paths.map(({ closed, spans }) => [closed, spans.length])).toEqual([
      [true, 3],
      [false, 1],
      [false, 1],
    ]);
    expect(paths.map(({ spans }) => spans[0]?.start.x)).toEqual([2, 20, 31]);
  });

  test('a move at feed that sinks as it goes counts by its higher end', () => {
    const { paths } = readProgram('G90 G21\nG0 Z5\nG0 X0 Y0\nG1 X10 Z-1\nX10 Y7\nX3');
    expect(paths.map(({ spans }) => spans.map(({ end }) => [end.x, end.y]))).toEqual([
      [
        [10, 7],
        [3, 7],
      ],
    ]);
  });

  test('a path that stops 0.01 mm short of its start is open', () => {
    expect(read('X9', 'Y8', 'X2.01 Y3').paths.map(({ closed }) => closed)).toEqual([false]);
  });
});

describe('program-word-unknown', () => {
  test('planes, feeds, cancels and frames of every program are none', () => {
    expect(unknownOf('G40 G49 G80 G54 G64 G94 G61 G61.1 G4 P2', 'G93 G95', 'X9')).toEqual([]);
  });

  test('a cycle, a macro and an arc without a centre: how many, and the first by its line', () => {
    const word = (blocks: readonly string[]) => unknownOf(...blocks, 'G1 X9')[0];
    expect(word(['G81 X3 Z-2'])).toEqual(['program-word-unknown', { word: 'G81', words: 1 }, 5]);
    expect(word(['X4', '#101=2.5', 'G41'])).toEqual([
      'program-word-unknown',
      { word: '#101=2.5', words: 2 },
      6,
    ]);
    expect(word(['G3 X8'])).toEqual(['program-word-unknown', { word: 'G3 without a centre', words: 1 }, 5]);
    expect(word(['G2 R4'])).toEqual(['program-word-unknown', { word: 'G2 without a centre', words: 1 }, 5]);
    expect(word(['G1.5 X8'])?.[1]).toEqual({ word: 'G1.5', words: 1 });
    expect(word(['G-1 X8'])?.[1]).toEqual({ word: 'G-1', words: 1 });
  });

  test('what is left of a long block is cut off', () => {
    const [, facts] = unknownOf(`WHILE[#1LT${'9'.repeat(40)}]DO1`, 'X9')[0] ?? [];
    expect((facts as { word: string }).word.length).toBeLessThanOrEqual(20);
  });

  test('an arc without a centre ends the path, and the next move starts from its end', () => {
    const { paths } = read('X9', 'G3 X12 Y9', 'G1 X20');
    expect(paths.map(({ spans }) => spans[0]?.start)).toEqual([
      { x: 2, y: 3 },
      { x: 12, y: 9 },
    ]);
  });
});

test('program-without-lines: how many moves there were', () => {
  const { paths, findings } = read('G0 Z5', 'X9');
  expect(paths).toEqual([]);
  // Up, over, down, up and over.
  expect(findings.map(({ code, facts }) => [code, facts])).toEqual([['program-without-lines', { moves: 5 }]]);
});
