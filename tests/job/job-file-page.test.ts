import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knownFigures } from '#bath/known-figures.ts';
import { DEFAULT_JOIN_TOLERANCE, DEFAULT_RATE_SPREAD, DEFAULT_RULES } from '#job/job-defaults.ts';

const { alloys: ALLOYS, baths: BATHS } = knownFigures();

const page = readFileSync(new URL('../../docs/job-file.md', import.meta.url), 'utf8');

/** The default that the page gives for a key, as its first number. */
function documented(key: string): number {
  const row = page.split('\n').find((line) => line.startsWith(`| \`${key}\``));
  return Number.parseFloat(row?.split('|')[3] ?? '');
}

describe('docs/job-file.md', () => {
  test('gives the defaults that are used', () => {
    expect(documented('joinTolerance')).toBe(DEFAULT_JOIN_TOLERANCE.value);
    expect(documented('process.rateSpread')).toBe(DEFAULT_RATE_SPREAD.value);
    for (const [key, { value }] of Object.entries(DEFAULT_RULES)) {
      expect(documented(`rules.${key}`)).toBe(value);
    }
  });

  test('lists every alloy and every bath', () => {
    for (const { id } of [...ALLOYS, ...BATHS]) expect(page).toContain(`\`${id}\``);
  });
});
