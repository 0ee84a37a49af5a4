/** M9.4 contours that are cut out: the drawn line is the narrowest place of the cut. */
import { describe, expect, test } from 'vitest';
import { makeProbe } from '#front/depth-at.ts';
import { frontOfPlan, momentAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

/** A slot whose sides are drawn at x = 10 and x = 14. */
const part = partOf({ sheet: rectangle(0, 0, 26, 31), outlines: [rectangle(10, 4, 14, 27)] });
const slot = part.regions.find(({ area }) => area < 100);
const asked = (depth: number, wall: number) =>
  new Map([[slot?.id ?? '', { depth, plus: 0.03, minus: 0.02, wall }]]);

const ROW = 15.5;
const depthsAlong = (plan: EtchPlan, thickness: number) => {
  const index = indexFront(frontOfPlan(plan, thickness));
  const probe = makeProbe(index, momentAt(index.front));
  return (x: number) => probe.measure(x, ROW);
};

/** Where a falling depth passes a value, between two places. */
function passes(depth: (x: number) => number, value: number, [from, to]: readonly [number, number]): number {
  let [deep, shallow] = [from, to];
  for (let step = 0; step < 60; step++) {
    const middle = (deep + shallow) / 2;
    if (depth(middle) >= value) deep = middle;
    else shallow = middle;
  }
  return deep;
}

describe('M9.4: a slot through 0.5 mm, etched to 0.35 mm from both faces', () => {
  const side = { part, asked: asked(0.35, 0.25) };
  const plan = makePlan({ ...side, far: side, job: plainJob() });
  const near = depthsAlong(plan, 0.5);
  const far = plan.far === undefined ? () => 0 : depthsAlong(plan.far, 0.5);

  test('openings keep back by φ√(D² − T²/4) = 0.2449 mm', () => {
    const xs = plan.stages[0]?.opening.flatMap((loop) => loop.map(({ start }) => start.x)) ?? [];
    expect(Math.min(...xs)).toBeCloseTo(10 + Math.sqrt(0.35 ** 2 - 0.25 ** 2), 4);
    expect(Math.max(...xs)).toBeCloseTo(14 - Math.sqrt(0.35 ** 2 - 0.25 ** 2), 4);
  });

  test('the cut has its drawn width at mid-thickness, to 5 µm', () => {
    for (const depth of [near, far]) {
      const [left, right] = [passes(depth, 0.25, [12, 8]), passes(depth, 0.25, [12, 16])];
      expect(Math.abs(left - 10)).toBeLessThan(0.005);
      expect(Math.abs(right - 14)).toBeLessThan(0.005);
    }
  });

  test('the cusp stands out by 0.1051 mm', () => {
    // φ (D − √(D² − T²/4)): from the surface edge to mid-thickness.
    expect(passes(near, 0.25, [12, 8]) - passes(near, 1e-6, [12, 8])).toBeCloseTo(0.1051, 4);
    expect(0.35 - Math.sqrt(0.35 ** 2 - 0.25 ** 2)).toBeCloseTo(0.1051, 4);
  });

  test('a line of the slot is closed, once a face', () => {
    expect(plan.stages.map(({ lines }) => lines.map(({ closed }) => closed))).toEqual([[true]]);
    expect(plan.far?.stages.map(({ lines }) => lines.length)).toEqual([1]);
  });
});

describe('M9.4: the same from one face, to 0.62 mm', () => {
  const plan = makePlan({
    part,
    asked: asked(0.62, 0.5),
    far: { part, asked: new Map() },
    job: plainJob({ etchFactor: [[0, 1]] }),
  });
  const depth = depthsAlong(plan, 0.5);

  test('openings keep back by φ√(D² − T²), and the width is the drawn one at the far side', () => {
    const xs = plan.stages[0]?.opening.flatMap((loop) => loop.map(({ start }) => start.x)) ?? [];
    expect(Math.min(...xs)).toBeCloseTo(10 + Math.sqrt(0.62 ** 2 - 0.5 ** 2), 4);
    expect(Math.abs(passes(depth, 0.5, [12, 8]) - 10)).toBeLessThan(0.005);
    expect(Math.abs(passes(depth, 0.5, [12, 16]) - 14)).toBeLessThan(0.005);
  });
});

test.each(['peel-next', 're-mask'] as const)(
  'M9.4: a half-etched line that runs into a slot leaves its walls where they are drawn, %s',
  (masking) => {
    const crossed = partOf({
      sheet: rectangle(0, 0, 26, 31),
      outlines: [rectangle(10, 4, 14, 27), rectangle(14, 18, 22, 20)],
    });
    const [line, cut] = [16.1, 92].map((area) =>
      crossed.regions.find((each) => Math.abs(each.area - area) < 1),
    );
    const both = new Map([
      [cut?.id ?? '', { depth: 0.35, plus: 0.03, minus: 0.02, wall: 0.25 }],
      [line?.id ?? '', { depth: 0.2, plus: 0.03, minus: 0.02 }],
    ]);
    const plan = makePlan({ part: crossed, asked: both, job: plainJob({ masking }) });
    const depth = depthsAlong(plan, 0.5);
    expect(plan.findings).toEqual([]);
    expect(Math.abs(passes(depth, 0.25, [12, 8]) - 10)).toBeLessThan(0.005);
    expect(Math.abs(passes(depth, 0.25, [12, 16]) - 14)).toBeLessThan(0.005);
    const index = indexFront(frontOfPlan(plan, 0.5));
    const probe = makeProbe(index, momentAt(index.front));
    expect(probe.measure(18.4, 19)).toBeCloseTo(0.2, 9);
    // Beside the half-etched line its own wall stands where it is drawn.
    expect(probe.measure(19.2, 20.001)).toBeLessThan(0.03);
  },
);
