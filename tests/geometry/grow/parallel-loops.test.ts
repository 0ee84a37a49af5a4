/**
 * Parallels cut at each other, against closed forms, and against the same offset read on the grid by winding number, which knows nothing of
 * how they are cut.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { gridOrigin, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { parallelLoops } from '#geometry/grow/parallel-loops.ts';
import { type PushedSpan, pushAlone, pushBorder } from '#geometry/grow/push-border.ts';
import { rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { cornerArcs } from '#geometry/loops/corner-arcs.ts';
import { distance, type Point } from '#geometry/point.ts';
import {
  arcSpan,
  distanceToSpan,
  type Loop,
  lineSpan,
  loopArea,
  loopsArea,
  pointAlong,
  reverseSpans,
} from '#geometry/span.ts';
import { footOn } from '#geometry/spans/carrier.ts';
import { randomOutlines } from '#support/geometry/random-outlines.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

const pushed = (loops: readonly Loop[], width: number): PushedSpan[][] =>
  loops.map((loop) => loop.map((span) => ({ span, width })));

const parallels = (loops: readonly Loop[], width: number, beside: readonly PushedSpan[] = []) =>
  parallelLoops(pushed(loops, width), beside, gridOrigin(loops.flat()));

/** The same, read on the grid. */
function onGrid(loops: readonly Loop[], width: number, beside: readonly PushedSpan[] = []): Loop[] {
  const origin = gridOrigin(loops.flat());
  const all = [...pushed(loops, width).map(pushBorder), ...beside.map(pushAlone)];
  const chains = cornerArcs(all.flatMap((each) => each.chains));
  const carriers = all.flatMap((each) => each.carriers).map((span) => ({ span, isKnown: false }));
  const wound = positivelyWound(chains.map((chain) => gridPolygonOf(chain, origin)));
  return rebuildLoops(wound, carriers, origin).map(spansOf);
}

function regular(sides: number, radius: number, at: Point = { x: 0, y: 0 }): Loop {
  const corner = (i: number): [number, number] => {
    const angle = 0.17 + (2 * Math.PI * i) / sides;
    return [at.x + radius * Math.cos(angle), at.y + radius * Math.sin(angle)];
  };
  return polygon(Array.from({ length: sides }, (_, i) => corner(i)));
}

const hook = polygon([
  [0, 0],
  [60, 0],
  [60, 20],
  [25, 20],
  [25, 50],
  [0, 50],
]);

/** Straight sides with round ends, the radius of which is half the width. */
const slot: Loop = [
  lineSpan({ x: 0, y: -6 }, { x: 35, y: -6 }),
  arcSpan({ center: { x: 35, y: 0 }, radius: 6, from: -Math.PI / 2, sweep: Math.PI }),
  lineSpan({ x: 35, y: 6 }, { x: 0, y: 6 }),
  arcSpan({ center: { x: 0, y: 0 }, radius: 6, from: Math.PI / 2, sweep: Math.PI }),
];

describe('closed forms', () => {
  test('of a square corner both sides are cut, and a corner that turns away is gone round', () => {
    const [loop, ...others] = parallels([hook], 3) ?? [];
    expect(others).toEqual([]);
    // 54 × 14 and 19 × 30, and what a square of 3 about the corner that turns away has outside its round.
    expect(loopArea(loop ?? [])).toBeCloseTo(54 * 14 + 19 * 30 + 9 * (1 - Math.PI / 4), 9);
    expect(loop?.filter(({ kind }) => kind === 'arc')).toHaveLength(1);
  });

  test('arcs keep their centres', () => {
    expect(loopsArea(parallels([slot], 2.5) ?? [])).toBeCloseTo(35 * 7 + Math.PI * 3.5 ** 2, 9);
    expect(loopsArea(parallels([circle(11, 9, 5)], 1.25) ?? [])).toBeCloseTo(Math.PI * 3.75 ** 2, 9);
  });

  test('a regular outline of 300 sides shrinks to its like', () => {
    const width = 2.5;
    const radius = 20 - width / Math.cos(Math.PI / 300);
    expect(loopsArea(parallels([regular(300, 20)], width) ?? [])).toBeCloseTo(
      loopArea(regular(300, radius)),
      8,
    );
  });

  test('what stands inside grows', () => {
    const island = reverseSpans(regular(5, 6, { x: 3, y: -2 }));
    const around = 2 * 5 * 6 * Math.sin(Math.PI / 5);
    const grown = -loopArea(island) + around * 1.75 + Math.PI * 1.75 ** 2;
    expect(loopsArea(parallels([rectangle(-30, -25, 40, 22), island], 1.75) ?? [])).toBeCloseTo(
      (70 - 3.5) * (47 - 3.5) - grown,
      8,
    );
  });
});

test('about a corner that hardly turns there is no round, and nothing is nearer than the width', () => {
  const bent = (rise: number) =>
    polygon([
      [0, 0],
      [30, 0],
      [30, 20],
      [14, 20 - rise],
      [0, 20],
    ]);
  const kinds = (rise: number) => new Set((parallels([bent(rise)], 2) ?? []).flat().map(({ kind }) => kind));
  expect([...kinds(0.1)]).toEqual(['line']);
  expect([...kinds(1)].sort()).toEqual(['arc', 'line']);
  const places = (parallels([bent(0.1)], 2) ?? []).flat().map(({ start }) => start);
  const least = Math.min(
    ...places.map((place) => Math.min(...bent(0.1).map((side) => distanceToSpan(side, place)))),
  );
  expect(least).toBeGreaterThan(2 - 1e-9);
  expect(least).toBeLessThan(2 + 1e-9);
});

describe('it takes the grid', () => {
  test('where a neck is two widths wide, or nearly', () => {
    const neck = (width: number) =>
      polygon([
        [0, 0],
        [30, 0],
        [30, 10],
        [34, 10],
        [34, 0],
        [70, 0],
        [70, 30],
        [34, 30],
        [34, 10 + width],
        [30, 10 + width],
        [30, 30],
        [0, 30],
      ]);
    expect([3.9, 4, 4.01, 4.03].map((width) => parallels([neck(width)], 2) === undefined)).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  test('where nothing is left of a side', () => {
    expect(parallels([rectangle(0, 0, 50, 6)], 3)).toBeUndefined();
    expect(parallels([circle(0, 0, 3)], 3)).toBeUndefined();
    expect(parallels([roundedRectangle(0, 0, 40, 30, 2)], 2)).toBeUndefined();
  });

  test('where sides keep back by unlike widths, or stay where they are', () => {
    const loopsOf = (widths: readonly number[]) => {
      const sides = rectangle(0, 0, 50, 40).map((span, at) => ({ span, width: itemAt(widths, at) }));
      return parallelLoops([sides], [], { x: 0, y: 0 });
    };
    expect(loopsOf([2, 2, 2.5, 2])).toBeUndefined();
    expect(loopsOf([0, 2, 2, 2])).toBeUndefined();
    expect(loopsOf([0, 0, 0, 0])).toBeUndefined();
    expect(loopsOf([2, 2, 2, 2])).toHaveLength(1);
  });

  test('where a line beside the border is too near, and only there', () => {
    const beside = (y: number) => [{ span: lineSpan({ x: 10, y }, { x: 30, y }), width: 5 }];
    expect(parallels([rectangle(0, 0, 50, 40)], 2, beside(-2.9))).toBeUndefined();
    expect(parallels([rectangle(0, 0, 50, 40)], 2, beside(-3.1))).toHaveLength(1);
  });

  test('in a corner between a line and an arc', () => {
    const half = [
      lineSpan({ x: -9, y: 0 }, { x: 9, y: 0 }),
      arcSpan({ center: { x: 0, y: 0 }, radius: 9, from: 0, sweep: Math.PI }),
    ];
    expect(parallels([half], 2)).toBeUndefined();
  });
});

describe('random outlines', () => {
  test('as on the grid, side by side and from the same one on', () => {
    let made = 0;
    fc.assert(
      fc.property(
        randomOutlines,
        fc.integer({ min: 2, max: 40 }),
        fc.boolean(),
        (outline, tenths, isIsland) => {
          const width = tenths / 10;
          const loops = isIsland ? [rectangle(-48, -50, 46, 52), reverseSpans(outline)] : [outline];
          const exact = parallels(loops, width);
          if (exact === undefined) return;
          made++;
          const grid = onGrid(loops, width);
          expect(exact.map((loop) => loop.map(({ kind }) => kind))).toEqual(
            grid.map((loop) => loop.map(({ kind }) => kind)),
          );
          // A corner that hardly turns slides along its sides, but not off them.
          const off = exact.flatMap((loop, l) =>
            loop.map(({ start }, at) => distance(start, footOn(itemAt(itemAt(grid, l), at), start))),
          );
          expect(off.filter((each) => each > 2e-5)).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
    expect(made).toBeGreaterThan(60);
  });

  test('no place on it is nearer to any side than the width', () => {
    fc.assert(
      fc.property(randomOutlines, fc.integer({ min: 2, max: 40 }), (outline, tenths) => {
        const width = tenths / 10;
        for (const span of (parallels([outline], width) ?? []).flat()) {
          for (const share of [0, 0.21, 0.5, 0.83, 1]) {
            const place = pointAlong(span, share);
            const nearest = outline.reduce(
              (least, side) => Math.min(least, distanceToSpan(side, place)),
              1e9,
            );
            expect(nearest).toBeCloseTo(width, 7);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

test('long sides that bend back by next to nothing keep the distance all the same', () => {
  let [made, refused] = [0, 0];
  const bends = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 12, maxLength: 12 });
  const ask = fc.record({
    mouth: fc.integer({ min: 10, max: 190 }),
    tenths: fc.integer({ min: 10, max: 900 }),
  });
  fc.assert(
    fc.property(ask, bends, fc.boolean(), ({ mouth, tenths }, drawn, isOutside) => {
      const [low, high] = [200 - mouth / 2, 200 + mouth / 2];
      // A frame that is open on one side: past its mouth nothing but the distance tells how near its ends are.
      const frame = [
        [0, 0],
        [600, 0],
        [600, low],
        [500, low],
        [500, 100],
        [100, 100],
        [100, 300],
        [500, 300],
        [500, high],
        [600, high],
        [600, 400],
        [0, 400],
      ] as const;
      // Each side has a corner of at most 0.1 mrad in it, either way.
      const bent = frame.flatMap(([x, y], i): [number, number][] => {
        const [toX, toY] = itemAt(frame, (i + 1) % frame.length);
        const by = itemAt(drawn, i) * 2e-7;
        return [
          [x, y],
          [x + 0.37 * (toX - x) - by * (toY - y), y + 0.37 * (toY - y) + by * (toX - x)],
        ];
      });
      const border = isOutside ? reverseSpans(polygon(bent)) : polygon(bent);
      const width = tenths / 10;
      const loops = parallels([border], width);
      if (loops === undefined) {
        refused++;
        return;
      }
      made++;
      for (const span of loops.flat()) {
        for (const share of [0, 0.03, 0.2, 0.5, 0.8, 0.97, 1]) {
          const at = pointAlong(span, share);
          const least = border.reduce((gap, each) => Math.min(gap, distanceToSpan(each, at)), width + 1);
          // A bend that counted for more would show by up to 0.05 mm; ends of parallels that are one place to the grid by some nanometres.
          expect(least).toBeGreaterThan(width - 2e-5);
        }
      }
    }),
    { numRuns: 300 },
  );
  expect(Math.min(made, refused)).toBeGreaterThan(40);
});
