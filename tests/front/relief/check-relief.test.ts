import { expect, test } from 'vitest';
import { checkedRelief, reliefTrouble } from '#front/relief/check-relief.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';

const kit = kitOf({
  stages: [
    { level: 3, opening: [roundedRectangle(8, 8, 22, 20, 2), circle(50, 20, 6)] },
    { level: 1, opening: [roundedRectangle(0, 0, 40, 30, 4), circle(50, 20, 6)] },
  ],
  sheet: [rectangle(-20, -20, 80, 60)],
});
const { mesh, trouble } = checkedRelief(kit);

test('M2.7 a relief that is right passes its check', () => {
  expect(trouble).toBeUndefined();
});

function damaged(change: (copy: { positions: Float32Array; indices: Uint32Array }) => void): ReliefMesh {
  const copy = { ...mesh, positions: mesh.positions.slice(), indices: mesh.indices.slice() };
  change(copy);
  return copy;
}

test('M2.7 an edge with one triangle is found', () => {
  const open = damaged(({ indices }) => {
    // The last triangle of the back becomes one of no width.
    indices[indices.length - 1] = indices[indices.length - 2] ?? 0;
  });
  expect(reliefTrouble(kit, {}, open)).toMatchObject({ trouble: 'open edges', limit: 0 });
});

test('M2.7 an edge with four triangles is found: two pockets that share one wall’s edge', () => {
  const twice = damaged(() => undefined);
  const doubled = { ...twice, indices: Uint32Array.from([...twice.indices, ...twice.indices]) };
  expect(reliefTrouble(kit, {}, doubled)?.trouble).toBe('open edges');
});

test('M2.7 a fold is found, though no volume shows it: one corner pulled sideways over its neighbours', () => {
  const floor = mesh.positions.findIndex((z, i) => i % 3 === 2 && z < -2 && z > -2.9);
  const folded = damaged(({ positions }) => {
    positions[floor - 2] = (positions[floor - 2] ?? 0) + 1.5;
    positions[floor - 1] = (positions[floor - 1] ?? 0) - 1.1;
  });
  expect(reliefTrouble(kit, {}, folded)?.trouble).toBe('folded');
});

test('M2.7 a lid over a pocket is found: the floor raised to the surface', () => {
  const lid = damaged(({ positions }) => {
    for (let i = 2; i < positions.length; i += 3) {
      const z = positions[i] ?? 0;
      if (z < -0.001 && z > -5 && (positions[i - 2] ?? 0) > 43) positions[i] = 0;
    }
  });
  const found = reliefTrouble(kit, {}, lid);
  expect(found?.trouble).toBe('volume');
  expect(found?.value).toBeGreaterThan(0.1);
});

test('M2.7 a face that covers less than the sheet is found', () => {
  const small = damaged(({ positions }) => {
    for (let i = 0; i < positions.length; i += 3) positions[i] = 0.99 * (positions[i] ?? 0);
  });
  expect(reliefTrouble(kit, {}, small)).toMatchObject({ trouble: 'area' });
});
