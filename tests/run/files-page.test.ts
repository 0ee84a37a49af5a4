/** docs/files.md lists the files of the hand-off as the code does; `GOLDEN=renew` writes its table again. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { HANDOFF_FILES, listedFile } from '#job/handoff-list.ts';
import { expectGolden } from '#support/golden.ts';

/** From its head to the empty line behind it. */
const TABLE = /^\| word [\s\S]*?\n(?=\n)/m;

test('docs/files.md has a row for each file that a job can choose', () => {
  const page = readFileSync('docs/files.md', 'utf8');
  expect(page).toMatch(TABLE);
  const rows = HANDOFF_FILES.map((file) => {
    const { names, holds } = listedFile(file);
    const spelled = names.map((name) => `\`${name.replace('#', '01')}\`${name.includes('#') ? ', …' : ''}`);
    return `| \`"${file}"\` | ${spelled.join('; ')} | ${holds} |\n`;
  });
  const table = `| word | files | what |\n| --- | --- | --- |\n${rows.join('')}`;
  expectGolden(
    '../../docs/files.md',
    page.replace(TABLE, () => table),
  );
});
