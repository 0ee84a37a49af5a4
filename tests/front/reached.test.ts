import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { depthsAt } from '#front/depth-at.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedIn } from '#front/reached.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

describe('M3.4 what a region reaches', () => {
  test('a square pocket 20 × 20, 2 deep, opened 16 × 16: its floor to 0.1 mm is the opening grown by √(2² − 1.9²)', () => {
    const kit = kitOf({ stages: [{ level: 2, opening: [rectangle(2, 2, 18, 18)] }] });
    const { floorArea, share, deepest, shallowest } = reachedIn(kit, {
      loops: [rectangle(0, 0, 20, 20)],
      area: 400,
      level: 2,
      floorDepth: 1.9,
    });
    // Steiner: 16² + 4 · 16 r + π r², with r² = 4 − 3.61.
    const r = Math.sqrt(0.39);
    expect(floorArea).toBeCloseTo(256 + 64 * r + Math.PI * r * r, 9);
    expect(share).toBeCloseTo(floorArea / 400, 12);
    expect(deepest).toBe(2);
    expect(shallowest).toBe(0);
  });

  test('a pocket without an opening gets only what its neighbours send under the line', () => {
    const kit = kitOf({ stages: [{ level: 2, opening: [rectangle(0, 0, 10, 40)] }] });
    const { floorArea, deepest } = reachedIn(kit, {
      loops: [rectangle(11.2, 5, 13, 30)],
      area: 45,
      level: 2,
      floorDepth: 1.9,
    });
    expect(floorArea).toBe(0);
    // 1.2 mm beside the opening: √(2² − 1.2²) = 1.6.
    expect(deepest).toBeCloseTo(1.6, 12);
  });

  test('an opening that passes through a region, with no corner of either in the other, still is its floor', () => {
    const kit = kitOf({ stages: [{ level: 2, opening: [rectangle(-20, 4, 30, 6)] }] });
    const { floorArea, deepest } = reachedIn(kit, {
      loops: [rectangle(0, 0, 10, 10)],
      area: 100,
      level: 2,
      floorDepth: 1.9,
    });
    expect(deepest).toBe(2);
    expect(floorArea).toBeCloseTo(10 * (2 + 2 * Math.sqrt(0.39)), 9);
  });

  test('a land that two fronts meet under says how far its ridge stands below the surface', () => {
    // Worked example: land 6 wide, depth 5: the ridge stands 4.0 below.
    const kit = kitOf({
      stages: [{ level: 5, opening: [rectangle(-50, -50, -3, 50), rectangle(3, -50, 50, 50)] }],
    });
    const { floorArea, share, shallowest } = reachedIn(kit, {
      loops: [rectangle(-3, -20, 3, 20)],
      area: 240,
      level: 0,
      floorDepth: 0,
    });
    expect(floorArea).toBeCloseTo(0, 9);
    expect(share).toBeCloseTo(0, 9);
    expect(Math.abs(shallowest - 4)).toBeLessThan(2e-4);
  });

  test('land whose border the front just comes up to is whole', () => {
    const kit = kitOf({ stages: [{ level: 2, opening: [roundedRectangle(2, 2, 18, 18, 3)] }] });
    const land = [rectangle(-20, -20, 40, 40), roundedRectangle(0, 0, 20, 20, 5).map((span) => span)];
    const { share, deepest } = reachedIn(kit, {
      loops: [land[0] ?? []],
      area: 3600,
      level: 0,
      floorDepth: 0,
    });
    // Without the pocket cut out the sheet is not whole at all.
    expect(deepest).toBe(2);
    expect(share).toBeLessThan(0.9);
    const hole = [...(land[1] ?? [])]
      .reverse()
      .map((span) =>
        span.kind === 'line'
          ? { ...span, start: span.end, end: span.start }
          : { ...span, start: span.end, end: span.start, sweep: -span.sweep },
      );
    const area = 3600 - (400 - (4 - Math.PI) * 25);
    const around = reachedIn(kit, { loops: [land[0] ?? [], hole], area, level: 0, floorDepth: 0 });
    expect(around.share).toBe(1);
    expect(around.deepest).toBeLessThan(1e-3);
  });

  test('floors of round pockets', () => {
    const kit = kitOf({ stages: [{ level: 1, opening: [circle(0, 0, 9)] }] });
    const { floorArea } = reachedIn(kit, {
      loops: [circle(0, 0, 10)],
      area: Math.PI * 100,
      level: 1,
      floorDepth: 0.8,
    });
    expect(floorArea).toBeCloseTo(Math.PI * 9.6 ** 2, 9);
  });
});

test('M3.4 floors, deepest and shallowest of random planned regions agree with a fine grid of depths', {
  tags: ['long'],
}, () => {
  const step = 0.3;
  fc.assert(
    fc.property(randomPart, (part) => {
      const plan = planOf(part);
      const kit = makeContourKit(indexFront({ ...plan, thickness: 6 }));
      for (const region of plan.regions.filter(({ area }) => area < 1000)) {
        const floorDepth = region.level - 0.05;
        const reached = reachedIn(kit, { ...region, floorDepth });
        const places: number[] = [];
        for (let x = -10 + step * 0.4137; x < 80; x += step) {
          for (let y = -10 + step * 0.5871; y < 80; y += step) {
            if (
              Math.hypot(x - region.label.x, y - region.label.y) < 60 &&
              isInsideLoops(region.loops, { x, y })
            ) {
              places.push(x, y);
            }
          }
        }
        const { depths } = depthsAt(kit.index, Float64Array.from(places));
        const onFloor = depths.filter((depth) =>
          region.level === 0 ? depth <= 0.005 : depth >= floorDepth,
        ).length;
        // Half a step along a border of at most 100 mm.
        expect(Math.abs(onFloor * step * step - reached.floorArea)).toBeLessThan(0.15 * 100);
        depths.forEach((depth) => {
          expect(depth).toBeLessThanOrEqual(reached.deepest + 1e-9);
          expect(depth).toBeGreaterThanOrEqual(reached.shallowest - 2e-4);
        });
      }
    }),
    { numRuns: 25 },
  );
});
