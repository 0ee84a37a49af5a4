import { describe, expect, test } from 'vitest';
import { arcSpan, type Loop, lineSpan, spanLength } from '#geometry/span.ts';
import { wholeSpans } from '#geometry/spans/whole-spans.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const lengths = (loop: Loop) => wholeSpans(loop).map(({ span }) => Math.round(spanLength(span) * 1e6) / 1e6);

/** A plate 9 × 4 whose lower side is cut at 2 and 5, from any of its spans on. */
const cut: Loop = polygon([
  [0, 0],
  [2, 0],
  [5, 0],
  [9, 0],
  [9, 4],
  [0, 4],
]);

describe('a border in as few spans as it has lines and arcs', () => {
  test('a side cut in three is one, wherever the loop begins', () => {
    for (let at = 0; at < cut.length; at++) {
      const turned = [...cut.slice(at), ...cut.slice(0, at)];
      expect([...lengths(turned)].sort((a, b) => a - b)).toEqual([4, 4, 9, 9]);
      const lower = wholeSpans(turned).find(({ span }) => span.start.y === 0 && span.end.y === 0);
      expect(lower?.span).toEqual(lineSpan({ x: 0, y: 0 }, { x: 9, y: 0 }));
      expect(lower?.parts).toEqual(cut.slice(0, 3));
    }
  });

  test('a line that goes out and back on itself stays two', () => {
    const back: Loop = polygon([
      [0, 0],
      [6, 0],
      [4, 0],
      [4, 3],
    ]);
    expect(lengths(back)).toEqual([6, 2, 3, 5]);
  });

  test('two arcs of one circle that turn the same way are one, also over half a turn', () => {
    const center = { x: 1, y: 1 };
    const arcs = [0.2, 1.7].map((from) =>
      arcSpan({ center, radius: 5, from, sweep: from === 0.2 ? 1.5 : 2.5 }),
    );
    const loop = [...arcs, lineSpan(arcs[1]?.end ?? center, arcs[0]?.start ?? center)];
    expect(wholeSpans(loop).map(({ span }) => (span.kind === 'arc' ? span.sweep : 0))).toEqual([
      expect.closeTo(4, 12),
      0,
    ]);
  });

  test('arcs of one circle that turn back stay two', () => {
    const arc = arcSpan({ center: { x: 1, y: 1 }, radius: 5, from: 0.2, sweep: 1.5 });
    const back = arcSpan({ center: { x: 1, y: 1 }, radius: 5, from: 1.7, sweep: -0.5 });
    const loop = [arc, back, lineSpan(back.end, arc.start)];
    expect(wholeSpans(loop)).toHaveLength(3);
  });

  test('a circle of two halves turns all the way round, by its own way', () => {
    const [whole, ...more] = wholeSpans(circle(3, 4, 2));
    expect(more).toEqual([]);
    expect(whole?.span).toMatchObject({ kind: 'arc', sweep: 2 * Math.PI, radius: 2 });
    expect(whole?.span.end).toEqual(whole?.span.start);
    expect(whole?.parts).toEqual(circle(3, 4, 2));
  });

  test('neighbours that differ otherwise stay apart', () => {
    const isAlike = (a: { start: { x: number } }) => a.start.x < 2;
    const [first, second] = wholeSpans(cut, isAlike);
    expect([first, second].map((each) => each && spanLength(each.span))).toEqual([5, 4]);
  });

  test('a plain rectangle is the very same, nothing is nothing', () => {
    const loop = rectangle(0, 0, 3, 2);
    expect(wholeSpans(loop).map(({ span }) => span)).toEqual(loop);
    expect(wholeSpans([])).toEqual([]);
  });
});

describe('sides that slant, each cut once', () => {
  // 9 by 6 along its length and 4 by 6 across it.
  const slanting: Loop = polygon([
    [2, 1],
    [5, 3],
    [11, 7],
    [9, 10],
    [7, 13],
    [1, 9],
    [-2, 7],
    [0, 4],
  ]);

  test('are four, wherever the loop begins', () => {
    const wanted = [Math.sqrt(52), Math.sqrt(52), Math.sqrt(117), Math.sqrt(117)];
    for (let at = 0; at < slanting.length; at++) {
      const turned = [...slanting.slice(at), ...slanting.slice(0, at)];
      const found = wholeSpans(turned).map(({ span }) => spanLength(span));
      expect(found.sort((a, b) => a - b)).toEqual(wanted.map((each) => expect.closeTo(each, 9)));
    }
  });

  test('one that goes on and back stays two', () => {
    const back: Loop = polygon([
      [2, 1],
      [11, 7],
      [8, 5],
      [4, 12],
    ]);
    expect(wholeSpans(back)).toHaveLength(4);
  });
});
