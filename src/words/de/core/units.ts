import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Längen, Gewichte und andere Mengen, die sich nicht lesen lassen. */
export const units: Same<typeof en.units> = {
  length: 'Länge',
  mass: 'Gewicht',
  volume: 'Volumen',
  tooLong: 'Das ist zu lang: eine Zahl mit Einheit genügt.',
  nothingWritten: ({ noun }) => `Hier steht nichts, was sich als ${noun} lesen lässt.`,
  notRead: ({ text, noun }) => `„${text}“ ist nicht als ${noun} zu lesen.`,
  notNumber: ({ text }) => `„${text}“ ist keine Zahl.`,
  unitMissing: ({ text }) => `In „${text}“ fehlt einer Zahl die Einheit.`,
  unknownUnit: ({ unit, noun }) => `„${unit}“ ist nicht als Einheit für ${noun} bekannt.`,
  moreThanOne: ({ text }) => `„${text}“ ist mehr als eine Angabe.`,
  tooLarge: ({ text }) => `„${text}“ ist größer als alles, was hier vorkommt.`,
  // So schreibt man sie.
  writeLength: 'So schreiben: 180 mm, 12,5 cm, 3/16 in, 1 1/2", 7 mil oder 90 µm.',
  writeMass: 'So schreiben: 120 g, 0,5 kg, 4 oz oder 1 1/2 lb.',
  writeVolume: 'So schreiben: 60 mL, 0,25 L oder 4 fl oz.',
};
