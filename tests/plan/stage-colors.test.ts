/**
 * The colour key, measured by culori: CIEDE2000 (CIE 142-2001) and its simulations of the three dichromacies
 * (Machado, Oliveira and Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency, 2009).
 */
import {
  type Color,
  clampChroma,
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  formatHex,
} from 'culori';
import { describe, expect, it } from 'vitest';
import { assert, itemAt } from '#geometry/assert.ts';
import { hexOfOklch } from '#plan/oklch-color.ts';
import { stageColors } from '#plan/stage-colors.ts';

const NEIGHBOURS_APART = 12;
const ANY_APART = 8;
const toRgb = converter('rgb');
const toOklch = converter('oklch');
const difference = differenceCiede2000();

type Sight = (color: Color) => Color;

const SIGHTS: Record<string, Sight> = {
  full: (color) => color,
  protanopia: filterDeficiencyProt(1),
  deuteranopia: filterDeficiencyDeuter(1),
  tritanopia: filterDeficiencyTrit(1),
};

function apart(a: string, b: string, see: Sight = (color) => color): number {
  const [seenA, seenB] = [toRgb(a), toRgb(b)];
  assert(seenA !== undefined && seenB !== undefined, 'the key is made of colours');
  return difference(see(seenA), see(seenB));
}

describe.each([2, 3, 4, 5, 6, 7, 8])('the colour key of %i stages', (count) => {
  const colors = stageColors(count);

  it(`keeps neighbouring stages ${NEIGHBOURS_APART} apart in CIEDE2000`, () => {
    for (let index = 1; index < count; index++) {
      expect(apart(itemAt(colors, index - 1), itemAt(colors, index))).toBeGreaterThanOrEqual(
        NEIGHBOURS_APART,
      );
    }
  });

  it.each(Object.entries(SIGHTS))(`keeps any two stages ${ANY_APART} apart, sight: %s`, (_name, see) => {
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) {
        expect(apart(itemAt(colors, i), itemAt(colors, j), see)).toBeGreaterThanOrEqual(ANY_APART);
      }
    }
  });
});

describe('the colour key', () => {
  it('gets lighter from the deepest stage to the shallowest, so that it reads in grey', () => {
    for (const count of [2, 5, 8, 14]) {
      const lightness = stageColors(count).map((color) => toOklch(color)?.l ?? Number.NaN);
      for (let index = 1; index < count; index++) {
        expect(itemAt(lightness, index)).toBeGreaterThan(itemAt(lightness, index - 1));
      }
    }
  });

  it('is written as #rrggbb, one colour a stage, whatever the count', () => {
    for (const count of [0, 1, 2, 8, 23]) {
      const colors = stageColors(count);
      expect(colors).toHaveLength(count);
      for (const color of colors) {
        expect(color).toMatch(/^#[0-9a-f]{6}$/);
        expect(toRgb(color)).toBeDefined();
      }
    }
  });
});

describe('OKLCH colours', () => {
  it('are those of culori, any hue and chroma, where sRGB can show them and where not', () => {
    let clamped = 0;
    for (let hueDeg = -180; hueDeg < 360; hueDeg += 11) {
      for (let lightness = 0.03; lightness < 1; lightness += 0.0613) {
        for (const chroma of [0, 0.031, 0.12, 0.29]) {
          const wanted = { mode: 'oklch', l: lightness, c: chroma, h: hueDeg } as const;
          const theirs = clampChroma(wanted, 'oklch', 'rgb');
          const [ours, expected] = [
            toRgb(hexOfOklch({ lightness, chroma, hueDeg })),
            toRgb(formatHex(theirs)),
          ];
          assert(ours !== undefined && expected !== undefined, 'both are colours');
          if (theirs.c !== chroma) clamped += 1;
          for (const channel of ['r', 'g', 'b'] as const) {
            // A step of 255: rounding, and the chroma that either gives up.
            expect(
              Math.abs(ours[channel] - expected[channel]) * 255,
              `${hueDeg} ${lightness} ${chroma}`,
            ).toBeLessThan(1.01);
          }
        }
      }
    }
    expect(clamped).toBeGreaterThan(500);
  });
});
