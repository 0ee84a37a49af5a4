import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BridgeAsk, placeBridges, type Range } from '#handoff/template/place-bridges.ts';

const RULE = { width: 5, longest: 100, shortest: 5 };

describe('bridges along a line', () => {
  test('two on a closed line, opposite each other, however short the slots may be', () => {
    const middles = placeBridges({ length: 80, isClosed: true, keepOut: [] }, RULE);
    expect(middles).toEqual([0, 40]);
  });

  test('none on an open line that one slot covers, one in the middle of the next longer', () => {
    expect(placeBridges({ length: 100, isClosed: false, keepOut: [] }, RULE)).toEqual([]);
    expect(placeBridges({ length: 101, isClosed: false, keepOut: [] }, RULE)).toEqual([50.5]);
  });

  test('in the middle of the sides of a square, clear of its corners', () => {
    const corners = [0, 60, 120, 180].map((at) => ({ from: at - 6, to: at + 6 }));
    expect(placeBridges({ length: 240, isClosed: true, keepOut: corners }, { ...RULE, longest: 60 })).toEqual(
      [30, 90, 150, 210],
    );
  });

  test('no room: a closed line shorter than two bridges and two slots as long', () => {
    expect(placeBridges({ length: 20, isClosed: true, keepOut: [] }, RULE)).toEqual([0, 10]);
    expect(placeBridges({ length: 19.9, isClosed: true, keepOut: [] }, RULE)).toBeUndefined();
  });

  test('no room: nothing free within the longest slot', () => {
    const shut = [{ from: 10, to: 190 }];
    expect(placeBridges({ length: 200, isClosed: false, keepOut: shut }, RULE)).toBeUndefined();
  });
});

describe('bridges along a line with places that are shut, by hand', () => {
  const shut = (...ranges: readonly (readonly [number, number])[]): Range[] =>
    ranges.map(([from, to]) => ({ from, to }));

  test('the first of a closed line stands in the middle of the widest free stretch, the others as evenly as theirs allow', () => {
    // Free are 30 to 50, 100 to 130 and 180 to 200. From 115 all round are 200: two more at thirds would stand at 181.7 and 248.3.
    const keepOut = shut([0, 30], [50, 100], [130, 180]);
    expect(placeBridges({ length: 200, isClosed: true, keepOut }, RULE)).toEqual([
      115,
      expect.closeTo(115 + 200 / 3, 9),
      expect.closeTo(115 + 400 / 3, 9),
    ]);
  });

  test('of two places as near to the even one the first is taken', () => {
    // Opposite of 60 is 120, shut by 10 either way; what is shut passes the start of the line.
    for (const keepOut of [shut([110, 130]), shut([-10, 10])])
      expect(placeBridges({ length: 120, isClosed: true, keepOut }, RULE)).toEqual([60, 110]);
  });

  test('on an open line a whole slot is left at either end: from 7.5 to 102.5 of 110', () => {
    const on = (from: number, to: number) =>
      placeBridges({ length: 110, isClosed: false, keepOut: shut([from, to]) }, RULE);
    expect(on(8, 101)).toEqual([101]);
    expect(on(9, 102)).toEqual([9]);
    expect(on(7.4, 102.4)).toEqual([102.4]);
    expect(on(7.6, 102.6)).toEqual([7.6]);
    expect(on(7.4, 102.6)).toBeUndefined();
  });

  test('where the middles do not do, at the beginning of a free stretch', () => {
    // Slots of 40 only: two bridges just 50 apart. Free are 10 to 18 and 46 to 60: nothing but 10 and 60 will do.
    const keepOut = shut([0, 10], [18, 46], [60, 100]);
    const rule = { width: 10, longest: 40, shortest: 30 };
    expect(placeBridges({ length: 100, isClosed: true, keepOut }, rule)).toEqual([10, expect.closeTo(60, 6)]);
  });

  test('of two free stretches as wide the first of the line has the first bridge', () => {
    expect(placeBridges({ length: 100, isClosed: true, keepOut: shut([30, 60], [80, 110]) }, RULE)).toEqual([
      20,
      expect.closeTo(70, 9),
    ]);
  });

  test('a place that no bridge before it reaches is passed over, however even', () => {
    // Bridges 40 to 45 apart. The second comes to 75 or 85, so the third to 115 to 120.5 or 125 to 130: not to 122, which would be
    // next to the even 121. From 119.5 back the even 78 and 35.25 are come to at 75.5 and 35.25.
    const keepOut = shut(
      [0, 35],
      [35.5, 39.5],
      [40, 75],
      [75.5, 85],
      [85.5, 119],
      [119.5, 122],
      [122.5, 158],
    );
    const rule = { width: 10, longest: 35, shortest: 30 };
    expect(placeBridges({ length: 158, isClosed: false, keepOut }, rule)).toEqual([
      expect.closeTo(35.25, 6),
      expect.closeTo(75.5, 6),
      expect.closeTo(119.5, 6),
    ]);
  });

  test('ranges that overlap, in any order, shut all that any of them shuts', () => {
    const apart = shut([20, 45], [52, 70]);
    const overlapping = shut([60, 70], [30, 45], [20, 33], [52, 64], [53, 54]);
    const place = (keepOut: readonly Range[]) =>
      placeBridges({ length: 150, isClosed: false, keepOut }, { ...RULE, longest: 45 });
    expect(place(overlapping)).toEqual(place(apart));
    // Three slots of 46.7 are too long: three bridges, at 35, 75 and 115 but for what is shut.
    expect(place(apart)).toHaveLength(3);
  });
});

const ask = fc.integer({ min: 10, max: 120 }).chain((length) =>
  fc.record({
    length: fc.constant(length),
    isClosed: fc.boolean(),
    keepOut: fc.array(
      fc
        .tuple(fc.integer({ min: -10, max: length }), fc.integer({ min: 1, max: 24 }))
        .map(([from, wide]): Range => ({ from: from + 0.25, to: from + wide - 0.25 })),
      { maxLength: 5 },
    ),
  }),
);
const rule = fc.record({
  width: fc.integer({ min: 2, max: 6 }),
  longest: fc.integer({ min: 8, max: 40 }),
  shortest: fc.integer({ min: 2, max: 6 }),
});

describe('bridges along any line', () => {
  test('keep out of what is shut, stand no nearer and no farther apart than they may, and are two on a closed line', () => {
    fc.assert(
      fc.property(ask, rule, (line, { width, longest, shortest }) => {
        const { length, isClosed } = line;
        const middles = placeBridges(line, { width, longest, shortest });
        if (middles === undefined) return;
        for (const at of middles) expect(isShut(line, at, 1e-9)).toBe(false);
        const ends = isClosed
          ? [...middles, (middles[0] ?? 0) + length]
          : [-width / 2, ...middles, length + width / 2];
        if (isClosed) expect(middles.length).toBeGreaterThanOrEqual(2);
        ends.slice(1).forEach((at, index) => {
          const slot = at - (ends[index] ?? 0) - width;
          expect(slot).toBeLessThanOrEqual(longest + 1e-6);
          expect(slot).toBeGreaterThanOrEqual(shortest - 1e-6);
        });
      }),
      { numRuns: 500 },
    );
  });

  test('are found wherever trying every half millimetre finds some', { tags: ['long'] }, () => {
    let found = 0;
    fc.assert(
      fc.property(ask, rule, (line, each) => {
        if (!canBePlaced(line, each)) return;
        found++;
        expect(placeBridges(line, each)).toBeDefined();
      }),
      { numRuns: 500 },
    );
    expect(found).toBeGreaterThan(100);
  });
});

function isShut({ keepOut, length, isClosed }: BridgeAsk, at: number, by: number): boolean {
  const turns = isClosed ? [-2, -1, 0, 1, 2] : [0];
  return turns.some((turn) =>
    keepOut.some(({ from, to }) => at + turn * length > from + by && at + turn * length < to - by),
  );
}

/** Every place on a grid, with reach found from each to the next: slow and plain. */
function canBePlaced(
  line: BridgeAsk,
  { width, longest, shortest }: { width: number; longest: number; shortest: number },
): boolean {
  const { length, isClosed } = line;
  const grid = Array.from({ length: 2 * length }, (_, index) => index / 2);
  const free = grid.filter((at) => !isShut(line, at, 0));
  const goesOn = (from: number, to: number) => to - from - width >= shortest && to - from - width <= longest;
  const laps = isClosed ? [...free, ...free.map((at) => at + length)] : free;
  const after = (at: number, to: number) => laps.filter((each) => each < to && goesOn(at, each));
  const canReach = (from: number, to: number, least: number): boolean => {
    let now = new Set([from]);
    for (let bridges = 0; now.size > 0; bridges++) {
      if (bridges >= least && [...now].some((at) => goesOn(at, to))) return true;
      now = new Set([...now].flatMap((at) => after(at, to)));
    }
    return false;
  };
  if (!isClosed) return canReach(-width / 2, length + width / 2, 0);
  return free.some((first) => canReach(first, first + length, 1));
}
