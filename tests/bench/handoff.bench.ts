/** Every hand-off file of the 800-pocket part at once, beside the plan alone: the command as a process. Prints; judges nothing. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import { HANDOFF_FILES } from '#part/handoff-schema.ts';
import { pocketGridFiles } from '#support/pocket-grid-files.ts';

/** Processor seconds, which other work on the machine hardly counts into, and the peak of memory. */
const REPORT =
  "process.on('exit',()=>{const u=process.resourceUsage();process.stderr.write('spent '+(u.userCPUTime/1e6)+' peak '+(u.maxRSS/1024)+'\\n')})";

test('isobath plan on 800 nested pockets: all hand-off files against none', () => {
  const folder = mkdtempSync(join(tmpdir(), 'isobath-bench-'));
  const { drawing, job } = pocketGridFiles(40, 20);
  writeFileSync(join(folder, 'grid.dxf'), drawing);
  const spent = [[], HANDOFF_FILES].map((files) => {
    const name = `files-${files.length}.job.json`;
    const handoff = { files, paper: 'a3', program: { order: 'short-travel' } };
    writeFileSync(join(folder, name), JSON.stringify({ ...JSON.parse(job), handoff }));
    const start = performance.now();
    const done = spawnSync(
      process.execPath,
      [
        '--import',
        `data:text/javascript,${encodeURIComponent(REPORT)}`,
        'dist/cli/isobath.js',
        'plan',
        join(folder, name),
        '--out',
        join(folder, `out-${files.length}`),
      ],
      { encoding: 'utf8' },
    );
    const seconds = (performance.now() - start) / 1000;
    const [, processor = '', peak = ''] = /spent ([\d.]+) peak ([\d.]+)/.exec(done.stderr) ?? [];
    console.log(
      `${files.length} chosen files: exit ${done.status}, ${seconds.toFixed(1)} s, processor ${Number(processor).toFixed(1)} s, peak ${Number(peak).toFixed(0)} MB`,
    );
    return Number(processor);
  });
  console.log(`all files cost ${((spent[1] ?? 0) / (spent[0] ?? 1)).toFixed(1)} times the plan alone`);
  rmSync(folder, { recursive: true });
});
