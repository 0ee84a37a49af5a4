import { describe, expect, test } from 'vitest';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { endMinute, type Front, frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { neighborStages, wallGroups } from '#front/volumes/wall-groups.ts';
import { loopsArea } from '#geometry/span.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { kitOf } from '#support/parts/front-of.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { stageVolumes } from '#support/parts/stage-volumes.ts';
import { touchingCells } from '#support/parts/touching-cells.ts';

describe('M2 walls that feel few levels', () => {
  test('a border knows the opening that it runs inside', () => {
    const { index } = kitOf({
      stages: [
        { level: 3, opening: [rectangle(20, 20, 51, 47)] },
        { level: 1.8, opening: [rectangle(5, 5, 80, 60)] },
        { level: 0.7, opening: [rectangle(0, 0, 90, 70)] },
      ],
    });
    const neighbors = neighborStages(index);
    index.features.forEach(({ stage }, i) => {
      expect(neighbors[i]).toBe(stage + 1);
    });
  });

  test('what lies deep inside a wider opening is covered by it, and feels nothing above its floor', () => {
    const kit = kitOf({
      stages: [
        { level: 3, opening: [rectangle(40, 40, 51, 47)] },
        { level: 1.8, opening: [rectangle(0, 0, 90, 80)] },
      ],
    });
    const all = Int32Array.from(kit.index.features.keys());
    const groups = wallGroups(kit, all, neighborStages(kit.index));
    expect(groups.map(({ stages, covers }) => ({ stages, covers }))).toEqual([
      { stages: [0], covers: [1] },
      { stages: [1], covers: [] },
    ]);
  });
});

/** Cells of many depths, on one coat or masked again. */
function cellsKit(count: number, masking: 'peel-next' | 're-mask'): ContourKit {
  const cells = touchingCells(count, 3);
  const part = partOf(cells);
  const job = plainJob({ levels: 'as-drawn', masking, etchFactor: [[0, 1.13]] });
  const plan = makePlan({ part, asked: askedAt(part, cells.depths, { plus: 0.001, minus: 0.0012 }), job });
  return makeContourKit(indexFront(frontOfPlan(plan, 6)));
}

/** Areas of whole contours, closed loop by closed loop, by the midpoint rule in a measure that is smooth at floors. */
function volumeOfLoops(kit: ContourKit, minute: number): number {
  const floors = [...new Set([0, ...levelsAt(kit.index.front, minute)])].sort((a, b) => a - b);
  const nodes = 12;
  let sum = 0;
  for (let i = 1; i < floors.length; i++) {
    const [shallower, deeper] = [floors[i - 1] ?? 0, floors[i] ?? 0];
    for (let k = 0; k < nodes; k++) {
      const s = (k + 0.5) / nodes;
      const depth = deeper - (deeper - shallower) * s * s;
      sum += (loopsArea(contourLoops(kit, { depth, minute }).loops) * 2 * s * (deeper - shallower)) / nodes;
    }
  }
  return sum;
}

function levelsAt({ stages, rate }: Front, minute: number): number[] {
  return stages
    .map(({ level, base, startMinute }) => Math.min(level, base + rate * Math.max(0, minute - startMinute)))
    .filter((depth, i) => depth > (stages[i]?.base ?? 0));
}

describe('M2 volumes of clusters with many levels, against whole contours', { tags: ['long'] }, () => {
  test.each(['peel-next', 're-mask'] as const)('24 touching cells, %s', (masking) => {
    const kit = cellsKit(24, masking);
    const { front } = kit.index;
    for (const share of [0.41, 1]) {
      const minute = endMinute(front) * share;
      const found = removedVolume(kit, share === 1 ? undefined : minute);
      expect(Math.abs(found / volumeOfLoops(kit, minute) - 1)).toBeLessThan(2e-4);
    }
    const stages = stageVolumes(kit);
    const whole = removedVolume(kit);
    expect(stages.reduce((sum, { volume }) => sum + volume, 0)).toBeCloseTo(whole, 6);
    // Each stage against the difference of two moments, which is not taken from a polynomial.
    for (const number of [7, 18]) {
      const stage = front.stages.find((each) => each.number === number);
      const { startMinute = 0, minutes = 0 } = stage ?? {};
      const difference = removedVolume(kit, startMinute + minutes) - removedVolume(kit, startMinute);
      const volume = stages.find(({ stage: each }) => each === number)?.volume ?? 0;
      expect(Math.abs(volume - difference)).toBeLessThan(1e-5 * whole);
      expect(Math.abs(volume / difference - 1)).toBeLessThan(2e-3);
    }
    for (const { volume, gap } of stages) {
      expect(volume).toBeGreaterThan(0);
      expect(gap).toBeUndefined();
    }
  });
});
