import fc from 'fast-check';
import createManifold from 'manifold-3d';
import { beforeAll, expect, test } from 'vitest';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { depthsAt } from '#front/depth-at.ts';
import { endMinute } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { type ReliefMesh, reliefMesh } from '#front/relief/relief-mesh.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import { enclosedVolume, looseEdges } from '#support/geometry/mesh-faults.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

type Library = Awaited<ReturnType<typeof createManifold>>;

let library: Library;

beforeAll(async () => {
  library = await createManifold();
  library.setup();
});

/** Volume as the independent library manifold-3d has it, which refuses whatever is not the border of a solid. */
function libraryVolume({ positions, indices }: ReliefMesh): number {
  const solid = new library.Manifold(
    new library.Mesh({ numProp: 3, vertProperties: positions, triVerts: indices }),
  );
  const volume = solid.volume();
  expect(solid.status()).toBe('NoError');
  solid.delete();
  return volume;
}

function expectSolid(mesh: ReliefMesh, expected: number): void {
  expect(looseEdges(mesh)).toBe(0);
  expect(mesh.stageOfTriangle).toHaveLength(mesh.indices.length / 3);
  expect(Math.abs(enclosedVolume(mesh) / expected - 1)).toBeLessThan(0.001);
  expect(Math.abs(libraryVolume(mesh) / expected - 1)).toBeLessThan(0.001);
}

const sheet = [rectangle(-20, -20, 80, 60)];
const SHEET_VOLUME = 100 * 80 * 6;

const pocket = rectangle(0, 0, 20, 20);

test.each([
  { name: 'one square pocket', stages: [{ level: 2, opening: [pocket] }] },
  { name: 'one rounded pocket', stages: [{ level: 2, opening: [roundedRectangle(0, 0, 20, 20, 5)] }] },
  {
    name: 'nested pockets',
    stages: [
      { level: 3, opening: [roundedRectangle(5, 5, 15, 15, 2)] },
      { level: 2, opening: [roundedRectangle(0, 0, 20, 20, 3)] },
    ],
  },
  {
    name: 'a deep pocket far inside a shallow one',
    stages: [
      { level: 3, opening: [circle(30, 20, 4)] },
      { level: 1, opening: [rectangle(0, 0, 60, 40)] },
    ],
  },
  {
    name: 'pockets side by side',
    stages: [
      { level: 3, opening: [pocket] },
      { level: 2, opening: [rectangle(0, 0, 40, 20)] },
    ],
  },
  {
    name: 'two fronts met under a land',
    stages: [{ level: 5, opening: [pocket, rectangle(26, 0, 46, 30)] }],
  },
  {
    name: 'an island that drowns',
    stages: [{ level: 3, opening: [rectangle(0, 0, 40, 30), reverseSpans(rectangle(10, 10, 20, 15))] }],
  },
  {
    name: 'an island that stands',
    stages: [{ level: 3, opening: [rectangle(0, 0, 40, 40), reverseSpans(circle(20, 20, 8))] }],
  },
  {
    name: 'an opening that runs off the sheet',
    stages: [{ level: 3, opening: [rectangle(-20, 0, 20, 30)] }],
  },
  {
    name: 'a front that comes out of the side',
    stages: [{ level: 3, opening: [rectangle(-18, 0, 20, 30)] }],
  },
  {
    name: 'the whole sheet thinned',
    stages: [
      { level: 3, opening: [rectangle(-20, 0, 0, 30)] },
      { level: 2, opening: sheet },
    ],
  },
  {
    name: 'a pocket of arcs that touches another in a point',
    stages: [{ level: 1, opening: [circle(0, 0, 5), circle(12, 0, 5)] }],
  },
  { name: 'nothing etched', stages: [] },
])('M2 the relief is a solid: $name', ({ stages }) => {
  const kit = kitOf({ stages, sheet });
  expectSolid(reliefMesh(kit), SHEET_VOLUME - removedVolume(kit));
});

test('M2 reliefs of random planned parts are solids at any minute and turned any way, and hold the integrated volume to 0.1 %', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(
      randomPart,
      fc.constantFrom(0.15, 0.5, 0.85, 1),
      fc.constantFrom(0, 0, 0.4, 1.1),
      (part, share, turn) => {
        const planned = { ...planOf(part), thickness: 6 };
        const move = { turn, factor: 1, mirrored: false, shift: { x: 7 * turn, y: 0 } };
        const moveLoops = (loops: readonly Loop[]): Loop[] =>
          loops.map((loop) => loop.map((span) => moveSpan(span, move)));
        const front = {
          ...planned,
          sheet: moveLoops(planned.sheet),
          stages: planned.stages.map((stage) => ({ ...stage, opening: moveLoops(stage.opening) })),
        };
        const minute = share === 1 ? undefined : endMinute(front) * share;
        const kit = makeContourKit(indexFront(front));
        expectSolid(reliefMesh(kit, { minute }), 90 * 90 * 6 - removedVolume(kit, minute));
      },
    ),
    { numRuns: Number(process.env['RUNS'] ?? 50) },
  );
});

const cover = {
  stages: [
    { level: 3, opening: [roundedRectangle(8, 8, 22, 20, 2), circle(50, 20, 6)] },
    { level: 2.2, opening: [roundedRectangle(8, 8, 34, 20, 2), circle(50, 20, 6)] },
    { level: 1, opening: [roundedRectangle(0, 0, 40, 30, 4), circle(50, 20, 6)] },
  ],
  sheet,
};

/** The farthest that the middles of the etched triangles are from the front, measured across the triangle. */
function worstGap(kit: ContourKit, { positions, indices, stageOfTriangle }: ReliefMesh): number {
  let worst = 0;
  stageOfTriangle.forEach((stage, triangle) => {
    if (stage === 0) return;
    const at = (corner: number, axis: number): number =>
      positions[3 * (indices[3 * triangle + corner] ?? 0) + axis] ?? Number.NaN;
    const [ax, ay, az] = [at(0, 0), at(0, 1), at(0, 2)];
    const [bx, by, bz] = [at(1, 0), at(1, 1), at(1, 2)];
    const [cx, cy, cz] = [at(2, 0), at(2, 1), at(2, 2)];
    const normal = [
      (by - ay) * (cz - az) - (bz - az) * (cy - ay),
      (bz - az) * (cx - ax) - (bx - ax) * (cz - az),
      (bx - ax) * (cy - ay) - (by - ay) * (cx - ax),
    ] as const;
    const size = Math.hypot(...normal);
    if (size === 0) return;
    const { depths } = depthsAt(kit.index, Float64Array.of((ax + bx + cx) / 3, (ay + by + cy) / 3));
    worst = Math.max(worst, (Math.abs((depths[0] ?? Number.NaN) + (az + bz + cz) / 3) * normal[2]) / size);
  });
  return worst;
}

test.each([0.1, 0.02, 0.005])(
  'M2 the mesh keeps to the front within a tolerance of %d mm',
  { tags: ['long'] },
  (tolerance) => {
    const kit = kitOf(cover);
    expect(worstGap(kit, reliefMesh(kit, { tolerance }))).toBeLessThan(tolerance);
  },
);

test('M2 size goes with tolerance: ten times finer costs about ten times the triangles, a larger part none', () => {
  const sizeOf = (kit: ContourKit, tolerance: number): number =>
    reliefMesh(kit, { tolerance }).indices.length / 3;
  const kit = kitOf(cover);
  const coarse = sizeOf(kit, 0.05);
  expect(sizeOf(kit, 0.005)).toBeLessThan(16 * coarse);
  const wider = kitOf({ ...cover, sheet: [rectangle(-2000, -2000, 2000, 2000)] });
  // Its lattice is coarser, which moves a corner here and there across a limit.
  expect(Math.abs(sizeOf(wider, 0.05) / coarse - 1)).toBeLessThan(0.05);
});

test('M2 every stage colours its own walls and floors; land, sides and back have none', () => {
  const { stageOfTriangle } = reliefMesh(kitOf(cover));
  expect([...new Set(stageOfTriangle)].sort()).toEqual([0, 1, 2, 3]);
});

test('M2 a sheet without end is shown with room around the etch', () => {
  const { positions } = reliefMesh(kitOf({ ...cover, sheet: [] }));
  let least = 0;
  for (let i = 0; i < positions.length; i += 3) least = Math.min(least, positions[i] ?? 0);
  // The opening starts at 0 and reaches 1 mm; the third stage reaches no farther.
  expect(least).toBeLessThan(-5);
});
