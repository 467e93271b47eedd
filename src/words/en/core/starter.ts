import type { SayingText } from '../../text.ts';

/** Inks to begin with, from published values. */
export const starter = {
  cyan: 'Process cyan',
  magenta: 'Process magenta',
  yellow: 'Process yellow',
  black: 'Process black',
  orange: 'Orange',
  red: 'Red',
  violet: 'Violet',
  blue: 'Blue',
  green: 'Green',
  brown: 'Brown',
  grey: 'Grey',
  base: 'Clear base',
  lot: 'as published',
  patch: ({ c, m, y, k }: { c: number; m: number; y: number; k: number }) => `cyan ${c}, magenta ${m}, yellow ${y}, black ${k} %`,
  source: ({ patch }: { patch: SayingText }) =>
    `Not yours: halfway between characterisation data FOGRA39L (aims of ISO 12647-2, coated paper) and FOGRA29L (uncoated), patch ${patch}. Replace it by a drawdown of your own.`,
};
