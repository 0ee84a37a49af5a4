/**
 * What size costs, on parts drawn anew from a seed (`SEED=7 npm run bench`): pockets of which no two are alike, with as many nested in them,
 * and a mesh of holes. Each plan is a process of its own. Prints; judges nothing.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import {
  differentPocketsFiles,
  meshFiles,
  type PocketGridFiles,
} from '#support/drawings/pocket-grid-files.ts';
import { builtFile } from '#support/process/built-module.ts';

const SEED = Number(process.env['SEED'] ?? 1);

/** Processor seconds, which other work on the machine hardly counts into, and the peak of memory. */
const REPORT =
  "process.on('exit',()=>{const u=process.resourceUsage();process.stderr.write('spent '+((u.userCPUTime+u.systemCPUTime)/1e6)+' peak '+(u.maxRSS/1024)+'\\n')})";

test('isobath plan on 800 different nested pockets against JSTS growing alone, a process each', async () => {
  const alone = await builtFile('tests/bench/grow-alone.ts', 'jsts/dist/jsts.min.js');
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  const ratios = [0, 1, 2].map((round) => {
    const job = writePart(folder, differentPocketsFiles(40, 20, SEED + round));
    const ours = run(planOf(folder, job)).spent;
    const theirs = run([alone, String(SEED + round)]);
    expect(theirs.exit).toBe(0);
    console.log(`plan ${ours.toFixed(1)} s, growing alone ${theirs.spent.toFixed(1)} s of processor time`);
    return ours / theirs.spent;
  });
  console.log(
    `isobath plan takes ${ratios.map((ratio) => ratio.toFixed(1)).join(', ')} times as long (2 asked)`,
  );
  rmSync(folder, { recursive: true });
  rmSync(dirname(alone), { recursive: true });
});

test('800, 3,200 and 12,800 pockets with as many nested in them', { timeout: 3_600_000 }, () => {
  comparePlans(
    [20, 40, 80].map((rows) => [`${rows * rows * 2} pockets`, differentPocketsFiles(2 * rows, rows, SEED)]),
  );
  console.log('asked: 12,800 pockets in at most × 18 of 800, with at most 1500 MB');
});

test('meshes of 12,500, 50,000 and 200,000 holes', { timeout: 3_600_000 }, () => {
  comparePlans([100, 400, 1600].map((rows) => [`${rows * 125} holes`, meshFiles(125, rows, SEED)]));
  console.log('asked: 200,000 holes in time linear with fewer, with at most 4000 MB');
});

/** The first is what the others are held against. */
function comparePlans(parts: readonly (readonly [name: string, files: PocketGridFiles])[]): void {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  let first: number | undefined;
  for (const [name, files] of parts) {
    const { exit, spent, peak } = run(planOf(folder, writePart(folder, files)));
    first ??= spent;
    console.log(
      `${name}: exit ${exit}, processor ${spent.toFixed(1)} s = × ${(spent / first).toFixed(1)}, peak ${peak.toFixed(0)} MB`,
    );
  }
  rmSync(folder, { recursive: true });
}

/** The path of the job. */
function writePart(folder: string, { drawing, job }: PocketGridFiles): string {
  writeFileSync(join(folder, 'grid.dxf'), drawing);
  writeFileSync(join(folder, 'grid.job.json'), job);
  return join(folder, 'grid.job.json');
}

function planOf(folder: string, job: string): string[] {
  return ['dist/cli/isobath.js', 'plan', job, '--out', join(folder, 'out')];
}

/** Processor seconds and the peak of memory in MB of a process of Node. */
function run(command: readonly string[]) {
  const watched = ['--import', `data:text/javascript,${encodeURIComponent(REPORT)}`];
  const done = spawnSync(process.execPath, [...watched, ...command], { encoding: 'utf8' });
  const [, spent = '', peak = ''] = /spent ([\d.]+) peak ([\d.]+)/.exec(done.stderr) ?? [];
  return { exit: done.status, spent: Number(spent), peak: Number(peak) };
}
