/** The built program runs from what its build compiled; whatever became of that, it does the same. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const home = mkdtempSync(join(tmpdir(), 'isobath-compiled-'));
const built = join(home, 'built');
cpSync('dist/cli', built, { recursive: true });
writeFileSync(join(home, 'buoy-lid.dxf'), buoyLidDrawing);
writeFileSync(join(home, 'lid.job.json'), JSON.stringify(buoyLidJob));
afterAll(() => rmSync(home, { recursive: true }));

/** Imported before the program: says as it ends which code compiled before was taken, what of Node was loaded, and what V8 was asked. */
const WATCH = `data:text/javascript,${encodeURIComponent(`
  import v8 from 'node:v8';
  import vm from 'node:vm';
  import { writeFileSync } from 'node:fs';
  const taken = [];
  vm.Script = class extends vm.Script {
    constructor(source, options) {
      super(source, options);
      if (this.cachedDataRejected === false) taken.push(options.filename);
    }
  };
  const flags = [];
  const set = v8.setFlagsFromString;
  v8.setFlagsFromString = (flag) => {
    flags.push(flag);
    set(flag);
  };
  process.on('exit', () =>
    writeFileSync('watched.json', JSON.stringify({ taken, loaded: process.moduleLoadList, flags })),
  );
`)}`;

interface Watched {
  readonly taken: readonly string[];
  readonly loaded: readonly string[];
  readonly flags: readonly string[];
}

function run(
  args: readonly string[],
  flags: readonly string[] = [],
): Watched & { readonly status: number | null; readonly out: string } {
  const all = [...flags, '--import', WATCH, join(built, 'isobath.js'), ...args];
  const { status, stdout: out } = spawnSync(process.execPath, all, { cwd: home, encoding: 'utf8' });
  return { status, out, ...(JSON.parse(readFileSync(join(home, 'watched.json'), 'utf8')) as Watched) };
}

function planned(...given: string[]): Watched & { readonly plan: string } {
  const { status, ...watched } = run(['plan', 'lid.job.json', '--out', 'out'], given);
  expect(status).toBe(0);
  return { plan: readFileSync(join(home, 'out', 'plan.json'), 'utf8'), ...watched };
}

/** The one file of the built program whose name matches. */
function pathOf(name: RegExp): string {
  const found = readdirSync(built).filter((each) => name.test(each));
  expect(found).toHaveLength(1);
  return join(built, found[0] ?? '');
}

describe('a plan', () => {
  const whole = planned();
  const [start = '', plan = ''] = [/^start-.*\.code\.js$/, /^plan-.*\.code\.js$/].map(pathOf);

  it('runs from what the build compiled', () => {
    expect(whole.taken).toEqual([start, plan]);
  });

  it('loads nothing of Node that starts programs or serves pages', () => {
    expect(whole.loaded).toContain('NativeModule fs');
    for (const name of ['child_process', 'http', 'dns'])
      expect(whole.loaded).not.toContain(`NativeModule ${name}`);
  });

  it('has V8 optimize later where that is Node 20’s, which would too early; no other knows the flag', () => {
    const isOfNode20 = process.versions.v8.startsWith('11.');
    expect(whole.flags).toEqual(isOfNode20 ? ['--interrupt-budget=540672'] : []);
  });

  it('is the same where V8 runs with flags that it was not compiled with', () => {
    expect(planned('--no-opt')).toMatchObject({ plan: whole.plan, taken: [] });
  });

  it.each<[string, (path: string, compiled: Buffer) => void]>([
    ['missing', (path) => rmSync(path)],
    ['empty', (path) => writeFileSync(path, '')],
    ['cut short', (path, compiled) => writeFileSync(path, compiled.subarray(0, 51_207))],
    ['changed by a bit', (path, compiled) => writeFileSync(path, withBitChanged(compiled, 70_003))],
  ])('is the same with what was compiled %s', (_, change) => {
    const path = pathOf(/^plan-.*\.code\.js\.v/);
    const compiled = readFileSync(path);
    change(path, compiled);
    expect(planned()).toMatchObject({ plan: whole.plan, taken: [start] });
    writeFileSync(path, compiled);
  });

  it('follows the program where that was changed afterwards, its length the same', () => {
    const source = readFileSync(start, 'utf8');
    writeFileSync(start, source.replace('plan a job: stages', 'plan a jab: stages'));
    const { out, taken } = run(['--help']);
    expect(out).toContain('plan a jab: stages');
    expect(taken).toEqual([]);
    writeFileSync(start, source);
  });
});

function withBitChanged(bytes: Buffer, at: number): Buffer {
  const changed = Buffer.from(bytes);
  changed.writeUInt8(changed.readUInt8(at) ^ 4, at);
  return changed;
}
