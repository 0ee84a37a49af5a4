import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The workbench and its help page, the worker, and the samples served beside them. */
export default defineConfig({
  root: 'src/app',
  base: './',
  publicDir: '../../samples',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 1500,
    rolldownOptions: { input: ['src/app/index.html', 'src/app/help.html'] },
  },
  preview: {
    host: '127.0.0.1',
    port: 4180,
    open: process.env['npm_lifecycle_event'] === 'start' && canOpenBrowser(),
  },
  server: { host: '127.0.0.1' },
});

/** On Linux pages are opened by `xdg-open`; a machine without it has no browser to show, and the address is printed anyway. */
function canOpenBrowser(): boolean {
  if (process.platform !== 'linux') return true;
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => existsSync(join(folder, 'xdg-open')));
}
