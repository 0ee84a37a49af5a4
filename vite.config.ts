import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { plainFolder } from './vite.plain-folder.ts';

/** The workbench and its help page, the worker, and the samples served beside them. */
export default defineConfig(({ isPreview = false }) => {
  // What is built is served from where it lies.
  const { folder, preserveSymlinks } = isPreview
    ? { folder: import.meta.dirname, preserveSymlinks: false }
    : plainFolder();
  return {
    root: join(folder, 'src/app'),
    resolve: { preserveSymlinks },
    base: './',
    publicDir: '../../samples',
    // An address that is no page of ours is not found, where a single-page app would answer with itself.
    appType: 'mpa',
    plugins: [react(), contentSecurity(), ...(isPreview ? [builtFirst()] : [])],
    worker: { format: 'es' },
    build: {
      outDir: '../../dist/app',
      emptyOutDir: true,
      target: 'es2023',
      chunkSizeWarningLimit: 1500,
      rolldownOptions: { input: [join(folder, 'src/app/index.html'), join(folder, 'src/app/help.html')] },
    },
    preview: {
      host: '127.0.0.1',
      port: 4180,
      open: process.env['npm_lifecycle_event'] === 'start' && canOpenBrowser(),
    },
    server: { host: '127.0.0.1' },
  };
});

/**
 * What the built page may load and run: its own files, and what it makes itself to be shown (`blob:`). No inline script, no code
 * from text. Vite's development server needs inline scripts, so that it goes into the build alone.
 */
const CONTENT_SECURITY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self' blob:",
  'frame-src blob:',
  // Browsers show a PDF in its frame as a plug-in.
  "object-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

function contentSecurity(): Plugin {
  const meta = { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY };
  return {
    name: 'content-security',
    apply: 'build',
    transformIndexHtml: () => [{ tag: 'meta', attrs: meta, injectTo: 'head-prepend' }],
  };
}

/** `npm ci` builds, unless scripts were switched off. */
function builtFirst(): Plugin {
  return {
    name: 'built-first',
    configResolved: ({ root, build: { outDir } }) => {
      if (existsSync(join(root, outDir, 'index.html'))) return;
      console.error('Isobath is not built yet. Run: npm run build');
      process.exit(1);
    },
  };
}

/** On Linux pages are opened by `xdg-open`; a machine without it has no browser to show, and the address is printed anyway. */
function canOpenBrowser(): boolean {
  if (process.platform !== 'linux') return true;
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => existsSync(join(folder, 'xdg-open')));
}
