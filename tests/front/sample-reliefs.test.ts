import { readdirSync, readFileSync } from 'node:fs';
import createManifold from 'manifold-3d';
import { expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { endMinute, frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { reliefMesh } from '#front/relief/relief-mesh.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { loopsArea } from '#geometry/span.ts';
import { runJob } from '#run/run-job.ts';
import { enclosedVolume, looseEdges } from '#support/geometry/mesh-faults.ts';

const samples = readdirSync('samples').filter((name) => name.endsWith('.job.json'));
/** mm; thicker than any sample is etched deep. */
const THICKNESS = 6;

test.each(samples)(
  'M2 the relief of the sample %s is a solid from first dip to last',
  { tags: ['long'] },
  async (name) => {
    const library = await createManifold();
    library.setup();
    const jobText = readFileSync(`samples/${name}`, 'utf8');
    const drawingName: string = JSON.parse(jobText).drawing;
    const drawingBytes = new Uint8Array(readFileSync(`samples/${drawingName}`));
    const { plan } = await runJob({ jobText, drawingName, drawingBytes });
    if (plan === undefined) throw new Error('a sample can be planned');
    const front = frontOfPlan(plan, THICKNESS);
    const kit = makeContourKit(indexFront(front));
    for (const share of [0, 0.3, 0.7, 1]) {
      const minute = endMinute(front) * share;
      const mesh = reliefMesh(kit, { minute });
      expect(looseEdges(mesh)).toBe(0);
      const solid = new library.Manifold(
        new library.Mesh({ numProp: 3, vertProperties: mesh.positions, triVerts: mesh.indices }),
      );
      expect(solid.status()).toBe('NoError');
      solid.delete();
      if (plan.sheet.length === 0) continue;
      const expected = loopsArea(plan.sheet) * THICKNESS - removedVolume(kit, minute);
      expect(Math.abs(enclosedVolume(mesh) / expected - 1)).toBeLessThan(0.001);
    }
  },
);
