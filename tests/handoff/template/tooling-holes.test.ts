/** Templates fit one way only: over random parts no turn or mirror, of any angle and about any place, brings their holes onto themselves. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arcSpan, distanceToSpan, type Loop, lineSpan, reverseSpans } from '#geometry/span.ts';
import { patternMisfit } from '#handoff/template/pattern-misfit.ts';
import { type HolesAsk, ownHoles, type ToolingHole, toolingHoles } from '#handoff/template/tooling-holes.ts';
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

describe('holes by hand, of a plate of 200 by 120', () => {
  const PLATE = rectangle(0, 0, 200, 120);
  const BELOW = { minX: 0, maxX: 200, minY: -100, maxY: -25 };
  const own = (...at: readonly (readonly [number, number])[]): Loop[] =>
    at.map(([x, y]) => reverseSpans(circle(x, y, 3)));
  const laid = (change: Partial<HolesAsk>) =>
    toolingHoles({
      sheet: [PLATE],
      part: [PLATE],
      lines: [],
      margin: 25,
      diameter: 6,
      clear: 5.75,
      holes: undefined,
      field: BELOW,
      ...change,
    });
  const found = (change: Partial<HolesAsk>) => laid(change).map(({ center: { x, y } }) => [x, y]);

  test('round cutouts of 2 to 40 mm are holes; a larger or smaller one, an outer edge, a slot, a half round and a lens are not', () => {
    const arc = (x: number, from: number, sweep: number) =>
      arcSpan({ center: { x, y: 60 }, radius: 9, from, sweep });
    const half = arc(50, 0, -Math.PI);
    const slot = [half, lineSpan(half.end, { x: 41, y: 80 }), lineSpan({ x: 41, y: 80 }, half.start)];
    // Two arcs of one radius, 9 mm apart.
    const lens = [
      arc(100, Math.PI / 3, (-2 * Math.PI) / 3),
      arc(109, (-2 * Math.PI) / 3, (-2 * Math.PI) / 3),
    ];
    const cut = (x: number, radius: number) => reverseSpans(circle(x, 30, radius));
    const sheet = [PLATE, circle(400, 60, 12), [], slot, lens, reverseSpans(rectangle(150, 70, 158, 79))];
    expect(ownHoles([...sheet, cut(20, 1), cut(40, 0.95), cut(90, 20), cut(150, 20.5)])).toEqual([
      { center: { x: 20, y: 30 }, radius: 1, isOwn: true },
      { center: { x: 90, y: 30 }, radius: 20, isOwn: true },
    ]);
  });

  test('three of its own that fit one way only are all, unless a line comes nearer to one than its radius and 5.75 mm', () => {
    const three = [
      [10, 10],
      [190, 14],
      [60, 110],
    ] as const;
    const sheet = [PLATE, ...own(...three)];
    expect(laid({ sheet })).toEqual(
      three.map(([x, y], at) => ({ name: 'ABC'[at], center: { x, y }, radius: 3, isOwn: true })),
    );
    const below = (y: number) => [lineSpan({ x: 0, y }, { x: 200, y })];
    expect(found({ sheet, lines: below(101.25) })).toEqual(three);
    expect(found({ sheet, lines: below(101.5) })).not.toContainEqual([60, 110]);
  });

  test('of more the three are taken that lie far apart and fit one way best', () => {
    // The largest triangle, of the first three, is as good turned over. Of 180, 165.5 and 76.2 two sides differ by just 14.5:
    // 6300 mm² count by 7.2 of 24. Of 165.5, 134.5 and 67.1 they differ by 31: 4350 mm² count by 15.5 of 24, which is more.
    const four = own([10, 10], [190, 10], [100, 110], [40, 80]);
    expect(found({ sheet: [PLATE, ...four] })).toEqual([
      [190, 10],
      [100, 110],
      [40, 80],
    ]);
  });

  test('of 36 holes the three come of the twelve outermost: a square corner with sides that differ by 52 mm', () => {
    const grid = Array.from(
      { length: 36 },
      (_, at) => [20 + 40 * (at % 6), 20 + 37 * Math.floor(at / 6)] as const,
    );
    const holes = centers(laid({ sheet: [rectangle(0, 0, 240, 225), ...own(...grid)] }));
    const sides = [0, 1, 2].map((at) =>
      gap(holes[at] ?? { x: 0, y: 0 }, holes[(at + 1) % 3] ?? { x: 0, y: 0 }),
    );
    // 200 by 148 differ by as much as counts in full: 14 800 mm². The corners' own 200 by 185 differ by 15: 18 500 count by 7.5 of 24.
    expect(sides.sort((a, b) => a - b)).toEqual(
      [148, 200, Math.hypot(200, 148)].map((side) => expect.closeTo(side, 9)),
    );
  });

  test('without any, three pins of 6 mm stand 12.5 mm outside the plate, 18 mm apart or more, as far as its corners', () => {
    const pins = laid({});
    expect(pins.map(({ name, radius, isOwn }) => [name, radius, isOwn])).toEqual(
      ['A', 'B', 'C'].map((name) => [name, 3, undefined]),
    );
    for (const pin of centers(pins))
      expect(Math.min(...PLATE.map((span) => distanceToSpan(span, pin)))).toBeCloseTo(12.5, 3);
    const [a, b, c] = centers(pins);
    if (a === undefined || b === undefined || c === undefined) throw new Error('three pins');
    // Three corners of the frame on which they stand would make half of it, if they stood in its very corners.
    const area = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
    expect(area).toBeGreaterThan((0.85 * 225 * 145) / 2);
    expect(area).toBeLessThan((225 * 145) / 2);
  });

  test('pins beside a part of 12 by 9 keep 18 mm from the hole that is given in it and from each other', () => {
    const small = rectangle(0, 0, 12, 9);
    const field = { minX: -12.5, maxX: 24.5, minY: -100, maxY: -25 };
    const holes = centers(laid({ sheet: [small], part: [small], field, holes: [{ x: 3, y: 4 }] }));
    expect(holes.length).toBeGreaterThan(2);
    holes.forEach((hole, at) => {
      for (const other of holes.slice(at + 1)) expect(gap(hole, other)).toBeGreaterThanOrEqual(18);
    });
  });

  test.each([
    [190, 108, 0, 0, -1, -1],
    [10, 112, 200, 0, 1, -1],
    [10, 12, 200, 120, 1, 1],
    [190, 12, 0, 120, -1, 1],
  ])(
    'a hole given at %d, %d gets the pin farthest from it, round the corner at %d, %d, and one more',
    (...at) => {
      const [x, y, cornerX, cornerY, right, up] = at;
      const off = 12.5 * Math.SQRT1_2;
      const holes = laid({ holes: [{ x, y }] });
      expect(holes[0]).toEqual({ name: 'A', center: { x, y }, radius: 3 });
      expect(holes[1]?.center).toEqual({
        x: expect.closeTo(cornerX + right * off, 3),
        y: expect.closeTo(cornerY + up * off, 3),
      });
      expect(holes).toHaveLength(3);
      expect(leastMisfit(centers(holes))).toBeGreaterThan(6);
    },
  );

  test('a square has pins beside its sides too: any three of its corners fit two ways', () => {
    const square = rectangle(0, 0, 120, 120);
    const pins = centers(laid({ sheet: [square], part: [square] }));
    expect(pins).toHaveLength(3);
    expect(leastMisfit(pins)).toBeGreaterThan(6);
    for (const pin of pins)
      expect(Math.min(...square.map((span) => distanceToSpan(span, pin)))).toBeCloseTo(12.5, 3);
  });

  test('three of its own that two ways fit within 6 mm are not all', () => {
    // Sides of 102, 180 and 186.6: turned over, a hole is off by 3.3 mm.
    const holes = centers(laid({ sheet: [PLATE, ...own([10, 10], [190, 14], [30, 110])] }));
    expect(patternMisfit(holes)).toBeGreaterThanOrEqual(6);
  });

  test('one given 0.6 mm beside the part’s own is a hole by itself', () => {
    const [given] = laid({ sheet: [PLATE, ...own([30, 20])], holes: [{ x: 30.6, y: 20 }] });
    expect(given).toEqual({ name: 'A', center: { x: 30.6, y: 20 }, radius: 3 });
  });

  test('no pin stands in a margin that has no room for it clear of the lines: 5.5 mm beside it are less than 5.75', () => {
    const holes = [
      [10, 10],
      [190, 10],
      [190, 110],
      [10, 110],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    expect(laid({ holes, margin: 17 })).toHaveLength(4);
    expect(laid({ holes, margin: 17.5 })).toHaveLength(5);
    // Of holes that nobody chose the template must have some.
    expect(laid({ margin: 17 })).toHaveLength(3);
    expect(patternMisfit(centers(laid({ margin: 17 })))).toBeGreaterThanOrEqual(6);
  });

  test('no pin comes within its width of the label’s field', () => {
    // Beside a strip of 20 by 300 the pin farthest from a hole at its upper end stands round a lower corner, 8.84 mm off it either way.
    const strip = rectangle(0, 0, 20, 300);
    const off = 12.5 * Math.SQRT1_2;
    const pin = (x: number, field: Partial<HolesAsk['field']>) => {
      const wide = { minX: -40, maxX: 60, minY: -100, maxY: -14.8, ...field };
      return centers(laid({ sheet: [strip], part: [strip], holes: [{ x, y: 290 }], field: wide }))[1];
    };
    const left = { x: expect.closeTo(-off, 3), y: expect.closeTo(-off, 3) };
    const right = { x: expect.closeTo(20 + off, 3), y: expect.closeTo(-off, 3) };
    expect(pin(4, { maxY: -14.9 })).toEqual(right);
    expect(pin(4, { maxX: 22.8 })).toEqual(right);
    expect(pin(16, { minX: -2.8 })).toEqual(left);
    for (const covered of [{}, { maxX: 22.9 }, { minX: -2.9 }])
      for (const x of [4, 16]) {
        const { y = 0 } = pin(x, { minX: -2.9, maxX: 22.9, ...covered }) ?? {};
        expect(y).toBeGreaterThan(-8.8);
      }
  });

  test('the twenty-seventh hole is A2', () => {
    const holes = Array.from({ length: 28 }, (_, at) => ({
      x: 7 * at + at * at * 0.13,
      y: (at * at * 1.7) % 97,
    }));
    const names = laid({ holes }).map(({ name }) => name);
    expect([names[0], ...names.slice(24, 28)]).toEqual(['A', 'Y', 'Z', 'A2', 'B2']);
  });
});

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
