/** Every finding about making: a part that gives exactly it, and one just inside the limit that does not. */
import { describe, expect, test } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { growLoops } from '#geometry/grow/grow-loops.ts';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';

const SHEET = rectangle(-60, -60, 200, 120);

/** One rounded pocket in wide land: nothing to say about it at 2 mm. */
function pocket(depth: number, radius = 8, special: Partial<CheckedPart> = {}): CheckedPart {
  return {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 100, 60, radius)],
    depths: [[50, 30, depth]],
    ...special,
  };
}

/** Two rounded pockets with a strip of land between them. */
function neighbours(land: number, depth: number, special: Partial<CheckedPart> = {}): CheckedPart {
  return {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 60, 60, 8), roundedRectangle(60 + land, 0, 120 + land, 60, 8)],
    depths: [
      [30, 30, depth],
      [90 + land, 30, depth],
    ],
    ...special,
  };
}

/** A pocket of 1 mm with one of 2 mm in it, and so much of the first left all round. */
function nested(margin: number, special: Partial<CheckedPart> = {}): CheckedPart {
  const inner = roundedRectangle(margin, margin, 80 - margin, 60 - margin, 10 - margin);
  return {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 80, 60, 10), inner],
    depths: [
      [margin / 2, 30, 1],
      [40, 30, 2],
    ],
    ...special,
  };
}

/** Two round lobes, R 6, their middles so far to either side of the origin: two arcs that meet in two cusps. */
function lobes(off: number, special: Partial<CheckedPart> = {}): CheckedPart {
  const half = Math.acos(-off / 6);
  const right = (from: number, sweep: number): Span =>
    arcSpan({ center: { x: off, y: 0 }, radius: 6, from, sweep });
  const left = (from: number, sweep: number): Span =>
    arcSpan({ center: { x: -off, y: 0 }, radius: 6, from, sweep });
  const outline = [right(-half, half), right(0, half), left(Math.PI - half, half), left(Math.PI, half)];
  return { sheet: SHEET, outlines: [outline], depths: [[off, 0.1, 2]], ...special };
}

/** A rounded pocket with a dead-end arm of the given width, round at its end. */
function withArm(width: number, special: Partial<CheckedPart> = {}): CheckedPart {
  const half = width / 2;
  const body = roundedRectangle(0, 0, 60, 60, 8);
  // The right side is cut open for the arm.
  const outline: Span[] = body.flatMap((span): Span[] => {
    if (span.kind === 'arc' || span.start.x !== 60 || span.end.x !== 60) return [span];
    const end = arcSpan({ center: { x: 90, y: 30 }, radius: half, from: -Math.PI / 2, sweep: Math.PI });
    const mouth = { x: 60, y: 30 - half };
    const lip = { x: 60, y: 30 + half };
    return [
      lineSpan(span.start, mouth),
      lineSpan(mouth, end.start),
      end,
      lineSpan(end.end, lip),
      lineSpan(lip, span.end),
    ];
  });
  return { sheet: SHEET, outlines: [outline], depths: [[30, 30, 2]], ...special };
}

const FINE = { minLineSpacing: 0.01, minPieceWidth: 0.01 };

interface Case {
  readonly code: string;
  readonly past: CheckedPart;
  readonly inside: CheckedPart;
  /** What else there is to say just inside the limit. */
  readonly insideToo?: readonly string[];
  readonly value: number;
  readonly limit: number;
}

function twoDepths(first: number, second: number): CheckedPart {
  return {
    ...neighbours(20, 0),
    depths: [
      [30, 30, first],
      [110, 30, second],
    ],
  };
}

const CASES: readonly Case[] = [
  {
    code: 'step-too-small',
    past: twoDepths(2.09, 2),
    inside: twoDepths(2.1, 2),
    value: 0.09,
    limit: 0.1,
  },
  {
    code: 'cut-deeper-than-practice',
    past: pocket(12.8, 8, { factor: 0.5, stock: { thickness: 20 } }),
    inside: pocket(12.7, 8, { factor: 0.5, stock: { thickness: 20 } }),
    value: 12.8,
    limit: 12.7,
  },
  {
    code: 'web-too-thin',
    past: pocket(5.51, 8, { rateSpread: 0, stock: { minus: 0 } }),
    inside: pocket(5.5, 8, { rateSpread: 0, stock: { minus: 0 } }),
    value: 0.49,
    limit: 0.5,
  },
  {
    // 6 − 0.07 − 1.05 · 5.181 = 0.49
    code: 'web-thin-at-worst',
    past: pocket(5.181),
    inside: pocket(5.171),
    value: 0.49,
    limit: 0.5,
  },
  {
    code: 'opening-runs-off-sheet',
    past: pocket(2, 8, { outlines: [rectangle(-60, 0, 200, 60)] }),
    inside: pocket(2, 8, { outlines: [roundedRectangle(-55.9, 0, 195.9, 60, 8)] }),
    value: 120,
    limit: Number.NaN,
  },
  {
    code: 'lines-too-close',
    past: neighbours(1.09, 0.2, { rules: { minLandWidth: 0.4 } }),
    inside: neighbours(1.11, 0.2, { rules: { minLandWidth: 0.4 } }),
    value: 1.49,
    limit: 1.5,
  },
  {
    // The line round the pocket of 1 mm lies 1 inside its border, that of the deeper one √(2² − 1²) inside its own.
    code: 'piece-too-narrow',
    past: nested(2.26),
    inside: nested(2.27),
    value: 2.26 - 1 + Math.sqrt(3),
    limit: 3,
  },
  {
    code: 'piece-in-many-parts',
    past: lobes(5.7, { tolerance: 1, rules: FINE }),
    inside: lobes(5.6, { tolerance: 1, rules: FINE }),
    value: 2,
    limit: 1,
  },
  {
    code: 'floor-not-reached',
    past: withArm(3.98),
    inside: withArm(4.02, { rules: FINE }),
    value: 3.98,
    limit: 4,
  },
  {
    // facts: maskant land 6 wide between two openings, φ = 1: at depth 5 the ridge stands 4.0 below the surface (derived).
    code: 'maskant-comes-off',
    past: neighbours(6, 5, { edgeDatum: 'deep-foot' }),
    inside: neighbours(10.1, 5, { edgeDatum: 'deep-foot' }),
    insideToo: ['land-too-narrow'],
    value: 6,
    limit: 10,
  },
  {
    code: 'maskant-too-narrow',
    past: neighbours(2.59, 0.2),
    inside: neighbours(2.61, 0.2),
    insideToo: ['land-too-narrow'],
    value: 2.99,
    limit: 3,
  },
  {
    code: 'maskant-island-too-small',
    past: pocket(1, 8, { outlines: [roundedRectangle(0, 0, 100, 60, 8), circle(30, 30, 1.49)] }),
    inside: pocket(1, 8, { outlines: [roundedRectangle(0, 0, 100, 60, 8), circle(30, 30, 1.51)] }),
    value: Math.PI * 1.49 ** 2,
    limit: Math.PI * 1.5 ** 2,
  },
  {
    code: 'maskant-overhang-long',
    past: pocket(10.1, 12, { stock: { thickness: 20 } }),
    inside: pocket(10, 12, { stock: { thickness: 20 } }),
    value: 10.1,
    limit: 10,
  },
  {
    code: 'land-too-narrow',
    past: neighbours(3.99, 2),
    inside: neighbours(4.01, 2),
    value: 3.99,
    limit: 4,
  },
  {
    code: 'corner-sharper-than-undercut',
    past: pocket(2, 1.6),
    // Metal would stand 0.4 · (√2 − 1) = 0.166 mm into the corner; at R 1.7 it is 0.124, under what a knife can tell.
    inside: pocket(2, 1.7),
    value: 1.6,
    limit: 2,
  },
  {
    code: 'corner-drawn-sharp',
    past: pocket(2, 8, { outlines: [rectangle(0, 0, 100, 60)] }),
    inside: pocket(2, 2),
    value: 0,
    limit: 2,
  },
  {
    code: 'floor-mostly-wall',
    past: pocket(3, 3.5, { outlines: [roundedRectangle(42.2, 22.2, 57.8, 37.8, 3.5)] }),
    inside: pocket(3, 3.5, { outlines: [roundedRectangle(41, 21, 59, 39, 3.5)] }),
    value: (9.6 + 2 * Math.sqrt(9 - 2.94 ** 2)) ** 2 / 15.6 ** 2,
    limit: 0.5,
  },
];

test('step-too-small does not advise the fewest levels where levels are the fewest already', () => {
  const remedy = (levels: 'as-drawn' | 'fewest') => {
    const reported = checkPart({ ...twoDepths(2.09, 2), tolerance: 0.02, levels });
    return reported.flatMap((each) => (each.code === 'step-too-small' ? [sayFinding(each).remedy] : []));
  };
  expect(remedy('as-drawn')).toEqual([expect.stringContaining('the fewest under `levels`')]);
  expect(remedy('fewest')).toEqual([expect.not.stringContaining('the fewest')]);
});

test('several steps so small are one finding: the smallest, how many more, and the regions of all', () => {
  const [first, ...rest] = checkPart({
    sheet: SHEET,
    outlines: [10, 60, 110].map((x) => roundedRectangle(x, 10, x + 40, 50, 6)),
    depths: [
      [30, 30, 2.13],
      [80, 30, 2.05],
      [130, 30, 1.99],
    ],
  }).filter(({ code }) => code === 'step-too-small');
  if (first === undefined) throw new Error('two steps are too small');
  expect(rest).toEqual([]);
  expect(sayFinding(first).reason).toContain('Stage 2 etches only 0.06 mm, and another stage little more;');
  expect(first.place.regions).toHaveLength(2);
});

describe.each(CASES)('$code', ({ code, past, inside, insideToo = [], value, limit }) => {
  test(`(${code}) is reported past the limit, alone, with its figures and place`, () => {
    const findings = checkPart(past);
    expect(findings.map((each) => each.code)).toEqual([code]);
    const [first] = findings;
    if (first === undefined) throw new Error('one finding');
    const said = sayFinding(first);
    // The floor's share is a closed form but for the rounding of the floor's corners.
    expect(said.value).toBeCloseTo(value, code === 'floor-mostly-wall' ? 1 : 3);
    if (Number.isNaN(limit)) expect(said.limit).toBeUndefined();
    else expect(said.limit).toBeCloseTo(limit, 6);
    expect(said.remedy).toMatch(/\.$/);
    expect(first.place.regions?.length ?? 0).toBeGreaterThan(0);
  });

  test(`(${code}) is not reported just inside`, () => {
    expect(checkPart(inside).map((each) => each.code)).toEqual(insideToo);
  });
});

describe('floor-lost', () => {
  /** A strip 1.0 deep between two floors of 3.0, the drawn lines being the feet of the walls. */
  const strip = (width: number) =>
    checkPart({
      sheet: rectangle(-40, 0, 40 + width, 60),
      outlines: [rectangle(-40, 0, 0, 60), rectangle(0, 0, width, 60), rectangle(width, 0, 40 + width, 60)],
      depths: [
        [-20, 30, 3],
        [width / 2, 30, 1],
        [width + 20, 30, 3],
      ],
      edgeDatum: 'deep-foot',
    });
  const factsOf = (findings: readonly Finding[], code: string) =>
    findings.find((each) => each.code === code)?.facts;

  test('(floor-lost) is reported where the walls of both neighbours leave less than nothing', () => {
    // Half-way, 2.75 from both: √(3² − 2.75²).
    const facts = factsOf(strip(5.5), 'floor-lost');
    expect(facts).toMatchObject({ shallowest: expect.closeTo(Math.sqrt(9 - 2.75 ** 2), 3), most: 1.04 });
  });

  test('(floor-lost) is not reported where some floor is left; what the walls take is no floor', () => {
    const findings = strip(8);
    expect(factsOf(findings, 'floor-lost')).toBeUndefined();
    // Floor begins where a wall is no deeper than 1.04: √(3² − 1.04²) from each line.
    const floor = (8 - 2 * Math.sqrt(9 - 1.04 ** 2)) / 8;
    expect(factsOf(findings, 'floor-mostly-wall')).toMatchObject({ share: expect.closeTo(floor, 3) });
  });
});

describe('region-over-etched', () => {
  const grown = (by: number) => (plan: EtchPlan) => ({
    ...plan,
    stages: plan.stages.map((stage) => ({ ...stage, opening: growLoops(stage.opening, by) })),
  });

  test('(region-over-etched) is reported when an opening is spoilt by more than a scribe line may be off', () => {
    const findings = checkPart(pocket(2), grown(0.01));
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['region-over-etched', 'stop']]);
    // At the drawn line: √(2² − 1.99²).
    expect(findings[0]?.facts).toMatchObject({
      depth: expect.closeTo(0.1997, 3),
      near: expect.closeTo(0.01, 6),
    });
  });

  test('(region-over-etched) is not reported of what is within that', () => {
    expect(checkPart(pocket(2), grown(0.0045))).toEqual([]);
    expect(checkPart(pocket(2))).toEqual([]);
  });
});

describe('worked examples', () => {
  test('textbook pocket 400 × 200, R 15, depth 17: corner-sharper-than-undercut, R 17 comes out', () => {
    // Published manufacturing textbook problem on chemical milling of a 400 × 200 pocket.
    const findings = checkPart({
      sheet: rectangle(-100, -100, 500, 300),
      outlines: [roundedRectangle(0, 0, 400, 200, 15)],
      depths: [[200, 100, 17]],
      stock: { thickness: 40 },
    });
    const corner = findings.find(({ code }) => code === 'corner-sharper-than-undercut');
    expect(corner?.facts).toMatchObject({ drawn: 15, comes: 17, corners: 4 });
    expect(findings.map(({ code }) => code).sort()).toEqual([
      'corner-sharper-than-undercut',
      'cut-deeper-than-practice',
      'maskant-overhang-long',
    ]);
  });

  test('the same pocket at etch factor 1 / 1.75 keeps its corners', () => {
    const findings = checkPart({
      sheet: rectangle(-100, -100, 500, 300),
      outlines: [roundedRectangle(0, 0, 400, 200, 15)],
      depths: [[200, 100, 17]],
      stock: { thickness: 40 },
      factor: 1 / 1.75,
    });
    expect(findings.map(({ code }) => code)).toEqual(['cut-deeper-than-practice']);
  });

  test('maskant land 6 wide between two openings of depth 5: the ridge stands 4.0 below the surface', () => {
    const [first] = checkPart(neighbours(6, 5, { edgeDatum: 'deep-foot' }));
    expect(first?.facts).toMatchObject({ width: expect.closeTo(6, 6), ridge: expect.closeTo(4, 6) });
  });
});
