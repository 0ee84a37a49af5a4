/** Polylines of either kind seen from below, and older ones whose vertices were damaged. */
import { expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import {
  bytesOf,
  drawingText,
  entity,
  line,
  polyline,
  type Tag,
  tags,
} from '#support/drawings/raw-drawing.ts';

const read = (entities: string) => readDrawing(bytesOf(drawingText({ entities })), { unit: 'mm' });
const old = (flags: number, vertices: readonly (readonly Tag[])[], ...head: readonly Tag[]) =>
  entity('POLYLINE', [66, 1], [70, flags], ...head) +
  vertices.map((groups) => entity('VERTEX', ...groups)).join('') +
  tags([0, 'SEQEND']);

const CORNERS: readonly (readonly Tag[])[] = [
  [
    [10, 1],
    [20, 2],
  ],
  [
    [10, 7],
    [20, 2],
    [42, 0.5],
  ],
  [
    [10, 7],
    [20, 9],
  ],
];

test.each([
  [
    'light',
    polyline(
      [
        [1, 2],
        [7, 2, 0.5],
        [7, 9],
      ],
      0,
      [230, -1],
    ),
  ],
  ['older', old(0, CORNERS, [230, -1])],
])('a %s one that faces down is mirrored, its arc too', (_, text) => {
  const { curves } = read(text);
  expect(curves[0]?.closed).toBe(false);
  expect(curves[0]?.spans).toMatchObject([
    { kind: 'line', start: { x: -1, y: 2 }, end: { x: -7, y: 2 } },
    {
      kind: 'arc',
      start: { x: -7, y: 2 },
      end: { x: -7, y: 9 },
      sweep: expect.closeTo(-4 * Math.atan(0.5), 9),
    },
  ]);
});

test('an older one that faces up stays, closed by its flag', () => {
  expect(read(old(0, CORNERS)).curves[0]).toMatchObject({ closed: false, spans: { length: 2 } });
  expect(read(old(1, CORNERS)).curves[0]).toMatchObject({ closed: true, spans: { length: 3 } });
  expect(read(old(0, CORNERS)).curves[0]?.spans[0]?.end).toMatchObject({ x: 7, y: 2 });
});

test.each([10, 20])('a vertex with group %d twice has lost the head of the next one', (code) => {
  const torn: readonly (readonly Tag[])[] = [
    ...CORNERS,
    [
      [10, 3],
      [20, 9],
      [code, 4],
    ],
  ];
  const { curves, findings } = read(old(0, torn) + line(0, 0, 5, 0));
  expect(curves.map(({ kind }) => kind)).toEqual(['LINE']);
  expect(findings).toMatchObject([{ code: 'entity-incomplete', facts: { lacks: 'the place of a vertex' } }]);
  const repeated = [
    ...CORNERS,
    [
      [10, 3],
      [20, 9],
      [42, 0.25],
      [42, 0.5],
    ] as const,
  ];
  expect(read(old(0, repeated)).findings).toEqual([]);
});
