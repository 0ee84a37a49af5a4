/** Lines past the sheet's edge, by hand. */
import { expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { lineSpan } from '#geometry/span.ts';
import { stagesPastEdge } from '#handoff/run-over-edge.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const stage = itemAt(handMadePlan.stages, 0);
const sheet = [rectangle(0, 0, 200, 120)];
const line = (from: readonly [number, number], to: readonly [number, number]) => ({
  closed: false,
  spans: [lineSpan({ x: from[0], y: from[1] }, { x: to[0], y: to[1] })],
});

test('a line that ends at the edge runs on straight by the length stated, at either end; others stay as they are', () => {
  const closed = { closed: true, spans: rectangle(20, 20, 60, 50) };
  const lines = [line([40, 120], [40, 30]), line([200, 60], [110, 0]), line([50, 50], [90, 80]), closed];
  const [past] = stagesPastEdge({ sheet, stages: [{ ...stage, lines }] }, 3);
  const ends = past?.lines.map(({ spans }) => [spans[0]?.start, spans.at(-1)?.end]);
  expect(ends?.[0]).toEqual([
    { x: 40, y: 123 },
    { x: 40, y: 30 },
  ]);
  // Along its own direction: 90 by 60 has a length of 108.17.
  const [dx, dy] = [(3 * 90) / Math.hypot(90, 60), (3 * 60) / Math.hypot(90, 60)];
  expect(ends?.[1]).toEqual([
    { x: expect.closeTo(200 + dx, 9), y: expect.closeTo(60 + dy, 9) },
    { x: expect.closeTo(110 - dx, 9), y: expect.closeTo(-dy, 9) },
  ]);
  expect(past?.lines.slice(2)).toEqual(lines.slice(2));
});

test('by nothing, they are the plan’s own', () => {
  const stages = [{ ...stage, lines: [line([40, 120], [40, 30])] }];
  expect(stagesPastEdge({ sheet, stages }, 0)).toBe(stages);
});

test('what runs on is open, and only where the line ends: a closed line at the edge, one without spans and one beside a rounded corner stay', () => {
  const rounded = [roundedRectangle(0, 0, 200, 120, 30)];
  const lines = [
    // On the edge at its start, but closed.
    { closed: true, spans: rectangle(0, 40, 60, 70) },
    { closed: false, spans: [] },
    // In the box of the corner's arc, 7.6 mm off the arc itself.
    line([110, 50], [186, 104]),
    line([110, 50], [200, 60]),
  ];
  const [past] = stagesPastEdge({ sheet: rounded, stages: [{ ...stage, lines }] }, 4);
  lines.slice(0, 3).forEach((each, index) => {
    expect(past?.lines[index]).toBe(each);
  });
  expect(past?.lines[3]).toMatchObject({ closed: false });
  expect(past?.lines[3]?.spans).toHaveLength(2);
});
