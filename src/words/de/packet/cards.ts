import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Mischkarten, Topfetiketten, das Laydown und die Karten für die Presse. */
export const cards: Same<typeof en.cards> = {
  // Mischen.
  mix: 'Mischen',
  oneCardARun: 'je Lauf eine Karte',
  stillOpen: ({ runs }) => `Noch offen: ${runs}. Die Karte folgt, sobald die Farbe gewählt ist.`,
  runLayer: ({ run, layer }) => `Lauf ${run}, ${layer}`,
  inkOfPot: ({ layer, share }) => `für „${layer}“: Farbe ${share} des Topfs, nach Volumen`,
  parts: 'Raumteile',
  weigh: 'wiegen',
  weighed: 'gewogen',
  together: 'zusammen',
  mayNeed: ({ least, most }) => `Gebraucht werden zwischen ${least} und ${most}.`,
  retarderOnTop: ({ mass, share }) => `Dazu Verzögerer: ${mass} (${share}).`,
  noRetarder: ({ least, most }) => `Bei diesem Tempo kein Verzögerer; trocknet die Farbe im Gewebe, ${least} bis ${most}.`,
  neverMore: ({ most }) => `Nie mehr als ${most}: die Farbe würde nicht trocknen.`,
  aloneOn: ({ paper }) => `allein auf ${paper}`,
  alone: 'allein',
  drawdownHere: 'Aufzug dieses Topfs, ganz trocken. Datum, Charge:',

  // Topfetiketten.
  potLabels: 'Topfetiketten',
  cutApart: 'auseinanderschneiden',
  potOf: ({ title, run, layer }) => `${title}, Lauf ${run}: ${layer}`,
  part: ({ name, share }) => `${name} ${share}`,
  potHolds: ({ parts, mass }) => `${parts}. Gemischt: ${mass}.`,
  mixedOn: 'gemischt am; Charge; was übrig ist',

  // Das Laydown.
  laydown: 'Laydown',
  readUpwards: 'von unten zu lesen: Lauf 1 wird zuerst gedruckt',
  prints: ({ side, share }) => `${side}, druckt ${share} des Bildes`,

  // An der Presse.
  printLayer: ({ layer }) => `Drucken: ${layer}`,
  runOf: ({ run, runs }) => `Lauf ${run} von ${runs}`,
  inPot: ({ mass, pulls }) => `${mass} im Topf, ${many(pulls, 'Druck', 'Drucke')}`,
  chooseInk: ({ pulls }) => `zuerst die Farbe wählen; ${many(pulls, 'Druck', 'Drucke')}`,
  wetFilm: ({ film }) => `Nassfilm etwa ${film}`,
  gap: ({ gap }) => `Absprung ${gap}`,
  ownGap: ({ gap, others }) => `Absprung für diesen Lauf: ${gap} (andere ${others})`,
  ownGapRisers: ({ gap, others, risers }) => `Absprung für diesen Lauf: ${gap} (andere ${others}); ${risers}`,
  beforeBare: 'vorher: der blanke Bogen',
  before: 'vorher',
  afterUnknown: 'nachher: noch nicht bekannt',
  after: 'nachher',
  fromFilm: 'Film, wie er druckt',
  fromSqueegee: 'Schablone, von der Rakelseite',
  sheets: 'Bogen',
  tickCross: 'Haken: gedruckt    Kreuz: Makulatur',
  notes: 'Notizen',
  setUp: 'Einrichten',
  newsprint: ({ n }) => `${n} Zeitungspapier`,
  newsprintOffcuts: ({ n, offcuts }) => `${n} Zeitungspapier, ${many(offcuts, 'Abschnitt', 'Abschnitte')}`,
  newsprintLetter: 'z',
  offcutLetter: 'a',
  restInRecord: ({ row, n }) => `${row}, ${n} im Nachweis`,
  morePapers: 'Mehr Papiere, als diese Karte fasst: sie im Nachweis abhaken.',

  // Worauf zu achten ist.
  stopsTried: 'Anlagen fest, drei Bogen probiert.',
  marksMatch: 'Marken passen auf den ersten drei Bogen.',
  underlayersDry: 'Untere Schichten griffest.',
  loosePiecesDown: ({ n }) => `${many(n, 'loses Teil gelegt, nicht', 'lose Teile gelegt, keines')} verrutscht.`,
  bridgesFlat: 'Stege flach, keine Farbe darunter.',
  largeFlat: 'Fläche: gleichmäßig drücken. Gewebemuster: Absprung kleiner.',
  edgesSharp: 'Ränder weich? Weniger Farbe oder mehr Absprung.',
  thickEdges: 'Dicke Farbe an den Rändern: länger trocknen.',
  noBrightGap: 'Kein heller Spalt außerhalb des Bilds.',
};
