/** Inspection points on parts drawn in the test: on flat floor, clear of fillets, spread, with the drawing's figures. */
import { expect, test } from 'vitest';
import { lineBudgets } from '#checks/line-budget.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan } from '#geometry/span.ts';
import { inspectionCsv } from '#handoff/inspection/inspection-csv.ts';
import { inspectionItems } from '#handoff/inspection/inspection-items.ts';
import { inspectionPoints } from '#handoff/inspection/inspection-points.ts';
import { lineBudgetRecord } from '#handoff/line-budget-record.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { readReadings } from '#run/correct-readings.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

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

test('in one pocket the first point is the roomiest, the next ones the farthest from those before, the fourth on no nearer than the spacing', () => {
  const { points, plan } = inspected([rectangle(40, 40, 250, 160)], [[60, 60, 2]], {
    margin: 4,
    spacing: 70,
  });
  const own = points.filter(({ planned }) => planned === 2).map(({ at }) => at);
  const [first, second, third] = own;
  if (first === undefined || second === undefined || third === undefined) throw new Error('three points');
  // A pocket 120 high has room for 60 along its middle, but the candidates stand 8.75 apart.
  expect(Math.abs(first.y - 100)).toBeLessThan(8.75);
  expect(Math.min(first.x - 40, 250 - first.x)).toBeGreaterThan(60 - 8.75);
  const gap = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
  // Two opposite ends of the pocket, clear of its fillets of 2 mm.
  expect(gap(first, second)).toBeGreaterThan(100);
  expect(gap(second, third)).toBeGreaterThan(100);
  own.forEach((each, at) => {
    const before = own.slice(0, at).map((other) => gap(each, other));
    if (at > 0) expect(Math.min(...before)).toBeGreaterThanOrEqual(at < 3 ? 8 : 70);
  });
  // No further one would stand so far from all: the pocket is full.
  const [loop = []] = plan.regions.filter(({ level }) => level === 2).map(({ loops }) => loops.flat());
  for (let x = 50; x <= 240; x += 5) {
    for (let y = 50; y <= 150; y += 5) {
      if (Math.min(...loop.map((span) => distanceToSpan(span, { x, y }))) < 7) continue;
      expect(Math.min(...own.map((each) => gap(each, { x, y })))).toBeLessThan(70 + 6);
    }
  }
  for (const { x, y } of own) expect([x, y].map((each) => Math.round(each * 100) / 100)).toEqual([x, y]);
  expect(points.map(({ id }) => id)).toEqual(points.map((_, at) => `P${String(at + 1).padStart(3, '0')}`));
});

test('a small pocket has three points all the same, two margins apart, and a large one no more than a person gauges', () => {
  const small = inspected([rectangle(40, 40, 66, 58)], [[50, 50, 1]], { margin: 2.5, spacing: 100 });
  const own = small.points.filter(({ planned }) => planned === 1).map(({ at }) => at);
  expect(own).toHaveLength(3);
  for (const [a, b] of [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const) {
    expect(
      Math.hypot((own[a]?.x ?? 0) - (own[b]?.x ?? 0), (own[a]?.y ?? 0) - (own[b]?.y ?? 0)),
    ).toBeGreaterThan(5);
  }
  const many = inspected([rectangle(40, 40, 240, 160)], [[60, 60, 1]], { margin: 3, spacing: 4 });
  expect(many.points.filter(({ planned }) => planned === 1)).toHaveLength(60);
});

test('in a sheet that thins from 8 mm at the left to 6 at the right each point has the thickness of its own place', () => {
  const job = plainJob();
  const part = partOf({ sheet: SHEET, outlines: POCKETS });
  const plan = makePlan({ part, asked: askedAt(part, DEPTHS), job });
  const thickness = { from: { x: 0, y: 0 }, to: { x: 400, y: 0 }, fromValue: 8, toValue: 6 };
  const { points } = inspectionPoints({
    plan,
    index: indexFront(frontOfPlan(plan, 6)),
    stock: { ...job.stock, thickness },
    choice: { margin: 3, spacing: 100 },
  });
  expect(points.length).toBeGreaterThan(8);
  for (const { at, planned, thickness: left } of points)
    expect(left.nominal).toBeCloseTo(8 - at.x / 200 - planned, 9);
});

test('inspection-floor-missing: two slots without floor, and a place in the first of them', () => {
  const slots = [rectangle(50, 50, 60, 150), rectangle(90, 40, 101, 160), rectangle(150, 40, 250, 160)];
  const depths = [
    [55, 100, 3],
    [95, 100, 4],
    [200, 100, 1.5],
  ] as const;
  const { findings, plan } = inspected(slots, depths);
  const bare = plan.regions.filter(({ level }) => level >= 3);
  expect(findings.map(({ facts }) => facts)).toEqual([{ regions: 2, margin: 3 }]);
  expect(findings[0]?.place).toEqual({ at: bare[0]?.label, regions: bare.map(({ id }) => id) });
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
  const items = inspectionItems(plan, lineBudgets(plan, plainJob()).map(lineBudgetRecord));
  const csv = inspectionCsv({
    points,
    items,
    hasFarFace: false,
    planHash: 'ab12',
    units,
    lastStage: plan.stages.length,
  });
  expect(csv).toContain('# inspection points of plan ab12');
  const deep = points.findIndex(({ planned }) => planned === 3);
  const lines = csv.split('\n').filter((line) => !line.startsWith('#'));
  // 3 mm = 0.11811 in; +0.06 −0.04 mm are 0.002362 and 0.001575 in: 2.96 mm is 0.116535 in at least, 3.06 mm 0.120472 in at most.
  expect(lines[deep + 1]?.split(',').slice(6, 11)).toEqual([
    '0.11811',
    '0.0023',
    '0.0015',
    '0.1166',
    '0.1204',
  ]);
  expect(items.length).toBeGreaterThan(3);
  const filled = csv.replaceAll(',,,depth', ',0.118,,depth');
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
