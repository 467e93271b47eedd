import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { licences, treeshake } from './scripts/bundling.mjs';

/** Signs of a few strokes go into the style itself: nothing is asked for once the page has loaded. */
const smallSigns = (path: string): boolean => /\/workbench\/style\/[\w-]+\.svg$/.test(path);

/** The policy in the page's head forbids what the development server injects; served as built it holds. */
const policyOnlyWhenBuilt: Plugin = {
  name: 'policy-only-when-built',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
};

/** Tells the page's keeper (offline/sw.ts) every file of this build with its fingerprint, so that it keeps all or nothing. */
const keptFiles: Plugin = {
  name: 'kept-files',
  apply: 'build',
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      const still = fileURLToPath(new URL('./src/workbench/public/', import.meta.url));
      const print = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
      const files = [
        ...Object.values(bundle)
          .filter((f) => f.fileName !== 'sw.js')
          .map((f) => [f.fileName, print(f.type === 'chunk' ? f.code : f.source)]),
        ...readdirSync(still).map((name) => [name, print(readFileSync(still + name))]),
      ].sort(([a], [b]) => (a < b ? -1 : 1));
      const keeper = bundle['sw.js'];
      if (keeper?.type !== 'chunk' || keeper.imports.length > 0) throw new Error('The keeper of files must stand alone in sw.js.');
      keeper.code = `const LAYDOWN_FILES=${JSON.stringify(files)},LAYDOWN_EDITION=${JSON.stringify(print(JSON.stringify(files)).slice(0, 16))};\n${keeper.code}`;
    },
  },
};

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const input = {
  index: at('./src/workbench/index.html'),
  away: at('./src/workbench/away.html'),
  sw: at('./src/workbench/engine/offline/sw.ts'),
};
const entryFileNames = (chunk: { readonly name: string }): string => (chunk.name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js');
const chunkFileNames = (chunk: { readonly name: string }): string => `assets/${chunk.name.replace(/~.*/, '')}-[hash].js`;

/**
 * What a Plan needs is one file beside the worker's own, and what later parts share comes in few. No part may import the worker itself:
 * one engine would then run it a second time, with an empty bench.
 */
const workerSplitting = {
  groups: [
    { name: 'plan', test: /\/engine\/answers\/index\.ts$/, priority: 1 },
    { name: 'shared', minShareCount: 2, entriesAware: true, entriesAwareMergeThreshold: 40_000 },
  ],
};

/** What several stations share comes in few files, not in one for each helper. A language stays a file of its own. */
const codeSplitting = {
  groups: [
    {
      name: 'shared',
      test: (id: string): boolean => !/\/src\/words\/(en|de)\//.test(id),
      minShareCount: 2,
      entriesAware: true,
      entriesAwareMergeThreshold: 40_000,
    },
  ],
};

export default defineConfig({
  root: 'src/workbench',
  base: './',
  plugins: [policyOnlyWhenBuilt, licences, keptFiles],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', rolldownOptions: { treeshake, output: { chunkFileNames, codeSplitting: workerSplitting } } },
  build: {
    outDir: '../../dist/workbench',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: smallSigns,
    chunkSizeWarningLimit: 3000,
    rolldownOptions: { treeshake, input, output: { entryFileNames, chunkFileNames, codeSplitting } },
  },
  server: { host: '127.0.0.1' },
});
