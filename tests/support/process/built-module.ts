/** A module as users run it: bundled, then loaded by Node itself. A test runner's own module wrapper makes hot loops several times slower. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/** Bundles the source file, given from the project's root, and loads it. */
export async function builtModule<Exports>(entry: string): Promise<Exports> {
  const outDir = await mkdtemp(join(tmpdir(), 'isobath-bench-'));
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: true,
      rolldownOptions: { output: { entryFileNames: 'built.mjs', codeSplitting: false } },
    },
    ssr: { noExternal: true },
  });
  const loaded: Exports = await import(/* @vite-ignore */ pathToFileURL(join(outDir, 'built.mjs')).href);
  await rm(outDir, { recursive: true });
  return loaded;
}
