import { expect, test } from 'vitest';
import { idRuns } from '#handoff/id-runs.ts';

test('three ids or more in a row are reported by the first and the last, across a change of digits', () => {
  expect(idRuns(['R08', 'R09', 'R10', 'R12', 'R13'])).toBe('R08–R10 R12 R13');
  expect(idRuns([])).toBe('');
});

test('strips count within their own region', () => {
  expect(idRuns(['R07.1', 'R07.2', 'R07.3', 'R08.1'])).toBe('R07.1–R07.3 R08.1');
});
