/**
 * 200 simulated runs in which a tenth of the readings are wrong by 10 to 1000 % (M7.4). Who gauges answers each question honestly: a wrong
 * reading is struck out and taken again, a right one confirmed.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { simulateWrongRun, type WrongRun } from '#support/jobs/wrong-run.ts';

describe.each(['peel-next', 're-mask'] as const)(
  '200 simulated runs with wrong readings, %s',
  {
    tags: ['long'],
  },
  (masking) => {
    let runs: readonly WrongRun[] = [];
    beforeAll(() => {
      runs = Array.from({ length: 200 }, (_, seed) => simulateWrongRun(masking, seed + 1));
    });

    test('M7.4 all end inside tolerance, and none makes scrap without a question first', () => {
      expect(runs.filter(({ isInside }) => isInside).length).toBe(200);
      expect(runs.filter(({ isInside, questions }) => !isInside && questions === 0)).toEqual([]);
    });

    test('a tenth of the readings was wrong, most of them are asked about, and few that are right', () => {
      const sum = (key: 'readings' | 'wrong' | 'caught' | 'inVain') =>
        runs.reduce((total, run) => total + run[key], 0);
      expect(sum('wrong') / sum('readings')).toBeCloseTo(0.1, 1);
      expect(sum('caught') / sum('wrong')).toBeGreaterThan(0.85);
      expect(sum('inVain') / sum('readings')).toBeLessThan(0.05);
    });
  },
);
