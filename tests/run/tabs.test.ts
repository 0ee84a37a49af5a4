/** M9.9 what is cut out all round, and the tabs that hold it. */
import { describe, expect, test } from 'vitest';
import { etchedPart } from '#run/etched-part.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { sectionOf } from '#run/section-job.ts';
import { box, dxf } from '#support/drawings/small-drawing.ts';

/** A disc-shaped part would roll: a plate of 30 × 18 in a frame, with a channel 2 mm wide around it. */
const FRAME = [
  box('FRAME', [0, 0], [50, 40]),
  box('CHANNEL', [8, 9], [42, 31]),
  box('PART', [10, 11], [40, 29]),
];

function run(tabs: object | undefined, more: object = {}): Promise<RunResult> {
  return runJob({
    jobText: JSON.stringify({
      format: 'isobath-job',
      version: 1,
      name: 'Framed plate',
      drawing: 'framed.dxf',
      layers: { outline: ['FRAME'], regions: [], both: ['CHANNEL', 'PART'] },
      stock: { thickness: 0.5, minus: 0.01, plus: 0.01 },
      process: { etchFactor: 1, rate: 0.02 },
      rules: { minWeb: 0.2, minPieceWidth: 0.5, minLandWidth: 0.5, minLineSpacing: 0.3 },
      requirements: [
        {
          layer: 'CHANNEL',
          through: 0.35,
          face: 'both',
          ...(tabs === undefined ? {} : { tabs }),
        },
      ],
      ...more,
    }),
    drawingName: 'framed.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities: FRAME })),
  });
}

const stops = ({ findings }: RunResult) =>
  findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);
const FOUR = [
  [25, 10],
  [25, 30],
  [9, 20],
  [41, 20],
] as const;

describe('M9.9: a plate in a frame', () => {
  test('part-falls-apart: cut out all round it hangs on nothing', async () => {
    const result = await run(undefined);
    expect(stops(result)).toEqual(['part-falls-apart']);
    const { facts } = result.findings.find(({ code }) => code === 'part-falls-apart') ?? {};
    // The plate is the smaller piece; at mid-thickness it is as drawn.
    expect(facts).toMatchObject({ pieces: 1, area: expect.closeTo(30 * 18, 0) });
  });

  test('by four tabs it stays; each is land on both faces, from side to side', async () => {
    const result = await run({ width: 1.1, at: FOUR });
    expect(stops(result)).toEqual([]);
    const tabs = result.planFile?.regions.filter(({ area }) => Math.abs(area - 2.2) < 1e-6) ?? [];
    expect(tabs.map(({ id, face, level }) => [id.replace(/\.\d+$/, ''), face, level])).toEqual([
      ...Array.from({ length: 4 }, () => [expect.stringMatching(/^R/), 'near', 0]),
      ...Array.from({ length: 4 }, () => [expect.stringMatching(/^F/), 'far', 0]),
    ]);
    for (const [x, y] of FOUR) {
      expect(tabs.some(({ label }) => Math.abs(label[0] - x) < 0.6 && Math.abs(label[1] - y) < 0.6)).toBe(
        true,
      );
    }
  });

  test('a tab is as wide as said at mid-thickness, and narrower by two cusps at the surface', async () => {
    const { plan, kit, farKit, thickness = 0.5 } = await run({ width: 1.1, at: FOUR });
    if (plan === undefined) throw new Error('it can be planned');
    const section = sectionOf(etchedPart(plan, thickness, kit, farKit), {
      from: { x: 22, y: 10 },
      to: { x: 28, y: 10 },
    });
    const left = section.points.filter((point) => point.thickness > 0);
    const [first, last] = [left[0]?.distance ?? 0, left.at(-1)?.distance ?? 0];
    expect(last - first).toBeCloseTo(1.1, 2);
    const whole = section.points.filter((point) => point.depth === 0 && point.far?.depth === 0);
    const [from, to] = [whole[0]?.distance ?? 0, whole.at(-1)?.distance ?? 0];
    expect(to - from).toBeCloseTo(1.1 - 2 * 0.1051, 3);
  });

  test('tab-too-thin: 0.6 mm wide, 0.39 mm are left at the surface of a sheet of 0.5', async () => {
    const result = await run({ width: 0.6, at: FOUR });
    const found = result.findings.find(({ code }) => code === 'tab-too-thin');
    expect(found?.facts).toMatchObject({ left: expect.closeTo(0.6 - 2 * 0.10505, 4), limit: 0.5 });
  });

  test('tab-misses-cut: a place within the plate', async () => {
    expect(stops(await run({ width: 1.1, at: [...FOUR, [25, 20]] }))).toEqual([
      'tab-misses-cut',
      'tab-misses-cut',
    ]);
  });

  test('job-value-wrong: tabs of what is not cut out', async () => {
    const requirements = [{ layer: 'CHANNEL', depth: 0.2, tabs: { width: 1, at: [[25, 10]] } }];
    expect(stops(await run(undefined, { requirements }))).toEqual(['job-value-wrong']);
  });

  describe('tabs-placed: tabs without places', () => {
    const placesOf = ({ planFile }: RunResult, face: string) =>
      (planFile?.regions ?? [])
        .filter((region) => region.face === face && Math.abs(region.area - 2 * 1.1) < 1e-6)
        .map(({ label: [x, y] }) => [x, y] as const);

    test('are three round a plate of 96 mm, clear of its corners, the same on both faces', async () => {
      const result = await run({ width: 1.1 });
      expect(stops(result)).toEqual([]);
      const found = result.findings.filter(({ code }) => code === 'tabs-placed');
      // Once, and not for either face.
      expect(found.map(({ facts }) => facts)).toEqual([
        { tabs: 3, width: 1.1, length: expect.closeTo(96, 6), isCounted: false, apart: 50, fewest: 3 },
      ]);
      const [near, far] = [placesOf(result, 'near'), placesOf(result, 'far')];
      expect(near).toHaveLength(3);
      expect(far).toEqual(near);
      for (const [x, y] of near) {
        for (const [cornerX, cornerY] of [
          [10, 11],
          [40, 11],
          [40, 29],
          [10, 29],
        ] as const) {
          // Farther than its own width, along the side that it stands on.
          expect(Math.max(Math.abs(x - cornerX), Math.abs(y - cornerY))).toBeGreaterThan(2.2);
        }
      }
    });

    test('are as many as the job says', async () => {
      const result = await run({ width: 1.1, count: 5 });
      expect(stops(result)).toEqual([]);
      expect(placesOf(result, 'near')).toHaveLength(5);
      expect(placesOf(result, 'far')).toEqual(placesOf(result, 'near'));
      expect(result.findings.find(({ code }) => code === 'tabs-placed')?.facts).toMatchObject({
        tabs: 5,
        isCounted: true,
      });
    });

    test('given places stay, and nothing is said of them', async () => {
      const result = await run({ width: 1.1, at: FOUR });
      expect(result.findings.map(({ code }) => code)).not.toContain('tabs-placed');
    });

    test('tab-too-thin is said of them as of any', async () => {
      expect((await run({ width: 0.6 })).findings.map(({ code }) => code)).toContain('tab-too-thin');
    });

    test('job-value-wrong: places and a number', async () => {
      expect(stops(await run({ width: 1.1, at: FOUR, count: 4 }))).toEqual(['job-value-wrong']);
    });
  });
});
