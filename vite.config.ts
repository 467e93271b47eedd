import { defineConfig, type Plugin } from 'vite';

/** Core is pure: a room that nothing is taken from leaves nothing behind, so the page carries only what it draws with. */
const treeshake = { moduleSideEffects: (id: string): boolean => !/\/src\/core\//.test(id) };

/** Signs of a few strokes go into the style itself: nothing is asked for once the page has loaded. */
const smallSigns = (path: string): boolean => /\/workbench\/style\/[\w-]+\.svg$/.test(path);

/** The policy in the page's head forbids what the development server injects; served as built it holds. */
const policyOnlyWhenBuilt: Plugin = {
  name: 'policy-only-when-built',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
};

export default defineConfig({
  root: 'src/workbench',
  base: './',
  plugins: [policyOnlyWhenBuilt],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: { outDir: '../../dist/workbench', emptyOutDir: true, target: 'es2023', assetsInlineLimit: smallSigns, chunkSizeWarningLimit: 3000, rolldownOptions: { treeshake } },
  server: { host: '127.0.0.1' },
});
