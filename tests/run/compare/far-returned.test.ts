/** Lines of the far face come back as they are drawn from it, and are held against that face. */
import { beforeAll, describe, expect, test } from 'vitest';
import { compareReturned } from '#run/compare/compare-returned.ts';
import type { OutputFile } from '#run/output-file.ts';
import { type RunInput, runJob } from '#run/run-job.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';
import { LID, requirements } from '#support/parts/two-faced-lid.ts';

const inputOf = (job: object, entities: readonly string[]): RunInput => ({
  jobText: JSON.stringify({
    ...buoyLidJob,
    layers: { outline: ['TRIM'], far: ['BACK'] },
    handoff: { files: ['program'] },
    ...job,
  }),
  drawingName: 'lid.dxf',
  drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
});
const lid = inputOf({ requirements }, LID);

let files: readonly OutputFile[] = [];
beforeAll(async () => {
  files = (await runJob(lid)).files;
});
const bytesOf = (name: string) => {
  const file = files.find((each) => each.name === name);
  if (file === undefined) throw new Error(`no ${name} among ${files.map((each) => each.name).join(' ')}`);
  return file.bytes;
};

describe('our own files of the far face', () => {
  test.each([
    ['scribe-far.dxf', 'scribe'],
    ['scribe-far.nc', 'program'],
  ] as const)('%s names its face, and comes back with every edge within 2 µm', async (name, kind) => {
    const { comparison, findings } = await compareReturned(lid, { kind, name, bytes: bytesOf(name) });
    expect(findings).toEqual([]);
    expect(comparison?.face).toBe('far');
    expect(comparison?.edges.map(({ regions }) => regions)).toEqual([['F02']]);
    for (const { outward, inward, lost, places } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
      expect([lost, places > 10]).toEqual([undefined, true]);
    }
  });

  test('so do those of a drawing far from its origin', async () => {
    const from = (x: number, y: number): [number, number] => [x + 3_512_000, y - 1_654_000];
    const away = [
      box('TRIM', from(0, 0), from(200, 120)),
      box('POCKETS', from(20, 20), from(90, 100)),
      circle('ROUND', from(150, 62), 21),
      box('BACK', from(105, 17), from(190, 103)),
    ];
    const input = inputOf({ requirements }, away);
    const { files: written } = await runJob(input);
    const bytes = written.find(({ name }) => name === 'scribe-far.dxf')?.bytes ?? new Uint8Array();
    const { comparison, findings } = await compareReturned(input, { kind: 'scribe', name: 'far.dxf', bytes });
    expect(findings).toEqual([]);
    const [edge] = comparison?.edges ?? [];
    expect(edge?.places).toBeGreaterThan(10);
    expect(Math.max(edge?.outward.by ?? 1, edge?.inward.by ?? 1)).toBeLessThan(0.002);
  });
});

describe('lines that name no face', () => {
  // Seen from the far face, BACK lies from -190 to -105; its lines 1.2 inside.
  const moved = 0.3;
  const drawn = [box('SCRIBE-01', [-188.8 + moved, 18.2], [-106.2 + moved, 101.8])];
  const bytes = new TextEncoder().encode(dxf({ insunits: 4, entities: drawn }));
  const file = { kind: 'scribe', name: 'cam.dxf', bytes } as const;

  test('are held against the far face where that is asked, mirrored back', async () => {
    const { comparison, findings } = await compareReturned(lid, file, { face: 'far' });
    expect(findings.map(({ code }) => code)).toEqual(['returned-edge-moved']);
    const [edge] = comparison?.edges ?? [];
    expect(edge?.outward.by).toBeCloseTo(moved, 3);
    expect(edge?.inward.by).toBeCloseTo(moved, 3);
    // Moved to the right as seen from behind: to the left as seen through the part.
    expect(edge?.outward.at.x).toBeCloseTo(105, 1);
    expect(edge?.inward.at.x).toBeCloseTo(190, 1);
  });

  test('are else held against the near one, off which they lie', async () => {
    const { comparison, findings } = await compareReturned(lid, file);
    expect(comparison?.face).toBe('near');
    expect(findings.map(({ code }) => code)).toContain('returned-piece-missing');
  });
});

test('returned-face-not-etched: lines of the far face, and a plan of the near one alone', async () => {
  const onlyNear = { layers: { outline: ['TRIM'] }, requirements: requirements.slice(0, 2) };
  const near = inputOf(onlyNear, LID.slice(0, 3));
  const file = { kind: 'scribe', name: 'scribe-far.dxf', bytes: bytesOf('scribe-far.dxf') } as const;
  const { comparison, findings } = await compareReturned(near, file);
  expect(comparison).toBeUndefined();
  expect(findings).toMatchObject([{ code: 'returned-face-not-etched', place: { file: 'scribe-far.dxf' } }]);
});
