/** Stretches of a chain, by hand: a line of 10, a quarter turn of radius 6 (3π long) and a line of 14. */
import { describe, expect, test } from 'vitest';
import { type ArcSpan, lineSpan, type Span, spansLength } from '#geometry/span.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';

const turn: ArcSpan = {
  kind: 'arc',
  start: { x: 10, y: 0 },
  end: { x: 16, y: 6 },
  center: { x: 10, y: 6 },
  radius: 6,
  sweep: Math.PI / 2,
};
const chain: readonly Span[] = [
  lineSpan({ x: 0, y: 0 }, turn.start),
  turn,
  lineSpan(turn.end, { x: 16, y: 20 }),
];
const TURN = 3 * Math.PI;

describe('the stretch of a chain', () => {
  test('from 4 mm to a third of the turn: 6 mm of the line, and 30° of the arc', () => {
    const stretch = stretchAlong(chain, { from: 4, to: 10 + TURN / 3 });
    expect(stretch).toEqual([
      lineSpan({ x: 4, y: 0 }, { x: 10, y: 0 }),
      {
        ...turn,
        end: { x: expect.closeTo(13, 9), y: expect.closeTo(6 - 3 * Math.sqrt(3), 9) },
        sweep: expect.closeTo(Math.PI / 6, 12),
      },
    ]);
  });

  test('from a third of the turn to 5 mm past its end: 60° of the arc, and no more than that of the line', () => {
    const stretch = stretchAlong(chain, { from: 10 + TURN / 3, to: 10 + TURN + 5 });
    expect(stretch.map(({ kind }) => kind)).toEqual(['arc', 'line']);
    expect(stretch[0]).toMatchObject({
      start: { x: expect.closeTo(13, 9), y: expect.closeTo(6 - 3 * Math.sqrt(3), 9) },
      end: turn.end,
      sweep: expect.closeTo(Math.PI / 3, 12),
    });
    expect(stretch[1]?.end).toEqual({ x: 16, y: expect.closeTo(11, 9) });
  });

  test('more than all of it is the chain to the last bit; a span that is only touched is not there', () => {
    expect(stretchAlong(chain, { from: 0, to: 100 })).toEqual(chain);
    const [only, ...others] = stretchAlong(chain, { from: 10, to: 10 + TURN });
    expect(only).toEqual(turn);
    expect([only?.start, only?.end].map((end, at) => end === [turn.start, turn.end][at])).toEqual([
      true,
      true,
    ]);
    expect(others).toEqual([]);
    expect(stretchAlong(chain, { from: 40, to: 50 })).toEqual([]);
  });

  test('within one span it is part of that, as long as asked', () => {
    const stretch = stretchAlong(chain, { from: 10 + TURN + 3, to: 10 + TURN + 7.5 });
    expect(stretch).toHaveLength(1);
    expect(spansLength(stretch)).toBeCloseTo(4.5, 9);
    expect(stretch[0]?.start).toEqual({ x: 16, y: expect.closeTo(9, 9) });
  });
});
