/** Inspection points on parts drawn in the test: on flat floor, clear of fillets, spread, with the drawing's figures. */
import { expect, test } from 'vitest';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan } from '#geometry/span.ts';
import { inspectionCsv } from '#handoff/inspection-csv.ts';
import { inspectionPoints } from '#handoff/inspection-points.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { readReadings } from '#run/correct-readings.ts';
import { askedAt, partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { rectangle } from '#support/shapes.ts';

const SHEET = rectangle(0, 0, 400, 200);

function inspected(
  outlines: Parameters<typeof partOf>[0]['outlines'],
  depths: Parameters<typeof askedAt>[1],
  choice = { margin: 3, spacing: 100 },
) {
  const job = plainJob();
  const part = partOf({ sheet: SHEET, outlines });
  const plan = makePlan({ part, asked: askedAt(part, depths), job });
  const index = indexFront(frontOfPlan(plan, 6));
  return { plan, job, ...inspectionPoints({ plan, index, stock: job.stock, choice }) };
}

/** First arrival as M2 writes it, φ = 1: every opening and every span asked, no index between. */
function depthByFormula(stages: readonly Stage[], at: Point): number {
  const depths = stages.map(({ level, opening }) => {
    const gap = isInsideLoops(opening, at)
      ? 0
      : Math.min(...opening.flat().map((span) => distanceToSpan(span, at)));
    return Math.sqrt(Math.max(0, level ** 2 - gap ** 2));
  });
  return Math.max(0, ...depths);
}

/** A pocket with a deeper one in it, on a hatch of a solar boat. */
const POCKETS = [rectangle(40, 40, 240, 160), rectangle(100, 70, 160, 130)];
const DEPTHS = [
  [60, 60, 1.2],
  [130, 100, 3],
] as const;

test('every point lies on a floor that is flat to its margin, by the formula itself', () => {
  const { points, plan, findings } = inspected(POCKETS, DEPTHS);
  expect(findings).toEqual([]);
  for (const { at, planned, region } of points) {
    const loops = plan.regions.find(({ id }) => id === region)?.loops ?? [];
    expect(isInsideLoops(loops, at)).toBe(true);
    for (const span of loops.flat()) expect(distanceToSpan(span, at)).toBeGreaterThanOrEqual(3);
    for (let i = 0; i < 36; i++) {
      const [x, y] = [at.x + 3 * Math.cos(i / 5.7), at.y + 3 * Math.sin(i / 5.7)];
      expect(depthByFormula(plan.stages, { x, y })).toBeCloseTo(planned, 5);
    }
  }
});

test('each region and the land has points, at most the spacing apart from any floor', () => {
  const { points, plan } = inspected(POCKETS, DEPTHS);
  for (const { id, loops } of plan.regions) {
    const own = points.filter(({ region }) => region === id);
    expect(own.length).toBeGreaterThanOrEqual(3);
    for (let x = 5; x < 400; x += 10) {
      for (let y = 5; y < 200; y += 10) {
        if (!isInsideLoops(loops, { x, y })) continue;
        const nearest = Math.min(...own.map(({ at }) => Math.hypot(at.x - x, at.y - y)));
        expect(nearest).toBeLessThan(100 + 20);
      }
    }
  }
});

test('a floor of 3 + 0.08 − 0.02 in a sheet of 6 must read 3 + 0.02 − 0.08, and land what the sheet may be', () => {
  const job = plainJob();
  const part = partOf({ sheet: SHEET, outlines: POCKETS });
  const plan = makePlan({ part, asked: askedAt(part, DEPTHS, { plus: 0.08, minus: 0.02 }), job });
  const index = indexFront(frontOfPlan(plan, 6));
  const stock = { ...job.stock, plus: 0.13, minus: 0.04 };
  const { points } = inspectionPoints({ plan, index, stock, choice: { margin: 3, spacing: 100 } });
  const deep = points.find(({ planned }) => planned === 3);
  expect(deep).toMatchObject({
    stage: 1,
    depth: { nominal: 3, plus: 0.08, minus: 0.02 },
    thickness: { nominal: 3, plus: 0.02, minus: 0.08 },
  });
  const land = points.find(({ stage }) => stage === 0);
  expect(land).toMatchObject({
    depth: { nominal: 0, plus: 0, minus: 0 },
    thickness: { nominal: 6, plus: 0.13, minus: 0.04 },
    planned: 0,
  });
});

test('inspection-floor-missing: a pocket 10 wide and 3 deep has 4 mm of floor, not 3 mm clear on both sides', () => {
  const { points, findings, plan } = inspected([rectangle(50, 50, 60, 150)], [[55, 100, 3]]);
  const narrow = plan.regions.find(({ level }) => level === 3)?.id;
  expect(findings.map(({ code, place }) => [code, place.regions])).toEqual([
    ['inspection-floor-missing', [narrow]],
  ]);
  expect(points.every(({ region }) => region !== narrow)).toBe(true);
  const nearer = inspected([rectangle(50, 50, 60, 150)], [[55, 100, 3]], { margin: 1.5, spacing: 100 });
  expect(nearer.findings).toEqual([]);
});

test('the file names its plan, and with the thickness filled in it is a file of readings', () => {
  const { points, plan } = inspected(POCKETS, DEPTHS);
  const units = { job: 'in', drawing: 'mm' } as const;
  const csv = inspectionCsv({ points, planHash: 'ab12', units, lastStage: plan.stages.length });
  expect(csv).toContain('# inspection points of plan ab12');
  const deep = points.findIndex(({ planned }) => planned === 3);
  const lines = csv.split('\n').filter((line) => !line.startsWith('#'));
  // 3 mm = 0.11811 in
  expect(lines[deep + 1]?.split(',')[5]).toBe('0.11811');
  const filled = csv.replaceAll(',,depth', ',0.118,depth');
  const { rows, findings } = readReadings(filled);
  expect(findings).toEqual([]);
  expect(rows).toHaveLength(points.length);
  expect(rows[deep]).toMatchObject({
    stage: 2,
    x: points[deep]?.at.x,
    y: points[deep]?.at.y,
    thickness: 0.118,
  });
});
