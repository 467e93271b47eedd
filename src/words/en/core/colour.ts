import type { NumberText } from '../../text.ts';

/** Spectra and colours. */
export const colour = {
  noSurfaceHasIt: ({ x, y, z }: { x: NumberText; y: NumberText; z: NumberText }) =>
    `No paper or ink can have the colour X ${x}, Y ${y}, Z ${z} (white is 100).`,
  checkLight: 'Check the numbers, and that they were read under D50 with the 2° observer.',
};
