import { expect, test } from 'vitest';
import { showCase } from './show-case.ts';

test('a sample is drawn with its edges, corners, and the opening and lines of each stage', async () => {
  const shown = await showCase('gauge-pod-cover');
  expect(shown?.svg.match(/<path /g)?.length).toBeGreaterThanOrEqual(2 + 2 * 3);
  expect(shown?.svg).not.toContain('NaN');
  expect(shown?.findings.every((line) => /^(stop|warn|note) [a-z-]+/.test(line))).toBe(true);
});

test('a fixture by its name, a case by seed and number; what is neither is not found', async () => {
  const line = await showCase('line with its x before its y (10, 11, 20, 21)');
  expect(line?.svg).toContain('M1 -1L4 -5');
  expect((await showCase('3/4'))?.svg).toContain('<title>3/4</title>');
  expect(await showCase('no such case')).toBeUndefined();
});
