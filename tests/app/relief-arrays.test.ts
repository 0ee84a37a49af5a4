/** The relief of a part that is etched on both faces: one solid, seen from either, with its holes. */
import { expect, test } from 'vitest';
import { reliefArrays } from '#app/worker/relief-arrays.ts';
import { etchedPart } from '#run/etched-part.ts';
import { type EarlyPlan, runJob } from '#run/run-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [130, 70]),
    box('POCKETS', [8, 9], [43, 58]),
    box('BACK', [14, 12], [37, 49]),
    circle('ROUND', [91, 33], 17),
  ],
});

async function lid(job: object) {
  let early: EarlyPlan | undefined;
  await runJob(
    {
      jobText: JSON.stringify({ ...buoyLidJob, ...job }),
      drawingName: 'lid.dxf',
      drawingBytes: bytesOf(drawing),
    },
    {
      onPlan: (each) => {
        early = each;
      },
    },
  );
  if (early === undefined) throw new Error('the lid can be planned');
  return etchedPart(early.plan, early.job.stock.thickness);
}

const cutThrough = {
  layers: { outline: ['TRIM'], far: ['BACK'], both: ['ROUND'] },
  requirements: [
    { layer: 'POCKETS', depth: 1.3 },
    { layer: 'BACK', depth: 0.8, face: 'far' },
    { layer: 'ROUND', through: 2.3, face: 'both' },
  ],
};
const ASK = { minute: undefined, tolerance: 0.1 };

/** Whole sides shared by two triangles, as V − E + F = 2 − 2 · holes has it. */
function eulerOf({ positions, indices }: { positions: Float32Array; indices: Uint32Array }): number {
  const sides = new Set<string>();
  for (let i = 0; i < indices.length; i++) {
    const [a, b] = [indices[i] ?? 0, indices[i % 3 === 2 ? i - 2 : i + 1] ?? 0];
    sides.add(a < b ? `${a} ${b}` : `${b} ${a}`);
  }
  return positions.length / 3 - sides.size + indices.length / 3;
}

test('both floors and one true hole in one closed mesh, the same whichever face is on show', async () => {
  const part = await lid(cutThrough);
  const [near, far] = (['near', 'far'] as const).map((face) => reliefArrays(part, face, ASK)?.mesh);
  if (near === undefined || far === undefined) throw new Error('the lid has a relief');
  expect(far.positions).toEqual(near.positions);
  expect(eulerOf(near)).toBe(0);
  const heights = new Set<number>();
  const inHole: number[] = [];
  for (let i = 0; i < near.positions.length; i += 3) {
    const [x = 0, y = 0, z = 0] = near.positions.subarray(i, i + 3);
    heights.add(Math.round(z * 100) / 100);
    if (Math.hypot(x + near.origin.x - 91, y + near.origin.y - 33) < 16.9) inHole.push(z);
  }
  // Floors: 1.3 below the near face, 0.8 above the far one of 4 mm; nothing stands inside the circle.
  expect([...heights]).toEqual(expect.arrayContaining([0, -1.3, -3.2, -4]));
  expect(inHole).toEqual([]);
  // Shadows at the feet of walls on either side.
  const feet = new Set<number>();
  for (let i = 2; i < near.feet.length; i += 5) feet.add(Math.round((near.feet[i] ?? 0) * 100) / 100);
  expect([...feet].sort((a, b) => b - a)).toEqual([-1.3, -3.2]);
});

test('before the etches meet there is no hole yet', async () => {
  const part = await lid(cutThrough);
  const mesh = reliefArrays(part, 'near', { ...ASK, minute: 20 })?.mesh;
  if (mesh === undefined) throw new Error('the lid has a relief');
  expect(eulerOf(mesh)).toBe(2);
});

test('a part of one face is its own relief, and has no other', async () => {
  const part = await lid({
    layers: { outline: ['TRIM'], ignore: ['BACK', 'ROUND'] },
    requirements: [{ layer: 'POCKETS', depth: 1.3 }],
  });
  const mesh = reliefArrays(part, 'near', ASK)?.mesh;
  expect(Math.min(...(mesh?.positions.filter((_, i) => i % 3 === 2) ?? []))).toBe(-4);
  expect(reliefArrays(part, 'far', ASK)).toBeUndefined();
});

test('relief-too-large: a part of too many lines and arcs is not shown in relief, and its finding says how many', () => {
  const face = (borders: number) => ({ kit: () => ({ index: { features: { length: borders } } }) });
  const part = { ...face(120_004), far: face(90_003), thickness: 0.2 } as unknown as Parameters<
    typeof reliefArrays
  >[0];
  const { heldBack, mesh } = reliefArrays(part, 'near', { minute: undefined, tolerance: 1 }) ?? {};
  expect(mesh).toBeUndefined();
  expect(heldBack).toMatchObject({
    code: 'relief-too-large',
    severity: 'note',
    facts: { borders: 210_007, most: 200_000 },
  });
});
