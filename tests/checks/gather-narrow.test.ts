/** Narrow places put together as an engineer counts them: the narrowest first, each region once, and one finding for equal figures. */
import { describe, expect, test } from 'vitest';
import { gatherNarrow, type NarrowFound } from '#checks/gather-narrow.ts';
import { lineSpan } from '#geometry/span.ts';
import type { RegionId } from '#part/part.ts';

const LIMIT = 4;

function place(
  width: number,
  [x, y]: readonly [number, number],
  regions: readonly RegionId[],
  special: Partial<NarrowFound> = {},
): NarrowFound {
  const across = lineSpan({ x, y: y - width / 2 }, { x, y: y + width / 2 });
  return {
    width,
    limit: LIMIT,
    at: { x, y },
    regions,
    outline: [{ closed: false, spans: [across] }],
    ...special,
  };
}

const shown = (found: readonly NarrowFound[]) =>
  gatherNarrow(found).map(({ first, places }) => [first.width, places]);

describe('which places are reported', () => {
  test('of two regions’ places the narrowest, in whatever order they were found', () => {
    const wide = place(2.3, [0, 0], ['R1', 'R2']);
    const narrow = place(1.7, [50, 0], ['R1', 'R2']);
    expect(shown([wide, narrow])).toEqual([[1.7, 1]]);
    expect(shown([narrow, wide])).toEqual([[1.7, 1]]);
  });

  test('a wider one too where it narrows a region that nothing was said about', () => {
    const found = [
      place(1.7, [0, 0], ['R1', 'R2']),
      place(2.1, [50, 0], ['R2', 'R3']),
      place(2.6, [90, 0], ['R1', 'R3']),
    ];
    expect(shown(found)).toEqual([
      [1.7, 1],
      [2.1, 1],
    ]);
  });

  test('every one that lies in no region', () => {
    expect(shown([place(1.7, [0, 0], []), place(2.4, [50, 0], [])])).toEqual([
      [1.7, 1],
      [2.4, 1],
    ]);
  });
});

describe('how many places one finding counts', () => {
  const at = (...points: readonly (readonly [number, number])[]) =>
    shown(points.map((point) => place(1.7, point, ['R1'])));

  test('ways across no farther apart than the limit are one, along the whole strip', () => {
    expect(at([0, 0], [3.9, 0], [7.8, 0])).toEqual([[1.7, 1]]);
    expect(at([0, 0], [3.9, 0], [20, 0])).toEqual([[1.7, 2]]);
    expect(at([0, 0], [0, 4], [0, 11], [0, 15])).toEqual([[1.7, 2]]);
  });

  test('farther apart askew than the limit they are two', () => {
    expect(at([0, 0], [3.1, 3.3])).toEqual([[1.7, 2]]);
    expect(at([0, 0], [2.4, 2.9])).toEqual([[1.7, 1]]);
  });
});

describe('which places share a finding', () => {
  const two = (one: Partial<NarrowFound>, other: Partial<NarrowFound>) =>
    shown([place(1.7, [0, 0], ['R1'], one), place(1.7004, [50, 0], ['R1'], other)]).map(
      ([, places]) => places,
    );

  test('those of one width to a micrometre and one limit', () => {
    expect(two({}, {})).toEqual([2]);
    expect(two({ limit: 4 }, { limit: 4.6 })).toEqual([1, 1]);
  });

  test('with the same further figures, all of them', () => {
    expect(two({ figures: [1, 3] }, { figures: [1.0004, 3] })).toEqual([2]);
    expect(two({ figures: [1, 3] }, { figures: [1.2, 3] })).toEqual([1, 1]);
    expect(two({ figures: [1, 3] }, { figures: [1, 3.2] })).toEqual([1, 1]);
  });
});

describe('what one finding shows', () => {
  test('the lowest place first, and of two as low the left one; each region once, by name', () => {
    const found = [
      place(1.7, [60, 30], ['R3', 'R1']),
      place(1.7, [90, 10], ['R2', 'R1']),
      place(1.7, [40, 10], ['R1', 'R2']),
      place(1.7, [20, 50], ['R3', 'R2']),
    ];
    const [group, more] = gatherNarrow(found);
    expect(more).toBeUndefined();
    expect(group?.first.at).toEqual({ x: 40, y: 10 });
    expect(group?.places).toBe(4);
    expect(group?.regions).toEqual(['R1', 'R2', 'R3']);
    expect(group?.outline.map(({ spans }) => spans[0]?.start.x)).toEqual([40, 90, 60, 20]);
  });

  test('no more than 50 outlines, though it counts all places', () => {
    const found = Array.from({ length: 53 }, (_, i) => place(1.7, [10 * i, 0], ['R1']));
    const [group] = gatherNarrow(found);
    expect(group?.places).toBe(53);
    expect(group?.outline).toHaveLength(50);
  });
});
