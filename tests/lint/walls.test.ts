/** The walls of biome.json: no folder of `src` imports from one further along the flow of data, and three.js stays in the scene. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';

/** The table of walls in DEVELOPERS.md, from the folder that knows nothing of the others to those that show everything. */
const FLOW = [
  'maths',
  'geometry',
  'units',
  'findings',
  'drawing',
  'bath',
  'job',
  'part',
  'plan',
  'front',
  'checks',
  'handoff',
  'run',
  'cli',
  'app/worker',
  'app/state',
  'app/scene',
  'app/views',
  'app/help',
];
/** What every folder of the workbench must be able to import for data to reach the screen. */
const ALLOWED = [
  ['app/state', 'app/worker'],
  ['app/scene', 'app/state'],
  ['app/views', 'app/scene'],
  ['app/views', 'app/state'],
];
const AGAINST = FLOW.flatMap((from, at) => FLOW.slice(at + 1).map((to) => [from, to] as const));
const OF_THREE = [
  'app/worker',
  'app/state',
  'app/views',
  'app/views/sheet',
  'app/views/controls',
  'app/help',
];

/** Files whose import the lint refused. */
const refused = new Set<string>();

beforeAll(() => {
  const place = mkdtempSync(join(tmpdir(), 'isobath-walls-'));
  const config = JSON.parse(readFileSync('biome.json', 'utf8'));
  writeFileSync(join(place, 'biome.json'), JSON.stringify({ ...config, vcs: { enabled: false } }));
  cpSync('tests/lint', join(place, 'tests/lint'), { recursive: true });
  const put = (folder: string, named: string, from: string) => {
    mkdirSync(join(place, 'src', folder), { recursive: true });
    writeFileSync(join(place, 'src', folder, `${named}.ts`), `import '${from}';\n`);
  };
  for (const [from, to] of [...AGAINST, ...ALLOWED]) put(from ?? '', fileNamed(to ?? ''), `#${to}/any.ts`);
  for (const folder of OF_THREE) put(folder, 'three', 'three');
  put('app/scene', 'three', 'three');
  put('app/views/controls', 'sheet', '#app/views/sheet/any.ts');
  const biome = resolve('node_modules/@biomejs/biome/bin/biome');
  const args = [
    biome,
    'lint',
    '--reporter=json',
    '--max-diagnostics=none',
    '--only=noRestrictedImports',
    '.',
  ];
  const { stdout } = spawnSync(process.execPath, args, { cwd: place, encoding: 'utf8' });
  rmSync(place, { recursive: true });
  for (const { location } of JSON.parse(stdout).diagnostics) refused.add(location.path);
});

test('the flow names every folder of src', () => {
  const folders = (place: string) =>
    readdirSync(place, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? entry.name : []));
  const found = [
    ...folders('src').filter((name) => name !== 'app'),
    ...folders('src/app').map((name) => `app/${name}`),
  ];
  expect(found.sort()).toEqual(FLOW.toSorted());
});

test.each(FLOW.slice(0, -1))('src/%s may not import from a folder further along the flow', (folder) => {
  const against = AGAINST.flatMap(([from, to]) =>
    from === folder ? [`src/${from}/${fileNamed(to)}.ts`] : [],
  );
  expect(against.filter((path) => !refused.has(path))).toEqual([]);
});

test.each(ALLOWED)('src/%s may import from src/%s', (from, to) => {
  expect(refused).not.toContain(`src/${from}/${fileNamed(to ?? '')}.ts`);
});

test('three.js is imported in src/app/scene only', () => {
  expect(OF_THREE.filter((folder) => !refused.has(`src/${folder}/three.ts`))).toEqual([]);
  expect(refused).not.toContain('src/app/scene/three.ts');
});

test('a control used everywhere imports from no place on the page', () => {
  expect(refused).toContain('src/app/views/controls/sheet.ts');
});

function fileNamed(folder: string): string {
  return `to-${folder.replaceAll('/', '-')}`;
}
