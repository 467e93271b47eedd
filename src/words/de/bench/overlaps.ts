import type { Words } from '../../en/bench/index.ts';
import { many } from './say.ts';

export const overlaps: Words['overlaps'] = {
  title: 'Überdrucke',
  knows: (n) => many(n, 'Farbton', 'Farbtöne'),
  needsPrint: 'Braucht Läufe mit Farbe',
  chart: 'Alle Überdrucke im Druck',
  chartOn: (paper, n) => `${many(n, 'Überdruck', 'Überdrucke')} auf ${paper}`,
  chartWhy: (runs, note) =>
    `${many(runs, 'Lauf', 'Läufe')} mit Farbe können ${2 ** runs} Überdrucke ergeben; hier stehen die, die in diesem Druck Fläche bedecken, und das blanke Papier. ${note}`,
  sortBy: 'Geordnet nach',
  byFilms: 'Zahl der Schichten',
  byArea: 'Fläche',
  byLightness: 'Helligkeit',
  byHue: 'Buntton',
  barePaper: 'Blankes Papier',
  films: (names) => names.join(' + '),
  lab: 'Lab',
  band: 'Sicherheit',
  bandValue: (deltaE) => `± ${deltaE} ΔE00`,
  bandWords: (deltaE) =>
    deltaE <= 1
      ? 'für das Auge kaum ein Unterschied'
      : deltaE <= 2.5
        ? 'ein kleiner Unterschied, nebeneinander gesehen'
        : deltaE <= 5
          ? 'ein sichtbarer Unterschied'
          : 'ein anderer Ton ist möglich',
  possible: 'Kann so ausfallen',
  possibleWhy: 'Neun von zehn Drucken liegen zwischen den beiden Enden; in der Mitte steht der gezeigte Farbton.',
  worth: 'Zuerst zu messen',
  worthWhy:
    'Diese Überdrucke am ersten Probedruck zu messen engt alle vorhergesehenen Farbtöne am meisten ein. Die Druckmappe hat einen Streifen, der nur sie druckt.',
  worthNow: (band) => `Im Mittel ist das Band jetzt ± ${band}.`,
  worthThen: (band) => `dann ± ${band}`,
  showWorth: (what) => `${what} auf dem Proof zeigen`,
  foreseen: 'vorhergesehen',
  measured: 'am Probedruck gemessen',
  area: 'Fläche',
  screen: 'Bildschirm',
  outOfGamut: 'Im Druck leuchtender, als dieser Bildschirm zeigen kann',
  inGamut: 'Dieser Bildschirm kann ihn zeigen',
  point: 'Auf den Proof zeigen oder auf ein Farbfeld.',
  letGo: 'Loslassen',
  proofOnly: (what, share) => `Proof, nur ${what} in Farbe, ${share} vom Bild`,
  swatch: (what) => `${what},`,
  tiny: '<\u00a00,1\u00a0%',
};
