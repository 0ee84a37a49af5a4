/** Sections through parts whose depths are known by hand: where places stand, what is asked and left, on one face and on both. */
import { describe, expect, test } from 'vitest';
import { depthsOf } from '#run/depth-job.ts';
import { type Section, type SectionRequest, sectionOf } from '#run/section-job.ts';
import { box } from '#support/drawings/small-drawing.ts';
import { etchedLid } from '#support/parts/etched-lid.ts';

const partOf = async (entities: readonly string[], job: object) => (await etchedLid(entities, job)).etched;

/** A plate of 100 × 60 mm, 4 mm thick, with a pocket of 1.2 from x = 20 to 50 and a hole from 70 to 80. */
const plate = () =>
  partOf(
    [box('TRIM', [0, 0], [100, 60]), box('TRIM', [70, 20], [80, 40]), box('POCKET', [20, 10], [50, 50])],
    {
      requirements: [{ layer: 'POCKET', depth: 1.2 }],
    },
  );
const ACROSS = { from: { x: -10, y: 30 }, to: { x: 110, y: 30 } } as const;
const stretches = ({ asked }: Section) =>
  asked.map(({ start, end, depth }) => [start, end, depth && [depth.start, depth.end]]);
/** Places at one distance along a section. */
const at = ({ points }: Section, along: number) =>
  points.filter(({ distance }) => Math.abs(distance - along) < 1e-6);

describe('a plate with a pocket and a hole, cut from beside it to beside it', () => {
  test('what is asked changes at each border, and is nothing beside the metal', async () => {
    const section = sectionOf(await plate(), ACROSS);
    expect(stretches(section)).toEqual(
      [
        [0, 10, undefined],
        [10, 30, [0, 0]],
        [30, 60, [1.2, 1.2]],
        [60, 80, [0, 0]],
        [80, 90, undefined],
        [90, 110, [0, 0]],
        [110, 120, undefined],
      ].map(([start, end, depth]) => [
        expect.closeTo(Number(start), 9),
        expect.closeTo(Number(end), 9),
        depth,
      ]),
    );
    expect(section.meetsMetal).toBe(true);
  });

  test('at a border two places stand, the side before and the side ahead', async () => {
    const section = sectionOf(await plate(), ACROSS);
    const targets = (along: number) => at(section, along).map(({ target }) => target);
    expect([0, 10, 30, 60, 80, 90, 110, 120].map(targets)).toEqual([
      [undefined],
      [undefined, 0],
      [0, 1.2],
      [1.2, 0],
      [0, undefined],
      [undefined, 0],
      [0, undefined],
      [undefined],
    ]);
    const distances = section.points.map(({ distance }) => distance);
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
  });

  test('depths are those of a round wall of 1.2 mm about the opening, and the sheet less the depth is left', async () => {
    const section = sectionOf(await plate(), ACROSS);
    for (const { x, y, distance, depth, target, thickness, stage, bands } of section.points) {
      expect([x, y]).toEqual([expect.closeTo(distance - 10, 9), 30]);
      if (target === undefined) {
        expect([depth, thickness, stage, bands]).toEqual([0, 0, 0, [0]]);
        continue;
      }
      // Opened from x = 21.2 to 48.8.
      const beside = Math.max(0, 21.2 - x, x - 48.8);
      expect(depth).toBeCloseTo(Math.sqrt(Math.max(0, 1.2 ** 2 - beside ** 2)), 3);
      expect(thickness).toBeCloseTo(4 - depth, 9);
      if (depth > 0.01) expect([stage, bands]).toEqual([1, [expect.closeTo(depth, 9)]]);
    }
  });

  test('wholly beside the sheet it meets no metal', async () => {
    const section = sectionOf(await plate(), { from: { x: -10, y: 70 }, to: { x: 110, y: 71 } });
    expect([section.meetsMetal, section.points.map(({ target }) => target)]).toEqual([
      false,
      [undefined, undefined],
    ]);
    expect(section.points.map(({ x, y }) => [x, y])).toEqual([
      [-10, 70],
      [110, 71],
    ]);
  });

  test('slantwise and upwards places lie on the line', async () => {
    const [from, to] = [
      { x: 10, y: 5 },
      { x: 40, y: 45 },
    ];
    const { points } = sectionOf(await plate(), { from, to });
    expect(points.at(-1)).toMatchObject({ distance: 50, x: 40, y: 45 });
    for (const { x, y, distance } of points) {
      expect([x, y]).toEqual([expect.closeTo(10 + 0.6 * distance, 9), expect.closeTo(5 + 0.8 * distance, 9)]);
    }
  });

  test('half way through the run half of it is etched', async () => {
    const part = await plate();
    const minute = 0.5 * (part.plan.stages[0]?.minutes ?? 0);
    const section = sectionOf(part, { ...ACROSS, minute });
    expect(Math.max(...section.points.map(({ depth }) => depth))).toBeCloseTo(0.6, 6);
  });

  test('a finer tolerance takes more places', async () => {
    const part = await plate();
    const count = (tolerance: number) => sectionOf(part, { ...ACROSS, tolerance }).points.length;
    expect(count(0.0005)).toBeGreaterThan(count(0.05));
  });
});

describe('evenly spaced places', () => {
  test('stand as many as are asked, from end to end, each with what is asked from there on', async () => {
    const { points } = sectionOf(await plate(), { ...ACROSS, samples: 13 });
    expect(points.map(({ distance }) => distance)).toEqual(
      Array.from({ length: 13 }, (_, i) => expect.closeTo(10 * i, 9)),
    );
    const none = undefined;
    expect(points.map(({ target }) => target)).toEqual([
      none,
      0,
      0,
      1.2,
      1.2,
      1.2,
      0,
      0,
      none,
      0,
      0,
      none,
      none,
    ]);
    expect(points.map(({ thickness }) => thickness)).toEqual(
      [0, 4, 4, 4, 2.8, 2.8, 4, 4, 0, 4, 4, 0, 0].map((each) => expect.closeTo(each, 2)),
    );
  });

  test('in the same places as single depths', async () => {
    const part = await plate();
    const { points } = sectionOf(part, { from: { x: 1, y: 2 }, to: { x: 96, y: 55 }, samples: 20 });
    const inside = points.slice(1, -1);
    const single = depthsOf(part, { points: Float64Array.from(inside.flatMap(({ x, y }) => [x, y])) });
    expect(inside.map(({ depth, target }) => [depth, target])).toEqual(
      single.map(({ depth, target }) => [expect.closeTo(depth, 6), target]),
    );
  });
});

describe('a floor that tapers', () => {
  /** From 0.8 mm at x = 30 to 1.4 at x = 45, the same before and beyond. */
  const tapered = () =>
    partOf([box('TRIM', [0, 0], [100, 60]), box('POCKET', [20, 10], [60, 50])], {
      requirements: [
        {
          layer: 'POCKET',
          taper: { from: [30, 0], to: [45, 0], depthFrom: 0.8, depthTo: 1.4 },
          plus: 0.2,
          minus: 0.2,
        },
      ],
      levels: 'fewest',
    });

  test('what is asked runs straight between the ends of the taper', async () => {
    const section = sectionOf(await tapered(), { from: { x: 60, y: 30 }, to: { x: 20, y: 30 } });
    const asked = section.asked.filter(({ depth }) => depth !== undefined);
    const askedAt = (x: number) => 0.8 + (0.6 * Math.min(15, Math.max(0, x - 30))) / 15;
    for (const { start, end, depth } of asked) {
      expect([depth?.start, depth?.end]).toEqual(
        [60 - start, 60 - end].map((x) => expect.closeTo(askedAt(x), 6)),
      );
      // None runs over an end of the taper.
      for (const x of [30, 45]) expect(60 - end > x - 1e-6 || 60 - start < x + 1e-6).toBe(true);
    }
    for (const { x, target } of section.points) expect(target).toBeCloseTo(askedAt(x), 6);
    for (const x of [30, 45]) expect(at(section, 60 - x).length).toBeGreaterThan(0);
  });
});

describe('a strip etched on both faces', () => {
  /** 1.2 mm from x = 20 to 50 on the near face; 1.0 from x = 40 to 80 on the far one; 4 mm thick. */
  const strip = () =>
    partOf(
      [box('TRIM', [0, 0], [100, 60]), box('POCKET', [20, 10], [50, 50]), box('BACK', [40, 10], [80, 50])],
      {
        layers: { outline: ['TRIM'], far: ['BACK'] },
        requirements: [
          { layer: 'POCKET', depth: 1.2 },
          { layer: 'BACK', depth: 1, face: 'far' },
        ],
      },
    );
  const REQUEST: SectionRequest = { from: { x: -5, y: 30 }, to: { x: 100, y: 30 } };

  test('each place has both depths, and what is left between them', async () => {
    const section = sectionOf(await strip(), REQUEST);
    const both = (x: number) => {
      const [place] = at(section, x + 5);
      return (
        place &&
        [place.depth, place.far?.depth, place.thickness].map((each) => Math.round(1e6 * (each ?? -1)) / 1e6)
      );
    };
    // Borders of either face have places: 20 and 50 of the near one, 40 and 80 of the far one.
    for (const x of [20, 40, 50, 80]) expect(at(section, x + 5).length).toBeGreaterThan(0);
    const inNear = section.points.find(({ x }) => x > 40 + 1.2 && x < 50 - 1.2);
    expect(inNear ?? { depth: 1.2 }).toMatchObject({ depth: expect.closeTo(1.2, 6) });
    expect(both(20)).toEqual([0, 0, 4]);
    for (const { target, depth, far, thickness } of section.points) {
      if (target === undefined) expect(far).toBeUndefined();
      else expect(thickness).toBeCloseTo(4 - depth - (far?.depth ?? -9), 9);
    }
    expect(section.points.filter(({ far }) => far !== undefined).every(({ far }) => far?.sheet === 4)).toBe(
      true,
    );
  });

  test('what is asked of the far face is that of the same side of its border', async () => {
    const section = sectionOf(await strip(), REQUEST);
    const far = section.points.filter(({ x, target }) => target !== undefined && x > 0 && x < 100);
    for (const { x, far: other } of far) {
      if (Math.min(Math.abs(x - 40), Math.abs(x - 80)) > 1e-3)
        expect(other?.target).toBe(x > 40 && x < 80 ? 1 : 0);
    }
    // Where the near face has its border both sides are asked for alike on the far one.
    expect(at(section, 55).map(({ target, far: other }) => [target, other?.target])).toEqual([
      [1.2, 1],
      [0, 1],
    ]);
    expect(at(section, 25).map(({ target, far: other }) => [target, other?.target])).toEqual([
      [0, 0],
      [1.2, 0],
    ]);
  });

  test('where both faces have a border in one place, each side is asked as on its own face', async () => {
    const back = [
      box('TRIM', [0, 0], [100, 60]),
      box('POCKET', [20, 10], [50, 50]),
      box('BACK', [50, 10], [80, 50]),
    ];
    const part = await partOf(back, {
      layers: { outline: ['TRIM'], far: ['BACK'] },
      requirements: [
        { layer: 'POCKET', depth: 1.2 },
        { layer: 'BACK', depth: 1, face: 'far' },
      ],
    });
    const targets = (request: SectionRequest, along: number) =>
      at(sectionOf(part, request), along).map(({ target, far }) => [target, far?.target]);
    expect(targets(REQUEST, 55)).toEqual([
      [1.2, 0],
      [0, 1],
    ]);
    expect(targets({ from: REQUEST.to, to: REQUEST.from }, 50)).toEqual([
      [0, 1],
      [1.2, 0],
    ]);
  });

  test('evenly spaced places have both as well', async () => {
    const { points } = sectionOf(await strip(), { ...REQUEST, samples: 22 });
    expect(points.map(({ distance }) => distance)).toEqual(
      Array.from({ length: 22 }, (_, i) => expect.closeTo(5 * i, 9)),
    );
    expect(
      points.filter(({ x }) => [30, 45, 65].includes(Math.round(x))).map((each) => each.thickness),
    ).toEqual([2.8, 1.8, 3].map((left) => expect.closeTo(left, 6)));
  });

  test('through a slot etched from both sides metal ends where the fronts meet, within a nanometre', async () => {
    const slotted = await partOf([box('TRIM', [0, 0], [30, 20]), box('SLOTS', [10, 6], [16, 15])], {
      layers: { outline: ['TRIM'], regions: [], both: ['SLOTS'] },
      stock: { thickness: 0.5, minus: 0, plus: 0 },
      process: { etchFactor: 1, rate: 0.02 },
      rules: { minWeb: 0.2, minPieceWidth: 0.5, minLandWidth: 0.5, minLineSpacing: 0.3 },
      requirements: [{ layer: 'SLOTS', through: 0.35, face: 'both' }],
    });
    // Begun beside the sheet, so that distances and x differ.
    const section = sectionOf(slotted, { from: { x: -3, y: 10 }, to: { x: 30, y: 10 } });
    const ends = section.points.flatMap((point, index) => {
      const next = section.points[index + 1];
      if (point.target === undefined || next === undefined || next.distance - point.distance > 2e-6)
        return [];
      return point.thickness > 0 === next.thickness > 0 ? [] : [point];
    });
    // M9.4: at mid-thickness the wall stands on the drawn line.
    expect(ends.map(({ x }) => x)).toEqual([10, 16].map((x) => expect.closeTo(x, 3)));
    for (const { depth, far, thickness } of ends) {
      expect([depth, far?.depth]).toEqual([expect.closeTo(0.25, 3), expect.closeTo(0.25, 3)]);
      expect(thickness).toBeLessThan(1e-5);
    }
    expect(
      section.points.filter(({ x }) => x > 10.001 && x < 15.999).map(({ thickness }) => thickness),
    ).toEqual(section.points.filter(({ x }) => x > 10.001 && x < 15.999).map(() => 0));
  });
});
