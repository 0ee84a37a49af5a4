/** What of a relief is drawn: all of it by stage, and of one cut open what the cut leaves; on a strip of three fields. */
import { Vector4 } from 'three';
import { expect, it } from 'vitest';
import { fatGeometry } from '#app/scene/fat-geometry.ts';
import { solidGeometry } from '#app/scene/relief/solid-geometry.ts';

/** Three fields, 10 mm long and 7 mm wide each, one after another along x; the sheet's own origin lies at (100, 40). */
const strip = {
  origin: { x: 100, y: 40 },
  positions: new Float32Array([0, 10, 20, 30].flatMap((x) => [x, 0, 0, x, 7, 0])),
  indices: new Uint32Array([0, 1, 2].flatMap((at) => [0, 2, 1, 1, 2, 3].map((each) => 2 * at + each))),
  stageOfTriangle: new Uint8Array([2, 2, 0, 0, 2, 1]),
  edges: new Float32Array(),
  feet: new Float32Array(),
};

/** The triangles drawn, each as its corners, by stage. */
function drawn(cut: Vector4): Map<number, number[][]> {
  const { geometry, keepUncut } = solidGeometry(strip, 2);
  keepUncut(cut);
  const corners = [...(geometry.index?.array ?? [])];
  return new Map(
    geometry.groups.map(({ start, count, materialIndex = -1 }) => [
      materialIndex,
      Array.from({ length: count / 3 }, (_, at) => corners.slice(start + 3 * at, start + 3 * at + 3)),
    ]),
  );
}

it('whole: every triangle once, those of a stage in one run', () => {
  const runs = drawn(new Vector4(0, 0, 0, 0));
  expect([...runs.keys()]).toEqual([0, 1, 2]);
  expect(runs.get(1)).toEqual([[5, 6, 7]]);
  expect([...runs.values()].flat()).toHaveLength(6);
});

it('cut open at x = 113: what lies wholly beyond is left out, and what the cut goes through stays', () => {
  const runs = drawn(new Vector4(1, 0, 113, 1));
  expect(runs.get(0)).toHaveLength(2);
  expect(runs.get(2)).toEqual([
    [0, 2, 1],
    [1, 2, 3],
  ]);
  expect(runs.has(1)).toBe(false);
  // From the other side the first field is gone; of the last one all is left.
  const turned = drawn(new Vector4(-1, 0, -113, 1));
  expect(turned.get(2)).toEqual([[4, 6, 5]]);
  expect(turned.get(1)).toEqual([[5, 6, 7]]);
});

it('wide lines are one run of triangles, six a segment, each corner with both ends of its own segment', () => {
  const geometry = fatGeometry(new Float32Array([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]));
  const ends = geometry.getAttribute('instanceEnd');
  const corners = new Set(geometry.index?.array);
  expect(geometry.index?.count).toBe(2 * 18);
  expect(corners.size).toBe(ends.count);
  for (const corner of corners) expect(ends.getX(corner)).toBe(corner < ends.count / 2 ? 4 : 10);
});
