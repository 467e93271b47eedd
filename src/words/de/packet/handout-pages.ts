import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { capital, many } from '../grammar.ts';

/** Der Handzettel für eine Klasse, und der leere. */
export const handoutPages: Same<typeof en.handoutPages> = {
  handOut: 'Handzettel',
  onePrint: 'Ein Druck, viele Farbtöne',
  filmsMake: ({ films, colours }) =>
    `${many(films, 'transparenter Film', 'transparente Filme')} Farbe ${films === 1 ? 'ergibt' : 'ergeben'} ${many(colours, 'Farbton', 'Farbtöne')}, das blanke Papier mitgezählt: jeder Überdruck ist einer, den kein Topf enthält. Die Schablonen sind von Hand geschnitten; jede Schicht ist eine Schablone und eine Farbe.`,
  bring: 'Mitbringen',
  bringThis: ({ thing }) => capital(thing),
  findOnChart: 'Auf der Tafel suchen',
  questions:
    'Welcher Farbton liegt, wo drei Farben sich treffen? Welcher ist der dunkelste, und welcher Lauf hat ihn dazu gemacht? Welcher würde sich ändern, wenn die Läufe 1 und 2 die Plätze tauschten?',
  stepByStep: 'Handzettel: Schritt für Schritt',
  printSteps: ({ first, last }) => `Schritte ${first} bis ${last}: Lauf für Lauf drucken (nächste Seiten)`,
  printStep: 'Drucken (nächste Seite)',
  runByRun: 'Handzettel: Lauf für Lauf',
  windowIs: ({ material }) => `${material}, Fenster: Farbe geht durch das Loch.`,
  pieceIs: ({ material }) => `${material}, Stück: die Form deckt ab, Farbe geht ringsherum.`,
  aboutToCut: ({ time }) => `Etwa ${time} zu schneiden.`,
  recipe: ({ recipe }) => `${recipe}.`,
  chooseInk: 'Eine Farbe wählen.',
  newsprintFirst: ({ n }) => `${n} auf Zeitungspapier, dann jeden Bogen in derselben Folge.`,
  lookFor: ({ note }) => `Achten auf: ${note}`,
  dryFor: ({ time }) => `${time} trocknen lassen.`,

  // Der leere.
  myOwn: 'Mein eigener Aufbau',
  firstAtBottom: 'der erste Lauf unten',
  shape: 'Form; Fenster oder Stück',
  inkAndStrength: 'Farbe und Stärke',
  stencil: 'Schablone',
  sheetAfter: 'Bogen danach',
};
