/** Colours of layers, judged by an independent reader's table of colour numbers (npm package dxf 5.3.1) and the contrast of WCAG 2.2. */
import { colors } from 'dxf';
import { expect, test } from 'vitest';
import { LAYER_COLORS, layerColorOf } from '#handoff/layer-colors.ts';

/** Relative luminance of an sRGB colour (WCAG 2.2, definition). */
function luminance(rgb: readonly number[]): number {
  const [red = 0, green = 0, blue = 0] = rgb.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

test.each(LAYER_COLORS.map((numbers) => [numbers.length, numbers] as const))(
  'with %i stages every layer is seen on black and on white, and no two have one colour',
  (count, numbers) => {
    expect(new Set(numbers).size).toBe(count);
    for (const number of numbers) {
      const bright = luminance(colors[number] ?? []);
      expect((bright + 0.05) / 0.05).toBeGreaterThanOrEqual(3);
      expect(1.05 / (bright + 0.05)).toBeGreaterThanOrEqual(3);
    }
  },
);

test('the deepest stage has the first of its row, whichever is etched first; past twelve the screen’s nearest', () => {
  const stage = (number: number) => ({ number, color: '#aa5500' });
  expect(layerColorOf(stage(1), { stages: 5, masking: 'peel-next' })).toBe(223);
  expect(layerColorOf(stage(5), { stages: 5, masking: 're-mask' })).toBe(223);
  expect(layerColorOf(stage(13), { stages: 13, masking: 'peel-next' })).toBeGreaterThan(9);
});
