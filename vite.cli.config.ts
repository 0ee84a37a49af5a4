import { chmodSync } from 'node:fs';
import { defineConfig } from 'vite';

const PROGRAM = 'dist/cli/isobath.js';

/** The command line: one bundle for Node, nothing left to resolve at start-up. */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/isobath.ts',
    outDir: 'dist/cli',
    target: 'node20',
    minify: true,
    rolldownOptions: { output: { entryFileNames: 'isobath.js', banner: '#!/usr/bin/env node' } },
  },
  plugins: [
    {
      // npx links the program once and makes it executable then; each later build must do so itself.
      name: 'executable-program',
      closeBundle: () => chmodSync(PROGRAM, 0o755),
    },
  ],
});
