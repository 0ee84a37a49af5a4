import { defineConfig } from 'vite';

/** The command line: one bundle for Node, nothing left to resolve at start-up. */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/isobath.ts',
    outDir: 'dist/cli',
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: 'isobath.js', banner: '#!/usr/bin/env node' } },
  },
});
