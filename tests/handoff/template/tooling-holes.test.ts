/** Templates fit one way only: over random parts no turn or mirror, of any angle and about any place, brings their holes onto themselves. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Loop } from '#geometry/span.ts';
import { reverseSpans } from '#geometry/span.ts';
import { patternMisfit } from '#handoff/template/pattern-misfit.ts';
import { type ToolingHole, toolingHoles } from '#handoff/template/tooling-holes.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';
import { trials } from '#support/seeds/property-runs.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/**
 * The least, over all wrong ways to lay a pattern down, of how far its worst hole is off the nearest hole: a search of its own, over every
 * way that brings one hole onto another and the direction to a third onto a direction, turned and mirrored.
 */
function leastMisfit(holes: readonly Place[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const mirror of [1, -1]) {
    for (const from of holes) {
      for (const to of holes) {
        for (const a of holes.filter((each) => each !== from)) {
          for (const b of holes.filter((each) => each !== to)) {
            const turn =
              Math.atan2(b.y - to.y, b.x - to.x) - Math.atan2(mirror * (a.y - from.y), a.x - from.x);
            const moved = holes.map(({ x, y }) => {
              const [dx, dy] = [x - from.x, mirror * (y - from.y)];
              return {
                x: to.x + dx * Math.cos(turn) - dy * Math.sin(turn),
                y: to.y + dx * Math.sin(turn) + dy * Math.cos(turn),
              };
            });
            // Each on its own pin, be it askew: not a wrong way.
            if (
              moved.every((each, i) => holes.every((hole) => gap(each, holes[i] ?? each) <= gap(each, hole)))
            )
              continue;
            least = Math.min(
              least,
              Math.max(...moved.map((each) => Math.min(...holes.map((hole) => gap(each, hole))))),
            );
          }
        }
      }
    }
  }
  return least;
}

function gap(a: Place, b: Place): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function holesOf(sheet: readonly Loop[], holes?: readonly Place[]): ToolingHole[] {
  const [outer = []] = sheet;
  const xs = outer.flatMap(({ start }) => [start.x]);
  const ys = outer.flatMap(({ start }) => [start.y]);
  return toolingHoles({
    sheet,
    part: [outer],
    lines: [],
    margin: 25,
    diameter: 6,
    clear: 5.75,
    holes,
    field: {
      minX: Math.min(...xs),
      maxX: Math.max(...xs),
      minY: Math.min(...ys) - 100,
      maxY: Math.min(...ys) - 25,
    },
  });
}

const centers = (holes: readonly ToolingHole[]) => holes.map(({ center }) => center);

describe('holes that fit one way only', () => {
  const side = fc.integer({ min: 40, max: 900 });
  const inset = fc.integer({ min: 8, max: 19 });

  test('no way but the right one brings them onto themselves within 5 mm: plain sheets, squares among them', {
    tags: ['long'],
  }, () => {
    fc.assert(
      fc.property(side, side, fc.boolean(), (width, height, isSquare) => {
        const holes = centers(holesOf([rectangle(0, 0, width, isSquare ? width : height)]));
        expect(holes.length).toBeGreaterThanOrEqual(3);
        expect(leastMisfit(holes)).toBeGreaterThan(5);
      }),
      { numRuns: trials(60) },
    );
  });

  test('nor where the part has holes of its own at its corners, or on a circle, which are used', {
    tags: ['long'],
  }, () => {
    const own = (at: readonly Place[]): Loop[] => at.map(({ x, y }) => reverseSpans(circle(x, y, 3)));
    fc.assert(
      fc.property(side, side, inset, fc.integer({ min: 3, max: 8 }), (width, height, off, count) => {
        const corners = [
          { x: off, y: off },
          { x: width - off, y: off },
          { x: width - off, y: height - off },
          { x: off, y: height - off },
        ];
        const ring = Array.from({ length: count }, (_, i) => ({
          x: width / 2 + 12 * Math.cos((2 * Math.PI * i) / count),
          y: height / 2 + 12 * Math.sin((2 * Math.PI * i) / count),
        }));
        for (const places of [corners, ring]) {
          const holes = holesOf([rectangle(0, 0, width, height), ...own(places)]);
          expect(leastMisfit(centers(holes))).toBeGreaterThan(5);
        }
        const used = holesOf([rectangle(0, 0, width, height), ...own(corners)]);
        // A rectangle of holes with sides and diagonal that differ enough has three that fit one way only.
        const [a, b] = [Math.min(width, height) - 2 * off, Math.max(width, height) - 2 * off];
        if (a > 30 && b - a > 30 && Math.hypot(a, b) - b > 30)
          expect(used.some(({ isOwn }) => isOwn === true)).toBe(true);
      }),
      { numRuns: trials(40) },
    );
  });

  test('four that the job gives at the corners of a rectangle get a pin beside the part', () => {
    const given = [
      [10, 10],
      [190, 10],
      [190, 110],
      [10, 110],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    expect(leastMisfit(given)).toBeLessThan(1e-6);
    const holes = holesOf([rectangle(0, 0, 200, 120)], given);
    expect(centers(holes).slice(0, 4)).toEqual(given);
    expect(holes).toHaveLength(5);
    expect(leastMisfit(centers(holes))).toBeGreaterThan(5);
  });

  test('one that is given in a hole of the part is that hole', () => {
    const sheet = [rectangle(0, 0, 200, 120), reverseSpans(circle(30, 20, 4.2))];
    expect(holesOf(sheet, [{ x: 30.2, y: 19.9 }])[0]).toMatchObject({
      center: { x: 30, y: 20 },
      radius: 4.2,
    });
  });

  test('the bound on how far off a wrong way is never exceeds what the search finds', () => {
    // Far enough apart that no two holes can come near one.
    const place = fc.record({
      x: fc.integer({ min: 0, max: 6 }).map((each) => 40 * each),
      y: fc.integer({ min: 0, max: 5 }).map((each) => 37 * each),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(place, { minLength: 3, maxLength: 5, selector: ({ x, y }) => `${x} ${y}` }),
        (holes) => {
          expect(Math.min(patternMisfit(holes), 18)).toBeLessThanOrEqual(leastMisfit(holes) + 1e-9);
        },
      ),
      { numRuns: trials(60) },
    );
  });
});
