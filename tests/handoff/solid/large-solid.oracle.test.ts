/** The etched part where it has many borders: coarser, and a solid all the same; read by three and judged by manifold-3d. */
import createManifold from 'manifold-3d';
import { Mesh } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { expect, test } from 'vitest';
import { loopsArea } from '#geometry/span.ts';
import { runJob } from '#run/run-job.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';

/** Twice eight borders a nested pocket: 5120, more than 5000; its sheet is 5 mm thick. */
const LARGE = pocketGridFiles(20, 16);
const SMALL = pocketGridFiles(5, 4);

async function solidOf({ drawing, job }: typeof LARGE) {
  const result = await runJob({
    jobText: JSON.stringify({ ...JSON.parse(job), handoff: { files: ['glb'] } }),
    drawingName: 'grid.dxf',
    drawingBytes: new TextEncoder().encode(drawing),
  });
  const bytes = result.files.find(({ name }) => name === 'etched-part.glb')?.bytes ?? new Uint8Array();
  const { scene, asset } = await new GLTFLoader().parseAsync(bytes.slice().buffer, '');
  const parts: Mesh[] = [];
  scene.traverse((each) => {
    if (each instanceof Mesh) parts.push(each);
  });
  const library = await createManifold();
  library.setup();
  // All parts share one list of vertices.
  const positions = parts[0]?.geometry.getAttribute('position').array ?? [];
  const solid = new library.Manifold(
    new library.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions, (metres) => 1000 * metres),
      triVerts: Uint32Array.from(parts.flatMap(({ geometry }) => Array.from(geometry.index?.array ?? []))),
    }),
  );
  const expected = loopsArea(result.plan?.sheet ?? []) * 5 - (result.planFile?.totals.removedVolume ?? 0);
  return { status: solid.status(), share: solid.volume() / expected, tolerance: asset['extras'].toleranceMm };
}

test.each([
  ['320 nested pockets', LARGE, 0.05],
  ['20 nested pockets', SMALL, 0.02],
] as const)(
  '%s: a solid within 0.1 % of the planned volume, which reports its tolerance',
  async (_, files, fine) => {
    const { status, share, tolerance } = await solidOf(files);
    expect(status).toBe('NoError');
    expect(Math.abs(share - 1)).toBeLessThan(0.001);
    expect(tolerance).toBe(fine);
  },
);
