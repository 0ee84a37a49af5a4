/** Paths that the documentation names exist: a table that points nowhere is worse than none. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { expect, test } from 'vitest';

const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  'docs/verification.md',
  'docs/method.md',
  'docs/files.md',
  'docs/workbench.md',
];
/** `WORD` stands for any of several. */
const PATH = /\b(?:src|tests|docs|samples)\/[\w./*-]*\w/g;

test.each(PAGES)('%s names files and folders that exist', (page) => {
  const named = new Set(readFileSync(page, 'utf8').match(PATH) ?? []);
  expect([...named].filter((path) => !path.includes('WORD') && !exists(path))).toEqual([]);
});

function exists(path: string): boolean {
  if (!path.includes('*')) return existsSync(path) || existsSync(`${path}.md`);
  const name = new RegExp(`^${basename(path).replaceAll('.', '\\.').replaceAll('*', '.*')}$`);
  const folder = dirname(path);
  return existsSync(folder) && readdirSync(folder).some((file) => name.test(file));
}
