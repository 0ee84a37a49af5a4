/** Exact borders out of polygons of the grid: areas and places in closed form. */
import { describe, expect, test } from 'vitest';
import type { Carrier } from '#geometry/grow/carrier-finder.ts';
import { gridPolygonOf } from '#geometry/grow/grid-polygons.ts';
import { type RebuiltLoop, rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { arcSpan, type Loop, lineSpan, loopArea, reverseSpans, type Span } from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };
const carriersOf = (spans: readonly Span[], isKnown = false): Carrier[] =>
  spans.map((span) => ({ span, isKnown }));
const rebuilt = (loops: readonly Loop[], carriers: readonly Carrier[]) =>
  rebuildLoops(
    loops.map((loop) => gridPolygonOf(loop, ORIGIN)),
    carriers,
    ORIGIN,
  );
const areasOf = (loops: readonly RebuiltLoop[]) =>
  loops.map((loop) => loopArea(spansOf(loop))).sort((a, b) => a - b);
const cornersOf = (loops: readonly RebuiltLoop[]) => loops.flatMap(spansOf).map(({ start }) => start);

describe('a border comes back exact', () => {
  test('a rounded plate with a round hole: 41.3 × 17.9 less four corners of 3.7 and a disc of 4.1', () => {
    const drawn = [
      roundedRectangle(0.123_456, 1, 41.423_456, 18.9, 3.7),
      reverseSpans(circle(20.000_03, 9, 4.1)),
    ];
    const loops = rebuilt(drawn, carriersOf(drawn.flat()));
    const [hole, outer] = areasOf(loops);
    expect(hole).toBeCloseTo(-Math.PI * 4.1 ** 2, 9);
    expect(outer).toBeCloseTo(41.3 * 17.9 - (4 - Math.PI) * 3.7 ** 2, 9);
    expect(loops.flat().some(({ isChord }) => isChord)).toBe(false);
    expect(loops.map((loop) => loop.length).sort()).toEqual([2, 8]);
  });

  test('also where there are so many borders that they are looked up by box', () => {
    const drawn = Array.from({ length: 9 }, (_, i) => rectangle(10 * i, 0.000_03, 10 * i + 3 + i / 2, 7));
    const loops = rebuilt(drawn, carriersOf(drawn.flat()));
    areasOf(loops).forEach((area, i) => {
      expect(area).toBeCloseTo((3 + i / 2) * 6.999_97, 9);
    });
    expect(loops).toHaveLength(9);
  });

  test('an arc of over half a turn keeps all of it', () => {
    const arcs = [0.5, 2.9].map((from) => arcSpan({ center: { x: 2, y: 3 }, radius: 9, from, sweep: 2.4 }));
    const [first, last] = [arcs[0]?.start ?? ORIGIN, arcs[1]?.end ?? ORIGIN];
    const segment = [...arcs, lineSpan(last, first)];
    expect(areasOf(rebuilt([segment], carriersOf(segment)))).toEqual([
      expect.closeTo((81 / 2) * (4.8 - Math.sin(4.8)), 8),
    ]);
  });
});

describe('where an edge fits two borders', () => {
  // Both within the grid's own doubt of 0.00035 mm.
  const loops = [rectangle(0, 0, 9, 5)];
  const others = carriersOf(rectangle(0, 0, 9, 5).slice(1));
  const known: Carrier = { span: lineSpan({ x: 0, y: 0.0002 }, { x: 9, y: 0.0002 }), isKnown: true };
  const [fresh] = carriersOf([lineSpan({ x: 0, y: 0 }, { x: 9, y: 0 })]);
  if (fresh === undefined) throw new Error('a carrier');

  test('a known one wins over one that fits better, whichever comes first', () => {
    for (const carriers of [
      [known, fresh, ...others],
      [fresh, known, ...others],
    ]) {
      expect(areasOf(rebuilt(loops, carriers))).toEqual([expect.closeTo(9 * 4.9998, 9)]);
    }
  });

  test('of two new ones the better fit wins, whichever comes first', () => {
    const worse = { ...known, isKnown: false };
    for (const carriers of [
      [worse, fresh, ...others],
      [fresh, worse, ...others],
    ]) {
      expect(areasOf(rebuilt(loops, carriers))).toEqual([expect.closeTo(45, 9)]);
    }
  });
});

test('a known border goes on where it fits, though another known one begins there', () => {
  const whole: Carrier = { span: lineSpan({ x: 0, y: 0 }, { x: 9, y: 0 }), isKnown: true };
  // Within the grid's doubt of the second edge, and first on the list.
  const leaning: Carrier = { span: lineSpan({ x: 4, y: 0 }, { x: 9, y: 0.0003 }), isKnown: true };
  const drawnLoop = polygon([
    [0, 0],
    [4, 0],
    [9, 0],
    [9, 5],
    [0, 5],
  ]);
  const others = carriersOf(rectangle(0, 0, 9, 5).slice(1));
  expect(areasOf(rebuilt([drawnLoop], [leaning, whole, ...others]))).toEqual([expect.closeTo(45, 9)]);
});

describe('joints', () => {
  test('an end of one border that lies on the next is the joint, bit for bit', () => {
    // The arc sags 0.000004 mm below the line: their crossing lies 0.005 mm away from the drawn end.
    const start = { x: 5, y: 0 };
    const center = { x: 5, y: 2.999_996 };
    const arc = { ...arcSpan({ center, radius: 3, from: -Math.PI / 2, sweep: Math.PI }), start };
    const plate = [
      lineSpan({ x: 0, y: 0 }, start),
      arc,
      lineSpan(arc.end, { x: 0, y: arc.end.y }),
      lineSpan({ x: 0, y: arc.end.y }, { x: 0, y: 0 }),
    ];
    const loops = rebuilt([plate], carriersOf(plate));
    expect(loops.flat()).toHaveLength(4);
    expect(cornersOf(loops)).toContainEqual(start);
    expect(cornersOf(loops)).toContainEqual(arc.end);
  });

  test('else borders meet where they cross', () => {
    const lines = [lineSpan({ x: -3, y: 0 }, { x: 20, y: 0 }), lineSpan({ x: 8, y: -2 }, { x: 2, y: 7 })];
    const closing = lineSpan({ x: 0, y: 9 }, { x: 0, y: -4 });
    const triangle = polygon([
      [0, 0],
      [8 - 4 / 3, 0],
      [0, 10],
    ]);
    // Through (20/3, 0) and (0, 10).
    expect(areasOf(rebuilt([triangle], carriersOf([...lines, closing])))).toEqual([
      expect.closeTo(100 / 3, 9),
    ]);
  });

  test('an edge over a corner that the grid lost is two borders again', () => {
    // The corner (5, 0) lies 0.0004 mm under the edge from (0, 0) to (10, 0.0008).
    const drawn = polygon([
      [0, 0],
      [5, 0],
      [10, 0.0008],
      [10, 6],
      [0, 6],
    ]);
    const drawnLoop = polygon([
      [0, 0],
      [10, 0.0008],
      [10, 6],
      [0, 6],
    ]);
    const loops = rebuilt([drawnLoop], carriersOf(drawn));
    expect(loops.flat().map(({ isChord }) => isChord)).toEqual([false, false, false, false, false]);
    expect(cornersOf(loops)).toContainEqual({ x: 5, y: 0 });
    expect(areasOf(loops)).toEqual([expect.closeTo(60 - 0.002, 9)]);
  });
});

describe('borders that hardly meet', () => {
  /** A plate of 9 × 5 whose lower side goes on a hair higher from x = 5, by a line of its own. */
  const plate = (rise: number, slope: number) => {
    const end = rise + 4 * slope;
    const lower = [lineSpan({ x: 0, y: 0 }, { x: 5, y: 0 }), lineSpan({ x: 5, y: rise }, { x: 9, y: end })];
    const others = [
      lineSpan({ x: 9, y: end }, { x: 9, y: 5 }),
      lineSpan({ x: 9, y: 5 }, { x: 0, y: 5 }),
      lineSpan({ x: 0, y: 5 }, { x: 0, y: 0 }),
    ];
    return { carriers: carriersOf([...lower, ...others]), end, area: 45 - 4 * rise - 8 * slope };
  };

  test('a step of 0.8 µm between two parallels, lost on the grid, is the way over from one to the other', () => {
    const { carriers, area } = plate(0.0008, 0);
    const ring = polygon([
      [0, 0],
      [5, 0],
      [5, 0.0008],
      [9, 0.0008],
      [9, 5],
      [0, 5],
    ]);
    const loops = rebuilt([ring], carriers);
    expect(areasOf(loops)).toEqual([expect.closeTo(area, 9)]);
    expect(loops.flat()).toHaveLength(6);
    expect(loops.flat().filter(({ isChord }) => isChord)).toEqual([]);
    expect(loops.flatMap(spansOf)).toContainEqual(lineSpan({ x: 5, y: 0 }, { x: 5, y: 0.0008 }));
  });

  test('they meet where they cross, 0.04 mm from the corner of the grid; 0.4 mm is too far to be that corner', () => {
    const ringTo = (end: number) =>
      polygon([
        [0, 0],
        [5, 0],
        [9, end],
        [9, 5],
        [0, 5],
      ]);
    const steep = plate(0.0004, 0.01);
    const crossed = rebuilt([ringTo(steep.end)], steep.carriers);
    expect(crossed.flat()).toHaveLength(5);
    expect(cornersOf(crossed)).toContainEqual({ x: expect.closeTo(4.96, 9), y: 0 });
    // What lies under the second line from 4.96 on.
    expect(areasOf(crossed)).toEqual([expect.closeTo(45 - 0.005 * 4.04 ** 2, 9)]);
    const flat = plate(0.0004, 0.001);
    const missed = rebuilt([ringTo(flat.end)], flat.carriers);
    expect(missed.flat()).toHaveLength(6);
    expect(areasOf(missed)).toEqual([expect.closeTo(flat.area, 6)]);
    expect(cornersOf(missed).every(({ x }) => x > 4.999 || x < 1)).toBe(true);
  });
});

test('a run of which its joints leave nothing is dropped, and its neighbours meet', () => {
  // The known line runs 0.000008 mm above the drawn one’s end at (5.2, 0), which is taken for their joint; the plate ends at 5.12.
  const drawn = [
    lineSpan({ x: 0, y: 0 }, { x: 5.2, y: 0 }),
    lineSpan({ x: 5.12, y: -1 }, { x: 5.12, y: 5 }),
    lineSpan({ x: 5.12, y: 5 }, { x: 0, y: 5 }),
    lineSpan({ x: 0, y: 5 }, { x: 0, y: 0 }),
  ];
  const known: Carrier = { span: lineSpan({ x: 5, y: 0 }, { x: 6, y: 0.000_04 }), isKnown: true };
  const ring = polygon([
    [0, 0],
    [5.11, 0],
    [5.12, 0],
    [5.12, 5],
    [0, 5],
  ]);
  const loops = rebuilt([ring], [known, ...carriersOf(drawn)]);
  expect(loops.flat()).toHaveLength(4);
  expect(cornersOf(loops)).toContainEqual({ x: expect.closeTo(5.12, 9), y: expect.closeTo(0, 7) });
  expect(areasOf(loops)).toEqual([expect.closeTo(25.6, 9)]);
});

describe('one border is one run', () => {
  const sides = rectangle(0, 0, 9, 5);

  test('also where the ring begins in the middle of it, or passes corners of its own on it', () => {
    const ring = polygon([
      [4, 0],
      [7, 0],
      [9, 0],
      [9, 2],
      [9, 5],
      [0, 5],
      [0, 0],
      [1, 0],
    ]);
    const loops = rebuilt([ring], carriersOf(sides));
    expect(loops.flat()).toHaveLength(4);
    expect(areasOf(loops)).toEqual([45]);
    expect([...cornersOf(loops)].sort((a, b) => a.x - b.x || a.y - b.y)).toEqual([
      { x: 0, y: 0 },
      { x: 0, y: 5 },
      { x: 9, y: 0 },
      { x: 9, y: 5 },
    ]);
  });

  test('drawn in two pieces it is one too, and a known piece of it wins wherever the ring begins', () => {
    const [lower, ...others] = sides;
    if (lower === undefined) throw new Error('four sides');
    const halves: Carrier[] = [
      { span: lineSpan({ x: 0, y: 0.000_004 }, { x: 4, y: 0.000_004 }), isKnown: false },
      { span: lineSpan({ x: 4, y: 0 }, { x: 9, y: 0 }), isKnown: true },
    ];
    const ring = polygon([
      [0, 0],
      [4, 0],
      [9, 0],
      [9, 5],
      [0, 5],
    ]);
    for (const at of ring.keys()) {
      const turned = [...ring.slice(at), ...ring.slice(0, at)];
      const loops = rebuilt([turned], [...halves, ...carriersOf(others)]);
      expect(loops.flat()).toHaveLength(4);
      expect(areasOf(loops)).toEqual([45]);
    }
  });

  test('chords are no border: each stays the edge that it is, in line with the next or not', () => {
    const ring = polygon([
      [0, 0],
      [4, 0],
      [9, 0],
      [9, 5],
      [0, 5],
    ]);
    const loops = rebuilt([ring], []);
    expect(loops.flat().map(({ isChord }) => isChord)).toEqual([true, true, true, true, true]);
    expect(areasOf(loops)).toEqual([45]);
  });
});

describe('arcs', () => {
  const center = { x: 2, y: 3 };
  /** 4.8 radians of a disc of 9, and the chord that closes it. */
  const arcs = [0.5, 2.9].map((from) => arcSpan({ center, radius: 9, from, sweep: 2.4 }));
  const [first, last] = [arcs[0]?.start ?? ORIGIN, arcs[1]?.end ?? ORIGIN];
  const segment = [...arcs, lineSpan(last, first)];

  test.each([
    ['forwards', segment, 1],
    ['backwards, round a hole', reverseSpans(segment), -1],
  ])('of over half a turn come as equal pieces that hang together, %s', (_, loop, side) => {
    const [found = []] = rebuilt([loop], carriersOf(segment));
    const spans = spansOf(found);
    expect(loopArea(spans)).toBeCloseTo(side * (81 / 2) * (4.8 - Math.sin(4.8)), 8);
    const round = spans.filter((span) => span.kind === 'arc');
    expect(round.map(({ sweep }) => sweep)).toEqual([
      expect.closeTo(side * 2.4, 9),
      expect.closeTo(side * 2.4, 9),
    ]);
    spans.forEach((span, at) => {
      expect(spans[(at + 1) % spans.length]?.start).toEqual(span.end);
    });
  });

  test('all round begin where the drawn circle does, whichever way the ring goes', () => {
    const drawn = arcSpan({ center: { x: 20, y: 9 }, radius: 4.1, from: 0.7, sweep: 2 * Math.PI });
    const [dx, dy] = [4.1 * Math.cos(0.7), 4.1 * Math.sin(0.7)];
    for (const [loop, sweep] of [
      [circle(20, 9, 4.1), Math.PI],
      [reverseSpans(circle(20, 9, 4.1)), -Math.PI],
    ] as const) {
      expect(rebuilt([loop], carriersOf([drawn])).flatMap(spansOf)).toMatchObject([
        { start: { x: expect.closeTo(20 + dx, 9), y: expect.closeTo(9 + dy, 9) }, sweep },
        { start: { x: expect.closeTo(20 - dx, 9), y: expect.closeTo(9 - dy, 9) }, sweep },
      ]);
    }
  });
});

describe('what no border explains', () => {
  test('stays the chord that it is, and says so', () => {
    const [below, right, above] = rectangle(0, 0, 9, 5);
    if (below === undefined || right === undefined || above === undefined) throw new Error('four sides');
    const loops = rebuilt([rectangle(0, 0, 9, 5)], carriersOf([below, right, above]));
    expect(loops.flat().filter(({ isChord }) => isChord)).toEqual([
      { span: lineSpan({ x: 0, y: 5 }, { x: 0, y: 0 }), isChord: true },
    ]);
    expect(areasOf(loops)).toEqual([45]);
  });

  test('specks are left out', () => {
    const speckled = polygon([
      [0, 0],
      [9, 0],
      [9, 5],
      [0.0004, 5],
      [0, 4.9997],
    ]);
    const loops = rebuilt([speckled], carriersOf(rectangle(0, 0, 9, 5)));
    expect(loops.flat()).toHaveLength(4);
    expect(areasOf(loops)).toEqual([expect.closeTo(45, 9)]);
  });
});

test('a loop that passes a corner twice is two, however it was linked', () => {
  const both = polygon([
    [0, 0],
    [4, 0],
    [4, 3],
    [9, 3],
    [9, 5],
    [4, 5],
    [4, 3],
    [0, 3],
  ]);
  for (let at = 0; at < both.length; at++) {
    const turned = [...both.slice(at), ...both.slice(0, at)];
    expect(areasOf(rebuilt([turned], carriersOf(both)))).toEqual([10, 12]);
  }
});

test('slivers thinner than 0.005 mm are dropped, wider ones stay', () => {
  const strip = (width: number) => rectangle(0, 0, 10, width);
  expect(rebuilt([strip(0.0048)], carriersOf(strip(0.0048)))).toEqual([]);
  expect(areasOf(rebuilt([strip(0.0053)], carriersOf(strip(0.0053))))).toEqual([expect.closeTo(0.053, 6)]);
  expect(rebuilt([], [])).toEqual([]);
});
