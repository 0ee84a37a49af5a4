/** The lint rule of `declared.grit`: where the job is edited, no control types a name or a limit that its field declares. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';

const TYPED = [
  "import { QuantityField } from '#app/views/QuantityField.tsx'; <QuantityField />;",
  '<LengthField of={thickness} label="Thickness" />;',
  "<LengthField of={thickness} label={isFirst ? 'Start' : 'End'} />;",
  '<LengthField of={thickness} within={{ most: 20 }} />;',
  '<LengthField of={thickness} within={{ most: MOST_WIDE }} />;',
  "<NumberField of={{ label: 'Stretch', control }} />;",
  '<LengthList of={reading} within={{ least: 0.1 }} />;',
  '<RowsField label="Tooling holes at" />;',
  '<ChoiceField label="Alloy">{options}</ChoiceField>;',
  '<input maxLength={40} />;',
];
const DECLARED = [
  '<LengthField of={members.thickness} within={{ most: sheetThickness(job) }} onTake={take} />;',
  '<LengthField of={level} label={numbered(level, index + 1)} placeholder="none" />;',
  '<NumberField of={FIELDS[key]} usual={1} />;',
  '<RowsField label={members.holes.label} columns={["x", "y"]} count={2} />;',
  '<ChoiceField label={members.alloy.label}>{options}</ChoiceField>;',
  '<input maxLength={control.most} aria-label="Name" />;',
];
const FOLDERS = ['drawing', 'handoff', 'job', 'opening', 'requirements'];

/** Paths of the files that the rule refused. */
const refused = new Set<string>();

beforeAll(() => {
  const place = mkdtempSync(join(tmpdir(), 'isobath-declared-'));
  const config = JSON.parse(readFileSync('biome.json', 'utf8'));
  writeFileSync(join(place, 'biome.json'), JSON.stringify({ ...config, vcs: { enabled: false } }));
  cpSync('tests/lint', join(place, 'tests/lint'), { recursive: true });
  const put = (path: string, code: string) => {
    mkdirSync(join(place, path, '..'), { recursive: true });
    writeFileSync(join(place, path), `${code}\nexport {};\n`);
  };
  TYPED.forEach((code, index) => {
    for (const folder of FOLDERS) put(`src/app/views/${folder}/typed-${index}.tsx`, code);
    put(`src/app/views/tank/typed-${index}.tsx`, code);
  });
  DECLARED.forEach((code, index) => {
    put(`src/app/views/job/declared-${index}.tsx`, code);
  });
  const biome = resolve('node_modules/@biomejs/biome/bin/biome');
  const args = [biome, 'lint', '--reporter=json', '--max-diagnostics=none', '.'];
  const { stdout } = spawnSync(process.execPath, args, { cwd: place, encoding: 'utf8' });
  rmSync(place, { recursive: true });
  for (const { category, location } of JSON.parse(stdout).diagnostics) {
    if (category === 'plugin') refused.add(location.path);
  }
});

test.each(TYPED.map((code, index) => [code, index] as const))('refused: %s', (_, index) => {
  expect(FOLDERS.filter((folder) => !refused.has(`src/app/views/${folder}/typed-${index}.tsx`))).toEqual([]);
  expect(refused).not.toContain(`src/app/views/tank/typed-${index}.tsx`);
});

test.each(DECLARED.map((code, index) => [code, index] as const))('let through: %s', (_, index) => {
  expect(refused).not.toContain(`src/app/views/job/declared-${index}.tsx`);
});
