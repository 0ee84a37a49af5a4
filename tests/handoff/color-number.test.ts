import { colors } from 'dxf';
import { describe, expect, it } from 'vitest';
import { nearestColorNumber, rgbOfColorNumber } from '#handoff/color-number.ts';

/** The table of an independent reader: npm package dxf 5.3.1 (MIT). Half values are cut there and rounded here: 1 of 255. */
const table = colors;

describe('colour numbers of the DXF format', () => {
  it('has the colours of an independent reader’s table', () => {
    for (let number = 10; number < 250; number++) {
      const ours = rgbOfColorNumber(number);
      const theirs = table[number] ?? [Number.NaN, Number.NaN, Number.NaN];
      for (const channel of [0, 1, 2] as const) {
        expect(Math.abs(ours[channel] - theirs[channel]), `${number}`).toBeLessThanOrEqual(1);
      }
    }
  });

  it('finds pure red, and another red when that one is taken', () => {
    expect(nearestColorNumber('#ff0000')).toBe(10);
    const second = nearestColorNumber('#ff0000', new Set([10]));
    expect(second).not.toBe(10);
    expect(rgbOfColorNumber(second)[0]).toBeGreaterThan(180);
  });
});
