import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The workbench: one page, its worker, and the samples served beside it. */
export default defineConfig({
  root: 'src/app',
  base: './',
  publicDir: '../../samples',
  plugins: [react()],
  worker: { format: 'es' },
  build: { outDir: '../../dist/app', emptyOutDir: true, target: 'es2023', chunkSizeWarningLimit: 1500 },
  preview: { host: '127.0.0.1', port: 4180 },
  server: { host: '127.0.0.1' },
});
