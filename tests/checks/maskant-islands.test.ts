/** Islands of maskant in an opening: what metal is left under them. φ = 1. */
import { expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { loopArea } from '#geometry/span.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';
import { partOf } from '#support/parts/part-of.ts';

/** A pocket of 3 mm with a round island, and a shallow pocket elsewhere. */
const withIsland = (radius: number, special: Partial<CheckedPart> = {}): CheckedPart => ({
  sheet: rectangle(-60, -60, 200, 120),
  outlines: [
    roundedRectangle(0, 0, 100, 60, 8),
    circle(33, 27, radius),
    roundedRectangle(130, 0, 180, 60, 8),
  ],
  depths: [
    [80, 30, 3],
    [150, 30, 0.5],
  ],
  ...special,
});

const found = (drawn: CheckedPart, wanted: string) => checkPart(drawn).filter(({ code }) => code === wanted);

const regionAt = (drawn: CheckedPart, x: number, y: number) =>
  partOf(drawn).regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;

test('(maskant-comes-off) an island is lost where the fronts meet under it: R 2.2 of 3 mm all round', () => {
  const drawn = withIsland(2.2, { edgeDatum: 'deep-foot' });
  const [reported, more] = found(drawn, 'maskant-comes-off');
  expect(more).toBeUndefined();
  expect(reported?.facts).toEqual({
    width: expect.closeTo(4.4, 2),
    undercut: expect.closeTo(6, 9),
    ridge: expect.closeTo(Math.sqrt(3 ** 2 - 2.2 ** 2), 2),
    least: 3,
    places: 1,
  });
  expect(reported?.place.at).toEqual({ x: expect.closeTo(33, 2), y: expect.closeTo(27, 2) });
  expect(reported?.place.regions).toEqual([regionAt(drawn, 33, 27)]);
  const [island, ...others] = reported?.place.outline ?? [];
  expect(others).toEqual([]);
  expect(island?.closed).toBe(true);
  expect(loopArea(island?.spans ?? [])).toBeCloseTo(Math.PI * 2.2 ** 2, 6);
});

test('its undercut is that of the stage that cuts there, not of a deeper one elsewhere', () => {
  const drawn = withIsland(0.9, {
    edgeDatum: 'deep-foot',
    depths: [
      [80, 30, 1.2],
      [150, 30, 3.4],
    ],
  });
  const [reported, more] = found(drawn, 'maskant-comes-off');
  expect(more).toBeUndefined();
  expect(reported?.facts).toMatchObject({
    width: expect.closeTo(1.8, 2),
    undercut: expect.closeTo(2.4, 9),
    ridge: expect.closeTo(Math.sqrt(1.2 ** 2 - 0.9 ** 2), 2),
  });
});

test('one of R 3.1 stands', () => {
  expect(found(withIsland(3.1, { edgeDatum: 'deep-foot' }), 'maskant-comes-off')).toEqual([]);
});

test('(maskant-island-too-small) shows the metal that is left, in the island’s own region', () => {
  const drawn = withIsland(1.3);
  const [reported, more] = found(drawn, 'maskant-island-too-small');
  expect(more).toBeUndefined();
  expect(reported?.facts).toEqual({
    area: expect.closeTo(Math.PI * 1.3 ** 2, 4),
    limit: expect.closeTo(Math.PI * 1.5 ** 2, 9),
    least: 3,
    places: 1,
  });
  expect(reported?.place.at).toEqual({ x: expect.closeTo(33, 2), y: expect.closeTo(27, 2) });
  expect(reported?.place.regions).toEqual([regionAt(drawn, 33, 27)]);
  const [island, ...others] = reported?.place.outline ?? [];
  expect(others).toEqual([]);
  expect(island?.closed).toBe(true);
  expect(loopArea(island?.spans ?? [])).toBeCloseTo(Math.PI * 1.3 ** 2, 4);
});

test('one of R 1.6 is larger than a disc of 3 across', () => {
  expect(found(withIsland(1.6), 'maskant-island-too-small')).toEqual([]);
});

test('two lost islands of one pocket are two findings, the one that is cut deeper first', () => {
  const drawn = withIsland(2.2, { edgeDatum: 'deep-foot' });
  const reported = found(
    { ...drawn, outlines: [...drawn.outlines, circle(70, 40, 1.4)] },
    'maskant-comes-off',
  );
  expect(reported.map(({ facts }) => 'ridge' in facts && facts.ridge)).toEqual([
    expect.closeTo(Math.sqrt(3 ** 2 - 1.4 ** 2), 2),
    expect.closeTo(Math.sqrt(3 ** 2 - 2.2 ** 2), 2),
  ]);
});
