import { describe, expect, it } from 'vitest';
import { factorWay, setEtchFactor, turnEtchFactor } from '#app/state/edits/edit-factor.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';

const bare: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'shutter.dxf',
  stock: { alloy: 'al-2024-t3', thickness: 4 },
  process: { bath: 'caustic-aluminium' },
  requirements: [],
};

describe('the etch factor of a job', () => {
  it('is stated in one convention at a time', () => {
    const undercut = setEtchFactor(bare, 1.25, 'etchFactor');
    const depth = setEtchFactor(undercut, 0.8, 'depthPerUndercut');
    expect(undercut.process).toEqual({ bath: 'caustic-aluminium', etchFactor: 1.25 });
    expect(depth.process).toEqual({ bath: 'caustic-aluminium', depthPerUndercut: 0.8 });
    expect([bare, undercut, depth].map(factorWay)).toEqual([undefined, 'etchFactor', 'depthPerUndercut']);
    expect(readJob(JSON.stringify(depth)).findings).toEqual([]);
    expect(setEtchFactor(depth, undefined, 'depthPerUndercut')).toEqual(bare);
  });

  it('turned over is depth 0.8 for undercut 1.25, and turned twice it is itself', () => {
    expect(turnEtchFactor(setEtchFactor(bare, 1.25, 'etchFactor')).process.depthPerUndercut).toBe(0.8);
    for (const factor of [0.333, 0.57, 1, 1.05, 1.2, 1.1373, 3]) {
      const stated = setEtchFactor(bare, factor, 'etchFactor');
      expect(turnEtchFactor(turnEtchFactor(stated))).toEqual(stated);
    }
    expect(turnEtchFactor(bare)).toBe(bare);
  });

  it('by depth is turned over row by row', () => {
    const table = {
      ...bare,
      process: { etchFactor: [[0, 1] as [number, number], [3, 1.25] as [number, number]] },
    };
    expect(turnEtchFactor(table).process).toEqual({
      depthPerUndercut: [
        [0, 1],
        [3, 0.8],
      ],
    });
    expect(turnEtchFactor(turnEtchFactor(table))).toEqual(table);
  });
});
