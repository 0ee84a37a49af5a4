/** A whole plan of the 800-pocket part: the command as a process, and one changed depth in one run. Prints; judges nothing. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import type { RunInput } from '#run/run-job.ts';
import type { RunMemory } from '#run/run-memory.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { builtModule } from '#support/process/built-module.ts';
import type { RunWork } from './run-work.ts';

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

test('isobath --help and a plan of three pockets against node alone: what starting costs, best of five', () => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  writeFileSync(join(folder, 'lid.dxf'), buoyLidDrawing);
  writeFileSync(join(folder, 'lid.job.json'), JSON.stringify({ ...buoyLidJob, drawing: 'lid.dxf' }));
  const best = (args: readonly string[]): number =>
    Math.min(
      ...[1, 2, 3, 4, 5].map(() => {
        const start = performance.now();
        spawnSync(process.execPath, args);
        return performance.now() - start;
      }),
    );
  const node = best(['-e', '0']);
  const help = best(['dist/cli/isobath.js', '--help']);
  const plan = best([
    'dist/cli/isobath.js',
    'plan',
    join(folder, 'lid.job.json'),
    '--out',
    join(folder, 'out'),
  ]);
  console.log(
    `node alone ${node.toFixed(0)} ms; help ${help.toFixed(0)} ms = × ${(help / node).toFixed(1)}; ` +
      `a plan of three pockets ${plan.toFixed(0)} ms = × ${(plan / node).toFixed(1)} (2.5 asked)`,
  );
  rmSync(folder, { recursive: true });
});

test('one depth of 1600 changed: processor time until the new plan is there, and all that comes of it, against a whole run', async () => {
  const { drawing, job } = pocketGridFiles(40, 20);
  const drawingBytes = new TextEncoder().encode(drawing);
  const { runWork } = await builtModule<RunWork>('tests/bench/run-work.ts');
  const { createRunMemory } = runWork;
  const memory = createRunMemory();
  const run = (jobText: string, among = memory) =>
    timeRun(runWork, { jobText, drawingName: 'grid.dxf', drawingBytes }, among);
  const changed = JSON.parse(job);
  changed.requirements.push({ at: [30, 20], depth: 2.4, plus: 0.05, minus: 0.05 });
  for (let round = 0; round < 5; round++) {
    const whole = await run(job, createRunMemory());
    if (round === 0) await run(job);
    changed.requirements.at(-1).depth = 2.4 + round / 10;
    const again = await run(JSON.stringify(changed));
    const share = (spent: number): string => `${spent.toFixed(0)} ms = 1/${(whole.done / spent).toFixed(0)}`;
    console.log(
      `whole run ${whole.done.toFixed(0)} ms (plan after ${whole.planned.toFixed(0)}); one depth changed: plan after ${share(again.planned)}, ` +
        `all figures and findings after ${share(again.judged)} (1/25 asked), files after ${share(again.done)}`,
    );
  }
});

/** Milliseconds of processor time, which other work on the machine does not count into. Nothing is collected before it, as for who edits. */
async function timeRun(
  { runJob }: RunWork['runWork'],
  input: RunInput,
  memory: RunMemory,
): Promise<{ readonly planned: number; readonly judged: number; readonly done: number }> {
  const start = process.cpuUsage();
  const spent = () => process.cpuUsage(start).user / 1000;
  let planned = 0;
  let judged = 0;
  await runJob(input, {
    memory,
    onPlan: () => {
      planned = spent();
    },
    onJudged: () => {
      judged = spent();
    },
  });
  return { planned, judged, done: spent() };
}
