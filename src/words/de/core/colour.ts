import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Spektren und Farbtöne. */
export const colour: Same<typeof en.colour> = {
  noSurfaceHasIt: ({ x, y, z }) => `Kein Papier und keine Farbe kann den Farbton X ${x}, Y ${y}, Z ${z} haben (Weiß ist 100).`,
  lampD50: 'Tageslicht zum Abmustern (D50)',
  lampD65: 'Tageslicht (D65)',
  lampA: 'Warme Glühlampe (A)',
  lampWarm: 'Warme LED (B1)',
  lampNeutral: 'Neutrale LED (B3)',
  lampCold: 'Kalte LED (B5)',
  barePaper: 'blankes Papier',
  groundItself: ({ n }) => `Grund ${n}`,
  onGround: ({ what, n }) => `${what} auf Grund ${n}`,
  parts: ({ one, other, alike, apart, near, far, chance }) =>
    `${one} und ${other}. ${alike}: gleich (ΔE00 ${near}). ${apart}: verschieden (${far}). So in ${chance} der berechneten Drucke.`,
  checkLight: 'Die Zahlen prüfen, und ob unter D50 mit dem 2°-Beobachter gemessen wurde.',
};
