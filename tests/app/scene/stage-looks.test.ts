/** How stages are drawn, measured by WCAG 2.2 contrast (1.4.3, 1.4.11), calculated here by its own formula. */
import { describe, expect, it } from 'vitest';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { stageColors } from '#plan/stage-colors.ts';

/** WCAG 2.2, relative luminance. */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((one, other) => other - one);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

describe.each([false, true])('a stage on the sheet, dark: %s', (isDark) => {
  const theme = sceneTheme(isDark);

  it.each([1, 2, 3, 5, 6, 8, 12, 14])(
    'of %i: line or casing stands out 3 : 1 on land and ground, and so does the mark',
    (count) => {
      for (const color of stageColors(count)) {
        const { line, casing, mark } = lookOf(color, theme);
        for (const under of [theme.land, theme.ground]) {
          expect(Math.max(contrast(line, under), contrast(casing, under)), color).toBeGreaterThanOrEqual(3);
          expect(contrast(mark, under), color).toBeGreaterThanOrEqual(3);
        }
      }
    },
  );

  it.each([1, 3, 6, 14])('of %i: the words on its floor reach 4.5 : 1', (count) => {
    for (const color of stageColors(count)) {
      const { floor, words } = lookOf(color, theme);
      expect(contrast(words, floor), color).toBeGreaterThanOrEqual(4.5);
    }
  });
});
