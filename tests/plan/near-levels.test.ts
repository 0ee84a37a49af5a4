import { describe, expect, test } from 'vitest';
import { chooseLevels, nearLevelFindings } from '#plan/choose-levels.ts';
import { mergeNearLevels } from '#plan/near-levels.ts';

const band = (depth: number, minus: number, plus: number) => ({ low: depth, high: depth, minus, plus });

describe('M4.2 levels that nobody can tell apart', () => {
  test('are one, half-way between the outermost', () => {
    const { levels, merged } = mergeNearLevels([2, 2.003, 3], [band(2, 0.04, 0.06), band(2.003, 0.04, 0.06)]);
    expect(levels).toEqual([expect.closeTo(2.0015, 9), 3]);
    expect(merged).toEqual([{ from: 2, to: 2.003, level: expect.closeTo(2.0015, 9) }]);
  });

  test('stay two where a tolerance tells them apart', () => {
    expect(mergeNearLevels([2, 2.003], [band(2, 0.04, 0.001), band(2.003, 0.04, 0.06)]).levels).toEqual([
      2, 2.003,
    ]);
  });

  test('are no longer near at a hair over 5 µm', () => {
    expect(mergeNearLevels([2, 2.0051], []).levels).toEqual([2, 2.0051]);
    expect(mergeNearLevels([2, 2.0049], []).levels).toHaveLength(1);
  });

  test('a chain of near levels breaks where its ends are too far apart', () => {
    const { levels } = mergeNearLevels([1, 1.004, 1.008], []);
    expect(levels).toEqual([expect.closeTo(1.002, 9), 1.008]);
  });
});

test('levels-too-near: depths of 2.000 and 2.003 as drawn are etched as one, and that is reported', () => {
  const asked = new Map([
    ['R01', { depth: 2, minus: 0.04, plus: 0.06 }],
    ['R02', { depth: 2.003, minus: 0.05, plus: 0.02 }],
    ['R03', { depth: 1, minus: 0.05, plus: 0.05 }],
  ]);
  const { ofRegion } = chooseLevels(asked, { levels: 'as-drawn' });
  expect(ofRegion.get('R01')).toBe(ofRegion.get('R02'));
  expect(ofRegion.get('R03')).toBe(1);
  const bands = [...asked.values()].map(({ depth, minus, plus }) => band(depth, minus, plus));
  const [found, ...others] = nearLevelFindings(bands, { levels: 'as-drawn' });
  expect(others).toEqual([]);
  expect(found).toMatchObject({ code: 'levels-too-near', facts: { from: 2, to: 2.003, limit: 0.005 } });
});
