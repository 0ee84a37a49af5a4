/** The lint rule of `same-bytes.grit`: what engines differ in is refused in the core, however it is written, and nowhere else. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';

const DIFFERS = [
  'Math.sin(1);',
  'Math.hypot(3, 4);',
  'Math.log2(8);',
  'Math.pow(2, 0.5);',
  'Math.random();',
  'Math?.cos(1);',
  "Math['tan'](1);",
  '[1, 2].map(Math.cbrt);',
  'const { atan2 } = Math;',
  'const maths = Math;',
  'globalThis.Math.exp(1);',
  '(2 + 1) ** 0.5;',
  'let x = 2; x **= 3;',
  'new Date();',
  'Date.now();',
  'new Intl.NumberFormat();',
  'Intl.Collator;',
  '(1234.5).toLocaleString();',
  "'a'.localeCompare('b');",
  "'I'.toLocaleLowerCase();",
  "'a'['localeCompare']('b');",
  'performance.now();',
  'crypto.getRandomValues(new Uint8Array(1));',
];
const FIXED = [
  'Math.abs(-1) + Math.sqrt(2) + Math.PI;',
  'Math.max(...[1, 2].map(Math.round));',
  'Math.floor(Math.min(1, Math.fround(2)));',
  "'2 ** 3';",
  '(1234.5).toFixed(2);',
];

const FOLDERS = [
  'maths',
  'geometry',
  'drawing',
  'bath',
  'front',
  'handoff/pdf',
  'run',
  'some-folder-to-come',
];

/** Paths of the files that the rule refused. */
const refused = new Set<string>();

beforeAll(() => {
  const place = mkdtempSync(join(tmpdir(), 'isobath-lint-'));
  const config = JSON.parse(readFileSync('biome.json', 'utf8'));
  writeFileSync(join(place, 'biome.json'), JSON.stringify({ ...config, vcs: { enabled: false } }));
  cpSync('tests/lint', join(place, 'tests/lint'), { recursive: true });
  const put = (path: string, code: string) => {
    mkdirSync(join(place, path, '..'), { recursive: true });
    writeFileSync(join(place, path), `${code}\nexport {};\n`);
  };
  DIFFERS.forEach((code, index) => {
    put(`src/plan/differs-${index}.ts`, code);
    put(`src/app/scene/differs-${index}.ts`, code);
    put(`src/cli/differs-${index}.ts`, code);
  });
  FIXED.forEach((code, index) => {
    put(`src/plan/fixed-${index}.ts`, code);
  });
  for (const folder of FOLDERS) put(`src/${folder}/any.ts`, 'Math.sin(1);');
  const biome = resolve('node_modules/@biomejs/biome/bin/biome');
  const args = [biome, 'lint', '--reporter=json', '--max-diagnostics=none', '.'];
  const { stdout } = spawnSync(process.execPath, args, { cwd: place, encoding: 'utf8' });
  rmSync(place, { recursive: true });
  for (const { category, location } of JSON.parse(stdout).diagnostics) {
    if (category === 'plugin' || category === 'lint/style/noRestrictedGlobals') refused.add(location.path);
  }
});

test.each(DIFFERS.map((code, index) => [code, index] as const))(
  'refused in the core only: %s',
  (_, index) => {
    expect(refused).toContain(`src/plan/differs-${index}.ts`);
    expect(refused).not.toContain(`src/app/scene/differs-${index}.ts`);
    expect(refused).not.toContain(`src/cli/differs-${index}.ts`);
  },
);

test.each(FIXED.map((code, index) => [code, index] as const))('let through: %s', (_, index) => {
  expect(refused).not.toContain(`src/plan/fixed-${index}.ts`);
});

test.each(FOLDERS)('holds in src/%s', (folder) => {
  expect(refused).toContain(`src/${folder}/any.ts`);
});
