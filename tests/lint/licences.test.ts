/** `docs/licences.md` lists every runtime package with its licence; `GOLDEN=renew` writes it anew. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { licencePage, runtimeLicences } from '#support/commands/licence-page.ts';

const PAGE = 'docs/licences.md';
/** Licences that allow use in a product and its sale with no more than their text kept; by their SPDX names. */
const FREE = ['MIT', 'ISC', '0BSD', 'Apache-2.0', 'BSD-3-Clause', 'BSL-1.0', 'Unlicense', 'OFL-1.1'];

test('the page of licences is that of the packages installed', () => {
  if (process.env['GOLDEN'] === 'renew') writeFileSync(PAGE, licencePage());
  expect(readFileSync(PAGE, 'utf8')).toBe(licencePage());
});

test('every package states a licence that allows use and sale', () => {
  const others = runtimeLicences().filter(({ licence }) => licence === undefined || !FREE.includes(licence));
  expect(others.map(({ name }) => name)).toEqual(['dejavu-fonts-ttf']);
});
