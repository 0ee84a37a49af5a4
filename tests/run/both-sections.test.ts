/** M9.5 sections of parts that are etched on both faces: both profiles, the thickness between them, and where metal ends. */
import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { depthsOf } from '#run/depth-job.ts';
import { etchedPart } from '#run/etched-part.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { sectionOf } from '#run/section-job.ts';
import { box, dxf } from '#support/drawings/small-drawing.ts';

const SLOT = [box('TRIM', [0, 0], [30, 20]), box('SLOTS', [10, 6], [16, 15]), box('BACK', [19, 4], [27, 17])];

function run(): Promise<RunResult> {
  return runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      name: 'Slotted strip',
      drawing: 'slot.dxf',
      layers: { outline: ['TRIM'], regions: [], far: ['BACK'], both: ['SLOTS'] },
      stock: { thickness: 0.5, minus: 0, plus: 0 },
      process: { etchFactor: 1, rate: 0.02 },
      rules: { minWeb: 0.2, minPieceWidth: 0.5, minLandWidth: 0.5, minLineSpacing: 0.3 },
      requirements: [
        { layer: 'SLOTS', through: 0.35, face: 'both' },
        { layer: 'BACK', depth: 0.2, face: 'far' },
      ],
      handoff: {
        files: ['section-dxf', 'section-svg'],
        sections: [{ from: [2, 10], to: [29, 10], name: 'A' }],
      },
    }),
    drawingName: 'slot.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities: SLOT })),
  });
}

const partOf = ({ plan, thickness, kit, farKit }: RunResult) => {
  if (plan === undefined || thickness === undefined) throw new Error('it can be planned');
  return etchedPart(plan, thickness, kit, farKit);
};

describe('M9.5: a strip with a slot and a far floor', () => {
  test('what is asked of the far face jumps at its drawn line, where the near one has no border', async () => {
    const { points } = sectionOf(partOf(await run()), { from: { x: 2, y: 10 }, to: { x: 29, y: 10 } });
    const targetsAt = (at: number) =>
      points.filter(({ x }) => Math.abs(x - at) < 1e-6).map(({ far }) => far?.target);
    expect(targetsAt(19)).toEqual([0, 0.2]);
    expect(targetsAt(27)).toEqual([0.2, 0]);
    for (const [index, point] of points.entries()) {
      const next = points[index + 1];
      // Nowhere does it slope from one depth to another.
      if (next === undefined || next.distance - point.distance < 1e-5) continue;
      expect(next.far?.target).toBe(point.far?.target);
    }
  });

  test('metal ends at the drawn line, at mid-thickness, and the cusp is in the section', async () => {
    const { points } = sectionOf(partOf(await run()), { from: { x: 2, y: 10 }, to: { x: 29, y: 10 } });
    const tips = points.filter(
      (point, index) =>
        point.far !== undefined &&
        Math.abs(point.depth + point.far.depth - 0.5) < 1e-5 &&
        (points[index - 1]?.thickness ?? 0) + (points[index + 1]?.thickness ?? 0) > 1e-5,
    );
    expect([...new Set(tips.map(({ x }) => x.toFixed(3)))]).toEqual(['10.000', '16.000']);
    for (const tip of tips) expect(tip.depth).toBeCloseTo(0.25, 3);
    // From the surface to the tip: φ (0.35 − √(0.35² − 0.25²)).
    const surface = points.filter(({ x, depth }) => x < 10 && depth < 0.01).at(-1)?.x ?? 0;
    expect(10 - surface).toBeCloseTo(0.1051, 3);
    const floor = points.filter(({ x }) => x > 19.15 && x < 26.85);
    expect(floor.length).toBeGreaterThan(0);
    for (const { depth, far, thickness } of floor) {
      expect([depth, far?.depth, far?.target, thickness]).toEqual([0, 0.2, 0.2, expect.closeTo(0.3, 9)]);
    }
  });

  test('single places are read from both faces', async () => {
    const rows = depthsOf(partOf(await run()), { points: Float64Array.of(23, 10, 13, 10, 4, 4) });
    expect(rows.map(({ depth, far, thickness }) => [depth, far?.depth, far?.target, thickness])).toEqual([
      [0, 0.2, 0.2, expect.closeTo(0.3, 9)],
      [0.35, 0.35, 0.35, 0],
      [0, 0, 0, 0.5],
    ]);
  });

  test('the drawing of the section has both fronts on either side of the slot', async () => {
    const { files } = await run();
    const text = new TextDecoder().decode(files.find(({ name }) => name === 'section-01.dxf')?.bytes);
    const { entities } = parseString(text);
    const fronts = entities.filter(({ layer }) => layer === 'FRONT');
    expect(fronts).toHaveLength(4);
    const ends = fronts.flatMap(({ vertices = [] }) => [vertices[0], vertices.at(-1)]);
    const tips = ends.filter((end) => Math.abs((end?.y ?? 0) + 0.25) < 0.001);
    expect(tips.map((tip) => tip?.x.toFixed(2)).sort()).toEqual(['14.00', '14.00', '8.00', '8.00']);
    const taken = entities.filter(({ layer }) => layer?.startsWith('TAKEN'));
    for (const { vertices = [] } of taken) {
      for (const { y } of vertices) expect(y).toBeGreaterThanOrEqual(-0.5 - 1e-9);
    }
  });
});
