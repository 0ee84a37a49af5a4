/** `isobath section` and `isobath depth` as processes, on the gauge-pod sample and its drawn borders. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { expectGolden } from '#support/golden.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const SAMPLES = fileURLToPath(new URL('../../samples', import.meta.url));
const JOB = join(SAMPLES, 'gauge-pod-cover.job.json');
const home = mkdtempSync(join(tmpdir(), 'isobath-rows-'));
beforeAll(() => {
  writeFileSync(join(home, 'lid.dxf'), buoyLidDrawing);
  const stopped = { ...buoyLidJob, drawing: 'lid.dxf', process: { ...buoyLidJob.process, etchFactor: 12 } };
  writeFileSync(join(home, 'stopped.job.json'), JSON.stringify(stopped));
});
afterAll(() => rmSync(home, { recursive: true }));

type Row = Record<string, number>;

/** Empty cells are NaN. */
function rowsOf(csv: string): Row[] {
  const [head = '', ...lines] = csv.trimEnd().split('\n');
  const names = head.split(',');
  return lines.map((line) =>
    Object.fromEntries(
      line.split(',').map((cell, index) => [names[index] ?? '', cell === '' ? Number.NaN : Number(cell)]),
    ),
  );
}

const section = (...options: readonly string[]) =>
  runIsobath(['section', JOB, '--from', '0,80', '--to', '240,80', ...options], home);

function depthsAt(points: string, ...options: readonly string[]) {
  writeFileSync(join(home, 'points.csv'), points);
  return runIsobath(['depth', JOB, '--points', 'points.csv', ...options], home);
}

describe('isobath section', () => {
  it('gives the columns of the contract, and the same bytes as were looked at', () => {
    const { code, out, error } = section();
    expect(code, error).toBe(0);
    expect(out.split('\n')[0]).toBe('distance,x,y,depth,target,thickness,stage');
    expectGolden('gauge-pod/section-at-y-80.csv', out);
  });

  it('M2: floors lie on their levels, walls on circles about the scribe lines, land is untouched', () => {
    // Borders as drawn at y = 80: pocket from x = 24, well from 34, sump from 48. Wall of a level L next to a floor d in from the
    // deeper region's border: depth² = L² − (reach − t)², reach = √(L² − d²), φ = 1 (depth by first arrival, circular fillet).
    const walls = [
      { border: 24, level: 1.2, above: 0, stage: 3 },
      { border: 34, level: 2.2, above: 1.2, stage: 2 },
      { border: 48, level: 3, above: 2.2, stage: 1 },
    ];
    const rows = rowsOf(section().out);
    let onWalls = 0;
    for (const { border, level, above, stage } of walls) {
      const reach = Math.sqrt(level ** 2 - above ** 2);
      for (const row of rows.filter(({ x }) => x !== undefined && x > border && x < border + reach)) {
        onWalls++;
        expect(row['depth']).toBeCloseTo(
          Math.sqrt(level ** 2 - (reach - ((row['x'] ?? 0) - border)) ** 2),
          5,
        );
        expect(row).toMatchObject({ stage, target: level });
      }
    }
    expect(onWalls).toBeGreaterThan(20);
    const at = (x: number) => rows.filter((row) => (row['x'] ?? 0) >= x)[0];
    // Each border stands twice, with what is asked on either side.
    expect(rows.filter(({ x }) => x === 24).map(({ target }) => target)).toEqual([0, 1.2]);
    expect(rows.filter(({ x }) => x === 48).map(({ target }) => target)).toEqual([2.2, 3]);
    expect(at(0)).toMatchObject({ depth: 0, target: 0, thickness: 4.06, stage: 0 });
    expect(at(60)).toMatchObject({ depth: 3, target: 3, thickness: 1.06, stage: 1 });
    for (const row of rows) expect((row['depth'] ?? 0) + (row['thickness'] ?? 0)).toBeCloseTo(4.06, 6);
  });

  it('M2: at minute 40 the sump is 40 × 0.0297 mm deep, the well has been bare since it was peeled, the pocket is masked', () => {
    const rows = rowsOf(section('--minutes', '40', '--samples', '241').out);
    expect(rows).toHaveLength(241);
    expect(rows[70]).toMatchObject({ x: 70, stage: 1 });
    expect(rows[70]?.['depth']).toBeCloseTo(40 * 0.0297, 6);
    // Peeled when 0.8 mm had gone: at minute 0.8 / 0.0297.
    expect(rows[40]).toMatchObject({ x: 40, stage: 2 });
    expect(rows[40]?.['depth']).toBeCloseTo(40 * 0.0297 - 0.8, 6);
    expect(rows[28]).toMatchObject({ x: 28, depth: 0, target: 1.2, thickness: 4.06, stage: 0 });
  });

  it('shows a hole through the sheet as no metal, its rims from both sides', () => {
    // A tooling hole of radius 3 at 12, 12 in the sample's drawing.
    const { out } = runIsobath(['section', JOB, '--from', '4,12', '--to', '20,12'], home);
    const rows = rowsOf(out).map(({ x, thickness, target }) => [x, thickness, target]);
    expect(rows).toEqual([
      [4, 4.06, 0],
      [9, 4.06, 0],
      [9, 0, Number.NaN],
      [15, 0, Number.NaN],
      [15, 4.06, 0],
      [20, 4.06, 0],
    ]);
  });

  it('shows the bare sheet at minute 0, and the end at any minute past it', () => {
    expect(rowsOf(section('--minutes', '0').out).every(({ depth }) => depth === 0)).toBe(true);
    expect(section('--minutes', '1e6').out).toBe(section().out);
  });

  it('writes the file whole with --out, and prints none of it', () => {
    const { code, out } = section('--out', 'new/cut.csv');
    expect({ code, out }).toEqual({ code: 0, out: '' });
    expect(readFileSync(join(home, 'new', 'cut.csv'), 'utf8')).toBe(section().out);
    expect(readdirSync(join(home, 'new'))).toEqual(['cut.csv']);
  });

  it('prints rows and findings as JSON', () => {
    const record = JSON.parse(section('--samples', '5', '--json').out) as {
      rows: Row[];
      findings: unknown[];
    };
    expect(record.rows.map(({ distance }) => distance)).toEqual([0, 60, 120, 180, 240]);
    expect(record.findings).toBeInstanceOf(Array);
  });

  it('takes points in the unit of the drawing and gives millimetres: a bay grid drawn in inches', () => {
    const job = join(SAMPLES, 'shutter-bay-grid.job.json');
    const { code, out } = runIsobath(
      ['section', job, '--from', '0,4', '--to', '10,4', '--samples', '2'],
      home,
    );
    expect(code).toBe(0);
    // 1 in = 25.4 mm exactly
    expect(rowsOf(out).map(({ x, y }) => [x, y])).toEqual([
      [0, 101.6],
      [254, 101.6],
    ]);
  });

  it('ends with 1 and is written all the same when the plan has a stop', () => {
    const run = runIsobath(['section', 'stopped.job.json', '--from', '0,10', '--to', '100,10'], home);
    expect(run.error).toMatch(/^stop opening-missing: /m);
    expect(run.code).toBe(1);
    expect(run.out).toMatch(/^distance,/);
  });

  it.each([
    ['option-value-wrong: one figure', ['--from', '12', '--to', '1,1'], /--from was given "12"/],
    ['option-value-wrong: no figure', ['--from', '1,NaN', '--to', '1,1'], /"1,NaN"/],
    ['option-value-wrong: without end', ['--from', '1,2', '--to', '1e999,1'], /--to was given "1e999,1"/],
    [
      'option-value-wrong: minutes below 0',
      ['--from', '1,1', '--to', '9,9', '--minutes', '-3'],
      /--minutes was given "-3".* 0 or more/,
    ],
    ['option-value-wrong: minutes in words', ['--from', '1,1', '--to', '9,9', '--minutes', 'ten'], /"ten"/],
    [
      'option-value-wrong: one sample',
      ['--from', '1,1', '--to', '9,9', '--samples', '1'],
      /--samples was given "1"/,
    ],
    ['option-value-wrong: half a sample', ['--from', '1,1', '--to', '9,9', '--samples', '2.5'], /"2.5"/],
    ['cut-without-length: from = to', ['--from', '10,10', '--to', '10.0,1e1'], /starts and ends at 10, 10/],
    [
      'cut-misses-sheet: beside it',
      ['--from', '-50,-9', '--to', '500,-9'],
      /550 mm lies entirely off the sheet/,
    ],
    ['command-unclear: no end', ['--from', '10,10'], /--to/],
  ] as const)('%s', (title, options, words) => {
    const { code, out, error } = runIsobath(['section', JOB, ...options, '--out', 'none.csv'], home);
    expect(error).toMatch(new RegExp(`^stop ${title.split(':')[0]}: `, 'm'));
    expect(error).toMatch(words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(readdirSync(home)).not.toContain('none.csv');
  });

  it('reports every wrong option at once', () => {
    const { error } = runIsobath(['section', JOB, '--from', 'a', '--to', 'b', '--samples', 'c'], home);
    expect(error.match(/^stop option-value-wrong/gm)).toHaveLength(3);
  });
});

describe('isobath depth', () => {
  it('M2: floor, wall and land read what first arrival gives', () => {
    const { code, out } = depthsAt('x,y\n70,80\n24.6,80\n12,80\n');
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toBe('x,y,depth,target,thickness,stage');
    const [floor, wall, land] = rowsOf(out);
    expect(floor).toEqual({ x: 70, y: 80, depth: 3, target: 3, thickness: 1.06, stage: 1 });
    // 0.6 mm inside a border of depth 1.2 mm at φ = 1: √(1.2² − 0.6²)
    expect(wall).toMatchObject({ depth: 1.03923, target: 1.2, stage: 3 });
    expect(land).toEqual({ x: 12, y: 80, depth: 0, target: 0, thickness: 4.06, stage: 0 });
  });

  it('passes over other columns, and reads quotes, semicolons, tabs and Windows line ends', () => {
    const plain = depthsAt('x,y\n70,80\n').out;
    expect(depthsAt('station,"Y","X"\r\nS1,80,70\r\n\r\n').out).toBe(plain);
    expect(depthsAt('x;y\n70,0;80\n').out).toBe(plain);
    expect(depthsAt('\uFEFFy\tx\n80\t70').out).toBe(plain);
  });

  it('follows --minutes', () => {
    expect(rowsOf(depthsAt('x,y\n70,80\n', '--minutes', '10').out)[0]).toMatchObject({ depth: 0.297 });
  });

  it('points-outside-sheet: warns, and leaves the target of those points empty', () => {
    const { code, out, error } = depthsAt('x,y\n70,80\n-5,80\n');
    expect(code).toBe(0);
    expect(error).toMatch(/^warn points-outside-sheet: 1 of 2 points lies off the sheet/m);
    expect(out.split('\n')[2]).toBe('-5,80,0,,0,0');
  });

  it.each([
    ['points-column-missing: no names', '70,80\n71,80\n', /no column x .*70, 80/],
    [
      'points-column-missing: no y',
      'x,z\n70,80\n',
      /no column y in its first line, but x, z.*\[points line 1\]/,
    ],
    ['points-value-wrong: NaN', 'x,y\n70,80\n70,NaN\n', /has "NaN" for y.*\[points line 3\]/],
    ['points-value-wrong: a cell too few', 'x,y\n70\n', /has nothing for y/],
    ['points-value-wrong: several', 'x,y\na,1\nb,c\n', /"a" for x, and 2 more/],
    ['points-missing: names alone', 'x,y\n\n', /lists no points/],
    ['file-empty: nothing at all', '', /is empty/],
    ['file-not-utf-8: bytes of another code', Buffer.from([120, 44, 121, 10, 0xff, 0xfe]), /byte 5/],
  ] as const)('%s', (title, text, words) => {
    writeFileSync(join(home, 'bad.csv'), text);
    const { code, out, error } = runIsobath(['depth', JOB, '--points', 'bad.csv', '--out', 'none.csv'], home);
    expect(error).toMatch(new RegExp(`^stop ${title.split(':')[0]}: `, 'm'));
    expect(error).toMatch(words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(readdirSync(home)).not.toContain('none.csv');
  });

  it('file-missing: a list that is not there; out-over-input: never writes over the list', () => {
    const missing = runIsobath(['depth', JOB, '--points', 'nowhere.csv'], home);
    expect(missing.error).toMatch(/^stop file-missing: /);
    expect(missing.code).toBe(2);
    const over = depthsAt('x,y\n70,80\n', '--out', 'points.csv');
    expect(over.error).toMatch(/^stop out-over-input: /m);
    expect(over.code).toBe(2);
    expect(readFileSync(join(home, 'points.csv'), 'utf8')).toBe('x,y\n70,80\n');
  });
});
