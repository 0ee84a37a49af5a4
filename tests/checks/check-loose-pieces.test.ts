/** M9.9: pieces that hang on nothing once all is etched. Undercut 1; a sheet of 170 by 130, 1 mm thick, cut out from both faces. */
import { expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { checkTwoFaces, type Pocket, type TwoFaces } from '#support/parts/check-two-faces.ts';

const SHEET = 170 * 130;
const THROUGH = { depth: 0.7, wall: 0.5 };
/** Left in the four corners of a cut: undercut rounds them at mid-thickness by √(0.7² − 0.5²). */
const CORNERS = (4 - Math.PI) * (0.7 ** 2 - 0.5 ** 2);

/** Cut out between two rectangles; the inner one is land. */
function frame(outer: Box, inner: Box, asked: Pocket[3] = THROUGH): Pocket[] {
  return [
    [rectangle(...outer), outer[0] + 0.2, outer[1] + 0.2, asked],
    [rectangle(...inner), inner[0] + 0.2, inner[1] + 0.2, { depth: 0 }],
  ];
}
type Box = [x: number, y: number, right: number, top: number];

/** What falls, counted and measured in mm² at the middle of the sheet, and where the largest is. */
function fallen(pockets: readonly Pocket[], more: Partial<TwoFaces> = {}) {
  const findings = checkTwoFaces({ near: pockets, far: pockets, stock: { thickness: 1 }, ...more });
  return findings.filter(({ code }) => code === 'part-falls-apart');
}

test('of two loose pieces the larger is named, and both are counted', () => {
  const [found, ...others] = fallen([
    ...frame([0, 0, 20, 13], [7, 4, 15, 9]),
    ...frame([30, 20, 47, 32], [33, 22, 44, 29]),
  ]);
  expect(others).toEqual([]);
  expect(found?.facts).toEqual({
    pieces: 2,
    area: expect.closeTo(11 * 7, 6),
    rest: expect.closeTo(SHEET - 20 * 13 - 17 * 12 + 2 * CORNERS, 6),
  });
  expect(isInsideLoops([rectangle(33, 22, 44, 29)], found?.place.at ?? { x: 0, y: 0 })).toBe(true);
});

test('a piece loose in the hole of a loose ring: metal is counted without what is cut out of it', () => {
  const [found] = fallen([
    ...frame([0, 0, 60, 50], [5, 7, 52, 41]),
    ...frame([12, 13, 40, 33], [20, 18, 31, 27]),
  ]);
  expect(found?.facts).toEqual({
    pieces: 2,
    area: expect.closeTo(47 * 34 - 28 * 20 + CORNERS, 6),
    rest: expect.closeTo(SHEET - 60 * 50 + CORNERS, 6),
  });
});

test('a hole cut out of the part leaves no loose piece, nor does its own metal fall', () => {
  expect(fallen([[rectangle(0, 0, 20, 13), 9, 6, THROUGH]])).toEqual([]);
});

test('cut out from the far face alone it falls as well', () => {
  const far = frame([0, 0, 20, 13], [6, 4, 15, 10], { depth: 1.2, wall: 1 });
  const near: Pocket[] = [[rectangle(60, 0, 70, 13), 65, 6, { depth: 0.3 }]];
  const [found] = fallen(near, { far });
  expect(found?.facts).toMatchObject({ pieces: 1 });
});

test('nothing falls where nothing is asked to come through, nor from a sheet without a border', () => {
  const meeting = { depth: 0.7 };
  expect(fallen(frame([0, 0, 20, 13], [7, 4, 15, 9], meeting))).toEqual([]);
  expect(fallen(frame([0, 0, 20, 13], [7, 4, 15, 9]), { sheet: false })).toEqual([]);
});

test('a second sheet beside the first is no piece that fell', () => {
  const beside = rectangle(200, 0, 230, 20);
  const [found] = fallen(frame([0, 0, 20, 13], [7, 4, 15, 9]), {
    change: (plan) => ({ ...plan, sheet: [...plan.sheet, beside] }),
  });
  expect(found?.facts).toMatchObject({ pieces: 1, rest: expect.closeTo(SHEET - 20 * 13 + CORNERS, 6) });
});
