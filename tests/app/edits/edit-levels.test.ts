import { describe, expect, it } from 'vitest';
import {
  isLocked,
  joinLevel,
  listLevels,
  lockLevels,
  moveLevel,
  setLevelRule,
} from '#app/state/edits/edit-levels.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  stock: { thickness: 4 },
  process: { etchFactor: 1, rate: 0.03 },
  requirements: [
    { layer: 'POCKETS', depth: 2, plus: 0.1, minus: 0.05 },
    { at: [50, 5], thickness: 1.5 },
  ],
};

describe('moving a level', () => {
  it('moves the level and no requirement: the job lists its levels from then on', () => {
    const deep = moveLevel(job, { from: 2.5, to: 2.6, levels: [2.5, 2] });
    expect(deep.levels).toEqual([2.6, 2]);
    expect(deep.requirements).toBe(job.requirements);
    const inches = moveLevel({ ...job, units: 'in' }, { from: 2, to: 2.54, levels: [2.5, 2] });
    expect(inches.levels).toEqual([0.098425, 0.1]);
  });

  it('moves the level alone where the job lists its levels', () => {
    const listed = moveLevel({ ...job, levels: [2.5, 2] }, { from: 2, to: 2.1, levels: [2.5, 2] });
    expect(listed.levels).toEqual([2.5, 2.1]);
    expect(listed.requirements).toBe(job.requirements);
  });

  it('holds the search to the new depth where the fewest levels are searched, and leaves the requirements', () => {
    const searched = setLevelRule(job, 'fewest');
    const held = moveLevel(searched, { from: 2, to: 1.98, levels: [2.5, 2] });
    expect(held.lockedLevels).toEqual([1.98]);
    expect(held.requirements).toBe(job.requirements);
    expect(moveLevel(held, { from: 1.98, to: 2.02, levels: [2.5, 2] }).lockedLevels).toEqual([2.02]);
    expect(isLocked(held, 1.98)).toBe(true);
    expect(isLocked(held, 2)).toBe(false);
  });

  it('leaves one level where two come together', () => {
    const listed = moveLevel({ ...job, levels: [2.5, 2] }, { from: 2, to: 2.5, levels: [2.5, 2] });
    expect(listed.levels).toEqual([2.5]);
  });
});

describe('joining a level', () => {
  it('leaves out the levels of what joins, keeps the others, and touches no requirement', () => {
    const joined = joinLevel(job, { from: [2.5], to: 1.4, levels: [2.5, 2, 1.4] });
    expect(joined.levels).toEqual([2, 1.4]);
    expect(joined.requirements).toBe(job.requirements);
  });

  it('lists them in the unit of the job, deepest first, also where the fewest were searched', () => {
    const searched: JobFile = { ...job, units: 'in', levels: 'fewest', lockedLevels: [0.05] };
    const joined = joinLevel(searched, { from: [1.27], to: 2.54, levels: [3.81, 2.54, 1.27] });
    expect(joined.levels).toEqual([0.15, 0.1]);
    expect(joined.lockedLevels).toBeUndefined();
  });
});

describe('which levels a job takes', () => {
  const inches: JobFile = { ...job, units: 'in', levels: 'fewest', lockedLevels: [0.04] };

  it('lists them in the unit of the job, and lets locked ones go', () => {
    const { levels, lockedLevels } = listLevels(inches, [2.54, 1.27]);
    expect(levels).toEqual([0.1, 0.05]);
    expect(lockedLevels).toBeUndefined();
  });

  it('is as drawn again when the last one leaves the list', () => {
    expect(listLevels(inches, []).levels).toBe('as-drawn');
  });

  it('stays a job that can be read, whatever the rule: locks stand beside a search only', () => {
    const locked = lockLevels(setLevelRule(job, 'fewest'), [2, 1.2, 2]);
    expect(locked.lockedLevels).toEqual([2, 1.2]);
    for (const each of [
      locked,
      setLevelRule(locked, 'as-drawn'),
      listLevels(locked, [1]),
      lockLevels(locked, []),
    ]) {
      expect(readJob(JSON.stringify(each)).findings).toEqual([]);
    }
  });
});
