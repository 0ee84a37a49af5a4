/** Random parts whose relief once folded over or stood open, each named for what is in its drawing. */
import { expect, test } from 'vitest';
import { solidJudge } from '#support/random-parts/judge-part.ts';

test.each([
  ['a re-mask whose windows touch, on a sheet with rounded corners: 112 mm² folded over', 3, 6],
  ['a hollow rounded side that openings run off, three stages: 6070 mm² folded over', 3, 237],
  ['a rounded bay in the edge beside five outlines that overlap: 40 mm² folded over', 3, 17],
  ['four outlines that overlap, two stages: 111 mm² folded over, four edges open', 3, 670],
  ['a cutout within seven openings: 87 mm² folded over, two edges open', 3, 106],
  ['a channel just twice the undercut wide beside a cutout: 20 edges open', 3, 44],
  ['a channel over a round pocket, 4 and 3 mm deep at φ = 0.5: 14 edges open', 3, 536],
  ['two channels over an angle, three windows: 11 mm² folded over, 32 edges open', 3, 842],
  ['a rounded bay and a cutout, 0.25 mm deep: 10 mm² folded over', 3, 409],
  ['crests between legs that drown all at once', 7, 662],
  ['a crest that ends on a contour', 1, 12],
  ['crests that run 8 mm between one contour and the next', 11, 338],
  ['a finger of land that two contours pass by', 11, 594],
] as const)('M2.7 the relief is whole and true: %s', { tags: ['long'] }, async (_, seed, number) => {
  const { judge } = await solidJudge();
  expect(judge(seed, number)).toEqual({ faults: [], isHeldBack: false });
});
