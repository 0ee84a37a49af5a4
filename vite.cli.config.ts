import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vite';
import { plainFolder } from './vite.plain-folder.ts';

const PROGRAM = 'dist/cli/isobath.js';
const { folder, preserveSymlinks } = plainFolder();

/** The command line, a chunk for what each command needs: no package is left to resolve at start-up. */
export default defineConfig({
  root: folder,
  publicDir: false,
  resolve: { preserveSymlinks },
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/isobath.ts',
    outDir: 'dist/cli',
    target: 'node20',
    minify: true,
    rolldownOptions: {
      output: {
        entryFileNames: 'isobath.js',
        // Beside the program, from where what else was built is found.
        chunkFileNames: '[name]-[hash].js',
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
