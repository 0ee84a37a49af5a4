/** Where insertions put their blocks: places worked by hand. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { block, bytesOf, drawingText, insert, line, type Tag } from '#support/drawings/raw-drawing.ts';

const read = (...more: readonly Tag[]) =>
  readDrawing(
    bytesOf(
      drawingText({ blocks: block('RIB', line(1, 2, 4, 3)), entities: insert('RIB', 10, 20, ...more) }),
    ),
    { unit: 'mm' },
  );

/** Starts and ends of the line of the block, in the order in which they come. */
function places(...more: readonly Tag[]) {
  const { curves, findings } = read(...more);
  expect(findings).toEqual([]);
  return curves.map(({ spans: [span] }) => [span?.start.x, span?.start.y, span?.end.x, span?.end.y]);
}

describe('a line from (1, 2) to (4, 3) in a block put at (10, 20)', () => {
  test.each([
    [0, [11, 22, 14, 23]],
    [90, [8, 21, 7, 24]],
    [180, [9, 18, 6, 17]],
    [270, [12, 19, 13, 16]],
    [-90, [12, 19, 13, 16]],
    [450, [8, 21, 7, 24]],
  ])('turned by %d°, to the last bit', (angleDeg, place) => {
    expect(places([50, angleDeg])).toEqual([place]);
  });

  test('turned by 30°', () => {
    const [c, s] = [Math.sqrt(3) / 2, 0.5];
    const at = (x: number, y: number) => [10 + x * c - y * s, 20 + x * s + y * c];
    expect(places([50, 30])).toEqual([[...at(1, 2), ...at(4, 3)].map((each) => expect.closeTo(each, 9))]);
  });

  test('scaled by 2 and 3 before it is turned, mirrored by a scale below 0', () => {
    expect(places([41, 2], [42, 3])).toEqual([[12, 26, 18, 29]]);
    expect(places([41, 2], [42, 3], [50, 90])).toEqual([[4, 22, 1, 28]]);
    expect(places([41, -1])).toEqual([[9, 22, 6, 23]]);
  });

  test('in a frame that faces down it is mirrored with its place', () => {
    expect(places([230, -1])).toEqual([[-11, 22, -14, 23]]);
    expect(places([50, 90], [230, -1])).toEqual([[-8, 21, -7, 24]]);
  });

  test('three columns 7 apart and two rows 11 apart are turned with it, and not scaled', () => {
    const starts = (...more: readonly Tag[]) =>
      places([70, 3], [71, 2], [44, 7], [45, 11], ...more)
        .map(([x = 0, y = 0]) => [x, y])
        .sort(([ax = 0, ay = 0], [bx = 0, by = 0]) => ax - bx || ay - by);
    expect(starts()).toEqual([
      [11, 22],
      [11, 33],
      [18, 22],
      [18, 33],
      [25, 22],
      [25, 33],
    ]);
    expect(starts([50, 90])).toEqual([
      [-3, 21],
      [-3, 28],
      [-3, 35],
      [8, 21],
      [8, 28],
      [8, 35],
    ]);
    expect(starts([41, 2], [42, 2]).at(-1)).toEqual([26, 35]);
    expect(starts([230, -1])[0]).toEqual([-25, 22]);
    expect(starts([50, 90], [230, -1]).at(-1)).toEqual([3, 35]);
  });

  test('a count of 0 is one; what can be no count costs the insertion', () => {
    expect(places([70, 0], [71, 0])).toHaveLength(1);
    for (const count of [-2, 1.5]) {
      const { curves, findings } = read([70, count], [44, 7]);
      expect(curves).toEqual([]);
      expect(findings.find(({ code }) => code === 'entity-number-bad')?.facts).toMatchObject({
        group: 70,
        text: String(count),
      });
    }
  });
});

describe('what an insertion lacks', () => {
  test.each([
    [insert('', 1, 2), 'the name of its block'],
    [insert('RIB', 1, 2).replace('\n20\n2\n', '\n'), 'its place'],
  ])('%#', (entities, lacks) => {
    const { findings } = readDrawing(bytesOf(drawingText({ entities: entities + line(0, 0, 5, 0) })), {
      unit: 'mm',
    });
    expect(findings).toMatchObject([{ code: 'entity-incomplete', facts: { kind: 'INSERT', lacks } }]);
  });

  test.each([41, 42])('a scale of 0 by group %d', (group) => {
    const found = read([group, 0]).findings.find(({ code }) => code === 'entity-without-size');
    expect(found?.facts).toMatchObject({ what: 'a scale of 0' });
  });
});
