/** Fronts that once came out wrong, each named for its trouble: volumes against depths strewn over the part, contours closed. */
import { describe, expect, test } from 'vitest';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { removedVolume } from '#front/volumes/volumes.ts';
import { type Loop, lineSpan, loopsArea, reverseSpans, spanFromBulge } from '#geometry/span.ts';
import { strewnVolume } from '#oracle/etched-depth.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { kitOf } from '#support/parts/front-of.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { stageVolumes } from '#support/parts/stage-volumes.ts';

function expectWhole(kit: ContourKit): void {
  const { front } = kit.index;
  const factor = front.etchFactor[0]?.[1] ?? Number.NaN;
  const { volume } = strewnVolume({ stages: front.stages, factor, sheet: front.sheet }, 400_000);
  expect(Math.abs(removedVolume(kit) / volume - 1)).toBeLessThan(0.001);
  for (const { gap } of stageVolumes(kit)) expect(gap).toBeUndefined();
  for (const share of [0.001, 0.2, 0.55, 0.93]) {
    const deepest = front.stages[0]?.level ?? 0;
    expect(contourLoops(kit, { depth: share * deepest }).gap).toBeUndefined();
  }
}

function plannedKit(
  drawn: { sheet: Loop; outlines: readonly Loop[] },
  depths: readonly (readonly [number, number, number])[],
  factor: number,
): ContourKit {
  const part = partOf(drawn);
  const plan = makePlan({
    part,
    asked: askedAt(part, depths),
    job: plainJob({ etchFactor: [[0, factor]] }),
  });
  return makeContourKit(indexFront(frontOfPlan(plan, 6)));
}

const sheet = rectangle(-20, -20, 60, 50);

describe('M2 fronts where rounding decided', () => {
  test.each([
    [1, 2],
    [0.8, 2],
    [0.5, 3],
    [1, 1],
  ])(
    'a leg of exactly twice the undercut, whose opening ends in a cusp (φ %d, %d mm deep)',
    (factor, depth) => {
      const leg = 2 * factor * depth;
      const corners = [
        [0, 0],
        [30, 0],
        [30, leg],
        [17, leg],
        [17, 24],
        [0, 24],
      ] as const;
      expectWhole(plannedKit({ sheet, outlines: [polygon(corners)] }, [[2, 2, depth]], factor));
    },
  );

  test('a leg of exactly twice the undercut, 4 mm wide and 2 mm deep at φ = 1, is no plain slab', {
    tags: ['long'],
  }, () => {
    const angle = polygon([
      [0, 0],
      [20, 0],
      [20, 4],
      [4, 4],
      [4, 20],
      [0, 20],
    ]);
    const kit = plannedKit(
      { sheet, outlines: [angle, rectangle(30, 0, 44, 14)] },
      [
        [2, 2, 2],
        [37, 7, 2],
      ],
      1,
    );
    expectWhole(kit);
  });

  test('an opening with a slit of no width between two islands that touch along an edge', () => {
    const islands = [rectangle(8, 10, 14, 12), rectangle(14, 10, 20, 24)].map(reverseSpans);
    const opening = [rectangle(0, 0, 40, 30), ...islands];
    expectWhole(kitOf({ stages: [{ level: 1, opening }], sheet: [sheet], etchFactor: 0.5 }));
  });

  test('openings that touch in a corner, where two round joins lie on one circle', () => {
    const tip = polygon([
      [11, 7],
      [1, 13],
      [1, 8],
    ]);
    const opening = [rectangle(0, 0, 11, 7), tip];
    expectWhole(kitOf({ stages: [{ level: 1.3, opening }], sheet: [sheet] }));
  });

  test('openings apart on one edge of the sheet, which closes the fronts of both', () => {
    // Not to start on that edge: about a point of it a piece of it encloses no area, wherever it is counted.
    const [side, top, edge, bottom] = rectangle(-20, -20, -9, -12);
    if (!side || !top || !edge || !bottom) throw new Error('a rectangle has four sides');
    const opening = [[top, edge, bottom, side], rectangle(-20, -1, -4, 50)];
    expectWhole(kitOf({ stages: [{ level: 3, opening }], sheet: [sheet], etchFactor: 1.3 }));
  });

  test('an arc whose ends stand off its circle by 0.3 µm', () => {
    const [upper, lower] = circle(10, 10, 7);
    if (upper?.kind !== 'arc' || lower === undefined) throw new Error('a circle is two arcs');
    const opening = [[{ ...upper, radius: 7.0003 }, lower]];
    const kit = kitOf({ stages: [{ level: 2.5, opening }], sheet: [sheet] });
    expectWhole(kit);
    const reach = Math.sqrt(2.5 ** 2 - 0.7 ** 2);
    const area = loopsArea(contourLoops(kit, { depth: 0.7 }).loops);
    expect(Math.abs(area / (Math.PI * (7 + reach) ** 2) - 1)).toBeLessThan(1e-4);
  });

  test('a round pocket beside a straight one that it touches, drawn as arcs of all lengths', {
    tags: ['long'],
  }, () => {
    const on = (angle: number) => ({ x: 45 + 5 * Math.cos(angle), y: 47 + 5 * Math.sin(angle) });
    for (let share = 0.05; share < 0.95; share += 0.018) {
      const stops = [0, share, 0.5 + share / 2, 1].map((at) => Math.PI * (1 + 2 * at));
      const round = stops.slice(1).map((to, i) => {
        const from = stops[i] ?? to;
        // By bulge, as drawings have it: radii then differ in their last digits.
        return spanFromBulge(on(from), on(to), Math.tan((to - from) / 4));
      });
      const kit = plannedKit(
        { sheet: rectangle(0, 0, 90, 80), outlines: [rectangle(30, 30, 40, 53), round] },
        [
          [35, 41.5, 0.923],
          [45, 47, 2.082],
        ],
        1.147,
      );
      const { loops, gap } = contourLoops(kit, { depth: 0 });
      expect(gap, `${share}`).toBeUndefined();
      const lostInCorners = (4 - Math.PI) * (1.147 * 0.923) ** 2;
      expect(loopsArea(loops)).toBeCloseTo(230 - lostInCorners + 25 * Math.PI, 2);
    }
  });

  test('a notch of land of no width in an opening is no border', () => {
    const opening = [
      rectangle(0, 0, 30, 20),
      reverseSpans(
        polygon([
          [10, 5],
          [17, 5],
          [17, 5.0000001],
        ]),
      ),
    ];
    const kit = kitOf({ stages: [{ level: 1.5, opening }], sheet: [sheet] });
    const plain = kitOf({ stages: [{ level: 1.5, opening: [rectangle(0, 0, 30, 20)] }], sheet: [sheet] });
    expect(Math.abs(removedVolume(kit) / removedVolume(plain) - 1)).toBeLessThan(1e-5);
  });
});

test('contour-not-closed: an opening whose border has a gap is said, not left out in silence', () => {
  const part = partOf({ sheet: rectangle(0, 0, 120, 80), outlines: [rectangle(15, 25, 52, 61)] });
  const made = makePlan({ part, asked: askedAt(part, [[30, 40, 2.5]]), job: plainJob() });
  const broken = [lineSpan({ x: 20, y: 30 }, { x: 45, y: 30 }), lineSpan({ x: 45, y: 30 }, { x: 30, y: 55 })];
  const plan = { ...made, stages: made.stages.map((stage) => ({ ...stage, opening: [broken] })) };
  const { findings } = measurePlan(plan, plainJob());
  expect(findings).toMatchObject([
    { code: 'contour-not-closed', severity: 'warn', facts: { of: 'volumes' } },
  ]);
});
