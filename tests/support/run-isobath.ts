/** The built command line as a process: what a person at a terminal gets. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const PROGRAM = fileURLToPath(new URL('../../dist/cli/isobath.js', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
  readonly seconds: number;
}

export function runIsobath(args: readonly string[], folder: string, env: NodeJS.ProcessEnv = {}): Ran {
  if (!existsSync(PROGRAM)) throw new Error('the command line is not built: npm run build');
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    timeout: 30_000,
    maxBuffer: 100_000_000,
  });
  return { code: status, out: stdout, error: stderr, seconds: (performance.now() - start) / 1000 };
}
