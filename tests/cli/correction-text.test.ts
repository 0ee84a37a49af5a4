import { expect, test } from 'vitest';
import { correctionText } from '#cli/correction-text.ts';

const rate = { value: 0.0254, within: 0.00127 };
const corrected = {
  rate,
  next: rate,
  stages: [{ number: 1, planned: 100, had: 80, rate, left: { value: 20, within: 1 } }],
  regions: [
    {
      id: 'R01',
      asked: { depth: 2.54, plus: 0.05, minus: 0.05 },
      depth: { value: 2.54, within: 0.0254 },
      thickness: { value: 1.27, within: 0.0254 },
      share: 0.1,
      verdict: 'met',
    },
  ],
  off: [],
  noise: 0.01,
} as const;

test('a corrected run of an inch job is reported in inches: 2.54 mm is 0.1 in, 0.0254 mm/min 0.001 in/min', () => {
  const text = correctionText(corrected, { unit: 'in', color: false });
  expect(text).not.toMatch(/\bmm\b/);
  expect(text).toMatch(/required in\s+expected depth in/);
  expect(text).toMatch(/R01\s+0\.1000\s+0\.1000 ± 0\.0010\s+0\.0500 ± 0\.0010/);
  expect(text).toContain('rate overall 0.001000 ± 0.000050 in/min');
});

test('one in millimetres as ever', () => {
  const text = correctionText(corrected, { unit: 'mm', color: false });
  expect(text).toMatch(/R01\s+2\.540\s+2\.540 ± 0\.025/);
  expect(text).toContain('rate overall 0.02540 ± 0.00127 mm/min');
});

test('an uncertainty wider than its figure is not left without its reason', () => {
  const text = correctionText({ ...corrected, wide: 'sheet' }, { unit: 'in', color: false });
  expect(text).toContain('± is wider than the figure: the sheet was not gauged');
  expect(correctionText(corrected, { unit: 'in', color: false })).not.toContain('wider');
});
