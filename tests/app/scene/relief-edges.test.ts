/** Edges and feet of a relief, from a trough made by hand; and the cut face of a sheet with one pocket. */
import { describe, expect, it } from 'vitest';
import { isCutAway } from '#app/scene/pick-region.ts';
import { cutFace } from '#app/scene/relief/cut-face.ts';
import type { SceneCut } from '#app/scene/scene-picture.ts';
import { reliefEdges } from '#app/worker/relief-edges.ts';
import { itemAt } from '#geometry/assert.ts';

/** A floor 2 mm down from x = 0 to 10, a wall of 45° up to x = 12, land to x = 20; 7 mm wide. */
const trough = {
  positions: new Float32Array(
    [
      [0, -2],
      [10, -2],
      [12, 0],
      [20, 0],
    ].flatMap(([x, z]) => [x, 0, z, x, 7, z] as number[]),
  ),
  indices: new Uint32Array([0, 1, 2].flatMap((at) => [0, 2, 1, 1, 2, 3].map((each) => 2 * at + each))),
};

describe('edges of a relief', () => {
  it('run where floor meets wall and wall meets land, and nowhere across a face', () => {
    const { edges } = reliefEdges(trough);
    expect(edges).toHaveLength(12);
    const xs = [0, 3, 6, 9].map((at) => itemAt(edges, at)).sort((a, b) => a - b);
    expect(xs).toEqual([10, 10, 12, 12]);
  });

  it('know the foot of the wall, and the way into the floor', () => {
    const { feet } = reliefEdges(trough);
    expect(feet).toHaveLength(10);
    const [x, , z, inX, inY] = feet;
    expect([x, z, inX, inY]).toEqual([10, -2, -1, 0]);
  });
});

const cut: SceneCut = {
  from: { x: -5, y: 3 },
  to: { x: 35, y: 3 },
  section: {
    meetsMetal: true,
    asked: [],
    points: (
      [
        [5, 0, undefined],
        [5, 0, 0],
        [15, 0, 0],
        [15, 1.3, 1.3],
        [25, 1.3, 1.3],
        [25, 0, 0],
        [31, 0, 0],
      ] as const
    ).map(([distance, depth, target]) => ({
      distance,
      x: distance - 5,
      y: 3,
      depth,
      stage: depth > 0 ? 1 : 0,
      bands: [Math.min(depth, 0.5), depth],
      thickness: 4 - depth,
      target,
    })),
  },
};

describe('the cut face', () => {
  const face = cutFace(cut, { metal: '#babec3', stages: ['#6a2a62', '#4fd3bd'] }, { along: 20, down: 200 });
  const areas = new Map<string, number>();
  for (let at = 0; at < face.positions.length; at += 9) {
    const [x1 = 0, , z1 = 0, x2 = 0, , z2 = 0, x3 = 0, , z3 = 0] = face.positions.subarray(at, at + 9);
    const color = [...face.colors.subarray((at / 9) * 12, (at / 9) * 12 + 4)]
      .map((each) => each.toFixed(3))
      .join();
    const area = Math.abs((x2 - x1) * (z3 - z1) - (x3 - x1) * (z2 - z1)) / 2;
    areas.set(color, (areas.get(color) ?? 0) + area);
  }

  it('leaves no hole: metal and bands together are the sheet, each as large as it is', () => {
    // 26 mm of metal, 4 mm thick, less a pocket of 10 × 1.3 mm, of which stage 1 took 0.5 mm and stage 2 0.8 mm.
    const [metal, first, second] = [...areas.values()];
    expect(metal).toBeCloseTo(26 * 4 - 13, 4);
    expect(first).toBeCloseTo(5, 4);
    expect(second).toBeCloseTo(8, 4);
  });

  it('takes away what lies before it, whichever way the view is turned', () => {
    const pose = { target: { x: 0, y: 0 }, pixelsPerMm: 1, tilt: 0.5 };
    expect(isCutAway(cut, { ...pose, azimuth: -0.24 }, { x: 10, y: 1 })).toBe(true);
    expect(isCutAway(cut, { ...pose, azimuth: -0.24 }, { x: 10, y: 6 })).toBe(false);
    expect(isCutAway(cut, { ...pose, azimuth: Math.PI }, { x: 10, y: 1 })).toBe(false);
    expect(isCutAway(cut, { ...pose, azimuth: Math.PI }, { x: 10, y: 6 })).toBe(true);
  });
});
