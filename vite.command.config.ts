import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { licences, treeshake } from './scripts/bundling.mjs';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The command line and its threads, each in few files: a thread of a thousand small ones takes half a second to start, and a second one as long again. */
export default defineConfig({
  root: 'src/cli',
  publicDir: false,
  plugins: [licences],
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: true,
    outDir: '../../dist/cli',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      treeshake,
      input: {
        main: at('./src/cli/main.ts'),
        'threads/hand': at('./src/cli/threads/hand.ts'),
        'threads/picture-thread': at('./src/cli/threads/picture-thread.ts'),
      },
      // All beside main.js: `codeFolder` counts on it.
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
