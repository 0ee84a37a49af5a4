import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { depthAt, depthsAt } from '#front/depth-at.ts';
import { endMinute } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { type Loop, loopsArea, pointAlong, spansLength } from '#geometry/span.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';
import { stageVolumes } from '#support/parts/stage-volumes.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

/** Steiner's formula for parallel sets (area A + P r + π r² of a convex shape grown by r), integrated over depth with r = φ√(ℓ² − z²). */
function steinerVolume(loop: Loop, level: number, factor: number): number {
  const area = loopsArea([loop]);
  const perimeter = spansLength(loop);
  return (
    area * level +
    (Math.PI * perimeter * factor * level ** 2) / 4 +
    (2 * Math.PI * factor ** 2 * level ** 3) / 3
  );
}

describe('M2.7 volumes of one convex opening against Steiner’s formula for parallel sets', () => {
  test('20 × 20, ℓ = 2, φ = 1: 800 + 251.327 + 16.755 = 1068.083 mm³', () => {
    const kit = kitOf({ stages: [{ level: 2, opening: [rectangle(0, 0, 20, 20)] }] });
    expect(removedVolume(kit)).toBeCloseTo(1068.083, 3);
  });

  test('366 × 166, depth 17, φ = 1: 1 284 649 mm³', () => {
    const kit = kitOf({ stages: [{ level: 17, opening: [rectangle(0, 0, 366, 166)] }] });
    expect(Math.abs(removedVolume(kit) - 1_284_649)).toBeLessThan(0.5);
  });

  test.each([0.5, 1, 1.7])('square, rounded and round at φ %d, to 1e-6', (factor) => {
    for (const loop of [rectangle(3, 4, 18, 9), roundedRectangle(0, 0, 30, 20, 4), circle(5, 5, 8)]) {
      const kit = kitOf({ stages: [{ level: 2.4, opening: [loop] }], etchFactor: factor });
      const expected = steinerVolume(loop, 2.4, factor);
      expect(Math.abs(removedVolume(kit) / expected - 1)).toBeLessThan(1e-6);
    }
  });

  test('an area grown by r has Steiner’s area at every depth: rectangle 200 × 100 grown by 5 is 23 078.54 mm²', () => {
    // At the surface a cut of 5 mm at φ = 1 has grown its opening by 5.
    const kit = kitOf({ stages: [{ level: 5, opening: [rectangle(0, 0, 200, 100)] }] });
    expect(loopsArea(contourLoops(kit, { depth: 0 }).loops)).toBeCloseTo(23_078.54, 2);
  });
});

test('M2 a 6.25 mm skin of 24 kg thinned to 0.625 mm over 80 % of a face weighs some 6.7 kg after', () => {
  // Published course figure: from 24 kg to 6 kg, coarse (± 15 %). By plain proportion 24 · (1 − 0.8 · 5.625 / 6.25) = 6.72 kg;
  // the fillets along the pocket's border leave a little more.
  const side = 2000;
  const pocket = side * Math.sqrt(0.8);
  const from = (side - pocket) / 2 + 5.625;
  const kit = kitOf({
    stages: [{ level: 5.625, opening: [rectangle(from, from, side - from, side - from)] }],
    sheet: [rectangle(0, 0, side, side)],
    thickness: 6.25,
  });
  const after = 24 * (1 - removedVolume(kit) / (side * side * 6.25));
  expect(after).toBeGreaterThan(6.72);
  expect(after).toBeLessThan(6.72 * 1.01);
  expect(Math.abs(after / 6 - 1)).toBeLessThan(0.15);
});

test('M2.7 volumes of the stages add up to the whole, with fronts that meet and islands that drown', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, (part) => {
      const plan = planOf(part);
      const kit = makeContourKit(indexFront({ ...plan, thickness: 6 }));
      const stages = stageVolumes(kit);
      const sum = stages.reduce((total, { volume }) => total + volume, 0);
      const whole = removedVolume(kit);
      expect(Math.abs(sum - whole)).toBeLessThanOrEqual(1e-9 * whole);
      for (const { volume } of stages) expect(volume).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 40 },
  );
});

test('M2.7 the integrated volume of random planned parts is the sum of depths on a fine grid', {
  tags: ['long'],
}, () => {
  const step = 0.5;
  const side = 90 / step;
  const points = Float64Array.from({ length: 2 * side * side }, (_, i) => {
    const node = i >> 1;
    // Off the round numbers that the parts are drawn on, so that errors along their edges cancel.
    return -10 + ((i % 2 === 0 ? node % side : Math.floor(node / side)) + 0.4137) * step;
  });
  fc.assert(
    fc.property(randomPart, fc.integer({ min: 20, max: 100 }), (part, percent) => {
      const front = { ...planOf(part), thickness: 6 };
      const minute = (endMinute(front) * percent) / 100;
      const index = indexFront(front);
      const summed =
        depthsAt(index, points, minute).depths.reduce((sum, depth) => sum + depth, 0) * step * step;
      const exact = removedVolume(makeContourKit(index), minute);
      // A grid misplaces an edge of length L by part of a step: up to 400 mm of edges, 3 mm deep, a tenth of a step.
      expect(Math.abs(summed - exact)).toBeLessThan(60 + 0.002 * exact);
    }),
    { numRuns: 60 },
  );
});

test('M2.3 contours of random parts hold what is deeper and nothing else', { tags: ['long'] }, () => {
  fc.assert(
    fc.property(randomPart, fc.integer({ min: 1, max: 28 }), (part, tenths) => {
      const depth = tenths / 10 + 0.013;
      const kit = makeContourKit(indexFront({ ...planOf(part), thickness: 6 }));
      const { loops } = contourLoops(kit, { depth });
      // Every span of the contour stands at that depth, unless it is the sheet's border.
      for (const span of loops.flat()) {
        const { x, y } = pointAlong(span, 0.4);
        const isOnRim = [x, y].some((value) => Math.abs(value + 10) < 1e-6 || Math.abs(value - 80) < 1e-6);
        if (isOnRim) continue;
        expect(Math.abs(depthAt(kit.index, { x, y }).depth - depth)).toBeLessThan(1e-4);
      }
    }),
    { numRuns: 60 },
  );
});
