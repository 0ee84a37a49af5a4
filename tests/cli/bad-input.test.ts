import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob, line } from '#support/drawings/small-drawing.ts';
import { type BadInput, badInputs } from '#support/jobs/bad-inputs.ts';
import { type Ran, runIsobath } from '#support/process/run-isobath.ts';

const home = mkdtempSync(join(tmpdir(), 'isobath-bad-'));
afterAll(() => rmSync(home, { recursive: true }));
let count = 0;

/** A folder of its own with the input in it, an `out` that holds an earlier result, and what the run made of it. */
function plan({ job, drawing }: Pick<BadInput, 'job' | 'drawing'>): Ran & { readonly folder: string } {
  const folder = join(home, String(count++));
  const write = (name: string, content: string | Uint8Array | undefined): void => {
    if (content !== undefined) writeFileSync(join(folder, name), content);
  };
  rmSync(folder, { recursive: true, force: true });
  mkdirWith(folder);
  write('lid.job.json', job);
  write('buoy-lid.dxf', drawing);
  return { ...runIsobath(['plan', 'lid.job.json', '--out', 'out'], folder), folder };
}

function mkdirWith(folder: string): void {
  const earlier = join(folder, 'out');
  mkdirSync(earlier, { recursive: true });
  writeFileSync(join(earlier, 'plan.json'), 'an earlier plan');
}

/** What holds for every input, good or bad: in time, a line a finding, no stack trace, nothing half written, inputs untouched. */
function expectManners(
  ran: Ran & { readonly folder: string },
  { job, drawing }: Pick<BadInput, 'job' | 'drawing'>,
): void {
  expect(ran.cpuSeconds).toBeLessThan(5);
  expect(ran.error + ran.out).not.toMatch(/^\s+at .*[:(]|node:internal|Error:|internal error/m);
  for (const each of ran.error.trimEnd().split('\n')) {
    expect(each).toMatch(/^(stop|warn|note) [a-z0-9-]+: \S/);
  }
  const out = readdirSync(join(ran.folder, 'out')).sort();
  if (ran.code === 2) {
    expect(out).toEqual(['plan.json']);
    expect(readFileSync(join(ran.folder, 'out', 'plan.json'), 'utf8')).toBe('an earlier plan');
    expect(ran.out).toBe('');
  } else {
    expect(out).toEqual(ran.code === 0 ? ['plan.json', 'scribe.dxf'] : ['plan.json']);
    expect(JSON.parse(readFileSync(join(ran.folder, 'out', 'plan.json'), 'utf8'))).toMatchObject({
      format: 'isobath-plan',
    });
  }
  const original = typeof drawing === 'string' ? Buffer.from(drawing) : drawing;
  if (original !== undefined)
    expect(readFileSync(join(ran.folder, 'buoy-lid.dxf')).equals(original)).toBe(true);
  expect(readdirSync(ran.folder).length).toBe(
    1 + (job === undefined ? 0 : 1) + (drawing === undefined ? 0 : 1),
  );
}

describe('input that can’t be used, or only with a word about it', () => {
  it('are forty cases at least', () => expect(badInputs.length).toBeGreaterThanOrEqual(40));

  it.each(badInputs.map((bad) => [bad.title, bad.codes.join(' or '), bad] as const))(
    '%s: %s',
    (_title, _codes, bad) => {
      const ran = plan(bad);
      const reported = [...ran.error.matchAll(/^\w+ ([a-z0-9-]+):/gm)].map(([, code]) => code);
      expect(
        bad.codes.some((code) => reported.includes(code)),
        ran.error,
      ).toBe(true);
      expect(ran.code, ran.error).toBe(bad.exit);
      expectManners(ran, bad);
    },
  );
});

const goodJob = JSON.stringify(buoyLidJob);

describe('a drawing cut off on its way', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9])(
    'after %i tenths of its length: refused, nothing written',
    (tenths) => {
      const drawing = buoyLidDrawing.slice(0, Math.round((buoyLidDrawing.length * tenths) / 10));
      const input = { job: goodJob, drawing };
      const ran = plan(input);
      expect(ran.error).toMatch(/^stop drawing-(cut-short|not-dxf|without-curves):/m);
      expect(ran.code).toBe(2);
      expectManners(ran, input);
    },
  );
});

describe('a drawing far too large', () => {
  it('drawing-too-big: a million lines are refused in under five seconds', () => {
    const [head = '', tail = ''] = buoyLidDrawing.split('0\nENDSEC\n0\nEOF\n');
    expect(tail).toBe('');
    const million = Array.from({ length: 1_000_000 }, (_, index) =>
      line('SCAN', [index % 1000, index / 1000], [index % 1000, 0]),
    );
    const input = { job: goodJob, drawing: `${head}${million.join('')}0\nENDSEC\n0\nEOF\n` };
    const ran = plan(input);
    expect(ran.error).toMatch(/^stop drawing-too-big:/m);
    expect(ran.code).toBe(2);
    expectManners(ran, input);
  });

  it('file-too-large: a job file of eleven megabytes is not even read', () => {
    const input = { job: `${goodJob}${' '.repeat(11_000_000)}`, drawing: buoyLidDrawing };
    const ran = plan(input);
    expect(ran.error).toMatch(/^stop file-too-large: .* 11 MB; .* 10 MB/m);
    expect(ran.code).toBe(2);
    expectManners(ran, input);
  });
});
