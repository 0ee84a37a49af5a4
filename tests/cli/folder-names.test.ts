/** The project set up in a folder whose name an address cannot hold as it stands. */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const NEEDED = [
  'src',
  'samples',
  'package.json',
  'tsconfig.json',
  'vite.config.ts',
  'vite.cli.config.ts',
  'vite.compiled-chunks.ts',
  'vite.plain-folder.ts',
];

test('workbench and command line are built in a folder named with # and %', () => {
  const home = mkdtempSync(join(tmpdir(), 'isobath-a#b%20c-'));
  const links = () => readdirSync(tmpdir()).filter((name) => name.startsWith('isobath-build-'));
  const before = links();
  try {
    for (const each of NEEDED) cpSync(each, join(home, each), { recursive: true });
    symlinkSync(resolve('node_modules'), join(home, 'node_modules'), 'junction');
    const run = (...args: string[]) => spawnSync(process.execPath, args, { cwd: home, encoding: 'utf8' });
    const vite = join('node_modules', 'vite', 'bin', 'vite.js');
    const early = run(vite, 'preview');
    expect(early.stderr).toContain('Isobath is not built yet. Run: npm run build');
    expect(early.status).toBe(1);
    for (const config of ['vite.config.ts', 'vite.cli.config.ts']) {
      const built = run(vite, 'build', '--logLevel', 'error', '--config', config);
      expect(built.stderr).toBe('');
      expect(built.status).toBe(0);
    }
    expect(existsSync(join(home, 'dist/app/index.html'))).toBe(true);
    expect(existsSync(join(home, 'dist/app/gauge-pod-cover.dxf'))).toBe(true);
    const inspected = run('dist/cli/isobath.js', 'inspect', 'samples/gauge-pod-cover.dxf');
    expect(inspected.stdout).toContain('POCKETS: 1 LWPOLYLINE');
    expect(links()).toEqual(before);
  } finally {
    rmSync(home, { recursive: true });
  }
});
