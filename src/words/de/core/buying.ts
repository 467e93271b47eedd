import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Was zu kaufen ist. */
export const buying: Same<typeof en.buying> = {
  title: 'Zu kaufen',
  haveItFirst: 'vor dem ersten Tag bereit',
  papers: 'Papiere',
  inks: 'Farben und Basen',
  stencils: 'Für die Schablonen',
  press: 'An der Presse',

  paper: ({ paper, size }) => `${paper}, ${size}`,
  sheets: ({ n }) => many(n, 'Bogen', 'Bogen'),
  parents: ({ n, size }) => `${many(n, 'Bogen', 'Bogen')} zu ${size}`,
  fromEach: ({ each, n }) => `${each} aus jedem: ${n} gebraucht`,
  cutToSize: 'zugeschnitten',
  printedAlready: 'die früheren Drucke selbst',
  parentTooSmall: ({ size }) => `ein Rohbogen von ${size} ist zu klein`,

  grams: ({ mass }) => mass,
  forRuns: ({ n, runs }) => (n === 1 ? `für Lauf ${runs}` : `für die Läufe ${runs}`),
  retarder: 'Verzögerer',
  openInk: 'Farbe noch offen',
  notKnown: 'noch nicht bekannt',

  material: ({ material, thickness }) => `${material}, ${thickness}`,
  stencilsOnThem: ({ n }) => `${many(n, 'Schablone liegt', 'Schablonen liegen')} darauf`,
  oneAStencil: 'einer je Schablone',

  tape: ({ width }) => `Klebeband, ${width} breit`,
  tapeLength: ({ length }) => length,
  tapeFor: ({ runs }) => `für ${many(runs, 'Lauf', 'Läufe')}`,
  card: ({ thickness }) => `Karton, ${thickness}`,
  board: ({ thickness }) => `Pappe, ${thickness}`,
  pieces: ({ n }) => `${n} Stück`,
  boardFor: 'Unterlagen für den Rahmen',
  newsprint: 'Zeitungspapier',
  offcuts: 'Abschnitte des guten Papiers',
  eachRun: ({ n }) => `${n} je Lauf`,
  eachRunKept: ({ n }) => `${n} je Lauf; beim Zuschneiden aufgehoben`,
  withoutSpoilage: 'Bei den Papieren ist der Ausschuss mitgezählt, bei den Farben, was in Sieb und Topf bleibt.',
};
