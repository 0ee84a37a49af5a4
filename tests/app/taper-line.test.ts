import { describe, expect, it } from 'vitest';
import { lineAcross, lineAlongPart, lineOnPart } from '#app/state/taper-line.ts';
import type { Contour } from '#job/formats/plan-file.ts';

/** A skin 240 long and 70 wide whose tip, at the right, slants by 24, and whose root is a half circle of 35. */
const outline: Contour = {
  closed: true,
  vertices: [
    [40, 10, 0],
    [280, 10, 0],
    [256, 80, 0],
    [40, 80, 1],
  ],
};
const level = { from: { x: -3, y: 45 }, to: { x: 300, y: 45 } };

describe('a taper along the section line', () => {
  it('is measured from the border at both ends, and not from the handles beside the part', () => {
    const { from, to } = lineOnPart({ outline }, level);
    // The half circle about (40, 45), and the slant half way up.
    expect(from.x).toBeCloseTo(5, 9);
    expect(to.x).toBeCloseTo(268, 9);
    expect([from.y, to.y]).toEqual([45, 45]);
  });

  it('begins at an end that was dragged into the part', () => {
    const { from, to } = lineOnPart({ outline }, { ...level, from: { x: 61, y: 45 } });
    expect(from.x).toBeCloseTo(61, 9);
    expect(to.x).toBeCloseTo(268, 9);
  });

  it('runs the way that the line was drawn, also aslant', () => {
    const { from, to } = lineOnPart({ outline }, { from: { x: 140, y: 95 }, to: { x: 92, y: -1 } });
    // Two up for each one across: it passes (132.5, 80) and (97.5, 10).
    expect(from.x).toBeCloseTo(132.5, 9);
    expect(from.y).toBeCloseTo(80, 9);
    expect(to.x).toBeCloseTo(97.5, 9);
    expect(to.y).toBeCloseTo(10, 9);
  });

  it('stays as it is beside the part, and where no outline is known', () => {
    const beside = { from: { x: 0, y: 93 }, to: { x: 290, y: 93 } };
    expect(lineOnPart({ outline }, beside)).toEqual(beside);
    expect(lineOnPart({ outline: null }, level)).toEqual(level);
  });

  it('of the sheet takes in all of the part, so that its back is not bent', () => {
    const { from, to } = lineAlongPart({ outline }, { from: { x: 20, y: 70 }, to: { x: 90, y: 70 } }, 0.25);
    expect(from.x).toBeCloseTo(4.75, 9);
    expect(to.x).toBeCloseTo(280.25, 9);
    expect(to.y).toBe(70);
  });
});

describe('a taper across what is picked', () => {
  /** A bay 23 to 81 across and 12 to 106 up, and one beside it. */
  const bay = box([23, 12], [81, 106]);
  const next = box([95, 12], [140, 106]);

  it('is measured from border to border, however short the line was drawn', () => {
    const up = { from: { x: 52, y: 90 }, to: { x: 52, y: 40 } };
    expect(lineAcross([bay], up)).toEqual({ from: { x: 52, y: 106 }, to: { x: 52, y: 12 } });
    const whole = { from: { x: -20, y: 33 }, to: { x: 300, y: 33 } };
    expect(lineAcross([bay], whole)).toEqual({ from: { x: 23, y: 33 }, to: { x: 81, y: 33 } });
  });

  it('of several bays runs from the first to the last', () => {
    const back = { from: { x: 300, y: 33 }, to: { x: -20, y: 33 } };
    expect(lineAcross([bay, next], back)).toEqual({ from: { x: 140, y: 33 }, to: { x: 23, y: 33 } });
  });

  it('cannot be where the line misses all of it', () => {
    expect(lineAcross([bay], { from: { x: 0, y: 120 }, to: { x: 90, y: 121 } })).toBeUndefined();
  });
});

function box([left, low]: readonly [number, number], [right, high]: readonly [number, number]): Contour {
  return {
    closed: true,
    vertices: [
      [left, low, 0],
      [right, low, 0],
      [right, high, 0],
      [left, high, 0],
    ],
  };
}
