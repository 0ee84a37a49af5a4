/** A module as users run it: bundled, then loaded by Node itself. A test runner's own module wrapper makes hot loops several times slower. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/** Bundles the source file, given from the project's root, and loads it. */
export async function builtModule<Exports>(entry: string): Promise<Exports> {
  const file = await builtFile(entry);
  const loaded: Exports = await import(/* @vite-ignore */ pathToFileURL(file).href);
  await rm(dirname(file), { recursive: true });
  return loaded;
}

/**
 * Bundles the source file into one in a folder of its own, to be run as a process; the folder is the caller's to remove.
 * @param outside a package file that is loaded as it is, since it does not bear bundling
 */
export async function builtFile(entry: string, outside?: string): Promise<string> {
  // Packages are found from within the project only.
  const parent = outside === undefined ? tmpdir() : '.reports';
  await mkdir(parent, { recursive: true });
  const outDir = resolve(await mkdtemp(join(parent, 'isobath-bench-')));
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: true,
      rolldownOptions: {
        ...(outside === undefined ? {} : { external: [outside] }),
        output: { entryFileNames: 'built.mjs', codeSplitting: false },
      },
    },
    ssr: { noExternal: true, ...(outside === undefined ? {} : { external: [outside] }) },
  });
  return join(outDir, 'built.mjs');
}
