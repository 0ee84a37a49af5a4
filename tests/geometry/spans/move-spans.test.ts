import { expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import { moveArrangement, moveLoop, movePath, movePoint } from '#geometry/spans/move-spans.ts';
import { rectangle, sourced } from '#support/geometry/shapes.ts';

const by = { x: 100, y: -30 };
const arc = arcSpan({ center: { x: 1, y: 2 }, radius: 4, from: 0, sweep: 1.5 });

test('points and lines move by both coordinates', () => {
  expect(movePoint({ x: 3, y: 5 }, by)).toEqual({ x: 103, y: -25 });
  expect(moveLoop([lineSpan({ x: 3, y: 5 }, { x: 4, y: 7 })], by)).toEqual([
    lineSpan({ x: 103, y: -25 }, { x: 104, y: -23 }),
  ]);
});

test('an arc moves with its centre and keeps its radius and sweep', () => {
  expect(movePath({ closed: false, spans: [arc] }, by)).toEqual({
    closed: false,
    spans: [
      {
        kind: 'arc',
        start: { x: arc.start.x + 100, y: arc.start.y - 30 },
        end: { x: arc.end.x + 100, y: arc.end.y - 30 },
        center: { x: 101, y: -28 },
        radius: 4,
        sweep: 1.5,
      },
    ],
  });
});

test('an arrangement is that of the linework moved', () => {
  const drawn = (x: number, y: number) =>
    arrange(sourced([rectangle(x, y, x + 9, y + 6), rectangle(x + 3, y + 2, x + 5, y + 3)]), {
      joinTolerance: 0.01,
    }).arrangement;
  expect(moveArrangement(drawn(0, 0), by)).toEqual(drawn(100, -30));
});
