/** Keys of the job in the words of findings, as the workbench shows them. */
import { expect, test } from 'vitest';
import { inLabels, labelOf } from '#app/state/field-labels.ts';

test('a key is read as the label of its control', () => {
  expect(inLabels('Say it under `rules.lineTolerance`.')).toBe('Say it under “Drawn lines may be off by”.');
  expect(inLabels('Enter process.etchFactor or measure a coupon.')).toBe(
    'Enter “Etch factor” or measure a coupon.',
  );
});

test('one of a list has its number, counted from one', () => {
  expect(labelOf('process.coupon[1]')).toBe('Coupons, no. 2');
  expect(inLabels('handoff.template.holes.at[2]')).toMatch(/^“.*, no\. 3”$/);
});

test('names that only look like keys stand as they are', () => {
  expect(inLabels('The drawing bay.dxf holds `G18`, and the sheet rules. Levels follow.')).toBe(
    'The drawing bay.dxf holds “G18”, and the sheet rules. Levels follow.',
  );
});
