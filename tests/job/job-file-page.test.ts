/** docs/job-file.md says what the declarations of the job's fields say; `GOLDEN=renew` writes its table again. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knownFigures } from '#bath/known-figures.ts';
import { expectGolden } from '#support/golden.ts';
import { jobRows } from '#support/jobs/job-rows.ts';

const { alloys: ALLOYS, baths: BATHS } = knownFigures();

const page = readFileSync(new URL('../../docs/job-file.md', import.meta.url), 'utf8');

/** From its head to the empty line behind it. */
const TABLE = /^\| key [\s\S]*?\n(?=\n)/m;

describe('docs/job-file.md', () => {
  test('its table has a row for each field, with its default and where that comes from', () => {
    const rows = jobRows().map(({ path, field, usual }) => `| \`${path}\` | ${field.help} | ${usual} |\n`);
    const table = `| key | what it says | default, and where it comes from |\n| --- | --- | --- |\n${rows.join('')}`;
    expect(page).toMatch(TABLE);
    expectGolden(
      '../../docs/job-file.md',
      page.replace(TABLE, () => table),
    );
  });

  test('lists every alloy and every bath', () => {
    for (const { id } of [...ALLOYS, ...BATHS]) expect(page).toContain(`\`${id}\``);
  });
});
