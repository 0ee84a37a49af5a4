/** After the run: extra dips from readings, edges at another factor, leaks and scratches. */
import { beforeAll, describe, expect, test } from 'vitest';
import { jsonText } from '#handoff/json-text.ts';
import { plainDepth } from '#oracle/plain-depth.ts';
import { edgesAtFactor, forecastAtFactor } from '#run/rework/edges-at-factor.ts';
import { leakOf, scratchHalfWidth } from '#run/rework/maskant-damage.ts';
import { readReworkPlan } from '#run/rework/rework-plan.ts';
import { reworkRun } from '#run/rework/rework-run.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const requirements = [
  { layer: 'POCKETS', thickness: 2.8, plus: 0.06, minus: 0.05 },
  { layer: 'DEEP', thickness: 1.6, plus: 0.06, minus: 0.05 },
  { layer: 'ROUND', thickness: 2.8, plus: 0.06, minus: 0.05 },
];

async function planOf(more: object = {}) {
  const { planFile } = await runJob(
    {
      jobText: JSON.stringify({ ...buoyLidJob, requirements, ...more }),
      drawingName: 'buoy-lid.dxf',
      drawingBytes: new TextEncoder().encode(buoyLidDrawing),
    },
    { withoutFiles: true },
  );
  if (planFile === undefined) throw new Error('the lid can be planned');
  return { planFile, text: jsonText(planFile) };
}

let plan: Awaited<ReturnType<typeof planOf>>;
beforeAll(async () => {
  plan = await planOf();
});

const idAt = (layer: string) => plan.planFile.regions.find((region) => region.layer === layer)?.id ?? '';

describe('M8.5 readings after the run', () => {
  test('one thick floor gets a dip; the others are covered, with minutes and edges', () => {
    const rows = [
      ['POCKETS', 2.81],
      ['DEEP', 1.62],
      ['ROUND', 2.98],
    ] as const;
    const csv = ['stage,region,thickness', ...rows.map(([layer, read]) => `2,${idAt(layer)},${read}`)].join(
      '\n',
    );
    const { rework, findings } = reworkRun(plan.text, csv);
    expect(findings).toEqual([]);
    // 2.98 − 2.8: from 0.13 to 0.24, in the middle 0.18 where both sides of the tolerance are used alike.
    expect(rework?.dips).toHaveLength(1);
    const [dip] = rework?.dips ?? [];
    expect(dip?.etch).toBeCloseTo(0.185, 3);
    expect(dip?.minutes).toBeCloseTo((dip?.etch ?? 0) / 0.0297, 9);
    expect(dip?.open).toEqual([idAt('ROUND')]);
    expect(new Set(dip?.cover)).toEqual(new Set([idAt('POCKETS'), idAt('DEEP')]));
    // It was 1.02 mm deep: 0.005 past its 1.2 beside land.
    expect(rework?.edges).toEqual([
      { level: 1.2, beside: 0, regions: [idAt('ROUND')], off: expect.closeTo(0.005, 6) },
    ]);
  });

  test('floor-too-thin and floor-not-read: reported with thickness, place and area; nothing is called acceptable', () => {
    const csv = `stage,region,thickness\n2,${idAt('DEEP')},1.4\n2,${idAt('ROUND')},2.83`;
    const { rework, findings } = reworkRun(plan.text, csv);
    expect(findings.map(({ code }) => code).sort()).toEqual(['floor-not-read', 'floor-too-thin']);
    const thin = findings.find(({ code }) => code === 'floor-too-thin');
    expect(thin).toMatchObject({
      facts: { read: 1.4, least: expect.closeTo(1.54, 9), area: expect.closeTo(2000, 3) },
    });
    expect(thin?.place.at).toBeDefined();
    expect(rework?.floors.find(({ id }) => id === idAt('DEEP'))?.extra).toBeUndefined();
  });

  test('the last readings of a region count, and their mean', () => {
    const id = idAt('ROUND');
    const csv = `stage,region,thickness\n1,${id},3.4\n2,${id},2.97\n2,${id},2.99`;
    const { rework } = reworkRun(plan.text, csv);
    expect(rework?.floors[0]?.read).toBeCloseTo(2.98, 9);
  });

  test('of one stage the readings after most minutes count, in their own unit, without those struck out', () => {
    const id = idAt('ROUND');
    const csv = [
      'stage,minutes,region,thickness,unit,strike,note',
      `2,20,${id},3.11,,,`,
      `2,31,${id},0.1173,in,,`,
      `2,31,${id},2.41,,,`,
      '2,,,,,3,gauge not set to zero',
    ].join('\n');
    const { rework } = reworkRun(plan.text, csv);
    expect(rework?.floors[0]?.read).toBeCloseTo(0.1173 * 25.4, 9);
  });

  test('what is no plan, and readings of no kind, are reported', () => {
    expect(reworkRun('{}', 'stage,region,thickness\n').findings[0]?.code).toBe('plan-file-unusable');
    expect(reworkRun(plan.text, 'a,b\n1,2').findings.length).toBeGreaterThan(0);
  });
});

describe('M8.4 the factor known better once lines are cut', () => {
  test('each edge moves by φ′√(ℓ² − d²) − φ√(ℓ² − d²)', () => {
    const read = readReworkPlan(plan.text);
    if ('refused' in read) throw new Error('the plan reads back');
    const { edges } = forecastAtFactor(read, 1.2);
    for (const { level, beside, off } of edges) {
      expect(off).toBeCloseTo(0.2 * Math.sqrt(level ** 2 - beside ** 2), 6);
    }
    expect(edges.map(({ level, beside }) => [level, beside])).toContainEqual([2.4, 1.2]);
  });

  test('a step of 2.4 beside 1.2 at φ = 1.2 is held by other depths within tolerance, where it can be', async () => {
    const wide = requirements.map((each) => ({
      ...each,
      plus: 0.3,
      minus: 0.3,
      edge: { plus: 0.15, minus: 0.1 },
    }));
    const { text } = await planOf({ requirements: wide });
    const read = readReworkPlan(text);
    if ('refused' in read) throw new Error('the plan reads back');
    const { edges, levels } = edgesAtFactor(read.planFile.lineBudgets ?? [], read.lines, {
      etchFactor: [[0, 1.15]],
      rooms: read.rooms,
    });
    for (const { off, best, allowed } of edges) {
      expect(off > 0.15 && best <= 0.151).toBe(true);
      expect(allowed).toEqual({ plus: 0.15, minus: 0.1 });
    }
    for (const [index, level] of levels.entries())
      expect(Math.abs(level - (read.lines.levels[index] ?? 0))).toBeLessThanOrEqual(0.3 + 1e-9);
  });
});

describe('M8.6 leaks and scratches', () => {
  test('a crater of radius R has been open for R / (φ rate) and is R / φ deep', () => {
    const leak = leakOf({ etchFactor: [[0, 1.25]], rate: 0.02 }, { radius: 0.5, minutesLeft: 30 });
    expect(leak).toEqual({
      since: expect.closeTo(20, 9),
      depth: expect.closeTo(0.4, 9),
      depthThen: expect.closeTo(1, 9),
      radiusThen: expect.closeTo(1.25, 9),
    });
  });

  test('with factors by depth the crater is as deep as its own undercut says', () => {
    const { depth } = leakOf(
      {
        etchFactor: [
          [0, 0.8],
          [2, 1.2],
        ],
        rate: 0.02,
      },
      { radius: 1, minutesLeft: 0 },
    );
    expect(depth * (0.8 + 0.2 * depth)).toBeCloseTo(1, 9);
  });

  test('a scratch of 0.05 mm comes out 0.444 mm to each side in a floor of 2 mm: found on the front too', () => {
    const half = scratchHalfWidth({ etchFactor: [[0, 1]] }, { scratch: 0.05, depth: 2 });
    expect(half).toBeCloseTo(0.444, 3);
    // Its root, 0.05 below the surface, etches a circle of radius 2 about itself; the floor lies at 2.
    const root = { loops: [[{ start: { x: 0, y: -50 }, end: { x: 0, y: 50 } }]], cut: 2, base: 0, factor: 1 };
    const depthAt = (x: number) => 0.05 + plainDepth([root], { x, y: 0 });
    expect(depthAt(half - 0.001)).toBeGreaterThan(2);
    expect(depthAt(half + 0.001)).toBeLessThan(2);
  });
});
