import { describe, expect, test } from 'vitest';
import { narrowPlaces } from '#checks/narrow-places.ts';
import { runsOn, type Side, sidesOf, sidesOfPath } from '#checks/sides.ts';
import { itemAt } from '#geometry/assert.ts';
import { arcSpan, type Loop, lineSpan } from '#geometry/span.ts';
import { openLine, polygon, rectangle } from '#support/geometry/shapes.ts';

/** A round hole as a drawing has it whose curves came out as short lines. */
function roundOfLines(radius: number, lines: number): Loop {
  return polygon(
    Array.from({ length: lines }, (_, i) => {
      const angle = (2 * Math.PI * i) / lines;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );
}

const doesRunOn = (sides: readonly Side[], a: number, b: number) =>
  runsOn(itemAt(sides, a), itemAt(sides, b));

describe('sides along a round of 360 lines', () => {
  const sides = sidesOf([roundOfLines(5, 360)]);

  test('run on into each other over less than a sixth of a turn, from either, also past the seam', () => {
    expect([2, 40, 59, 60, 90, 180].map((far) => doesRunOn(sides, 7, 7 + far))).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(doesRunOn(sides, 40, 7)).toBe(true);
    expect(doesRunOn(sides, 350, 20)).toBe(true);
    expect(doesRunOn(sides, 20, 350)).toBe(true);
  });

  test('are as far apart as the round is wide, less what counts as facing', () => {
    const round = sidesOf([roundOfLines(5, 40)]);
    const narrow = (limit: number) => narrowPlaces(round, { widestOf: () => limit, limitOf: () => limit });
    // Across the flats, and where sides still face each other within 30°.
    expect(Math.max(...narrow(10.2).map(({ width }) => width))).toBeCloseTo(10 * Math.cos(Math.PI / 40), 9);
    expect(Math.min(...narrow(10.2).map(({ width }) => width))).toBeGreaterThan(10 * Math.cos(Math.PI / 6));
    expect(narrow(8.6)).toEqual([]);
  });

  test('never on another border', () => {
    const [other] = sidesOf([rectangle(0, 0, 9, 4)]);
    expect(other !== undefined && runsOn(itemAt(sides, 0), other)).toBe(false);
  });
});

test('turns count either way: a zigzag runs on no farther than its corners add up to', () => {
  // Each corner turns by 2 · atan 0.2 = 22.6°.
  const sides = sidesOfPath(openLine([0, 0], [1, 0.2], [2, 0], [3, 0.2], [4, 0], [5, 0.2]));
  expect([2, 3, 4].map((far) => doesRunOn(sides, 0, far))).toEqual([true, false, false]);
});

test('an arc counts with what it turns itself', () => {
  const isPast = (sweep: number) => {
    const arc = arcSpan({ center: { x: 0, y: 8 }, radius: 8, from: -Math.PI / 2, sweep });
    const end = { x: arc.end.x + 3 * Math.cos(sweep), y: arc.end.y + 3 * Math.sin(sweep) };
    const spans = [lineSpan({ x: -5, y: 0 }, arc.start), arc, lineSpan(arc.end, end)];
    return doesRunOn(sidesOfPath({ closed: false, spans }), 0, 2);
  };
  expect([0.9, 1.04, 1.06].map(isPast)).toEqual([true, true, false]);
});

test('an open line does not run on from its end to its start', () => {
  expect(doesRunOn(sidesOfPath(openLine([0, 0], [4, 0], [9, 1], [13, 3])), 2, 0)).toBe(true);
  const hook = sidesOfPath(openLine([0, 0], [4, 0], [9, 3], [6, 8]));
  expect(doesRunOn(hook, 2, 0)).toBe(false);
});

test('what nearly touches over a side of no length is looked at', () => {
  const sides = sidesOfPath(openLine([0, 0], [4, 0], [4.000015, 0.000001], [9, 1]));
  expect(doesRunOn(sides, 0, 2)).toBe(false);
});
