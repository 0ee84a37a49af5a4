/** Runs the lint of this repository over files of the tests' own, in a folder apart. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

/**
 * Paths of the files that a rule of our own refuses.
 * @param files code by path, as they would lie from the top of the repository
 * @param categories of diagnostics that count beside the rules in tests/lint
 */
export function refusedFiles(files: Readonly<Record<string, string>>, ...categories: readonly string[]) {
  const place = mkdtempSync(join(tmpdir(), 'isobath-lint-'));
  const config = JSON.parse(readFileSync('biome.json', 'utf8'));
  writeFileSync(join(place, 'biome.json'), JSON.stringify({ ...config, vcs: { enabled: false } }));
  cpSync('tests/lint', join(place, 'tests/lint'), { recursive: true });
  for (const [path, code] of Object.entries(files)) {
    mkdirSync(dirname(join(place, path)), { recursive: true });
    writeFileSync(join(place, path), `${code}\nexport {};\n`);
  }
  const biome = resolve('node_modules/@biomejs/biome/bin/biome');
  const args = [biome, 'lint', '--reporter=json', '--max-diagnostics=none', '.'];
  const { stdout } = spawnSync(process.execPath, args, { cwd: place, encoding: 'utf8' });
  rmSync(place, { recursive: true });
  const counted = new Set(['plugin', ...categories]);
  const diagnostics: { category: string; location: { path: string } }[] = JSON.parse(stdout).diagnostics;
  return new Set(
    diagnostics.flatMap(({ category, location }) => (counted.has(category) ? [location.path] : [])),
  );
}
