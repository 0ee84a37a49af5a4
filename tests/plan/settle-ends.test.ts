/** M4.5 the strips at both ends of a taper, with unequal tolerances: levels served and cuts moved by hand. */
import { describe, expect, test } from 'vitest';
import { settleEnds } from '#plan/settle-ends.ts';
import type { StripCut } from '#plan/strip-cuts.ts';
import { type TaperProfile, taperProfile } from '#plan/taper-profile.ts';
import { rectangle } from '#support/geometry/shapes.ts';

/** Depth 1 + x / 100 over 200 mm: 1.0 to 3.0. */
const rising = profileOf({ fromValue: 1, toValue: 3 });
/** Depth 3 − x / 100. */
const falling = profileOf({ fromValue: 3, toValue: 1 });

function profileOf(values: { fromValue: number; toValue: number }): TaperProfile {
  const taper = { from: { x: 0, y: 0 }, to: { x: 200, y: 0 }, ...values };
  const profile = taperProfile([taper], [rectangle(0, 0, 200, 30)]);
  if (profile === undefined) throw new Error('one taper has a profile');
  return profile;
}

const cut = (at: number, shallow: number, deep: number, deepSide: StripCut['deepSide'] = 'after') => ({
  at,
  shallow,
  deep,
  deepSide,
});
const rule = (widths: { readonly own?: number; readonly minus?: number; readonly plus?: number }) => ({
  minus: widths.minus ?? 0.1,
  plus: widths.plus ?? 0.3,
  leastWidth: () => widths.own ?? 10,
});

test('ends that are as wide as they must be stay', () => {
  const cuts = [cut(10, 1.05, 2), cut(190, 2, 2.95)];
  expect(settleEnds(cuts, rising, rule({}))).toEqual(cuts);
  // Also where the neighbour would serve them.
  const served = [cut(100, 1.9, 2.9), cut(185, 2.9, 3.05)];
  expect(settleEnds(served, rising, rule({}))).toEqual(served);
  expect(settleEnds([], rising, rule({}))).toEqual([]);
});

describe('an end that its neighbour serves too goes to it', () => {
  test('at the deep end: 2.9 serves 2.95 to 3.0 within − 0.1', () => {
    const cuts = [cut(100, 1.9, 2.9), cut(195, 2.9, 3.05)];
    expect(settleEnds(cuts, rising, rule({}))).toEqual([cut(100, 1.9, 2.9)]);
  });

  test('not where it would be 0.11 short of what is asked at the end', () => {
    const cuts = [cut(100, 1.9, 2.89), cut(195, 2.89, 3.05)];
    const settled = settleEnds(cuts, rising, rule({}));
    expect(settled).toHaveLength(2);
  });

  test('at the shallow end: 1.3 serves 1.0 within + 0.3, 1.31 does not', () => {
    expect(settleEnds([cut(5, 1.02, 1.3), cut(100, 1.3, 2.5)], rising, rule({}))).toEqual([
      cut(100, 1.3, 2.5),
    ]);
    expect(settleEnds([cut(5, 1.02, 1.31), cut(100, 1.31, 2.5)], rising, rule({}))).toHaveLength(2);
  });

  test('of a slope that falls: the deep end is the first', () => {
    expect(
      settleEnds([cut(5, 2.9, 3.02, 'before'), cut(100, 1.5, 2.9, 'before')], falling, rule({})),
    ).toEqual([cut(100, 1.5, 2.9, 'before')]);
    expect(
      settleEnds([cut(100, 1.3, 2.5, 'before'), cut(195, 1.02, 1.3, 'before')], falling, rule({})),
    ).toEqual([cut(100, 1.3, 2.5, 'before')]);
  });
});

describe('an end that its neighbour does not serve takes what it lacks', () => {
  test('at the deep end, where its own level serves that too', () => {
    // 3.1 is 0.2 too deep 10 mm before the end: within + 0.3.
    const cuts = [cut(100, 1.9, 2.8), cut(196, 2.8, 3.1)];
    expect(settleEnds(cuts, rising, rule({}))).toEqual([cut(100, 1.9, 2.8), cut(190, 2.8, 3.1)]);
  });

  test('at the shallow end', () => {
    // 1.0 is 0.1 short 10 mm in: just within − 0.1.
    const cuts = [cut(4, 1, 1.4), cut(100, 1.4, 2.6)];
    expect(settleEnds(cuts, rising, rule({}))).toEqual([cut(10, 1, 1.4), cut(100, 1.4, 2.6)]);
  });

  test('not where its own level would miss there', () => {
    const cuts = [cut(4, 0.99, 1.4), cut(100, 1.4, 2.6)];
    expect(settleEnds(cuts, rising, rule({}))).toEqual(cuts);
    // 3.21 is 0.31 too deep 10 mm before the end.
    const deep = [cut(100, 1.9, 2.8), cut(196, 2.8, 3.21)];
    expect(settleEnds(deep, rising, rule({}))).toEqual(deep);
  });

  test('not past the next cut', () => {
    const cuts = [cut(4, 1, 1.4), cut(9.5, 1.4, 2.6)];
    expect(settleEnds(cuts, rising, rule({}))[0]).toEqual(cuts[0]);
    const deep = [cut(190.5, 2.8, 2.9), cut(196, 2.9, 3.1)];
    expect(settleEnds(deep, rising, rule({ minus: 0.05 }))[1]).toEqual(deep[1]);
  });

  test('one cut alone moves within the region only', () => {
    expect(settleEnds([cut(4, 1, 1.4)], rising, rule({ own: 12, minus: 0.2 }))).toEqual([cut(12, 1, 1.4)]);
    expect(settleEnds([cut(4, 1, 1.4)], rising, rule({ own: 201, minus: 9, plus: 0.3 }))).toEqual([]);
  });
});

test('the width asked is that of the strip’s own level, whichever side is deep', () => {
  const asked: number[] = [];
  const note = { minus: 0.1, plus: 0.3, leastWidth: (_: StripCut, level: number) => asked.push(level) - 3 };
  settleEnds([cut(50, 1.1, 2.1), cut(150, 2.1, 2.9)], rising, note);
  settleEnds([cut(50, 2.1, 2.9, 'before'), cut(150, 1.1, 2.1, 'before')], falling, note);
  expect(asked).toEqual([2.9, 1.1, 1.1, 2.9]);
});

test('a knot on the way counts: depth that swells between the cut and the end is served or not', () => {
  // Even at 1.0 to x = 6, up to 1.6 at x = 12, back to 1.0 at x = 18, then on to 2.5.
  const tapers = [
    { from: { x: 6, y: 0 }, to: { x: 12, y: 0 }, fromValue: 1, toValue: 1.6 },
    { from: { x: 12, y: 0 }, to: { x: 18, y: 0 }, fromValue: 0, toValue: -0.6 },
    { from: { x: 18, y: 0 }, to: { x: 200, y: 0 }, fromValue: 0, toValue: 1.5 },
  ];
  const profile = taperProfile(tapers, [rectangle(0, 0, 200, 30)]);
  if (profile === undefined) throw new Error('tapers along one way have a profile');
  // At x = 12 the depth is 1.6: level 1.2 is 0.4 short there, though it serves both ends of the strip.
  const cuts = [cut(20, 1.1, 1.2), cut(100, 1.2, 2)];
  expect(settleEnds(cuts, profile, rule({ own: 25, minus: 0.25, plus: 0.3 }))).toEqual([
    cut(25, 1.1, 1.2),
    cut(100, 1.2, 2),
  ]);
  expect(settleEnds(cuts, profile, rule({ own: 25, minus: 0.45, plus: 0.3 }))).toEqual([cut(100, 1.2, 2)]);
});
