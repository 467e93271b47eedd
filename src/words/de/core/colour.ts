import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Spektren und Farbtöne. */
export const colour: Same<typeof en.colour> = {
  noSurfaceHasIt: ({ x, y, z }) => `Kein Papier und keine Farbe kann den Farbton X ${x}, Y ${y}, Z ${z} haben (Weiß ist 100).`,
  checkLight: 'Die Zahlen prüfen, und ob unter D50 mit dem 2°-Beobachter gemessen wurde.',
};
