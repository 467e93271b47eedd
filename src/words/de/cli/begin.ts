import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Die kleinste Arbeit, und was von einem Feld gesagt wird. */
export const begin: Same<typeof en.begin> = {
  form: 'Hügel',
  first: 'Unten',
  second: 'Oben',
  paper: 'Büropapier',
  stock: 'Gestrichenes Papier',
  note: 'Hier beginnen: ein Feld ändern, dann prüfen. Die Farben für den Anfang folgen veröffentlichten Werten und sind nicht die eigenen; eigene Aufzüge eintragen. Längen in mm (Namen auf Mm), Filme in µm, Anteile von 0 bis 1.',
  written: ({ file }) => `${file} ist geschrieben. Was man zuerst anfasst:`,
  next: ({ check, explain }) => `Was ein Feld bedeutet: ${explain}. Dann: ${check}`,
  marked: ({ layer, what }) => `${layer}: ${what}. Das bleibt so; was es ändern würde, wird gesagt.`,
  wayTaken: ({ layer, way }) => `${layer}: ${way}. In die Arbeit geschrieben.`,
  unmarked: ({ layer, what }) => `${layer}: nicht mehr ${what}.`,
  unitIs: ({ unit }) => `Einheit: ${unit}`,
  mayBe: ({ what }) => `Möglich: ${what}`,
  leftOut: ({ value }) => `Ohne Angabe: ${value}`,
  example: ({ example }) => `Beispiel: ${example}`,
};
