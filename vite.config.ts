import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
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
    plugins: [react(), contentSecurity(), signOfApp(), offline(), ...(isPreview ? [builtFirst()] : [])],
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
  "manifest-src 'self'",
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

/** The sign of the app, under a name that stays. */
function signOfApp(): Plugin {
  return {
    name: 'sign-of-app',
    apply: 'build',
    generateBundle() {
      this.emitFile({
        type: 'asset',
        fileName: 'icon.svg',
        source: readFileSync(join(import.meta.dirname, 'src/app/icon.svg'), 'utf8'),
      });
    },
  };
}

/** All of the page is kept by the browser once it was opened, and it can be installed. The samples come along. `keep-offline.ts` says when a newer one takes over. */
function offline() {
  return VitePWA({
    registerType: 'prompt',
    injectRegister: null,
    manifest: {
      name: 'Isobath',
      short_name: 'Isobath',
      description: 'Planning for step chemical milling',
      start_url: './',
      scope: './',
      display: 'standalone',
      background_color: '#fafbfc',
      theme_color: '#f3f4f6',
      icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' }],
    },
    workbox: {
      globPatterns: ['**/*.{js,css,html,svg,woff2,dxf,json,ttf}'],
      maximumFileSizeToCacheInBytes: 8e6,
      cleanupOutdatedCaches: true,
    },
  });
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
