import type { Phrases } from '../phrasebook.ts';

/** Einheiten, Farbtöne und was alle Räume sagen. */
export const common: Phrases = {
  'No paper or ink can have the colour X {xyz}, Y {xyz2}, Z {xyz3} (white is 100).':
    'Kein Papier und keine Farbe kann den Farbton X {xyz}, Y {xyz2}, Z {xyz3} haben (Weiß ist 100).',
  'Check the numbers and that they were read under D50 with the 2° observer.':
    'Die Zahlen prüfen, und ob unter D50 mit dem 2°-Beobachter gemessen wurde.',
  'Stopped.': 'Angehalten.',
  '120 g, 0,5 kg, 4 oz or 1 1/2 lb': '120 g, 0,5 kg, 4 oz oder 1 1/2 lb',
  '60 mL, 0,25 L or 4 fl oz': '60 mL, 0,25 L oder 4 fl oz',
  'This is too long to be a {kind}.': 'Das ist zu lang für {kind*}.',
  'No {kind} is written here.': 'Hier steht nichts: es fehlt {kind*}.',
  '“{text}” is not a {kind}.': '„{text}“ ist nicht zu lesen als {kind*}.',
  '“{match}” is not a number.': '„{match}“ ist keine Zahl.',
  '“{text}” has a number without a unit.': '„{text}“ hat eine Zahl ohne Einheit.',
  '“{unit}” is not a unit of {kind} known here.': '„{unit}“ ist keine hier bekannte Einheit für {kind*}.',
  '“{text}” is not one {kind}.': '„{text}“ ist nicht nur {kind*}.',
  '“{text}” is larger than any {kind} used here.': '„{text}“ ist größer als alles, was hier vorkommt: {kind*}.',
  'Write it like {examples}.': 'So schreiben: {examples*}.',
};
