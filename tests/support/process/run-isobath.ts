/** The built command line as a process: what a person at a terminal gets, and what work it took, however busy the machine. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { schemaFaults } from '#support/jobs/published-schema.ts';

const PROGRAM = fileURLToPath(new URL('../../../dist/cli/isobath.js', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
  /** Of processor time. */
  readonly cpuSeconds: number;
}

/** Imported by the process before the program: writes its processor time, in microseconds, as it ends. */
const NOTE_WORK = `data:text/javascript,${encodeURIComponent(`
  import { writeFileSync } from 'node:fs';
  process.on('exit', () => {
    const { user, system } = process.cpuUsage();
    writeFileSync(process.env.NOTE_WORK_IN, String(user + system));
  });
`)}`;

export function runIsobath(args: readonly string[], folder: string, env: NodeJS.ProcessEnv = {}): Ran {
  if (!existsSync(PROGRAM)) throw new Error('the command line is not built: npm run build');
  const place = mkdtempSync(join(tmpdir(), 'isobath-work-'));
  const work = join(place, 'microseconds');
  const plan = planPath(args, folder);
  const before = textAt(plan);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', NOTE_WORK, PROGRAM, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NOTE_WORK_IN: work, ...env },
    timeout: 240_000,
    maxBuffer: 100_000_000,
  });
  const cpuSeconds = existsSync(work) ? Number(readFileSync(work, 'utf8')) / 1e6 : Number.POSITIVE_INFINITY;
  rmSync(place, { recursive: true });
  const after = textAt(plan);
  if (after !== undefined && after !== before) checkPlan(after);
  return { code: status, out: stdout, error: stderr, cpuSeconds };
}

/** Where `isobath plan` writes its plan, if that is asked for. */
function planPath(args: readonly string[], folder: string): string | undefined {
  const out = args.indexOf('--out');
  return args[0] === 'plan' && out > 0 ? resolve(folder, args[out + 1] ?? '', 'plan.json') : undefined;
}

function textAt(path: string | undefined): string | undefined {
  return path !== undefined && existsSync(path) ? readFileSync(path, 'utf8') : undefined;
}

/** Whatever a test plans must keep to the schema that is published. */
function checkPlan(text: string): void {
  const faults = schemaFaults('plan', JSON.parse(text));
  if (faults.length > 0) throw new Error(`plan.json does not keep to its schema: ${faults.join('; ')}`);
}
