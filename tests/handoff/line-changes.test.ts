/** How far lines have moved, by hand. */
import { describe, expect, test } from 'vitest';
import { contoursApart, lineChanges, linesGone } from '#handoff/line-changes.ts';
import type { Contour } from '#job/formats/plan-file.ts';

function frame(x0: number, y0: number, x1: number, y1: number): Contour {
  const corners = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ] as const;
  return { closed: true, vertices: corners.map(([x, y]) => [x, y, 0]) };
}

function open(...vertices: Contour['vertices']): Contour {
  return { closed: false, vertices };
}

const place = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

describe('lines of an earlier plan and a later one', () => {
  test('one that is still there to the last figure is no change, wherever it stands in the list', () => {
    const [a, b] = [frame(0, 0, 20, 12), open([40, 3, 0.2], [61, 8, 0])];
    expect(lineChanges([a, b], [b, a])).toEqual({ moved: [], added: [], gone: [] });
  });

  test('a straight line along x that moved square to itself has moved; one that lies 60 mm off is another', () => {
    const line = open([10, 5, 0], [90, 5, 0]);
    expect(lineChanges([line], [open([10, 5.3, 0], [90, 5.3, 0])])).toEqual({
      moved: [{ at: place(10, 5.3), by: expect.closeTo(0.3, 9) }],
      added: [],
      gone: [],
    });
    expect(lineChanges([line], [open([10, 65, 0], [90, 65, 0])])).toEqual({
      moved: [],
      added: [place(10, 65)],
      gone: [place(10, 5)],
    });
  });

  test('one that moved by 0.37 mm is said so, at the first corner of the later one that is off', () => {
    const kept = frame(30, 0, 50, 12);
    expect(lineChanges([kept, frame(0, 0, 20, 12)], [frame(0.37, 0, 20.37, 12), kept])).toEqual({
      moved: [{ at: place(20.37, 0), by: expect.closeTo(0.37, 9) }],
      added: [],
      gone: [],
    });
  });

  test('of lines in each other every one belongs to the nearest, whatever their order', () => {
    const before = [frame(3, 3, 37, 27), frame(0, 0, 40, 30)];
    // Grown by 1 mm and by 0.5: their corners go √2 times as far.
    const now = [frame(-1, -1, 41, 31), frame(2.5, 2.5, 37.5, 27.5)];
    const { moved, added, gone } = lineChanges(before, now);
    expect(moved).toEqual([
      { at: place(2.5, 2.5), by: expect.closeTo(Math.SQRT1_2, 9) },
      { at: place(-1, -1), by: expect.closeTo(Math.SQRT2, 9) },
    ]);
    expect([added, gone]).toEqual([[], []]);
  });

  test('a line that grew or shrank at its end moved by as much, at the end that is off', () => {
    const [short, long] = [open([0, 0, 0], [46, 0, 0]), open([0, 0, 0], [50, 0, 0])];
    for (const [before, now] of [
      [short, long],
      [long, short],
    ] as const)
      expect(lineChanges([before], [now]).moved).toEqual([{ at: place(50, 0), by: expect.closeTo(4, 9) }]);
  });

  test('one that bowed by 2 mm is off in its middle', () => {
    // A bulge of 0.1 on a chord of 40: 0.1 × 40 / 2, to the right of the way.
    const { moved } = lineChanges([open([0, 0, 0], [40, 0, 0])], [open([0, 0, 0.1], [40, 0, 0])]);
    expect(moved).toEqual([{ at: place(20, -2), by: expect.closeTo(2, 9) }]);
  });

  test('what lies elsewhere, and what was open and is closed, is added here and gone there', () => {
    expect(lineChanges([frame(0, 0, 20, 12)], [frame(21, 5, 33, 17)])).toEqual({
      moved: [],
      added: [place(21, 5)],
      gone: [place(0, 0)],
    });
    const closed = frame(4, 2, 20, 12);
    const left = { closed: false, vertices: closed.vertices };
    expect(lineChanges([left], [closed])).toEqual({ moved: [], added: [place(4, 2)], gone: [place(4, 2)] });
    expect(linesGone([left, closed], [closed])).toEqual([left]);
  });

  test('of two that came for one only the nearer is it, and the other is added', () => {
    const now = [frame(0.8, 0, 20.8, 12), frame(0, 0.3, 20, 12.3)];
    const { moved, added, gone } = lineChanges([frame(0, 0, 20, 12)], now);
    expect(moved.map(({ by }) => by)).toEqual([expect.closeTo(0.3, 9)]);
    expect(added).toEqual([place(0.8, 0)]);
    expect(gone).toEqual([]);
    const back = lineChanges(now, [frame(0, 0, 20, 12)]);
    expect(back.moved.map(({ by }) => by)).toEqual([expect.closeTo(0.3, 9)]);
    expect(back.gone).toEqual([place(0.8, 0)]);
    expect(back.added).toEqual([]);
  });

  test('rounding of a file is no move: 0.0000015 mm is none, 0.000003 is one', () => {
    const before = [open([5, 1, 0], [9, 4, 0])];
    expect(lineChanges(before, [open([5, 1.0000015, 0], [9, 4.0000015, 0])])).toEqual({
      moved: [],
      added: [],
      gone: [],
    });
    expect(lineChanges(before, [open([5, 1.000003, 0], [9, 4.000003, 0])]).moved).toHaveLength(1);
  });
});

describe('borders of two plans', () => {
  test('lie as far apart as the farthest of any of them, and not at all where they are the same', () => {
    const [kept, hole] = [frame(0, 0, 90, 60), frame(20, 10, 32, 25)];
    expect(contoursApart([kept, hole], [kept, frame(20, 10, 32.4, 25)])).toBeCloseTo(0.4, 9);
    const round: Contour = {
      closed: true,
      vertices: [
        [7.1, 2.3, 1],
        [3.2, 0.4, 1],
      ],
    };
    expect(contoursApart([round], [structuredClone(round)])).toBe(0);
  });

  test('are no distance apart where only one plan has any', () => {
    expect(contoursApart([], [frame(0, 0, 20, 12)])).toBe(Number.POSITIVE_INFINITY);
    expect(contoursApart([frame(0, 0, 20, 12)], [])).toBe(Number.POSITIVE_INFINITY);
  });
});
