/** How cost grows with the number of distinct depths in one cluster of touching cells: plan, measuring, checks. Prints; judges nothing. */
import { test } from 'vitest';
import { builtModule } from '#support/process/built-module.ts';

type Work = typeof import('./levels-work.ts');

const COUNTS = [10, 20, 40, 80, 200];

test('10 to 200 distinct depths in one cluster, each at first and again', async () => {
  const { levelsWork: work } = await builtModule<Work>('tests/bench/levels-work.ts');
  const least: number[] = [];
  for (const count of COUNTS) {
    const drawn = work.partOfCells(count);
    for (const round of [0, 1]) {
      const started = process.cpuUsage();
      const spent = () => process.cpuUsage(started).user / 1000;
      const plan = work.plan(drawn);
      const planned = spent();
      const measured = work.measure(plan);
      const timed = spent();
      work.check(plan, measured);
      const all = spent();
      least[round] ??= all;
      console.log(
        `${String(count).padStart(4)} depths, ${round === 0 ? 'at first' : 'again   '}: plan ${planned.toFixed(0)} ms, measuring ${(timed - planned).toFixed(0)}, ` +
          `checks ${(all - timed).toFixed(0)}; in all ${all.toFixed(0)} = × ${(all / (least[round] ?? all)).toFixed(1)}`,
      );
    }
  }
});
