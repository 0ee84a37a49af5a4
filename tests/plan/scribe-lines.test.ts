/** M3.2 what of a piece's border has to be cut, by length. */
import { describe, expect, test } from 'vitest';
import type { RebuiltLoop } from '#geometry/grow/rebuild-loops.ts';
import { type Loop, lineSpan, pointAlong, type Span, spansLength } from '#geometry/span.ts';
import { scribeLines } from '#plan/scribe-lines.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

const exact = (loop: Loop): RebuiltLoop => loop.map((span) => ({ span, isChord: false }));
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const lengths = (piece: readonly RebuiltLoop[], known: readonly Span[]) =>
  scribeLines(piece, known).map(({ closed, spans }) => [
    closed ? 'closed' : 'open',
    Math.round(spansLength(spans) * 1e6) / 1e6,
  ]);

/** 9 × 5. */
const plate = rectangle(0, 0, 9, 5);

describe('a piece 9 × 5', () => {
  test('that nothing borders is one closed line', () => {
    expect(scribeLines([exact(plate)], [])).toEqual([{ closed: true, spans: plate }]);
  });

  test('with its lower side on the sheet’s edge is one open line of 19, wherever its loop begins', () => {
    for (let at = 0; at < 4; at++) {
      const turned = [...plate.slice(at), ...plate.slice(0, at)];
      const [only, ...more] = scribeLines([exact(turned)], [line(-3, 0, 20, 0)]);
      expect(more).toEqual([]);
      expect(only?.closed).toBe(false);
      expect(spansLength(only?.spans ?? [])).toBe(19);
      expect(only?.spans[0]?.start).toEqual({ x: 9, y: 0 });
    }
  });

  test('with parts of two sides cut before is two lines', () => {
    expect(lengths([exact(plate)], [line(2, 0, 5, 0), line(9, 5, 9, 1)])).toEqual([
      ['open', 5],
      ['open', 16],
    ]);
  });

  test('all of which was cut before needs no line', () => {
    expect(scribeLines([exact(plate)], plate)).toEqual([]);
  });

  test('leaves out a stub of 0.004 mm, and cuts one of 0.006', () => {
    const round = [line(0, 5, 0, 0), line(9, 5, 0, 5), line(9, 0, 9, 5)];
    expect(lengths([exact(plate)], [...round, line(0.004, 0, 9, 0)])).toEqual([]);
    expect(lengths([exact(plate)], [...round, line(0.006, 0, 9, 0)])).toEqual([['open', 0.006]]);
  });
});

describe('a chord of the grid', () => {
  // 0.19 long on a circle of 3: it bows 0.0015 mm.
  const [upper] = circle(0, 0, 3);
  if (upper === undefined) throw new Error('a circle has halves');
  const [from, to] = [pointAlong(upper, 0.4), pointAlong(upper, 0.42)];
  const chord = { span: lineSpan(from, to), isChord: true };
  const rest = [
    { span: lineSpan(to, { x: 0, y: 0 }), isChord: false },
    { span: lineSpan({ x: 0, y: 0 }, from), isChord: false },
  ];

  test('lies along the border that it is a chord of, though on no common line', () => {
    expect(lengths([[chord, ...rest]], [line(50, 50, 60, 50), upper])).toEqual([['open', 6]]);
  });

  test('of another border has to be cut', () => {
    const [wider] = circle(0, 0, 3.002);
    if (wider === undefined) throw new Error('a circle has halves');
    const around = Math.round((6 + Math.hypot(from.x - to.x, from.y - to.y)) * 1e6) / 1e6;
    expect(lengths([[chord, ...rest]], [wider])).toEqual([['closed', around]]);
  });

  test('that leaves its border at one end has to be cut', () => {
    const off = { span: lineSpan(from, { x: to.x, y: to.y + 0.004 }), isChord: true };
    expect(lengths([[off, ...rest]], [upper])).toHaveLength(1);
    expect(lengths([[off, ...rest]], [upper])[0]?.[0]).toBe('closed');
  });
});
