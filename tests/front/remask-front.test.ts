/** The front of a run that is masked again for each stage (M2.6): what holds for any part, at any minute. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { depthAt, depthsAt } from '#front/depth-at.ts';
import { endMinute, type Front, frontOfPlan, momentAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedIn } from '#front/reached.ts';
import { reliefMesh } from '#front/relief/relief-mesh.ts';
import { sectionAlong } from '#front/section/section-along.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong } from '#geometry/span.ts';
import type { EdgeDatum } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { chordGap } from '#support/geometry/chord-gap.ts';
import { enclosedVolume, looseEdges } from '#support/geometry/mesh-faults.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { kitOf, RATE } from '#support/parts/front-of.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { stageVolumes } from '#support/parts/stage-volumes.ts';
import { planOf, type RandomPart, randomPart, TIGHT_SHEET } from '#support/random-parts/random-part.ts';

const runs = (usual: number) => ({ numRuns: Number(process.env['RUNS'] ?? usual) });

interface Ask {
  readonly isTight?: boolean;
  readonly edgeDatum?: EdgeDatum;
}

const anyDatum = fc.constantFrom<EdgeDatum>('shallow-edge', 'mid-wall', 'deep-foot');

function remasked(
  part: RandomPart,
  { isTight = false, edgeDatum = 'shallow-edge' }: Ask = {},
): { readonly plan: EtchPlan; readonly front: Front } {
  const plan = planOf(part, edgeDatum, isTight ? TIGHT_SHEET : undefined, 're-mask');
  return { plan, front: frontOfPlan(plan, 6) };
}

/** Places all over the sheet of a random part, off its round numbers. */
const places = fc.array(
  fc.record({
    x: fc.integer({ min: -9_500, max: 79_500 }).map((x) => x / 1000 + 0.000_37),
    y: fc.integer({ min: -9_500, max: 79_500 }).map((y) => y / 1000 + 0.000_53),
  }),
  { minLength: 40, maxLength: 40 },
);
const flat = (points: readonly Point[]) => Float64Array.from(points.flatMap(({ x, y }) => [x, y]));

/** The closed form again, stage by stage in the order of the run, each below its own floor, with no index. */
function plainDepth({ stages, etchFactor, rate }: Front, point: Point, minute: number): number {
  const factor = etchFactor[0]?.[1] ?? 1;
  return stages.reduce((deepest, { opening, level, base, startMinute }) => {
    const cut = Math.min(level - base, rate * Math.max(0, minute - startMinute));
    if (cut === 0) return deepest;
    const away = isInsideLoops(opening, point)
      ? 0
      : Math.min(...opening.flat().map((span) => distanceToSpan(span, point)));
    const squared = cut * cut - (away / factor) ** 2;
    return squared > 0 ? Math.max(deepest, base + Math.sqrt(squared)) : deepest;
  }, 0);
}

test('M2.6 the indexed depth is the closed form, on random planned parts at random minutes', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(
      randomPart,
      places,
      fc.integer({ min: 1, max: 100 }),
      anyDatum,
      (part, points, percent, edgeDatum) => {
        const { front } = remasked(part, { edgeDatum });
        const minute = (endMinute(front) * percent) / 100;
        const { depths } = depthsAt(indexFront(front), flat(points), minute);
        points.forEach((point, i) => {
          expect(Math.abs((depths[i] ?? Number.NaN) - plainDepth(front, point, minute))).toBeLessThan(1e-9);
        });
      },
    ),
    runs(60),
  );
});

test('M3.5 no region ends deeper than its level; a window grown by its own undercut lies on the floor before', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, places, fc.boolean(), anyDatum, (part, points, isTight, edgeDatum) => {
      const { plan, front } = remasked(part, { isTight, edgeDatum });
      const { depths } = depthsAt(indexFront(front), flat(points));
      points.forEach((point, i) => {
        const region = plan.regions.find(({ loops }) => isInsideLoops(loops, point));
        // A line that is off by 0.005 mm shows most at the top of a wall: √(2 · 3 · 0.005 / 0.5) of depth.
        if (region !== undefined && edgeDatum === 'shallow-edge')
          expect(depths[i]).toBeLessThan(region.level === 0 ? 0.25 : region.level + 0.25);
      });
      plan.stages.forEach(({ opening, etch }, i) => {
        const before = plan.stages[i - 1]?.opening;
        if (before === undefined) return;
        const reach = etch * part.factor;
        for (const span of before.flat()) {
          const at = pointAlong(span, 0.37);
          const isOnRim = plan.sheet.flat().some((edge) => distanceToSpan(edge, at) < 1e-6);
          if (isOnRim) continue;
          const gap = Math.min(
            ...opening.flat().map((each) => distanceToSpan(each, at)),
            Number.POSITIVE_INFINITY,
          );
          expect(isInsideLoops(opening, at)).toBe(false);
          expect(gap).toBeGreaterThan(reach - 0.005);
        }
      });
    }),
    runs(60),
  );
});

test('M2.6 the front only ever goes deeper, and a stage touches nothing above its own floor', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, places, (part, points) => {
      const { front } = remasked(part);
      const index = indexFront(front);
      let before: Float64Array = new Float64Array(points.length);
      for (const { base, startMinute, minutes } of [...front.stages].reverse()) {
        const { depths } = depthsAt(index, flat(points), startMinute + minutes);
        depths.forEach((depth, i) => {
          const earlier = before[i] ?? 0;
          expect(depth).toBeGreaterThanOrEqual(earlier - 1e-9);
          if (depth > earlier + 1e-9) expect(earlier).toBeCloseTo(base, 9);
        });
        before = depths;
      }
    }),
    runs(40),
  );
});

test('M2.6 reliefs of random planned parts are solids at any minute, and hold the integrated volume', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(
      randomPart,
      fc.constantFrom(0.15, 0.5, 0.85, 1),
      fc.boolean(),
      anyDatum,
      (part, share, isTight, edgeDatum) => {
        const { front } = remasked(part, { isTight, edgeDatum });
        const minute = share === 1 ? undefined : endMinute(front) * share;
        const kit = makeContourKit(indexFront(front));
        const mesh = reliefMesh(kit, { minute });
        expect(looseEdges(mesh)).toBe(0);
        const whole = (isTight ? 80 * 80 : 90 * 90) * 6;
        const left = whole - removedVolume(kit, minute);
        if (edgeDatum === 'shallow-edge')
          expect(Math.abs(enclosedVolume(mesh) / left - 1)).toBeLessThan(0.001);
      },
    ),
    runs(40),
  );
});

test('M2.6 volumes of the stages add up to the whole, and the whole is the sum of depths on a fine grid', {
  tags: ['long'],
}, () => {
  const step = 0.5;
  const side = 90 / step;
  // Off the round numbers that the parts are drawn on, so that errors along their edges cancel.
  const at = (node: number) => -10 + (node + 0.4137) * step;
  const points = Float64Array.from({ length: 2 * side * side }, (_, i) => {
    const node = i >> 1;
    return at(i % 2 === 0 ? node % side : Math.floor(node / side));
  });
  fc.assert(
    fc.property(randomPart, anyDatum, (part, edgeDatum) => {
      const { front, plan } = remasked(part, { edgeDatum });
      const kit = makeContourKit(indexFront(front));
      const stages = stageVolumes(kit);
      expect(stages.map(({ stage }) => stage)).toEqual(plan.stages.map(({ number }) => number));
      for (const { volume } of stages) expect(volume).toBeGreaterThanOrEqual(0);
      const whole = removedVolume(kit);
      const sum = stages.reduce((total, { volume }) => total + volume, 0);
      expect(Math.abs(sum - whole)).toBeLessThanOrEqual(1e-9 * whole);
      const summed =
        depthsAt(kit.index, points).depths.reduce((total, depth) => total + depth, 0) * step * step;
      // A grid misplaces an edge of length L by part of a step: up to 400 mm of edges, 3 mm deep, a tenth of a step.
      expect(Math.abs(summed - whole)).toBeLessThan(60 + 0.002 * whole);
    }),
    runs(40),
  );
});

test('M2.6 contours of random parts hold what is deeper and nothing else', { tags: ['long'] }, () => {
  fc.assert(
    fc.property(randomPart, fc.integer({ min: 0, max: 28 }), anyDatum, (part, tenths, edgeDatum) => {
      const depth = tenths / 10 + 0.013;
      const kit = makeContourKit(indexFront(remasked(part, { edgeDatum }).front));
      for (const span of contourLoops(kit, { depth }).loops.flat()) {
        const { x, y } = pointAlong(span, 0.4);
        const isOnRim = [x, y].some((value) => Math.abs(value + 10) < 1e-6 || Math.abs(value - 80) < 1e-6);
        if (!isOnRim) expect(Math.abs(depthAt(kit.index, { x, y }).depth - depth)).toBeLessThan(1e-4);
      }
    }),
    runs(60),
  );
});

test('M3.4 M2.6 floors, deepest and shallowest of random planned regions agree with a fine grid of depths', {
  tags: ['long'],
}, () => {
  const step = 0.4;
  fc.assert(
    fc.property(randomPart, (part) => {
      const { front, plan } = remasked(part);
      const kit = makeContourKit(indexFront(front));
      for (const region of plan.regions.filter(({ area }) => area < 1000)) {
        const floorDepth = region.level - 0.05;
        const reached = reachedIn(kit, { ...region, floorDepth });
        const inside: Point[] = [];
        for (let x = -10 + step * 0.4137; x < 80; x += step) {
          for (let y = -10 + step * 0.5871; y < 80; y += step) {
            const isNear = Math.hypot(x - region.label.x, y - region.label.y) < 60;
            if (isNear && isInsideLoops(region.loops, { x, y })) inside.push({ x, y });
          }
        }
        const { depths } = depthsAt(kit.index, flat(inside));
        const isFloor = (depth: number) => (region.level === 0 ? depth <= 0.005 : depth >= floorDepth);
        const onFloor = depths.filter(isFloor).length;
        // Half a step along a border of at most 100 mm.
        expect(Math.abs(onFloor * step * step - reached.floorArea)).toBeLessThan(0.2 * 100);
        for (const depth of depths) {
          expect(depth).toBeLessThanOrEqual(reached.deepest + 1e-9);
          expect(depth).toBeGreaterThanOrEqual(reached.shallowest - 2e-4);
        }
      }
    }),
    runs(20),
  );
});

test('M2.6 straight lines between the places of a section keep to the front, at any minute and along any line', {
  tags: ['long'],
}, () => {
  const tolerance = 0.005;
  fc.assert(
    fc.property(randomPart, places, fc.integer({ min: 1, max: 100 }), (part, [from, to], percent) => {
      if (from === undefined || to === undefined) return;
      const { front } = remasked(part);
      const index = indexFront(front);
      const minute = (endMinute(front) * percent) / 100;
      const section = sectionAlong(index, from, to, { minute, tolerance });
      expect(chordGap(section, (place) => depthAt(index, place, minute).depth)).toBeLessThanOrEqual(
        tolerance,
      );
    }),
    runs(60),
  );
});

test.each([
  { edgeDatum: 'shallow-edge', share: 0 },
  { edgeDatum: 'mid-wall', share: 0.5 },
  { edgeDatum: 'deep-foot', share: 1 },
] as const)(
  'M3.3 M3.5 every wall stands on its drawn line at a share $share of its step',
  ({ edgeDatum, share }) => {
    // Land, 1, 3, 2.2 mm and land again, side by side; φ = 0.8.
    const edges = [0, 12, 30, 45] as const;
    const floors = [1, 3, 2.2] as const;
    const part = partOf({
      sheet: rectangle(-30, -30, 90, 90),
      outlines: floors.map((_, i) => rectangle(edges[i] ?? 0, 0, edges[i + 1] ?? 0, 60)),
    });
    const asked = askedAt(
      part,
      floors.map((depth, i) => [((edges[i] ?? 0) + (edges[i + 1] ?? 0)) / 2, 30, depth] as const),
    );
    const plan = makePlan({
      part,
      asked,
      job: plainJob({ etchFactor: [[0, 0.8]], masking: 're-mask', edgeDatum }),
    });
    const index = indexFront(frontOfPlan(plan, 6));
    edges.forEach((x, i) => {
      const [one, other] = [floors[i - 1] ?? 0, floors[i] ?? 0];
      const [shallow, deep] = [Math.min(one, other), Math.max(one, other)];
      expect(depthAt(index, { x, y: 30 }).depth, `at x = ${x}`).toBeCloseTo(
        shallow + share * (deep - shallow),
        2,
      );
    });
    for (const [i, depth] of floors.entries()) {
      const middle = ((edges[i] ?? 0) + (edges[i + 1] ?? 0)) / 2;
      expect(depthAt(index, { x: middle, y: 30 }).depth).toBe(depth);
    }
  },
);

const stacked = {
  masking: 're-mask',
  stages: [
    { level: 3, opening: [rectangle(6, 6, 34, 34)] },
    { level: 1, opening: [rectangle(2, 2, 38, 38)] },
  ],
} as const;

test('M5.2 each stage takes the volume of its own window, by Steiner’s formula for a square', () => {
  // A ℓ + π L ℓ² / 4 + 2 π ℓ³ / 3 for the depth of each stage alone, φ = 1: derived in docs/method.md.
  const steiner = (side: number, cut: number): number =>
    side * side * cut + Math.PI * side * cut * cut + (2 * Math.PI * cut ** 3) / 3;
  const [shallow, deep] = stageVolumes(kitOf(stacked));
  expect(shallow?.stage).toBe(1);
  expect((shallow?.volume ?? 0) / steiner(36, 1)).toBeCloseTo(1, 6);
  expect((deep?.volume ?? 0) / steiner(28, 2)).toBeCloseTo(1, 6);
});

test('M2.6 walls stand on each other: a stage’s wall starts where the floor before it ends', () => {
  const { index } = kitOf(stacked);
  const depths = [3, 4, 5, 6].map((x) => depthAt(index, { x, y: 20 }));
  expect(depths.map(({ stage }) => stage)).toEqual([1, 1, 2, 2]);
  expect(depths[0]?.depth).toBe(1);
  expect(depths[2]?.depth).toBeCloseTo(1 + Math.sqrt(4 - 1), 12);
  expect(depths[3]?.depth).toBe(3);
  const section = sectionAlong(index, { x: 20, y: 20 }, { x: 0, y: 20 }, { minute: 2 / RATE });
  expect(section[0]?.depth).toBeCloseTo(2, 12);
  expect(section[0]?.bands.map((depth) => Number(depth.toFixed(9)))).toEqual([1, 2]);
});

test('M2.6 before its turn a stage has cut nothing, and in its turn it counts from its own floor', () => {
  const front = kitOf(stacked).index.front;
  expect(momentAt(front, 0.5 / RATE).cuts).toEqual([0, 0.5]);
  expect(momentAt(front, 1.5 / RATE).cuts[0]).toBeCloseTo(0.5, 12);
  expect(momentAt(front).cuts).toEqual([2, 1]);
  expect(momentAt(front).floors).toEqual([3, 1]);
});
