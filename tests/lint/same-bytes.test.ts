/** The lint rule of `same-bytes.grit`: what engines differ in is refused in the core, however it is written, and nowhere else. */

import { beforeAll, expect, test } from 'vitest';
import { refusedFiles } from '#support/lint/refused-files.ts';

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

let refused: ReadonlySet<string>;
beforeAll(() => {
  const differs = DIFFERS.flatMap((code, index) =>
    ['plan', 'app/scene', 'cli'].map((folder) => [`src/${folder}/differs-${index}.ts`, code] as const),
  );
  const fixed = FIXED.map((code, index) => [`src/plan/fixed-${index}.ts`, code] as const);
  const any = FOLDERS.map((folder) => [`src/${folder}/any.ts`, 'Math.sin(1);'] as const);
  refused = refusedFiles(
    Object.fromEntries([...differs, ...fixed, ...any]),
    'lint/style/noRestrictedGlobals',
  );
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
