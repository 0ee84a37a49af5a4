/** Every hand-off file of the 800-pocket part at once, beside the plan alone: the command as a process. Prints; judges nothing. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';

/** Processor seconds, which other work on the machine hardly counts into, and the peak of memory. */
const REPORT =
  "process.on('exit',()=>{const u=process.resourceUsage();process.stderr.write('spent '+((u.userCPUTime+u.systemCPUTime)/1e6)+' peak '+(u.maxRSS/1024)+'\\n')})";

test('isobath plan on 800 nested pockets: all hand-off files against none', () => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  const { drawing, job } = pocketGridFiles(40, 20);
  writeFileSync(join(folder, 'grid.dxf'), drawing);
  const run = (files: readonly string[]): number => {
    const name = `files-${files.length}`;
    const handoff = { files, paper: 'a3', program: { order: 'short-travel' } };
    writeFileSync(join(folder, `${name}.job.json`), JSON.stringify({ ...JSON.parse(job), handoff }));
    const out = join(folder, name);
    const watched = ['--import', `data:text/javascript,${encodeURIComponent(REPORT)}`];
    const command = ['dist/cli/isobath.js', 'plan', join(folder, `${name}.job.json`), '--out', out];
    const start = performance.now();
    const done = spawnSync(process.execPath, [...watched, ...command], { encoding: 'utf8' });
    const seconds = (performance.now() - start) / 1000;
    const [, processor = '', peak = ''] = /spent ([\d.]+) peak ([\d.]+)/.exec(done.stderr) ?? [];
    const written = readdirSync(out).reduce((sum, file) => sum + statSync(join(out, file)).size, 0) / 1e6;
    console.log(
      `${files.length} chosen files: exit ${done.status}, ${seconds.toFixed(1)} s, processor ${Number(processor).toFixed(1)} s, ` +
        `peak ${Number(peak).toFixed(0)} MB, ${written.toFixed(1)} MB written`,
    );
    return Number(processor);
  };
  for (let round = 0; round < 3; round++) {
    const [plan, all] = [run([]), run(HANDOFF_FILES)];
    console.log(
      `all files take ${(all / plan).toFixed(2)} times the plan alone (at most 15 s and 1000 MB are asked)`,
    );
  }
  rmSync(folder, { recursive: true });
});
