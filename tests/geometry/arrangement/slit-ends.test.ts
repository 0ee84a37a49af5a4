import { expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { slitEnds } from '#geometry/arrangement/slit-ends.ts';
import { spanLength } from '#geometry/span.ts';
import { rectangle, sourced } from '#support/geometry/shapes.ts';

const endsBetween = (gap: number) =>
  slitEnds(
    arrange(sourced([rectangle(0, 0, 30, 20), rectangle(30 + gap, 4, 50, 13)]), { joinTolerance: 0 })
      .arrangement,
  );

test('two outlines 0.004 mm apart have a slit with an end at both corners of the lower one', () => {
  const ends = endsBetween(0.004);
  expect(ends.map(({ span }) => span.start.y).sort((a, b) => a - b)).toEqual([4, 13]);
  for (const { span } of ends) {
    expect(spanLength(span)).toBeCloseTo(0.004, 9);
    expect(span.start.x).toBeCloseTo(30.004, 9);
    expect(span.end).toEqual({ x: expect.closeTo(30, 9), y: expect.closeTo(span.start.y, 9) });
  }
});

test('0.0052 mm apart they have none, nor where they meet', () => {
  expect(endsBetween(0.0052)).toEqual([]);
  expect(endsBetween(0)).toEqual([]);
});
