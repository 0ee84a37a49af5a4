import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depthAt, depthsAt } from '#front/depth-at.ts';
import { endMinute, type Front, momentAt, reachAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, reverseSpans } from '#geometry/span.ts';
import { type Movement, moveSpan } from '#support/geometry/move-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { frontOf, RATE } from '#support/parts/front-of.ts';
import { planOf, type RandomPart, randomPart } from '#support/random-parts/random-part.ts';

const FAR = 400;

/** Openings that reach far to the left and up to the given x, in a sheet that goes on for ever. */
function strips(stages: readonly (readonly [level: number, x: number])[], etchFactor: number) {
  return indexFront(
    frontOf({
      stages: stages.map(([level, x]) => ({ level, opening: [rectangle(-FAR, -FAR, x, FAR)] })),
      etchFactor,
    }),
  );
}

// Scribe positions of the worked table of the method, computed there with a separate fast-marching first-arrival solver on
// a 0.02 mm grid; that solver read 2.205, 1.009 and 0.000 at the drawn lines.
test.each([
  { factor: 1, scribes: [5.9604, 12.0404, 17.0] },
  { factor: 0.8, scribes: [6.3683, 12.4323, 17.2] },
  { factor: 1.5, scribes: [4.9406, 11.0606, 16.5] },
])(
  'M2 levels 3.0 / 2.2 / 1.0 side by side, φ $factor: at the drawn lines the front stands at the next level',
  ({ factor, scribes }) => {
    const levels = [3, 2.2, 1];
    const index = strips(
      levels.map((level, i) => [level, scribes[i] ?? Number.NaN]),
      factor,
    );
    for (const [x, expected] of [
      [8, 2.2],
      [14, 1],
      [18, 0],
    ] as const) {
      // The table gives four decimals; near the surface, where the wall is upright, they show most.
      expect(depthAt(index, { x, y: 0 }).depth).toBeCloseTo(expected, expected === 0 ? 2 : 3);
    }
  },
);

test('M2 a land 6 wide between two openings, φ 1: whole at depth 2.9, lost at 3, a ridge 4.0 below the surface at 5', () => {
  // Worked example: half the land is 3, and at depth D the ridge stands at √(D² − 3²).
  const twoOpenings = [rectangle(-FAR, -FAR, -3, FAR), rectangle(3, -FAR, FAR, FAR)];
  const ridgeAt = (level: number): number =>
    depthAt(indexFront(frontOf({ stages: [{ level, opening: twoOpenings }] })), { x: 0, y: 0 }).depth;
  expect(ridgeAt(2.9)).toBe(0);
  expect(ridgeAt(3)).toBeCloseTo(0, 6);
  expect(ridgeAt(5)).toBeCloseTo(4, 12);
});

test('M2 a floor says the stage whose opening it lies in, a wall the stage that it came from, untouched metal 0', () => {
  const index = indexFront(
    frontOf({
      stages: [
        { level: 3, opening: [rectangle(10, 10, 20, 20)] },
        { level: 1, opening: [rectangle(0, 0, 40, 40)] },
      ],
    }),
  );
  expect(depthAt(index, { x: 15, y: 15 })).toEqual({ depth: 3, stage: 1 });
  expect(depthAt(index, { x: 35, y: 35 })).toEqual({ depth: 1, stage: 2 });
  expect(depthAt(index, { x: 21, y: 15 }).stage).toBe(1);
  expect(depthAt(index, { x: 21, y: 15 }).depth).toBeCloseTo(Math.sqrt(8), 12);
  expect(depthAt(index, { x: 40.5, y: 20 }).stage).toBe(2);
  expect(depthAt(index, { x: 60, y: 20 })).toEqual({ depth: 0, stage: 0 });
});

test('M2 off the sheet there is no metal to etch', () => {
  const index = indexFront(
    frontOf({
      stages: [{ level: 2, opening: [rectangle(0, 0, 10, 10)] }],
      sheet: [rectangle(0, -20, 40, 40)],
    }),
  );
  expect(depthAt(index, { x: 0.5, y: 5 }).depth).toBe(2);
  expect(depthAt(index, { x: -0.5, y: 5 })).toEqual({ depth: 0, stage: 0 });
});

test('M2 with a table of etch factors each stage runs at the factor of the cut it has had', () => {
  const front = frontOf({
    stages: [{ level: 4, opening: [rectangle(-FAR, -FAR, 0, FAR)] }],
    etchFactor: [
      [1, 0.8],
      [3, 1.2],
    ],
  });
  // Linear between rows and held beyond them: at a cut of 2 mm the factor is 1.0, at 4 mm 1.2.
  const moment = momentAt(front, 2 / RATE);
  expect(moment.factors[0]).toBeCloseTo(1, 12);
  expect(reachAt(moment, 0, 0)).toBeCloseTo(2, 12);
  expect(reachAt(momentAt(front), 0, 0)).toBeCloseTo(4.8, 12);
});

/** The closed form again, span by span with the plain tools of the plane and no index. */
function plainDepth(front: Front, point: Point, minute?: number): number {
  const { cuts, factors } = momentAt(front, minute);
  const squares = front.stages.map(({ opening }, i) => {
    const cut = cuts[i] ?? 0;
    if (cut === 0) return 0;
    if (isInsideLoops(opening, point)) return cut * cut;
    const away = Math.min(...opening.flat().map((span) => distanceToSpan(span, point)));
    return cut * cut - (away / (factors[i] ?? 1)) ** 2;
  });
  return Math.sqrt(Math.max(0, ...squares));
}

/** Places all over the sheet of a random part, off its round numbers. */
const place = fc.record({
  x: fc.integer({ min: -9_500, max: 79_500 }).map((x) => x / 1000 + 0.000_37),
  y: fc.integer({ min: -9_500, max: 79_500 }).map((y) => y / 1000 + 0.000_53),
});
const places = fc.array(place, { minLength: 40, maxLength: 40 });

function frontOfPart(part: RandomPart): Front {
  const { stages, etchFactor, rate, sheet } = planOf(part);
  return { stages, etchFactor, rate, sheet, thickness: 6 };
}

const asProperty = { numRuns: 60 };

test('M2 the indexed depth is the closed form, on random planned parts at random minutes', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, places, fc.integer({ min: 0, max: 100 }), (part, points, percent) => {
      const front = frontOfPart(part);
      const minute = (endMinute(front) * percent) / 100;
      const { depths } = depthsAt(
        indexFront(front),
        Float64Array.from(points.flatMap(({ x, y }) => [x, y])),
        minute,
      );
      points.forEach((point, i) => {
        expect(Math.abs((depths[i] ?? Number.NaN) - plainDepth(front, point, minute))).toBeLessThan(1e-9);
      });
    }),
    asProperty,
  );
});

test('M2 the front only ever goes deeper as time goes on', { tags: ['long'] }, () => {
  fc.assert(
    fc.property(randomPart, places, (part, points) => {
      const front = frontOfPart(part);
      const index = indexFront(front);
      const flat = Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
      let before: Float64Array = new Float64Array(points.length);
      for (let step = 1; step <= 6; step++) {
        const { depths } = depthsAt(index, flat, (endMinute(front) * step) / 6);
        depths.forEach((depth, i) => {
          expect(depth).toBeGreaterThanOrEqual((before[i] ?? 0) - 1e-12);
        });
        before = depths;
      }
    }),
    asProperty,
  );
});

test('M3.1 no region ends deeper than its level, beyond the accuracy of a scribe line', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, places, (part, points) => {
      const plan = planOf(part);
      const { depths } = depthsAt(
        indexFront(frontOfPart(part)),
        Float64Array.from(points.flatMap(({ x, y }) => [x, y])),
      );
      points.forEach((point, i) => {
        const region = plan.regions.find(({ loops }) => isInsideLoops(loops, point));
        if (region === undefined) return;
        // 0.005 mm sideways is most depth where the wall is upright, at the surface: √(2 · 3 · 0.005 / 0.5).
        const allowed = region.level === 0 ? 0.25 : region.level + 0.01;
        expect(depths[i]).toBeLessThan(allowed);
      });
    }),
    asProperty,
  );
});

test('M2 moving, turning and mirroring a drawing moves, turns and mirrors the depth map, to 1 µm', {
  tags: ['long'],
}, () => {
  const movement = fc.record({
    turn: fc.integer({ min: 0, max: 628 }).map((hundredths) => hundredths / 100),
    factor: fc.constant(1),
    mirrored: fc.boolean(),
    shift: fc.record({ x: fc.integer({ min: -3000, max: 3000 }), y: fc.integer({ min: -3000, max: 3000 }) }),
  });
  fc.assert(
    fc.property(randomPart, places, movement, (part, points, move) => {
      const front = frontOfPart(part);
      const moved = {
        ...front,
        stages: front.stages.map((s) => ({ ...s, opening: moveLoops(s.opening, move) })),
      };
      const from = Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
      const to = Float64Array.from(points.flatMap((point) => movePoint(point, move)));
      const here = depthsAt(indexFront(front), from).depths;
      const there = depthsAt(indexFront({ ...moved, sheet: moveLoops(front.sheet, move) }), to).depths;
      here.forEach((depth, i) => {
        expect(Math.abs(depth - (there[i] ?? Number.NaN))).toBeLessThan(0.001);
      });
    }),
    asProperty,
  );
});

function moveLoops(loops: readonly Loop[], move: Movement): Loop[] {
  return loops.map((loop) => {
    const spans = loop.map((span) => moveSpan(span, move));
    return move.mirrored ? reverseSpans(spans) : spans;
  });
}

function movePoint({ x, y }: Point, move: Movement): number[] {
  const { start } = moveSpan({ kind: 'line', start: { x, y }, end: { x, y } }, move);
  return [start.x, start.y];
}

test.each([
  { name: 'square', loop: rectangle(0, 0, 20, 10) },
  { name: 'rounded', loop: roundedRectangle(0, 0, 20, 10, 3) },
  { name: 'round', loop: circle(10, 5, 5) },
])(
  'M2 an island ($name) in an opening stands untouched where it is farther than the undercut from the etch',
  ({ loop }) => {
    const opening = [rectangle(-30, -30, 50, 40), reverseSpans(loop)];
    const index = indexFront(frontOf({ stages: [{ level: 1, opening }] }));
    expect(depthAt(index, { x: 10, y: 5 }).depth).toBe(0);
    expect(depthAt(index, { x: 10, y: 0.6 }).depth).toBeCloseTo(0.8, 12);
    expect(depthAt(index, { x: 10, y: -1 }).depth).toBe(1);
  },
);
