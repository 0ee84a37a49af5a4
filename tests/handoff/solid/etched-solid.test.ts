import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { validateBytes } from 'gltf-validator';
import createManifold from 'manifold-3d';
import { type BufferAttribute, type BufferGeometry, Mesh, type MeshStandardMaterial } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { loopsArea } from '#geometry/span.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const FILES = { handoff: { files: ['glb', 'stl'] } };
const REMASKED = { masking: 're-mask' };
const SAMPLES = [
  'gauge-pod-cover',
  'shutter-bay-grid',
  'glider-wing-skin',
  'glider-wing-skin-tapered',
  'hatch-from-supplier',
];

type Library = Awaited<ReturnType<typeof createManifold>>;
let library: Library;
beforeAll(async () => {
  library = await createManifold();
  library.setup();
});

function lid(change: object = {}): Promise<RunResult> {
  const jobText = JSON.stringify({ ...buoyLidJob, ...FILES, ...change });
  const drawingBytes = new TextEncoder().encode(buoyLidDrawing);
  return runJob({ jobText, drawingName: 'buoy-lid.dxf', drawingBytes });
}

function sample(name: string, process: object = {}): Promise<RunResult> {
  const job = JSON.parse(readFileSync(`samples/${name}.job.json`, 'utf8'));
  return runJob({
    jobText: JSON.stringify({ ...job, ...FILES, process: { ...job.process, ...process } }),
    drawingName: job.drawing,
    drawingBytes: readFileSync(`samples/${job.drawing}`),
  });
}

const bytesOf = ({ files }: RunResult, name: string) => {
  const bytes = files.find((each) => each.name === name)?.bytes;
  if (bytes === undefined) throw new Error(`${name} is written`);
  return bytes.slice();
};

/** Vertices of one place made one, as a reader does who gets triangles only. */
function solidOf(geometry: BufferGeometry) {
  const found = geometry.getAttribute('position');
  const places = new Map<string, number>();
  const positions: number[] = [];
  const corners = Array.from({ length: found.count }, (_, i) => {
    const at = [found.getX(i), found.getY(i), found.getZ(i)];
    const key = at.join(' ');
    const known = places.get(key) ?? places.size;
    if (known === places.size) positions.push(...at);
    places.set(key, known);
    return known;
  });
  return new library.Manifold(
    new library.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions),
      triVerts: Uint32Array.from(corners),
    }),
  );
}

/** The STL read by three's STLLoader and judged by manifold-3d; what the plan says beside it. */
function expectSameSolid(result: RunResult, thickness: number): void {
  const { plan, planFile } = result;
  const geometry = new STLLoader().parse(bytesOf(result, 'etched-part.stl').buffer as ArrayBuffer);
  const solid = solidOf(geometry);
  expect(solid.status()).toBe('NoError');
  const sheet = loopsArea(plan?.sheet ?? []) * thickness;
  const removed = planFile?.totals.removedVolume ?? Number.NaN;
  expect(Math.abs(solid.volume() / (sheet - removed) - 1)).toBeLessThan(0.001);
  const box = boxOfSpans(plan?.sheet.flat() ?? []);
  const { min, max } = solid.boundingBox();
  for (const [found, expected] of [
    [min, [box.minX, box.minY, -thickness]],
    [max, [box.maxX, box.maxY, 0]],
  ] as const) {
    expected.forEach((each, axis) => {
      expect(Math.abs(itemAt(found, axis) - each)).toBeLessThan(1e-3);
    });
  }
  solid.delete();
}

describe.each(SAMPLES)('the etched part of the sample %s', (name) => {
  it('is a solid of the planned volume and size to an STL reader (three 0.182) and manifold-3d', {
    tags: ['long'],
  }, async () => {
    const result = await sample(name);
    expectSameSolid(result, result.kit?.().index.front.thickness ?? Number.NaN);
  });

  it('is a GLB without fault to the Khronos validator', { tags: ['long'] }, async () => {
    const result = await sample(name);
    const { issues, info } = await validateBytes(bytesOf(result, 'etched-part.glb'));
    expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0 });
    const stl = new DataView(bytesOf(result, 'etched-part.stl').buffer);
    expect(info.totalTriangleCount).toBe(stl.getUint32(80, true));
  });
});

describe('the GLB of the buoy lid', () => {
  it('is read by another reader (three 0.182) in metres, y up, a colour a stage, with the plan named', async () => {
    const result = await lid({ name: 'Böje № 7' });
    const glb = await new GLTFLoader().parseAsync(bytesOf(result, 'etched-part.glb').buffer, '');
    const parts: Mesh<BufferGeometry, MeshStandardMaterial>[] = [];
    glb.scene.traverse((each) => {
      if (each instanceof Mesh) parts.push(each as Mesh<BufferGeometry, MeshStandardMaterial>);
    });
    expect(parts.map(({ material }) => material.name)).toEqual([
      'untouched',
      'stage 1, to 2.400 mm',
      'stage 2, to 1.200 mm',
    ]);
    const colors = parts.slice(1).map(({ material }) => `#${material.color.getHexString()}`);
    expect(colors).toEqual(result.plan?.stages.map(({ color }) => color));
    // 200 × 120 × 4 mm; the pit's floor at 2.4 mm, facing up.
    const [untouched, deepest] = [itemAt(parts, 0), itemAt(parts, 1)];
    untouched.geometry.computeBoundingBox();
    const { min, max } = untouched.geometry.boundingBox ?? { min: undefined, max: undefined };
    expect(min?.toArray()).toEqual([0, -0.004, -0.12].map((each) => expect.closeTo(each, 7)));
    expect(max?.toArray()).toEqual([0.2, 0, -0].map((each) => expect.closeTo(each, 7)));
    const corners = deepest.geometry.toNonIndexed().getAttribute('position') as BufferAttribute;
    const heights = Array.from({ length: corners.count }, (_, i) => corners.getY(i));
    expect(Math.min(...heights)).toBeCloseTo(-0.0024, 7);
    const hash = createHash('sha256').update(bytesOf(result, 'plan.json')).digest('hex');
    expect(glb.asset['extras']).toMatchObject({ name: 'Böje № 7', planSha256: hash });
    expect(new TextDecoder().decode(bytesOf(result, 'etched-part.stl').subarray(0, 80))).toContain(hash);
  });

  it('has the same bytes each time', async () => {
    const [once, twice] = [await lid(), await lid()];
    for (const name of ['etched-part.glb', 'etched-part.stl']) {
      expect(Buffer.from(bytesOf(once, name)).equals(Buffer.from(bytesOf(twice, name)))).toBe(true);
    }
  });
});

it.each([
  ['buoy lid', () => lid({ process: { ...buoyLidJob.process, ...REMASKED } })],
  ['gauge pod cover', () => sample('gauge-pod-cover', REMASKED)],
])('the %s, masked again for each stage, is a solid of the planned volume', async (_, run) => {
  const result = await run();
  expect(result.plan?.masking).toBe('re-mask');
  expectSameSolid(result, result.kit?.().index.front.thickness ?? Number.NaN);
});

describe('a sheet that tapers', () => {
  const taper = (from: number, to: number) => ({
    stock: {
      alloy: 'al-2024-t3',
      thickness: { from: [from, 0], to: [to, 0], thicknessFrom: 5, thicknessTo: 4 },
      minus: 0.05,
      plus: 0.05,
    },
  });

  it('has a solid whose back slopes: 4.5 mm on average where it goes from 5 to 4', async () => {
    const result = await lid(taper(0, 200));
    const geometry = new STLLoader().parse(bytesOf(result, 'etched-part.stl').buffer as ArrayBuffer);
    const solid = solidOf(geometry);
    const expected = 200 * 120 * 4.5 - (result.planFile?.totals.removedVolume ?? Number.NaN);
    expect(Math.abs(solid.volume() / expected - 1)).toBeLessThan(0.001);
    solid.delete();
  });

  it.each([
    ['a taper that ends within the part', taper(0, 150), 'bent back'],
    ['a part without an outline', { layers: { ignore: ['TRIM'] } }, 'no outline'],
  ])('solid-not-drawn: %s', async (_, change, trouble) => {
    const { findings, files } = await lid(change);
    expect(findings.filter(({ code }) => code === 'solid-not-drawn').map(({ facts }) => facts)).toEqual([
      { trouble },
    ]);
    expect(files.map(({ name }) => name)).toEqual(['plan.json', 'scribe.dxf']);
  });
});
