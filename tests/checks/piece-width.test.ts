/** Pieces of maskant too narrow to lift: strips, and small ones without sides that face each other. φ = 1, depth 1, limit 3. */
import { expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { loopArea } from '#geometry/span.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';
import { partOf } from '#support/parts/part-of.ts';

const SHEET = rectangle(-60, -60, 200, 120);

const found = (drawn: CheckedPart) => checkPart(drawn).filter(({ code }) => code === 'piece-too-narrow');

const regionAt = (drawn: CheckedPart, x: number, y: number) =>
  partOf(drawn).regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;

test('(piece-too-narrow) a slot of 4.2 is peeled as a strip of 2.2, a round of R 2.2 as one of 2.4', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [rectangle(0, 0, 40, 4.2), circle(90, 50, 2.2)],
    depths: [
      [20, 2, 1],
      [90, 50.1, 1],
    ],
    rules: { minPieceWidth: 3 },
  };
  const [slot, round, more] = found(drawn);
  expect(more).toBeUndefined();
  expect(slot?.facts).toEqual({ width: expect.closeTo(2.2, 6), limit: 3, stage: 1, places: 2 });
  expect(slot?.place.regions).toEqual([regionAt(drawn, 20, 2)]);
  for (const { closed, spans } of slot?.place.outline ?? []) {
    expect(closed).toBe(false);
    expect(spans.flatMap(({ start, end }) => [start.y, end.y]).sort()).toEqual([
      expect.closeTo(1, 6),
      expect.closeTo(3.2, 6),
    ]);
  }
  expect(slot?.place.outline?.length).toBeGreaterThan(0);
  expect(round?.facts).toEqual({ width: expect.closeTo(2.4, 2), limit: 3, stage: 1, places: 1 });
  expect(round?.place.regions).toEqual([regionAt(drawn, 90, 50)]);
  expect(round?.place.at).toEqual({ x: expect.closeTo(90, 2), y: expect.closeTo(50, 2) });
  const [border, ...others] = round?.place.outline ?? [];
  expect(others).toEqual([]);
  expect(border?.closed).toBe(true);
  expect(loopArea(border?.spans ?? [])).toBeCloseTo(Math.PI * 1.2 ** 2, 6);
});

test('an island of maskant in a wide piece makes it no narrower', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 100, 60, 8), circle(30, 27, 0.4)],
    depths: [[80, 30, 1]],
    rules: { minPieceWidth: 3 },
  };
  expect(found(drawn)).toEqual([]);
});
