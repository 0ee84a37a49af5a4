/** A whole plan of the 800-pocket part: the command as a process, and one changed depth through the one door. Prints; judges nothing. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { pocketGridFiles } from '#support/pocket-grid-files.ts';

const REPORT =
  "process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS/1024+'\\n'))";

test('isobath plan on 800 nested pockets: wall time and memory of the process', () => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  const { drawing, job } = pocketGridFiles(40, 20);
  writeFileSync(join(folder, 'grid.dxf'), drawing);
  writeFileSync(join(folder, 'grid.job.json'), job);
  for (let round = 0; round < 3; round++) {
    const start = performance.now();
    const done = spawnSync(
      process.execPath,
      [
        '--import',
        `data:text/javascript,${encodeURIComponent(REPORT)}`,
        'dist/cli/isobath.js',
        'plan',
        join(folder, 'grid.job.json'),
        '--out',
        join(folder, 'out'),
      ],
      { encoding: 'utf8' },
    );
    const seconds = (performance.now() - start) / 1000;
    const peak = /peak (\d+)/.exec(done.stderr)?.[1];
    console.log(`isobath plan: exit ${done.status}, ${seconds.toFixed(2)} s, peak ${peak} MB`);
  }
  rmSync(folder, { recursive: true });
});

test('one depth of 1600 changed: the share of a whole run', async () => {
  const { drawing, job } = pocketGridFiles(40, 20);
  const drawingBytes = new TextEncoder().encode(drawing);
  const input = { jobText: job, drawingName: 'grid.dxf', drawingBytes };
  for (let round = 0; round < 3; round++) {
    const memory = createRunMemory();
    const whole = await processorTime(() => runJob(input, { memory }));
    const changed = JSON.parse(job);
    changed.requirements.push({ at: [30 + 70 * round, 20], depth: 2.4, plus: 0.05, minus: 0.05 });
    const again = await processorTime(() =>
      runJob({ ...input, jobText: JSON.stringify(changed) }, { memory }),
    );
    changed.requirements.at(-1).depth = 2.6;
    const third = await processorTime(() =>
      runJob({ ...input, jobText: JSON.stringify(changed) }, { memory }),
    );
    const share = (part: number) => `${part.toFixed(0)} ms = 1/${(whole / part).toFixed(0)}`;
    console.log(`whole run ${whole.toFixed(0)} ms; one depth changed ${share(again)}, then ${share(third)}`);
  }
});

/** Milliseconds of processor time, which other work on the machine does not count into. */
async function processorTime(work: () => Promise<unknown>): Promise<number> {
  globalThis.gc?.();
  const start = process.cpuUsage();
  await work();
  return process.cpuUsage(start).user / 1000;
}
