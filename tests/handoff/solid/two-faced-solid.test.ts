/** M9.5 solids of parts that are etched on both faces: closed, as large as the slices, with as many holes. Judged by manifold-3d. */
import Module from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { twoFacedSolid } from '#handoff/solid/two-faced-solid.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { box, circle, dxf } from '#support/drawings/small-drawing.ts';

let library: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
  library = await Module();
  library.setup();
});

const PANEL = { outline: ['TRIM'], regions: ['FRONT'], far: ['BACK'], both: ['SLOTS'] };

async function solidOf(entities: readonly string[], requirements: readonly object[], thickness = 1) {
  const result = await runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      name: 'Panel',
      drawing: 'panel.dxf',
      layers: PANEL,
      stock: { thickness, minus: 0.01, plus: 0.02 },
      process: { etchFactor: 0.9, rate: 0.02 },
      rules: { minWeb: 0.2 },
      requirements,
    }),
    drawingName: 'panel.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
  });
  return { result, mesh: meshOf(result, thickness) };
}

function meshOf({ kit, farKit, planFile }: RunResult, thickness: number): ReliefMesh {
  if (kit === undefined || farKit === undefined || planFile === undefined)
    throw new Error('it can be planned');
  const made = twoFacedSolid({
    near: kit(),
    far: farKit(),
    thickness,
    tolerance: 0.02,
    stock: { thickness },
    removed: planFile.totals.removedVolume,
    sheetVolume: 60 * 40 * thickness,
  });
  if ('trouble' in made) throw new Error(JSON.stringify(made.trouble));
  return made.mesh;
}

function judged({ positions, indices }: ReliefMesh): {
  status: string;
  genus: number;
  volume: number;
  parts: number;
} {
  const mesh = new library.Mesh({ numProp: 3, vertProperties: positions, triVerts: indices });
  const solid = new library.Manifold(mesh);
  const status = `${solid.status()}`;
  return { status, genus: solid.genus(), volume: solid.volume(), parts: solid.decompose().length };
}

const SHEET = box('TRIM', [0, 0], [60, 40]);

describe('M9.5: a solid with both faces', { tags: ['long'] }, () => {
  test('pockets behind each other: no hole', async () => {
    const { result, mesh } = await solidOf(
      [SHEET, box('FRONT', [8, 7], [31, 29]), circle('BACK', [33, 21], 9)],
      [
        { layer: 'FRONT', depth: 0.35 },
        { layer: 'BACK', depth: 0.3, face: 'far' },
      ],
    );
    const { status, genus, volume, parts } = judged(mesh);
    const { removedVolume = 0 } = result.planFile?.totals ?? {};
    expect({ status, genus, parts }).toEqual({ status: 'NoError', genus: 0, parts: 1 });
    expect(Math.abs(2400 - removedVolume - volume)).toBeLessThan(0.001 * (2400 - removedVolume));
  });

  test('three slots cut out: three holes, and a fold line that runs into one', async () => {
    const { result, mesh } = await solidOf(
      [
        SHEET,
        box('SLOTS', [6, 6], [9, 31]),
        circle('SLOTS', [24, 20], 5),
        box('SLOTS', [40, 9], [52, 12]),
        box('FRONT', [45, 12], [46.5, 33]),
        box('BACK', [15, 3], [37, 5]),
      ],
      [
        { layer: 'SLOTS', through: true, face: 'both' },
        { layer: 'FRONT', depth: 0.5 },
        { layer: 'BACK', depth: 0.4, face: 'far' },
      ],
    );
    const { status, genus, volume, parts } = judged(mesh);
    const { removedVolume = 0 } = result.planFile?.totals ?? {};
    expect({ status, genus, parts }).toEqual({ status: 'NoError', genus: 3, parts: 1 });
    expect(Math.abs(2400 - removedVolume - volume)).toBeLessThan(0.001 * (2400 - removedVolume));
  });

  test('a hole from one face', async () => {
    const { result, mesh } = await solidOf(
      [SHEET, circle('FRONT', [24, 20], 6)],
      [{ layer: 'FRONT', through: true }],
    );
    const { status, genus, volume } = judged(mesh);
    const { removedVolume = 0 } = result.planFile?.totals ?? {};
    expect({ status, genus }).toEqual({ status: 'NoError', genus: 1 });
    expect(Math.abs(2400 - removedVolume - volume)).toBeLessThan(0.001 * (2400 - removedVolume));
  });
});
