/** Layers of faces beside a flood that walks from face to face for each layer on its own; and what thousands of layers cost. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { type Arrangement, OUTSIDE, type SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Loop } from '#geometry/span.ts';
import { findLayers } from '#part/find-layers.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

function arrangementOf(loops: readonly Loop[]): Arrangement {
  const linework: SourcedSpan[] = loops.flatMap((loop, source) => loop.map((span) => ({ span, source })));
  return arrange(linework, { joinTolerance: 0 }).arrangement;
}

/** Area that a walk from the face covers that crosses no line of the layer; undefined where it gets outside. */
function floodFrom(
  start: number,
  layer: string,
  { edges, faces }: Arrangement,
  layerOf: (source: number) => string,
): number | undefined {
  const reached = new Set([start]);
  for (const face of reached) {
    if (face === OUTSIDE) return undefined;
    for (const { left, right, sources } of edges) {
      if (sources.some((source) => layerOf(source) === layer)) continue;
      if (left === face) reached.add(right);
      if (right === face) reached.add(left);
    }
  }
  return [...reached].reduce((sum, face) => sum + itemAt(faces, face).area, 0);
}

test('the layer of each face is that of the smallest outline that a flood of each layer finds', () => {
  const coordinate = fc.integer({ min: 0, max: 40 });
  const shape = fc.record({
    at: fc.tuple(coordinate, coordinate),
    size: fc.tuple(fc.integer({ min: 1, max: 23 }), fc.integer({ min: 1, max: 17 })),
    isRound: fc.boolean(),
    layer: fc.constantFrom('A', 'B', 'C', 'D', 'E'),
  });
  fc.assert(
    fc.property(fc.array(shape, { minLength: 1, maxLength: 7 }), (shapes) => {
      const arrangement = arrangementOf(
        shapes.map(({ at: [x, y], size: [width, height], isRound }) =>
          isRound ? circle(x, y, width / 2) : rectangle(x, y, x + width, y + height),
        ),
      );
      const layerOf = (source: number) => itemAt(shapes, source).layer;
      const found = findLayers(arrangement, layerOf);
      const names = [...new Set(shapes.map(({ layer }) => layer))].sort();
      expect(found[OUTSIDE]).toEqual([]);
      for (const face of arrangement.faces.keys()) {
        if (face === OUTSIDE) continue;
        const areas = names.map(
          (name) => floodFrom(face, name, arrangement, layerOf) ?? Number.POSITIVE_INFINITY,
        );
        const least = Math.min(...areas);
        const smallest = names.filter((_, index) => itemAt(areas, index) < least * (1 + 1e-7));
        // What only several layers together enclose is another rule's: one layer, by length of border.
        if (least === Number.POSITIVE_INFINITY) expect(found[face]).toHaveLength(1);
        else expect(found[face]).toEqual(smallest);
      }
    }),
    { numRuns: 60 },
  );
});

test('8,000 outlines on a layer each, every second in another, take under three seconds of processor time', {
  tags: ['long'],
}, () => {
  const loops = Array.from({ length: 4000 }, (_, index): Loop[] => {
    const [x, y] = [(index % 80) * 10, Math.floor(index / 80) * 7];
    return [rectangle(x, y, x + 8, y + 5), rectangle(x + 1, y + 1, x + 4, y + 3)];
  }).flat();
  const arrangement = arrangementOf(loops);
  const before = process.cpuUsage();
  const layers = findLayers(arrangement, (source) => `P${source}`);
  const { user, system } = process.cpuUsage(before);
  expect(new Set(layers.flat()).size).toBe(8000);
  expect((user + system) / 1e6).toBeLessThan(3);
});
