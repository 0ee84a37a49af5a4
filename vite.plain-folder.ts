import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * The project's folder under a name that Vite can read. It takes what follows `#`, `?` or `%` in a path for a part of an address, so
 * that a folder with one of these is reached through a link in the folder of temporary files, and links are left as they are.
 */
export function plainFolder(): { readonly folder: string; readonly preserveSymlinks: boolean } {
  const own = import.meta.dirname;
  if (!/[#?%]/.test(own)) return { folder: own, preserveSymlinks: false };
  const home = mkdtempSync(join(tmpdir(), 'isobath-build-'));
  process.on('exit', () => rmSync(home, { recursive: true, force: true }));
  const folder = join(home, 'isobath');
  // On Windows a junction needs no rights of its own.
  symlinkSync(own, folder, 'junction');
  return { folder, preserveSymlinks: true };
}
