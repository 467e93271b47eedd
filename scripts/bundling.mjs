// What both bundles are made with: the page's (vite.config.ts) and the command line's (vite.command.config.ts).
import { licenceText } from './licences.mjs';

/** Core is pure: a room that nothing is taken from leaves nothing behind, so each bundle carries only what it works with. */
export const treeshake = { moduleSideEffects: (/** @type {string} */ id) => !/\/src\/core\//.test(id) };

/** What is redistributed brings its licences along. @type {import('vite').Plugin} */
export const licences = {
  name: 'licences',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'licences.txt', source: licenceText() });
  },
};
