/** Every finding has words and a page, no page is without a finding, and every code stands in a test's or fixture's text. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CATALOGUE } from '#findings/catalogue.ts';

const CODES = Object.keys(CATALOGUE).sort();
const PAGES = 'docs/findings';

test('every code has a page, and every page a code', () => {
  const pages = readdirSync(PAGES)
    .filter((name) => name.endsWith('.md'))
    .map((name) => name.slice(0, -'.md'.length))
    .sort();
  expect(pages).toEqual(CODES);
});

test.each(CODES)('the page of %s is headed by its code, title and severity', (code) => {
  const page = existsSync(join(PAGES, `${code}.md`)) ? readFileSync(join(PAGES, `${code}.md`), 'utf8') : '';
  const { title, severity } = CATALOGUE[code as keyof typeof CATALOGUE];
  expect(page.split('\n')[0]).toBe(`# ${code}: ${title} (${severity})`);
  expect(page.length).toBeGreaterThan(150);
});

test.each(CODES)('%s is spelt as codes are, with a title of a few words', (code) => {
  expect(code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  const { title, severity } = CATALOGUE[code as keyof typeof CATALOGUE];
  expect(title.length).toBeGreaterThan(3);
  expect(title.length).toBeLessThan(60);
  expect(['stop', 'warn', 'note']).toContain(severity);
});

test('every code is raised in some test or fixture', () => {
  const texts = testFiles('tests').map((path) => readFileSync(path, 'utf8'));
  const silent = CODES.filter((code) => {
    const named = new RegExp(`['( ]${code}(?![a-z0-9-])`);
    return !texts.some((text) => named.test(text));
  });
  expect(silent).toEqual([]);
});

function testFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return testFiles(path);
    return entry.name.endsWith('.ts') ? [path] : [];
  });
}
