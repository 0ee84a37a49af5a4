import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vite';
import { plainFolder } from './vite.plain-folder.ts';

const PROGRAM = 'dist/cli/isobath.js';
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
      input: ['src/cli/isobath.ts', 'src/cli/share-thread.ts'],
      output: {
        entryFileNames: '[name].js',
        // Beside the program, from where what else was built is found.
        chunkFileNames: '[name]-[hash].js',
        // What every start needs in one file and what planning needs in another: each file more costs a start a millisecond.
        codeSplitting: {
          groups: [
            { name: 'start', test: /src\/cli\/run-command-line\.ts$/, priority: 2 },
            { name: 'plan', test: /src\/cli\/commands\/plan-command\.ts$/, priority: 1 },
          ],
        },
        banner: '#!/usr/bin/env node',
      },
    },
  },
  plugins: [
    {
      // npx links the program once and makes it executable then; each later build must do so itself.
      name: 'executable-program',
      closeBundle: () => chmodSync(join(folder, PROGRAM), 0o755),
    },
  ],
});
