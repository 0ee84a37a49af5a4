import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { depthAt } from '#front/depth-at.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, loopArea } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';
import type { Asked, Part } from '#part/part.ts';
import { makePlan } from '#plan/make-plan.ts';
import { stripTapers } from '#plan/taper-strips.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

const TOLERANCE = { plus: 0.08, minus: 0.08 };

function taper(from: [number, number], to: [number, number], values: [number, number]): Taper {
  return {
    from: { x: from[0], y: from[1] },
    to: { x: to[0], y: to[1] },
    fromValue: values[0],
    toValue: values[1],
  };
}

/** What is asked of the region that holds a point. */
function askAt(part: Part, at: Point, asked: Asked): Map<string, Asked> {
  const region = part.regions.find(({ loops }) => isInsideLoops(loops, at));
  if (region === undefined) throw new Error('the part has a region there');
  return new Map([[region.id, asked]]);
}

interface Stepped {
  readonly pocket: Loop;
  readonly tapers: readonly Taper[];
  readonly at: Point;
  readonly factor?: number;
  readonly tolerance?: { readonly plus: number; readonly minus: number };
  readonly levels?: Job['levels'];
}

function plannedOf({ pocket, tapers, at, factor = 1, tolerance = TOLERANCE, levels = 'fewest' }: Stepped) {
  const part = partOf({ outlines: [pocket] });
  const asked = askAt(part, at, { depth: taperedAt(tapers, at), ...tolerance, tapers });
  return makePlan({ part, asked, job: plainJob({ levels, etchFactor: [[0, factor]] }) });
}

/** How far the etched surface is out of tolerance at places all over the pocket, clear of its outer wall; and how many. */
function checkedOutside(stepped: Stepped): { readonly worst: number; readonly places: number } {
  const { pocket, tapers, factor = 1, tolerance = TOLERANCE } = stepped;
  const plan = plannedOf(stepped);
  expect(beyondUnused(plan.findings)).toEqual([]);
  const index = indexFront(frontOfPlan(plan, 6));
  const clear = factor * Math.max(...plan.stages.map(({ level }) => level)) + 1e-6;
  let worst = 0;
  let places = 0;
  for (let x = -300; x <= 1100; x += 3.7) {
    for (let y = -300; y <= 400; y += 11.3) {
      const at = { x, y };
      if (!isInsideLoops([pocket], at) || pocket.some((span) => distanceToSpan(span, at) < clear)) continue;
      const off = depthAt(index, at).depth - taperedAt(tapers, at);
      worst = Math.max(worst, off - tolerance.plus, -off - tolerance.minus);
      places++;
    }
  }
  return { worst, places };
}

/** A pocket on a stretch of the panel takes a stretch of the panel's list of levels. */
function beyondUnused(findings: readonly Finding[]): Finding[] {
  return findings.filter(({ code }) => code !== 'level-unused');
}

describe('M4.4, M4.5 tapers in steps', () => {
  const root = taper([0, 0], [1000, 0], [2.4, 1.2]);
  const panel: Stepped = { pocket: rectangle(0, 0, 1000, 100), tapers: [root], at: { x: 500, y: 50 } };

  test('2.4 to 1.2 mm over 1000 mm with ± 0.08: eight even strips of 125 mm, named from the deepest', () => {
    const plan = plannedOf(panel);
    expect(plan.stages).toHaveLength(8);
    const strips = plan.regions.filter(({ level }) => level > 0);
    expect(strips.map(({ id }) => id)).toEqual([1, 2, 3, 4, 5, 6, 7, 8].map((at) => `R1.${at}`));
    for (const [index, { area, level }] of strips.entries()) {
      expect(area).toBeCloseTo(125 * 100, 1);
      expect(level).toBeCloseTo(2.4 - 0.15 * (index + 0.5), 4);
    }
  });

  test('the step from 2.325 to 2.175 mm is scribed with its true allowance, √(2.325² − 2.175²) = 0.8216 mm', () => {
    const [first] = plannedOf(panel).stages;
    const right = Math.max(...(first?.opening.flat() ?? []).map(({ start }) => start.x));
    expect(125 - right).toBeCloseTo(Math.sqrt(2.325 ** 2 - 2.175 ** 2), 3);
  });

  test('the etched surface holds the tolerance everywhere, walls of the steps too', () => {
    const { worst, places } = checkedOutside(panel);
    expect(places).toBeGreaterThan(1500);
    expect(worst).toBeLessThanOrEqual(1e-5);
  });

  test('so it does whatever the direction, the etch factor and the shape', { tags: ['long'] }, () => {
    const turned = fc.record({
      degrees: fc.integer({ min: 0, max: 359 }),
      factor: fc.constantFrom(0.6, 1, 1.5),
      shape: fc.constantFrom(
        roundedRectangle(0, 0, 600, 80, 12),
        circle(200, 0, 180),
        roundedRectangle(100, -60, 400, 60, 20),
      ),
      values: fc.constantFrom<[number, number]>([2.6, 1.1], [0.9, 2], [3, 2.9]),
    });
    fc.assert(
      fc.property(turned, ({ degrees, factor, shape, values }) => {
        const turn = (degrees * Math.PI) / 180;
        const pocket = shape.map((span) =>
          moveSpan(span, { turn, factor: 1, mirrored: false, shift: { x: 0, y: 0 } }),
        );
        const along = (distance: number): [number, number] => [
          distance * Math.cos(turn),
          distance * Math.sin(turn),
        ];
        const tapers = [taper(along(150), along(450), values)];
        const { x, y } = { x: 250 * Math.cos(turn), y: 250 * Math.sin(turn) };
        const at = { x: x - 20 * Math.sin(turn), y: y + 20 * Math.cos(turn) };
        expect(checkedOutside({ pocket, tapers, at, factor }).worst).toBeLessThanOrEqual(1e-5);
      }),
      { numRuns: 12 },
    );
  });

  test('a sheet that tapers along and a thickness that tapers across: one slope in between', () => {
    // Sheet 4.0 to 3.4 along x, thickness 2.0 to 1.6 along y: depth 2.0 − 0.6 x / 600 + 0.4 y / 200.
    const tapers = [taper([0, 0], [600, 0], [4, 3.4]), taper([0, 0], [0, 200], [-2, -1.6])];
    const both: Stepped = { pocket: rectangle(20, 20, 580, 180), tapers, at: { x: 300, y: 100 } };
    expect(checkedOutside(both).worst).toBeLessThanOrEqual(1e-5);
  });

  test('a taper that runs out to nothing ends in land', () => {
    const tapers = [taper([0, 0], [800, 0], [1.2, 0])];
    const plan = plannedOf({ pocket: rectangle(0, 0, 800, 90), tapers, at: { x: 100, y: 40 } });
    const land = plan.regions.filter(({ level }) => level === 0);
    // What is asked less than 0.08 deep may stay as it is: 1.2 · w / 800 = 0.08 at w = 53.3 mm from the end.
    expect(land.map(({ area }) => Math.round(area / 90))).toEqual([53]);
    expect(plan.stages).toHaveLength(7);
  });

  test('a flat pocket beside shares a level with the taper, so that it costs no stage', () => {
    const outlines = [rectangle(0, 0, 1000, 100), rectangle(0, 200, 100, 300)];
    const part = partOf({ outlines });
    const asked = new Map([
      ...askAt(part, { x: 500, y: 50 }, { depth: 1.8, ...TOLERANCE, tapers: [root] }),
      ...askAt(part, { x: 50, y: 250 }, { depth: 1.88, plus: 0.05, minus: 0.05 }),
    ]);
    const plan = makePlan({ part, asked, job: plainJob({ levels: 'fewest' }) });
    expect(plan.stages).toHaveLength(8);
    expect(plan.findings).toEqual([]);
  });

  test('a taper that may nowhere be too shallow, or too deep, takes levels that are unevenly far apart', () => {
    const uneven = {
      pocket: rectangle(0, 0, 1000, 100),
      tapers: [taper([0, 0], [1000, 0], [1.5, 2])],
      at: { x: 500, y: 50 },
      levels: [1.5, 1.8, 2],
    };
    for (const tolerance of [
      { plus: 0.4, minus: 0 },
      { plus: 0, minus: 0.4 },
    ]) {
      const { worst, places } = checkedOutside({ ...uneven, tolerance });
      expect(places).toBeGreaterThan(1000);
      expect(worst).toBeLessThanOrEqual(1e-5);
    }
  });

  test('as drawn, the flat depths stay levels and the taper adds what it still needs', () => {
    const part = partOf({ outlines: [rectangle(0, 0, 1000, 100), rectangle(0, 200, 100, 300)] });
    const asked = new Map([
      ...askAt(part, { x: 500, y: 50 }, { depth: 1.8, ...TOLERANCE, tapers: [root] }),
      ...askAt(part, { x: 50, y: 250 }, { depth: 1.88, plus: 0.05, minus: 0.05 }),
    ]);
    const plan = makePlan({ part, asked, job: plainJob() });
    expect(plan.stages.map(({ level }) => level)).toContain(1.88);
    expect(plan.findings).toEqual([]);
  });

  test('a sliver of a strip at the end goes to its neighbour, or takes of it what it lacks: never no opening', () => {
    // The panel's own levels, each 125 mm long, and pockets that start anywhere on the first of them.
    const levels = Array.from({ length: 8 }, (_, step) => 2.325 - 0.15 * step);
    const job = plainJob({ levels });
    for (let from = 100; from < 126; from += 0.7) {
      const part = partOf({ outlines: [rectangle(from, 0, 600, 60)] });
      const asked = askAt(part, { x: 400, y: 30 }, { depth: 1.92, ...TOLERANCE, tapers: [root] });
      expect(beyondUnused(makePlan({ part, asked, job }).findings)).toEqual([]);
    }
    for (const from of [100, 119.5, 122, 124.8]) {
      const pocket = rectangle(from, 0, 600, 60);
      const made = checkedOutside({ pocket, tapers: [root], at: { x: 400, y: 30 }, levels });
      expect(made.worst).toBeLessThanOrEqual(1e-5);
    }
  });

  test('an end strip of 4 mm that only its own level serves takes of its neighbour what its walls and piece lack', () => {
    // 0.0008 mm a mm. 2.3192 serves up to 2.3992, short of the end's 2.4; 2.4744 serves down to 2.3944, 7 mm from the end.
    // Half-way between the two, 2.3968, is 4 mm from the end; walls and piece take 2.4744 + 0.8625 + 3 = 6.337 mm.
    const part = partOf({ outlines: [rectangle(0, 0, 190, 100)] });
    const tapers = [taper([0, 0], [190, 0], [2.4, 2.248])];
    const asked = askAt(part, { x: 100, y: 50 }, { depth: 2.32, ...TOLERANCE, tapers });
    const plan = makePlan({ part, asked, job: plainJob({ levels: [2.4744, 2.3192] }) });
    expect(plan.findings).toEqual([]);
    const deepest = plan.regions.find(({ level }) => level === 2.4744);
    expect((deepest?.area ?? 0) / 100).toBeCloseTo(2.4744 + Math.sqrt(2.4744 ** 2 - 2.3192 ** 2) + 3, 3);
  });

  test('strips add up to the region, and no other region changes', () => {
    const part = partOf({
      sheet: rectangle(-50, -50, 1100, 400),
      outlines: [panel.pocket, circle(50, 250, 40)],
    });
    const asked = askAt(part, panel.at, { depth: 1.8, ...TOLERANCE, tapers: [root] });
    const { regions } = makePlan({ part, asked, job: plainJob({ levels: 'fewest' }) });
    const strips = regions.filter(({ id }) => id.includes('.'));
    expect(strips.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(loopArea(panel.pocket), 6);
    const others = part.regions.filter(({ loops }) => !isInsideLoops(loops, panel.at));
    for (const { id, area } of others)
      expect(regions.find((each) => each.id === id)?.area).toBeCloseTo(area, 6);
  });
});

describe('what steps cannot follow', () => {
  const codes = (stepped: Stepped) => [...new Set(plannedOf(stepped).findings.map(({ code }) => code))];

  const steep = (each: number): Stepped => ({
    pocket: rectangle(0, 0, 60, 60),
    tapers: [taper([20, 0], [25, 0], [3, 1])],
    at: { x: 30, y: 30 },
    tolerance: { plus: each, minus: each },
  });

  test('taper-too-steep: 2 mm over 5 mm leaves strips that their walls take whole', () => {
    expect(codes(steep(0.08))).toContain('taper-too-steep');
  });

  test('taper-too-steep goes when the tolerance is about as wide as the remedy says', () => {
    const reported = plannedOf(steep(0.08)).findings.find(({ code }) => code === 'taper-too-steep');
    const text = reported === undefined ? '' : sayFinding(reported).remedy;
    const wide = Number.parseFloat(/more than about ([\d.]+) mm/.exec(text)?.[1] ?? '');
    expect(codes(steep((wide * 1.15) / 2))).toEqual([]);
    // Strip width T / g against its wall √(2 ℓ T): T must pass 2 ℓ g², here with g = 0.4 and ℓ near 3.
    expect(wide).toBeGreaterThan(0.7);
    expect(wide).toBeLessThan(1.1);
  });

  test('taper-without-tolerance: no plus and no minus', () => {
    const tolerance = { plus: 0, minus: 0 };
    const exact = {
      pocket: rectangle(0, 0, 600, 60),
      tapers: [taper([0, 0], [600, 0], [3, 1])],
      at: { x: 30, y: 30 },
      tolerance,
    };
    expect(codes(exact)).toEqual(['taper-without-tolerance']);
  });

  test('taper-directions-differ: one of two tapers ends inside the region', () => {
    const tapers = [taper([0, 0], [300, 0], [4, 3.4]), taper([0, 0], [0, 200], [-2, -1.6])];
    expect(codes({ pocket: rectangle(20, 20, 580, 180), tapers, at: { x: 300, y: 100 } })).toEqual([
      'taper-directions-differ',
    ]);
  });

  test.each(['fewest', 'as-drawn'] as const)('taper-too-fine under %s: 12,000 strips', (levels) => {
    // 1.2 mm of change at ± 0.00005 mm.
    const part = partOf({ outlines: [rectangle(0, 0, 1000, 100)] });
    const tapers = [taper([0, 0], [1000, 0], [2.4, 1.2])];
    const asked = askAt(part, { x: 500, y: 50 }, { depth: 1.8, plus: 5e-5, minus: 5e-5, tapers });
    const { findings } = makePlan({ part, asked, job: plainJob({ levels }) });
    expect(findings.map(({ code, facts }) => ({ code, facts }))).toEqual([
      { code: 'taper-too-fine', facts: { strips: 12_000, limit: 50, tolerance: 1e-4, among: 1 } },
    ]);
    // 1.2 mm in fifty strips.
    expect(findings.map((each) => sayFinding(each).remedy).join()).toMatch(/^Allow 0\.024 mm or more/);
  });

  test('taper-too-fine: eight tapers of forty-five strips are more than three hundred together', () => {
    const panels = Array.from({ length: 8 }, (_, row) => ({
      low: row * 30,
      at: { x: 500, y: row * 30 + 10 },
    }));
    const part = partOf({ outlines: panels.map(({ low }) => rectangle(0, low, 1000, low + 20)) });
    const tapers = [taper([0, 0], [1000, 0], [2.4, 1.5])];
    const asked = new Map(
      panels.flatMap(({ at }) => [...askAt(part, at, { depth: 2, plus: 0.008, minus: 0.012, tapers })]),
    );
    const { taperOf, findings } = stripTapers({ part, asked, job: plainJob({ levels: 'fewest' }) }, {});
    const tooFine = findings.filter(({ code }) => code === 'taper-too-fine');
    // 0.9 mm at 0.02 mm is 45 strips; six tapers have 270.
    expect(tooFine.map(({ facts }) => facts)).toEqual(
      [1, 2].map(() => ({ strips: 315, limit: 300, tolerance: 0.02, among: 7 })),
    );
    expect(taperOf.size).toBe(270);
  });

  test.each(['fewest', 'as-drawn'] as const)(
    'nobody-listed: a cliff of a taper has no strips for levels chosen by %s: too steep is reported, and no level as unused',
    { tags: ['long'] },
    (levels) => {
      const run = fc.record({
        length: fc.constantFrom(0.0004, 0.0007, 7),
        deep: fc.integer({ min: 9, max: 31 }),
        flat: fc.integer({ min: 5, max: 31 }),
        shape: fc.constantFrom(rectangle(0, 0, 30, 40), circle(15, 20, 14)),
      });
      fc.assert(
        fc.property(run, ({ length, deep, flat, shape }) => {
          const part = partOf({ outlines: [shape, rectangle(90, 0, 130, 40)] });
          const tapers = [taper([11.3, 0], [11.3 + length, 0], [deep / 10, 0.35])];
          const at = { x: 15, y: 20 };
          const asked = new Map([
            ...askAt(part, at, { depth: taperedAt(tapers, at), plus: 0.03, minus: 0.04, tapers }),
            ...askAt(part, { x: 110, y: 20 }, { depth: flat / 10, plus: 0.03, minus: 0.05 }),
          ]);
          const codes = makePlan({ part, asked, job: plainJob({ levels }) }).findings.map(({ code }) => code);
          expect(codes).not.toContain('level-unused');
          if (length < 1) expect(codes).toContain('taper-too-steep');
        }),
        { numRuns: 6 },
      );
    },
  );

  test('a level that was locked and that nothing takes is reported beside a taper by its own path, and no other', () => {
    const part = partOf({ outlines: [rectangle(0, 0, 30, 40)] });
    const tapers = [taper([0, 0], [9, 0], [2.4, 0.3])];
    const at = { x: 15, y: 20 };
    const asked = askAt(part, at, { depth: taperedAt(tapers, at), ...TOLERANCE, tapers });
    const job = { ...plainJob({ levels: 'fewest' }), lockedLevels: [3.9] };
    const unused = makePlan({ part, asked, job }).findings.filter(({ code }) => code === 'level-unused');
    expect(unused.map(({ facts, place }) => [facts, place.path])).toEqual([
      [{ level: 3.9 }, 'lockedLevels[0]'],
    ]);
  });

  test('level-missing: a list of levels that leaves a gap in the taper', () => {
    const part = partOf({ outlines: [rectangle(0, 0, 1000, 100)] });
    const tapers = [taper([0, 0], [1000, 0], [2.4, 1.2])];
    const asked = askAt(part, { x: 500, y: 50 }, { depth: 1.8, ...TOLERANCE, tapers });
    const plan = makePlan({ part, asked, job: plainJob({ levels: [2.3, 1.3] }) });
    expect(plan.findings.map(({ code }) => code)).toEqual(['level-missing', 'level-unused', 'level-unused']);
  });
});
