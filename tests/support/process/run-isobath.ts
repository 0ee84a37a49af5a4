/** The built command line as a process: what a person at a terminal gets, and what work it took, however busy the machine. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { keepToSchema } from '#support/jobs/published-schema.ts';

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
  const before = filesNamed(args, folder);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', NOTE_WORK, PROGRAM, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NOTE_WORK_IN: work, ...env },
    timeout: 240_000,
    maxBuffer: 100_000_000,
  });
  const cpuSeconds = existsSync(work) ? Number(readFileSync(work, 'utf8')) / 1e6 : Number.POSITIVE_INFINITY;
  rmSync(place, { recursive: true });
  for (const [path, text] of filesNamed(args, folder)) {
    // Whatever a test has written must keep to the schema that is published; a new job waits for what the drawing does not say.
    if (before.get(path) !== text) keepToSchema(JSON.parse(text), args[0] === 'new');
  }
  return { code: status, out: stdout, error: stderr, cpuSeconds };
}

/** Text of the JSON files in the folder, in those that the arguments name, and beside files that they name, by path. */
function filesNamed(args: readonly string[], folder: string): ReadonlyMap<string, string> {
  const named = args
    .map((arg) => resolve(folder, arg))
    .map((path) => (isFolder(path) ? path : dirname(path)));
  const paths = [...new Set([folder, ...named])].filter(isFolder).flatMap((each) =>
    readdirSync(each, { withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.json'))
      .map(({ name }) => join(each, name)),
  );
  return new Map(paths.map((path) => [path, readFileSync(path, 'utf8')]));
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}
