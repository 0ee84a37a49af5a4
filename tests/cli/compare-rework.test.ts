/** `isobath compare` and `isobath rework` as processes: exit codes, both streams, JSON. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const home = mkdtempSync(join(tmpdir(), 'isobath-back-'));
beforeAll(() => {
  writeFileSync(join(home, 'buoy-lid.dxf'), buoyLidDrawing);
  const job = { ...buoyLidJob, handoff: { files: ['program'] } };
  writeFileSync(join(home, 'lid.job.json'), JSON.stringify(job));
  expect(runIsobath(['plan', 'lid.job.json', '--out', 'out'], home).code).toBe(0);
});
afterAll(() => rmSync(home, { recursive: true }));

/** The lid's job with its lengths in inches. */
const inInches = (job: typeof buoyLidJob) => ({
  ...job,
  units: 'in',
  stock: { ...job.stock, thickness: job.stock.thickness / 25.4 },
  process: { ...job.process, rate: job.process.rate / 25.4 },
  requirements: job.requirements.map((each) => ({ ...each, depth: each.depth / 25.4 })),
});

const compare = (...options: readonly string[]) => runIsobath(['compare', 'lid.job.json', ...options], home);

describe('isobath compare', () => {
  it.each(['--scribe out/scribe.dxf', '--program out/scribe.nc'])(
    '%s: our own lines move nothing',
    (option) => {
      const { code, out, error } = compare(...option.split(' '));
      expect([code, error]).toEqual([0, '']);
      expect(out).toContain('edge 2.400 beside 1.200: +0.000, −0.000');
      expect(out).toContain('no floor changes');
    },
  );

  it('ends with 1 where a line is missing, and says where on the error stream', () => {
    const dxf = readFileSync(join(home, 'out/scribe.dxf'), 'utf8');
    const parts = dxf.split(/(?=^ *0\r?\n(?:LWPOLYLINE|TEXT|ENDSEC)\r?$)/m);
    const isDeep = (part: string) => /LWPOLYLINE/.test(part) && part.includes('SCRIBE-01');
    writeFileSync(join(home, 'short.dxf'), parts.filter((each) => !isDeep(each)).join(''));
    const { code, error } = compare('--scribe', 'short.dxf');
    expect(code, error).toBe(1);
    expect(error).toMatch(/^stop returned-piece-missing: .*\[at /m);
  });

  it('ends with 2 where the file cannot be used, or both are given, or neither', () => {
    writeFileSync(join(home, 'words.nc'), 'G0 X1 Y1\n');
    for (const options of [
      ['--program', 'words.nc'],
      ['--scribe', 'gone.dxf'],
      [],
      ['--scribe', 'a', '--program', 'b'],
    ]) {
      const { code, out, error } = compare(...options);
      expect([code, out], error).toEqual([2, '']);
    }
  });

  it('--face is near or far, and there is nothing to hold against a face that is not etched', () => {
    const sideways = compare('--scribe', 'out/scribe.dxf', '--face', 'left');
    expect([sideways.code, sideways.error]).toEqual([2, expect.stringContaining('--face is near or far')]);
    const far = compare('--scribe', 'out/scribe.dxf', '--face', 'far');
    expect([far.code, far.error]).toEqual([2, expect.stringContaining('returned-face-not-etched')]);
  });

  it('gives edges and floors as JSON', () => {
    const { out } = compare('--scribe', 'out/scribe.dxf', '--json');
    const { findings, comparison } = JSON.parse(out);
    expect(findings).toEqual([]);
    expect(comparison).toMatchObject({
      face: 'near',
      lines: expect.any(Number),
      floors: [],
      edges: expect.any(Array),
    });
  });
});

describe('isobath rework', () => {
  const rework = (...options: readonly string[]) => runIsobath(['rework', 'out/plan.json', ...options], home);

  it('--readings: one dip for the one thick floor', () => {
    const { regions } = JSON.parse(readFileSync(join(home, 'out/plan.json'), 'utf8'));
    const idOf = (layer: string) => regions.find((each: { layer: string }) => each.layer === layer).id;
    const rows = [`2,${idOf('POCKETS')},2.8`, `2,${idOf('DEEP')},1.62`, `2,${idOf('ROUND')},2.95`];
    writeFileSync(join(home, 'read.csv'), `stage,region,thickness\n${rows.join('\n')}\n`);
    const { code, out, error } = rework('--readings', 'read.csv');
    expect([code, error]).toEqual([0, '']);
    expect(out).toMatch(/^1 extra dip, /m);
    expect(out).toContain('dip 1: 0.150 mm, 5.1 min');
  });

  it('--readings of an inch job: inches for people, and a figure that cannot be asks before it counts', () => {
    const plan = JSON.parse(readFileSync(join(home, 'out/plan.json'), 'utf8'));
    const inch = join(home, 'inch.json');
    writeFileSync(inch, JSON.stringify({ ...plan, job: inInches(plan.job) }));
    const { id } = plan.regions.find((each: { layer: string }) => each.layer === 'ROUND');
    writeFileSync(join(home, 'inch.csv'), `stage,region,thickness\n2,${id},0.5\n2,${id},0.1162\n`);
    const { out, error } = runIsobath(['rework', inch, '--readings', join(home, 'inch.csv')], home);
    // 2.95 mm where 2.80 is to be left.
    expect(out).toContain(`${id}: read 0.1162, etch 0.0060 more, leaves 0.1102 where 0.1102 +`);
    expect(out).not.toContain('mm');
    expect(error).toMatch(
      /reading-in-question: Reading 1 says 0\.5 in .* does not count until it is confirmed/,
    );
  });

  it('--factor: where edges come out with lines cut as planned', () => {
    const { code, out } = rework('--factor', '1.2');
    expect(code).toBe(0);
    // 0.2 · √(2.4² − 1.2²), and 0.2 · 1.2 beside land.
    expect(out).toContain('2.400 beside 1.200: +0.416');
    expect(out).toContain('1.200 beside land: +0.240');
    expect(out).toMatch(
      /^Minutes for them, at the planned rate: \d+\.\d instead of 40\.4, \d+\.\d instead of 40\.4$/m,
    );
    expect(out).toMatch(/^They take \d+ % of the room/m);
  });

  it('--leak and --scratch: a crater of 0.6 mm at φ = 1 and 0.0297 mm/min is 20.2 min old', () => {
    const { code, out } = rework('--leak', '0.6', '--scratch', '0.05');
    expect(code).toBe(0);
    expect(out).toContain('20.2 min');
    expect(out).toContain('2.400 mm comes out 0.487 mm wide');
  });

  it('asks for something to find, and for figures above 0', () => {
    expect(rework().code).toBe(2);
    expect(rework('--factor', 'wide').code).toBe(2);
    expect(rework('--leak', '-1').code).toBe(2);
  });
});
