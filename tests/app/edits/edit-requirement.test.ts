/** What else is asked of regions: edges, faces, cut-outs and tabs, each said where the depth is. */
import { describe, expect, test } from 'vitest';
import {
  changeRequirements,
  cutOut,
  requirementOf,
  withEdge,
  withFace,
  withSplit,
  withTabs,
} from '#app/state/edits/edit-requirement.ts';
import type { RegionTarget } from '#app/state/edits/region-target.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'gauge-pod.dxf',
  units: 'in',
  stock: { thickness: 0.16 },
  process: { etchFactor: 1, rate: 0.001 },
  requirements: [
    { layer: 'POCKETS', depth: 0.08, plus: 0.004, minus: 0.002 },
    { at: [50, 5], thickness: 0.06 },
  ],
};

/** Three pockets in a row, 10 wide, on one layer, the last one with a requirement of its own. */
const target = (layer: string, x: number, face: RegionTarget['face'] = 'near'): RegionTarget => ({
  layer,
  face,
  at: [x + 5, 5],
  holds: ([px]) => px >= x && px < x + 10,
});
const [left, middle, right, bay] = [
  target('POCKETS', 0),
  target('POCKETS', 20),
  target('POCKETS', 45),
  target('BAYS', 70),
];
const all = [left, middle, right, bay];

describe('where it is said', () => {
  test('one pocket is set apart from its layer with all that the layer asks', () => {
    const changed = changeRequirements(job, { targets: [left], all }, (each) => withFace(each, 'far'));
    expect(changed.requirements).toEqual([
      ...job.requirements,
      { at: [5, 5], depth: 0.08, plus: 0.004, minus: 0.002, face: 'far' },
    ]);
  });

  test('all pockets of a layer: the layer says it, and the pocket with a requirement of its own says its own', () => {
    const changed = changeRequirements(job, { targets: [left, middle, right], all }, (each) =>
      withFace(each, 'both'),
    );
    expect(changed.requirements).toEqual([
      { layer: 'POCKETS', depth: 0.08, plus: 0.004, minus: 0.002, face: 'both' },
      { at: [50, 5], thickness: 0.06, face: 'both' },
    ]);
  });

  test('a region of which nothing is asked can be cut out, but has no edges of its own', () => {
    const edges = changeRequirements(job, { targets: [bay], all }, (each) =>
      withEdge(job, each, { plus: 1 }),
    );
    expect(edges.requirements).toEqual(job.requirements);
    const cut = changeRequirements(job, { targets: [bay], all }, cutOut);
    expect(cut.requirements.at(-1)).toEqual({ at: [75, 5], through: true });
  });
});

test('of the far face: what is asked of the near one there stays as it is', () => {
  const under = target('POCKETS', 45, 'far');
  expect(requirementOf(job, under)).toBeUndefined();
  const changed = changeRequirements(job, { targets: [under], all: [under] }, cutOut);
  expect(changed.requirements).toEqual([...job.requirements, { at: [50, 5], face: 'far', through: true }]);
});

describe('what is said', () => {
  const own = requirementOf(job, right) ?? {};

  test('edges in the unit of the job; the side that is not set may be off as far', () => {
    const one = withEdge(job, own, { plus: 0.508 });
    expect(one.edge).toEqual({ plus: 0.02, minus: 0.02 });
    expect(withEdge(job, one, { minus: 0.254 }).edge).toEqual({ plus: 0.02, minus: 0.01 });
  });

  test('a share of the near face only while both share a thickness', () => {
    const shared = withSplit(job, withFace(own, 'both'), 1.016);
    expect(shared).toEqual({ at: [50, 5], thickness: 0.06, face: 'both', split: 0.04 });
    expect(withFace(shared, 'near')).toEqual({ at: [50, 5], thickness: 0.06 });
    expect(withSplit(job, shared, undefined).split).toBeUndefined();
  });

  test('a cut-out stands in place of what is left, with tabs of one width; no places are no tabs', () => {
    const cut = withTabs(job, cutOut(own), { width: 2.54, at: [[48, 5]] });
    expect(cut).toEqual({ at: [50, 5], through: true, tabs: { width: 0.1, at: [[48, 5]] } });
    expect(withTabs(job, cut, { width: 2.54, at: [] })).toEqual({ at: [50, 5], through: true });
  });
});
