import { spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buoyLid, buoyLidDrawing, buoyLidJob, buoyLidNotes, dxf } from '#support/drawings/small-drawing.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const home = mkdtempSync(join(tmpdir(), 'isobath-cli-'));
const folder = join(home, 'jobs');
beforeAll(() => {
  mkdirSync(folder);
  writeFileSync(join(folder, 'buoy-lid.dxf'), buoyLidDrawing);
  writeFileSync(join(folder, 'no-unit.dxf'), dxf({ entities: buoyLid }));
  const noted = dxf({ insunits: 4, entities: [...buoyLid, ...buoyLidNotes] });
  writeFileSync(join(folder, 'noted.dxf'), noted);
  writeFileSync(join(folder, 'lid.job.json'), JSON.stringify(buoyLidJob));
  writeFileSync(join(folder, 'bom.job.json'), `\uFEFF${JSON.stringify(buoyLidJob)}`);
  const stopped = { ...buoyLidJob, process: { ...buoyLidJob.process, etchFactor: 12 } };
  writeFileSync(join(folder, 'stopped.job.json'), JSON.stringify(stopped));
});
afterAll(() => rmSync(home, { recursive: true }));

describe('isobath plan', () => {
  it('writes both files, prints table and cautions, and ends with 0', () => {
    const { code, out, error } = runIsobath(['plan', 'lid.job.json', '--out', 'new/folder'], folder);
    expect(error).not.toMatch(/^stop/m);
    expect(code).toBe(0);
    expect(readdirSync(join(folder, 'new', 'folder')).sort()).toEqual(['plan.json', 'scribe.dxf']);
    expect(out).toMatch(/^stage {2}level mm[^\n]*\n {4}1 {5}2\.400[^\n]*\n {4}2 {5}1\.200/);
    expect(out).toMatch(/80\.8 min in the bath/);
    expect(out).toMatch(/not an approval[\s\S]*burns[\s\S]*hydrogen/i);
  });

  it('finds the drawing from the folder of the job, not from its own', () => {
    const { code } = runIsobath(['plan', 'jobs/lid.job.json', '--out', 'elsewhere'], home);
    expect(code).toBe(0);
    expect(readdirSync(join(home, 'elsewhere')).sort()).toEqual(['plan.json', 'scribe.dxf']);
  });

  it('takes a job with a byte order mark', () => {
    expect(runIsobath(['plan', 'bom.job.json', '--out', 'bom'], folder).code).toBe(0);
  });

  it('gives the same bytes each time', () => {
    for (const out of ['once', 'twice']) runIsobath(['plan', 'lid.job.json', '--out', out], folder);
    for (const name of ['plan.json', 'scribe.dxf']) {
      expect(readFileSync(join(folder, 'once', name)).equals(readFileSync(join(folder, 'twice', name)))).toBe(
        true,
      );
    }
  });

  it('ends with 1 on a plan that has a stop: plan.json alone, and no cut file of an earlier plan is left', () => {
    runIsobath(['plan', 'lid.job.json', '--out', 'stop'], folder);
    const { code, out, error } = runIsobath(['plan', 'stopped.job.json', '--out', 'stop'], folder);
    expect(error).toMatch(/^stop opening-missing: /m);
    expect(code).toBe(1);
    expect(readdirSync(join(folder, 'stop'))).toEqual(['plan.json']);
    expect(out).toMatch(/removed, left from an earlier plan: scribe\.dxf\n/);
  });

  it('out-over-input: never writes over the drawing', () => {
    writeFileSync(join(folder, 'scribe.dxf'), buoyLidDrawing);
    writeFileSync(join(folder, 'over.job.json'), JSON.stringify({ ...buoyLidJob, drawing: 'scribe.dxf' }));
    const { code, error } = runIsobath(['plan', 'over.job.json', '--out', '.'], folder);
    expect(error).toMatch(/^stop out-over-input: /m);
    expect(code).toBe(2);
    expect(readFileSync(join(folder, 'scribe.dxf'), 'utf8')).toBe(buoyLidDrawing);
  });

  it('out-not-a-folder: says so when --out is a file', () => {
    const { code, error } = runIsobath(['plan', 'lid.job.json', '--out', 'buoy-lid.dxf'], folder);
    expect(error).toMatch(/^stop out-not-a-folder: /m);
    expect(code).toBe(2);
  });

  it('prints findings as JSON with --json, also when the input can’t be used', () => {
    const done = runIsobath(['plan', 'stopped.job.json', '--out', 'json', '--json'], folder);
    const record = JSON.parse(done.out) as {
      findings: { code: string; severity: string }[];
      files: string[];
    };
    expect(
      record.findings.some(({ code, severity }) => code === 'opening-missing' && severity === 'stop'),
    ).toBe(true);
    expect(record.files).toEqual(['plan.json']);
    const none = runIsobath(['plan', 'nowhere.json', '--out', 'x', '--json'], folder);
    expect(JSON.parse(none.out)).toMatchObject({ findings: [{ code: 'file-missing', severity: 'stop' }] });
    expect(none.code).toBe(2);
  });

  it('colours nothing and shows no progress where nobody watches', () => {
    const { out, error } = runIsobath(['plan', 'stopped.job.json', '--out', 'plain'], folder);
    expect(out + error).not.toContain('\u001b');
  });
});

describe('isobath inspect', () => {
  it('reports unit, layers, counts, closed outlines and regions', () => {
    const { code, out } = runIsobath(['inspect', 'buoy-lid.dxf'], folder);
    expect(code).toBe(0);
    expect(out).toMatch(/^unit {2}mm/);
    expect(out).toMatch(/POCKETS: 1 LWPOLYLINE/);
    expect(out).toMatch(/closed outlines {2}4/);
    // 100 × 80 less 50 × 40.
    expect(out).toMatch(/6000\.00 mm² .* POCKETS, 1 inside/);
  });

  it('gives the same as JSON', () => {
    const record = JSON.parse(runIsobath(['inspect', 'buoy-lid.dxf', '--json'], folder).out) as Record<
      string,
      unknown
    >;
    expect(record).toMatchObject({ unit: 'mm', findings: [] });
    expect(record['regions']).toHaveLength(4);
    expect(record['closedOutlines']).toHaveLength(4);
  });

  it('offers what is written in regions, each with its region; with a prefix only what begins with it', () => {
    const { code, out } = runIsobath(['inspect', 'noted.dxf'], folder);
    expect(code).toBe(0);
    expect(out).toContain('depth notes  4');
    expect(out).toMatch(/depth 2\.2 mm {2}from "2\.20"/);
    expect(out).toMatch(/thickness 1\.6 mm {2}from "t 1\.6"/);
    expect(out).toMatch(/depth 1\.3 \+0\.1 -0\.1 mm {2}from "1\.3 ±0\.1", another note there differs/);
    const inches = runIsobath(['inspect', 'noted.dxf', '--unit', 'in'], folder).out;
    expect(inches).toMatch(/thickness 1\.6 in {2}from "t 1\.6"/);
    expect(inches).toMatch(/depth 1\.3 \+0\.1 -0\.1 in {2}from/);
    const { depthNotes } = JSON.parse(
      runIsobath(['inspect', 'noted.dxf', '--note-prefix', 'd', '--json'], folder).out,
    ) as { depthNotes: { asks: string; length: number; plus: number | null; place: number[] }[] };
    expect(depthNotes).toHaveLength(1);
    expect(depthNotes[0]).toMatchObject({ asks: 'thickness', length: 1.6, plus: null, place: [60, 60] });
  });

  it('drawing-unit-missing: shows what is there, asks for the unit, and ends with 2', () => {
    const { code, out, error } = runIsobath(['inspect', 'no-unit.dxf'], folder);
    expect(error).toMatch(/^stop drawing-unit-missing: .*drawingUnits/m);
    expect(error).toContain('in millimetre 200 mm by 120 mm, in inch 5080 mm by 3048 mm');
    expect(out).toMatch(/unit {2}not given[\s\S]*POCKETS/);
    expect(out).toMatch(/regions {2}not computed\n$/);
    expect(out).not.toContain('closed outlines  ');
    expect(code).toBe(2);
  });

  it('--unit: a drawing without a unit is read in the one given', () => {
    const { code, out } = runIsobath(['inspect', 'no-unit.dxf', '--unit', 'in'], folder);
    expect(code).toBe(0);
    expect(out).toMatch(/^unit {2}in\n/);
    // A pocket of 100 by 80 in with one of 50 by 40 in nested in it.
    expect(out).toContain(`${(100 * 80 - 50 * 40).toFixed(4)} in²`);
    const wrong = runIsobath(['inspect', 'no-unit.dxf', '--unit', 'furlong'], folder);
    expect(wrong.code).toBe(2);
    expect(wrong.error).toMatch(/^stop option-value-wrong: --unit was given "furlong"/);
  });
});

describe('files that the system refuses', () => {
  it('file-unreadable: a drawing that is a link to itself', () => {
    symlinkSync(join(folder, 'circle.dxf'), join(folder, 'circle.dxf'));
    const { code, error } = runIsobath(['inspect', 'circle.dxf'], folder);
    expect(error).toMatch(/^stop file-unreadable: .*circular links/);
    expect(code).toBe(2);
  });

  it('out-not-writable: a disk that takes nothing', () => {
    const { code, error } = runIsobath(['plan', 'lid.job.json', '--out', '/proc/isobath'], folder);
    expect(error).toMatch(/^stop out-not-(writable|a-folder): /m);
    expect(code).toBe(2);
  });
});

describe('isobath alone', () => {
  it('prints its help and ends with 0', () => {
    const { code, out, error } = runIsobath([], folder);
    expect(code).toBe(0);
    expect(error).toBe('');
    expect(out).toMatch(/^Usage: isobath/);
    for (const command of ['inspect', 'new', 'plan', 'correct', 'section', 'depth']) {
      expect(out).toMatch(new RegExp(`^ {2}${command} `, 'm'));
    }
  });
});

describe('a command that is not understood', () => {
  it.each([
    ['a misspelt command', ['plna'], /plna.*Did you mean plan/],
    ['an unknown option', ['inspect', 'a.dxf', '--jsno'], /--jsno.*Did you mean --json/],
    ['no job', ['plan', '--out', 'x'], /missing required argument 'job'/],
    ['no --out', ['plan', 'lid.job.json'], /--out/],
    ['one argument too many', ['inspect', 'a.dxf', 'b.dxf'], /too many arguments/],
  ] as const)('command-unclear: %s', (_title, args, words) => {
    const { code, out, error } = runIsobath(args, folder);
    expect(error).toMatch(/^stop command-unclear: [^\n]*\n$/);
    expect(error).toMatch(words);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('help ends with 0 and goes to the output', () => {
    const { code, out, error } = runIsobath(['plan', '--help'], folder);
    expect(out).toMatch(/--out <folder>/);
    expect(error).toBe('');
    expect(code).toBe(0);
  });
});

describe('npx isobath in a checkout', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  it.each(['.', 'src/cli'])('runs from %s, and paths are meant from there', (from) => {
    const run = spawnSync('npx', ['isobath', 'inspect', join(folder, 'buoy-lid.dxf'), '--json'], {
      cwd: join(root, from),
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });
    expect(run.status, run.stderr).toBe(0);
    expect(JSON.parse(run.stdout)).toMatchObject({ unit: 'mm' });
    const missing = spawnSync('npx', ['isobath', 'inspect', 'package.json', '--json'], {
      cwd: join(root, from),
      encoding: 'utf8',
    });
    const codes = (JSON.parse(missing.stdout) as { findings: { code: string }[] }).findings.map(
      ({ code }) => code,
    );
    expect(codes.includes('file-missing')).toBe(from !== '.');
  });
});

describe('a job that names its post', () => {
  const withPost = { ...buoyLidJob, handoff: { files: ['program'], program: { post: 'router.post.json' } } };
  const plan = (out: string) => runIsobath(['plan', 'posted.job.json', '--out', out], folder);

  it('has the file read from beside the job, and plan.json holds what it said', () => {
    writeFileSync(join(folder, 'posted.job.json'), JSON.stringify(withPost));
    const post = readFileSync(
      fileURLToPath(new URL('../../samples/light-cutter.post.json', import.meta.url)),
    );
    writeFileSync(join(folder, 'router.post.json'), post);
    expect(plan('posted').code).toBe(0);
    expect(readFileSync(join(folder, 'posted', 'scribe.nc'), 'utf8')).toMatch(
      /^%\r\nO0042\r\n[\s\S]*M3 S4000/,
    );
    const { job } = JSON.parse(readFileSync(join(folder, 'posted', 'plan.json'), 'utf8'));
    expect(job.handoff.program.post).toEqual(JSON.parse(post.toString()));
  });

  it('is refused with file, path and line when the post is bad, and when there is none', () => {
    writeFileSync(
      join(folder, 'router.post.json'),
      '{ "format": "isobath-post", "version": 1,\n "unit": "ell" }',
    );
    const bad = plan('bad-post');
    expect(bad.code).toBe(2);
    expect(bad.error).toMatch(/^stop job-value-wrong: .*\[unit; router\.post\.json line 2\]/m);
    rmSync(join(folder, 'router.post.json'));
    expect(plan('no-post').error).toMatch(/^stop file-missing: There is no file router\.post\.json/);
  });
});
