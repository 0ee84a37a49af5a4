import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const folder = mkdtempSync(join(tmpdir(), 'isobath-correct-'));
beforeAll(() => {
  writeFileSync(join(folder, 'buoy-lid.dxf'), buoyLidDrawing);
  writeFileSync(join(folder, 'lid.job.json'), JSON.stringify(buoyLidJob));
  runIsobath(['plan', 'lid.job.json', '--out', '.'], folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Half of stage 1 on its floor, at the planned rate and at twice that. */
function rows(factor: number): string {
  const { stages } = JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'));
  const { regions, minutes, etch } = stages[0];
  return `stage,minutes,region,depth\n1,${minutes / 2},${regions[0]},${((factor * etch) / 2).toFixed(4)}\n`;
}

describe('isobath correct', () => {
  it('prints rate had and minutes left, keeps the record beside the plan, and ends with 0', () => {
    writeFileSync(join(folder, 'readings.csv'), rows(1.1));
    const { code, out, error } = runIsobath(['correct', 'plan.json', '--readings', 'readings.csv'], folder);
    expect(error).toMatch(/^warn rate-outside-spread: /m);
    expect(code).toBe(0);
    expect(out).toMatch(/rate overall 0\.0\d+ ± 0\.0\d+ mm\/min[\s\S]*95 % interval[\s\S]*not approved/);
    expect(readdirSync(folder)).toContain('plan.run.json');
  });

  it('does not touch the record when a recorded row was changed, and ends with 2', () => {
    const before = readFileSync(join(folder, 'plan.run.json'), 'utf8');
    writeFileSync(join(folder, 'readings.csv'), rows(1));
    const { code, error } = runIsobath(['correct', 'plan.json', '--readings', 'readings.csv'], folder);
    expect(error).toMatch(/^stop readings-rewritten: /m);
    expect(code).toBe(2);
    expect(readFileSync(join(folder, 'plan.run.json'), 'utf8')).toBe(before);
  });

  it('ends with 1 where a region can no longer be met, and records it; --json reports the same', () => {
    rmSync(join(folder, 'plan.run.json'));
    const sure = rows(3).replace('depth', 'depth,confirm,note').trimEnd();
    writeFileSync(join(folder, 'readings.csv'), `${sure},,\n,,,,1,gauged twice\n`);
    const ran = runIsobath(['correct', 'plan.json', '--readings', 'readings.csv', '--json'], folder);
    expect(ran.code).toBe(1);
    const reported = JSON.parse(ran.out);
    expect(reported.findings.map((each: { code: string }) => each.code)).toContain('depth-out-of-reach');
    expect(reported.stages[0].left.value).toBe(0);
    expect(reported.readings[0]).toMatchObject({ state: 'counts', answer: { reason: 'gauged twice' } });
    expect(readdirSync(folder)).toContain('plan.run.json');
  });

  it('mm-under-inches: reports the findings of an inch job in inches, as its tables are', () => {
    const job = {
      ...buoyLidJob,
      units: 'in',
      stock: { ...buoyLidJob.stock, thickness: 4 / 25.4 },
      process: { ...buoyLidJob.process, rate: 0.0297 / 25.4 },
      requirements: buoyLidJob.requirements.map((each) => ({ ...each, depth: each.depth / 25.4 })),
    };
    writeFileSync(join(folder, 'inch.job.json'), JSON.stringify(job));
    mkdirSync(join(folder, 'inch'), { recursive: true });
    runIsobath(['plan', 'inch.job.json', '--out', 'inch'], folder);
    const { stages } = JSON.parse(readFileSync(join(folder, 'inch', 'plan.json'), 'utf8'));
    const [{ regions, minutes, etch }] = stages;
    const row = (factor: number) =>
      `1,${minutes / 2},${regions[0]},${((factor * etch) / 2 / 25.4).toFixed(5)}\n`;
    // A bath 13 % too fast; then a second reading that is far off the first, both confirmed.
    const reported = [row(1.13), `${row(1.13)}${row(1.31)},,,,2,again\n,,,,1,as it was`].map((rows) => {
      writeFileSync(join(folder, 'inch.csv'), `stage,minutes,region,depth,confirm,note\n${rows}`);
      return runIsobath(['correct', 'inch/plan.json', '--readings', 'inch.csv'], folder);
    });
    expect(reported[0]?.error).toMatch(/^warn rate-outside-spread: The bath etches 0\.001\d+ in\/min/m);
    expect(reported[1]?.error).toMatch(/^warn readings-disagree: .*from what all readings together give/m);
    expect(reported[1]?.out).toMatch(/read in +expected +in\/min/);
    for (const { out, error } of reported) {
      expect(out).toMatch(/expected depth in/);
      expect(`${out}${error}`).not.toMatch(/\bmm\b/);
    }
  });

  it('file-missing: says so when there is no plan', () => {
    const { code, error } = runIsobath(['correct', 'no.json', '--readings', 'readings.csv'], folder);
    expect(error).toMatch(/^stop file-missing: /m);
    expect(code).toBe(2);
  });
});
