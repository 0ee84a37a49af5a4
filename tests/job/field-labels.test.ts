/** Keys of the job in the words of findings, as the workbench shows them. */
import { expect, test } from 'vitest';
import { finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { labelOf, sayInLabels } from '#job/field-labels.ts';

test('a key is read as the label of its control, and as it is written in the file', () => {
  const unknown = finding('bath-unknown', { name: 'lye', meant: undefined, known: ['caustic-aluminium'] });
  expect(sayInLabels(unknown, 'mm').remedy).toContain('give “Etch factor” and “Etch rate”.');
  expect(sayFinding(unknown).remedy).toContain('give process.etchFactor and process.rate.');
});

test('a key that the file’s own words shorten has its label too', () => {
  const cut = finding('template-falls-apart', { stage: 2, width: 1.7, web: 4.5 });
  expect(sayInLabels(cut, 'mm').remedy).toContain('or “Bridge” and “Bridge from corners”,');
  expect(sayFinding(cut).remedy).toContain('or bridge.width and bridge.clear,');
});

test('one of a list has its number, counted from one', () => {
  expect(labelOf('process.coupon[1]')).toBe('Coupons, no. 2');
  expect(labelOf('handoff.template.holes.at[2]')).toBe('Tooling holes at, no. 3');
});

test('names that only look like keys stand as they are', () => {
  const { reason } = sayInLabels(finding('program-word-unknown', { word: 'rules.minWeb', words: 1 }), 'mm');
  expect(reason).toContain('“rules.minWeb” is not followed');
  const layer = finding('layer-beside-the-part', { layer: 'stock.plus', why: 'its name', troubles: 3 });
  expect(sayInLabels(layer, 'mm').remedy).toBe(
    'Put "stock.plus" under “Ignored”, or list the layers to use under “Regions”.',
  );
});
