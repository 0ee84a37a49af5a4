/**
 * The writing of a set of files as a process of its own that stops at a step given: killed before its n-th call of the file
 * system, or refused that call by it, as where another program holds a file or the disk is full.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/** Names that a set is made of, `plan.json` in all. */
const NAMES = ['plan.json', 'scribe.dxf', 'scribe.svg', 'review.pdf', 'traveller.pdf', 'section-A.svg'];

export type Stop =
  | { readonly kind: 'kill'; readonly call: number }
  /** `calls` calls are refused from `call` on. */
  | { readonly kind: 'refuse'; readonly call: number; readonly calls: number; readonly code: string };

export interface Written {
  readonly wasKilled: boolean;
  /** The finding's code; undefined where all was written, or the process was killed. */
  readonly refusedBy: string | undefined;
  readonly findings: readonly string[];
  /** Calls of the file system that changed something. */
  readonly calls: number;
}

export interface WritingRig {
  /** Folders for sets, all empty. */
  readonly newFolder: () => string;
  /** Writes set number `set` of the names to the folder; all other names are stale. */
  readonly write: (folder: string, set: number, stop?: Stop) => Written;
}

/** Which files a set has: `plan.json`, and every file whose bit is in its number. */
export function namesOf(set: number): string[] {
  return NAMES.filter((_, index) => index === 0 || ((set * 11) >> index) % 2 === 1);
}

/** Bundles the writing once, in a folder that the caller deletes. */
export async function writingRig(): Promise<WritingRig & { readonly home: string }> {
  const home = mkdtempSync(join(tmpdir(), 'isobath-stopped-'));
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: 'src/cli/write-files.ts',
      outDir: join(home, 'built'),
      rolldownOptions: { output: { entryFileNames: 'write-files.mjs', codeSplitting: false } },
    },
    ssr: { noExternal: true },
  });
  const program = join(home, 'write.mjs');
  writeFileSync(program, PROGRAM);
  let made = 0;
  return {
    home,
    newFolder: () => {
      const folder = join(home, `set-${made++}`);
      mkdirSync(folder);
      return folder;
    },
    write: (folder, set, stop) => {
      const files = namesOf(set).map((name) => ({ name, text: `${set} ${name}` }));
      const order = { folder, files, stale: NAMES.filter((name) => !namesOf(set).includes(name)) };
      const module = pathToFileURL(join(home, 'built', 'write-files.mjs')).href;
      const { signal, stdout, stderr } = spawnSync(
        process.execPath,
        [program, JSON.stringify({ module, order, stop })],
        { encoding: 'utf8' },
      );
      if (signal === 'SIGKILL') return { wasKilled: true, refusedBy: undefined, findings: [], calls: 0 };
      if (stdout === '') throw new Error(stderr);
      return { wasKilled: false, ...(JSON.parse(stdout) as Omit<Written, 'wasKilled'>) };
    },
  };
}

const PROGRAM = `
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
const { module, order, stop } = JSON.parse(process.argv[2]);
const { writeFiles } = await import(module);
let call = 0;
for (const name of ['mkdirSync', 'writeFileSync', 'renameSync', 'rmSync', 'rmdirSync', 'unlinkSync', 'utimesSync']) {
  const plain = fs[name];
  fs[name] = (...args) => {
    const now = call++;
    if (stop?.kind === 'kill' && now === stop.call) process.kill(process.pid, 'SIGKILL');
    if (stop?.kind === 'refuse' && now >= stop.call && now < stop.call + stop.calls)
      throw Object.assign(new Error(stop.code), { code: stop.code, path: String(args[0]) });
    return plain(...args);
  };
}
syncBuiltinESMExports();
const files = order.files.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text) }));
const outcome = writeFiles({ ...order, files, stale: () => order.stale, inputs: [] });
const refusedBy = 'refused' in outcome ? outcome.refused.code : undefined;
const findings = 'refused' in outcome ? [] : outcome.findings.map(({ code }) => code);
process.stdout.write(JSON.stringify({ refusedBy, findings, calls: call }));
`;

export interface FolderState {
  /** Numbers of the sets that the files under their own names belong to. */
  readonly sets: readonly number[];
  /** Whether there is a `plan.json`, and beside it all files of its set. */
  readonly isWhole: boolean;
  readonly hasPlan: boolean;
  /** Whether anything else lies there. */
  readonly isClean: boolean;
}

export function stateOf(folder: string): FolderState {
  const entries = readdirSync(folder);
  const names = entries.filter((name) => NAMES.includes(name));
  const sets = [
    ...new Set(names.map((name) => Number(readFileSync(join(folder, name), 'utf8').split(' ')[0]))),
  ];
  const [set] = sets;
  const hasPlan = names.includes('plan.json');
  const isWhole =
    hasPlan && sets.length === 1 && set !== undefined && namesOf(set).sort().join() === names.sort().join();
  return { sets, isWhole, hasPlan, isClean: names.length === entries.length };
}
