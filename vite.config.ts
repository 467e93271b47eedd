import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/workbench',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es' },
  build: { outDir: '../../dist/workbench', emptyOutDir: true, target: 'es2023', assetsInlineLimit: 0, chunkSizeWarningLimit: 3000 },
  server: { host: '127.0.0.1' },
});
