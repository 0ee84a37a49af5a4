import { describe, expect, it } from 'vitest';
import { askOfRegions, layerRole, setLayerRole, setSheetThickness } from '#app/state/edits/edit-job.ts';
import type { RegionTarget } from '#app/state/edits/region-target.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'buoy-lid.dxf',
  layers: { outline: ['EDGE'] },
  stock: { thickness: 4 },
  process: { etchFactor: 1, rate: 0.03 },
  requirements: [
    { layer: 'POCKETS', depth: 2, plus: 0.1, minus: 0.05 },
    { at: [50, 5], thickness: 1.5 },
  ],
};

/** Three pockets in a row, 10 wide, on one layer, and one on another. */
const target = (layer: string, x: number, face: RegionTarget['face'] = 'near'): RegionTarget => ({
  layer,
  face,
  at: [x + 5, 5],
  holds: ([px]) => px >= x && px < x + 10,
});
const left = target('POCKETS', 0);
const middle = target('POCKETS', 20);
const right = target('POCKETS', 45);
const bay = target('BAYS', 70);
const all = [left, middle, right, bay];

describe('asking a depth of regions', () => {
  it('sets one pocket apart from its layer by a point inside it, and keeps the tolerance of the layer', () => {
    const asked = askOfRegions(job, [left], all, { depth: 2.4 });
    expect(asked.requirements).toEqual([
      ...job.requirements,
      { at: [5, 5], depth: 2.4, plus: 0.1, minus: 0.05 },
    ]);
  });

  it('changes the requirement that a region already has, in place', () => {
    const asked = askOfRegions(job, [right], all, { depth: 2.4 });
    expect(asked.requirements).toEqual([job.requirements[0], { at: [50, 5], depth: 2.4 }]);
  });

  it('is written once when all regions of a layer have the same requirement', () => {
    const asked = askOfRegions(job, [left, middle, right], all, { thickness: 1.2 });
    expect(asked.requirements).toEqual([{ layer: 'POCKETS', thickness: 1.2, plus: 0.1, minus: 0.05 }]);
  });

  it('asks a taper of what is left, as the drawing gives it: 0.063 to 0.032 in', () => {
    const taper = { from: [0, 5], to: [60, 5], thicknessFrom: 1.6002, thicknessTo: 0.8128 } as const;
    expect(askOfRegions({ ...job, units: 'in' }, [right], all, { taper }).requirements.at(-1)).toMatchObject({
      taper: { from: [0, 5], to: [60, 5], thicknessFrom: 0.063, thicknessTo: 0.032 },
    });
  });

  it('asks a taper in place of a depth, its depths in the units of the job, its places in those of the drawing', () => {
    const taper = { from: [0, 5], to: [60, 5], depthFrom: 2.54, depthTo: 1.27 } as const;
    const asked = askOfRegions({ ...job, units: 'in' }, [right], all, { taper });
    expect(asked.requirements[1]).toEqual({
      at: [50, 5],
      taper: { from: [0, 5], to: [60, 5], depthFrom: 0.1, depthTo: 0.05 },
    });
    expect(askOfRegions(asked, [right], all, { depth: 25.4 }).requirements[1]).toEqual({
      at: [50, 5],
      depth: 1,
    });
  });

  it('takes the place of a cut-out and its tabs', () => {
    const cut = {
      at: [50, 5] as [number, number],
      through: true as const,
      tabs: { width: 1, at: [[46, 5] as [number, number]] },
    };
    const asked = askOfRegions({ ...job, requirements: [{ ...cut, face: 'both' }] }, [right], all, {
      depth: 1.1,
    });
    expect(asked.requirements).toEqual([{ at: [50, 5], face: 'both', depth: 1.1 }]);
  });

  it('asks of the far face beside what is asked of the near one at the same place and of the same layer', () => {
    const under = target('POCKETS', 45, 'far');
    const asked = askOfRegions(job, [under], [...all, under], { depth: 0.7 });
    expect(asked.requirements).toEqual([...job.requirements, { at: [50, 5], face: 'far', depth: 0.7 }]);
    expect(askOfRegions(asked, [under], [under], { depth: 0.9 }).requirements.at(-1)).toEqual({
      at: [50, 5],
      face: 'far',
      depth: 0.9,
    });
    const mates = [under, target('POCKETS', 0, 'far')];
    expect(askOfRegions(job, mates, mates, { depth: 0.6 }).requirements).toEqual([
      ...job.requirements,
      { layer: 'POCKETS', face: 'far', depth: 0.6 },
    ]);
  });

  it('changes what both faces share from either of them', () => {
    const both = {
      ...job,
      requirements: [{ at: [50, 5] as [number, number], face: 'both' as const, depth: 0.5 }],
    };
    const under = target('POCKETS', 45, 'far');
    expect(askOfRegions(both, [under], [under], { depth: 0.8 }).requirements).toEqual([
      { at: [50, 5], face: 'both', depth: 0.8 },
    ]);
  });

  it('writes in the units of the job: 2.54 mm is 0.1 in', () => {
    const inches = askOfRegions({ ...job, units: 'in' }, [bay], all, { depth: 2.54 });
    expect(inches.requirements.at(-1)).toEqual({ at: [75, 5], depth: 0.1 });
  });

  it('changes a tolerance and leaves the depth', () => {
    const asked = askOfRegions(job, [right], all, { plus: 0.02 });
    expect(asked.requirements[1]).toEqual({ at: [50, 5], thickness: 1.5, plus: 0.02 });
  });
});

describe('the part a layer plays', () => {
  it('is outline, regions or neither, and one at a time', () => {
    const moved = setLayerRole(setLayerRole(job, 'DIMS', 'ignore'), 'DIMS', 'outline');
    expect(moved.layers).toEqual({ outline: ['EDGE', 'DIMS'], ignore: [] });
    expect(layerRole(moved, 'DIMS')).toBe('outline');
    expect(layerRole(moved, 'POCKETS')).toBe('regions');
  });

  it('may be the far face or both, and the other layers keep theirs', () => {
    const faces = { ...job, layers: { outline: ['EDGE'], far: ['BACK', 'RIBS'], both: ['HOLES'] } };
    const moved = setLayerRole(faces, 'DIMS', 'ignore');
    expect(moved.layers).toEqual({ ...faces.layers, ignore: ['DIMS'] });
    expect(['BACK', 'HOLES', 'POCKETS'].map((layer) => layerRole(moved, layer))).toEqual([
      'far',
      'both',
      'regions',
    ]);
    const turned = setLayerRole(setLayerRole(moved, 'HOLES', 'regions'), 'POCKETS', 'far');
    expect(turned.layers).toEqual({ outline: ['EDGE'], far: ['BACK', 'RIBS', 'POCKETS'], ignore: ['DIMS'] });
  });

  it('leaves no region layer when the last one named is taken away', () => {
    const named = { ...job, layers: { regions: ['POCKETS'] } };
    const none = setLayerRole(named, 'POCKETS', 'ignore');
    expect(none.layers?.regions).toEqual([]);
    expect(layerRole(none, 'BAYS')).toBe('ignore');
  });
});

describe('another sheet', () => {
  it('takes the place of the readings of the one before', () => {
    const survey: [number, number, number][] = [[10, 5, 4.1]];
    const measured = { ...job, stock: { ...job.stock, measured: [4.1, 4.12], survey } };
    expect(setSheetThickness(measured, 3.2).stock).toEqual({ thickness: 3.2 });
  });
});
