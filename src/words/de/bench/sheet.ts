import type { Words } from '../../en/bench/index.ts';

export const sheet: Words['sheet'] = {
  zoom: 'Wie nah man schaut',
  nearer: 'Näher',
  farther: 'Weiter weg',
  percent: (n) => `${n} %`,
  fit: 'Alles zeigen',
  trueSize: 'Wahre Größe',
  screenNotMeasured: 'Stimmt die wahre Größe? Dieser Bildschirm ist noch nicht vermessen',
  screenMeasured: 'Dieser Bildschirm ist vermessen; neu vermessen',
  measureWith: 'Messen mit',
  card: 'Bankkarte',
  ruler: 'Lineal',
  cardHow:
    'Eine Bankkarte (85,60 × 53,98 mm nach ISO/IEC 7810) an den Rahmen unten halten und schieben, bis die Breite passt. Dieses Gerät merkt es sich.',
  rulerHow: (length) => `Ein Lineal an den Balken unten halten und schieben, bis er ${length} lang ist. Dieses Gerät merkt es sich.`,
  slideUntilItFits: 'Schieben, bis es passt',
  lengthInPixels: 'Länge auf dem Bildschirm, in Pixeln',
  printedTrue: '100 mm, wahre Größe bei Ausdruck mit 100 %',
  printedSmaller: (times) => `100 mm des Drucks, ${times}-mal kleiner gezeigt`,
  why: 'Warum?',
};
