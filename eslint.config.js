import tseslint from 'typescript-eslint';
import importX, { createNodeResolver } from 'eslint-plugin-import-x';
import { createTypeScriptImportResolver } from 'eslint-import-resolver-typescript';

// The house in one list: a room may import from rooms above it, never from rooms below (src/README.md).
const rooms = [
  ['units'],
  ['colour'],
  ['ink'],
  ['form'],
  ['stencil'],
  ['print'],
  ['halftone'],
  ['separate'],
  ['press'],
  ['edition'],
  ['job'],
].map((names) => names.map((name) => `./src/core/${name}`));
const floors = [...rooms, ['./src/core/plan.ts', './src/core/plan'], ['./src/packet'], ['./src/cli', './src/workbench']];

const zones = floors.flatMap((below, i) =>
  i === floors.length - 1
    ? []
    : below.map((target) => ({
        target,
        from: floors.slice(i + 1).flat(),
        message: 'Imports point downward only: see the house in src/README.md.',
      })),
);
zones.push(
  { target: './src/cli', from: './src/workbench', message: 'The command line and the Workbench do not know each other.' },
  { target: './src/workbench', from: './src/cli', message: 'The command line and the Workbench do not know each other.' },
);

export default tseslint.config(
  { ignores: ['dist/**', 'out/**', 'node_modules/**', 'coverage/**', 'src/core/separate/kernels/assembly/**', 'src/core/image/lcms/**'] },
  ...tseslint.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx', '**/*.js', '**/*.mjs'],
    plugins: { 'import-x': importX },
    settings: { 'import-x/resolver-next': [createTypeScriptImportResolver(), createNodeResolver()] },
    rules: {
      'import-x/no-restricted-paths': ['error', { zones }],
      'import-x/no-cycle': ['error', { ignoreExternal: true }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      eqeqeq: 'error',
      'prefer-const': 'error',
    },
  },
  {
    // Core is pure: no DOM, no Node, no clock, no unseeded randomness.
    files: ['src/core/**/*.ts'],
    ignores: ['src/core/**/*.test.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        'window',
        'document',
        'self',
        'process',
        'Buffer',
        'performance',
        'navigator',
        'localStorage',
        'fetch',
        'setTimeout',
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Use core/random.ts with a seed.' },
        { object: 'Date', property: 'now', message: 'Core has no clock.' },
        ...['exp', 'expm1', 'log', 'log10', 'log1p', 'log2', 'cbrt', 'tanh', 'pow'].map((property) => ({
          object: 'Math',
          property,
          message: 'Engines differ in its last bits: use the one in core/numeric.',
        })),
      ],
      'no-restricted-imports': ['error', { patterns: ['node:*'] }],
    },
  },
  {
    // The Plan reads like the contents of the trade.
    files: ['src/core/plan/**/*.ts'],
    ignores: ['src/core/plan/**/*.test.ts'],
    rules: { 'max-lines-per-function': ['error', { max: 60, skipComments: true, skipBlankLines: true }] },
  },
);
