import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vite';
import { compiledChunks } from './vite.compiled-chunks.ts';
import { plainFolder } from './vite.plain-folder.ts';

const PROGRAM = 'dist/cli/isobath.js';
const NOTHING = '\0nothing';
const { folder, preserveSymlinks } = plainFolder();

/** The command line, a chunk for what only some commands need: no package is left to resolve at start-up. */
export default defineConfig({
  root: folder,
  publicDir: false,
  resolve: { preserveSymlinks },
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: 'dist/cli',
    target: 'node20',
    minify: true,
    rolldownOptions: {
      input: [
        'src/cli/isobath.ts',
        'src/cli/share-thread.ts',
        'src/cli/compiled-chunk.ts',
        'src/cli/compile-chunks.ts',
      ],
      output: {
        // Node starts it sooner than modules, and runs it from code compiled before.
        format: 'cjs',
        entryFileNames: '[name].js',
        // Beside the program, from where what else was built is found.
        chunkFileNames: '[name]-[hash].js',
        // What every start needs in one file and what planning needs in another: each file more costs a start a millisecond.
        codeSplitting: {
          groups: [
            {
              name: 'start',
              test: /src\/cli\/(run-command-line|terminal)\.ts$/,
              priority: 2,
            },
            { name: 'plan', test: /src\/cli\/commands\/plan-command\.ts$/, priority: 1 },
          ],
        },
        banner: ({ name }) => (name === 'isobath' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
  plugins: [
    {
      // Commander would start commands that are programs of their own; there are none, and loading this takes a while.
      name: 'no-other-programs',
      enforce: 'pre',
      resolveId: (source, importer) =>
        source === 'node:child_process' && importer?.includes('/commander/') ? NOTHING : undefined,
      load: (id) => (id === NOTHING ? 'module.exports = {};' : undefined),
    },
    {
      name: 'common-js',
      generateBundle() {
        this.emitFile({ type: 'asset', fileName: 'package.json', source: '{ "type": "commonjs" }\n' });
      },
    },
    compiledChunks(['start', 'plan'], join(folder, 'samples/gauge-pod-cover.job.json')),
    {
      // npx links the program once and makes it executable then; each later build must do so itself.
      name: 'executable-program',
      closeBundle: () => chmodSync(join(folder, PROGRAM), 0o755),
    },
  ],
});
