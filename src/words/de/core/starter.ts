import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Farben für den Anfang, nach veröffentlichten Werten. */
export const starter: Same<typeof en.starter> = {
  cyan: 'Prozesscyan',
  magenta: 'Prozessmagenta',
  yellow: 'Prozessgelb',
  black: 'Prozessschwarz',
  orange: 'Orange',
  red: 'Rot',
  violet: 'Violett',
  blue: 'Blau',
  green: 'Grün',
  brown: 'Braun',
  grey: 'Grau',
  base: 'Klare Base',
  lot: 'wie veröffentlicht',
  patch: ({ c, m, y, k }) => `Cyan ${c}, Magenta ${m}, Gelb ${y}, Schwarz ${k} %`,
  source: ({ patch }) =>
    `Nicht die eigene: die Mitte zwischen den Charakterisierungsdaten FOGRA39L (Sollwerte der ISO 12647-2, gestrichenes Papier) und FOGRA29L (ungestrichen), Messfeld ${patch}. Durch einen eigenen Aufzug ersetzen.`,
};
