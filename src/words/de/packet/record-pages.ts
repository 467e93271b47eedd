import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Der Tag, der Nachweis, Nummern für den Bleistift, Etiketten, was aufzuheben ist, und die Tafel der Überdrucke. */
export const recordPages: Same<typeof en.recordPages> = {
  // Der Tag.
  theDay: 'Der Tag',
  work: ({ days, time }) => `${many(days, 'Tag', 'Tage')}, ${time} Arbeit`,
  workForHands: ({ days, time, hands }) => `${many(days, 'Tag', 'Tage')}, ${time} Arbeit für ${hands}`,
  dayNumber: ({ n }) => `Tag ${n}`,
  dayLabel: ({ n }) => `Tag ${n}`,
  blackPulling: 'Schwarz: drucken.',
  greyRacking: 'Dunkelgrau: ins Gestell. Im Kasten: wessen Hände; 1 druckt.',
  greyWhite: ({ dry, most, wet }) =>
    `Grau: schneiden, mischen, einrichten, waschen. Weiß: warten, bis Farbe (Flächen ${dry}, der dickste Lauf ${most}) oder Sieb trocknen. Höchstens ${many(wet, 'Bogen', 'Bogen')} zugleich nass.`,

  // Der Nachweis.
  editionRecord: 'Auflagennachweis',
  plannedPaper: ({ paper, edition, proofs, start, met }) =>
    `${paper}: ${edition} in der Auflage${proofs === undefined ? '' : ` und ${proofs}`}, aus ${many(start, 'Bogen', 'Bogen')} (in ${met} von 100 Fällen erreicht)`,
  proofsOf: ({ n, mark }) => `${n} ${mark}`,
  surplus: ({ where }) =>
    `Weitere gute Bogen sind übrig (etwa ${where}): ohne Nummer und unsigniert. Vor dem Signieren die Auflage größer angeben oder sie vernichten.`,
  surplusOn: ({ n, paper }) => `${n} auf ${paper}`,
  wantedOnly: ({ n }) => `${n} gewünscht.`,
  variedEdition: 'Mehrere Papiere, eine variierte Auflage: E.V. 1/n. Probedrucke mit römischen Ziffern.',
  subEditions: 'Jedes Papier ist eine eigene Auflage: 1/n. Probedrucke (A/P, P/P, H.C.) mit römischen Ziffern.',
  sheet: 'Bogen',
  whatIsWrong: 'Was nicht stimmt',
  number: 'Nummer',
  signed: 'Signiert',
  whereItWent: 'Wohin er ging',
  rejected: 'verworfen',
  spare: 'übrig',
  setUpSheet: 'Einrichten',

  // Nummern für den Bleistift.
  forThePencil: 'Nummern für den Bleistift',
  softPencil:
    'Weicher Bleistift, unter dem Bild: Nummer links, Titel in der Mitte, Name und Jahr rechts. Den Bogen am Namen auf der Rückseite finden.',
  goodUnnumbered: 'Gut, ohne Nummer',
  setUpWith: 'Zum Einrichten',
  rejectedMark: 'Ausgeschlossen: zerreißen oder quer durchs Bild zeichnen',
  faultIn: ({ sheet, run, fault }) => `${sheet} (Lauf ${run}: ${fault})`,
  faulty: ({ sheet, fault }) => `${sheet} (${fault})`,
  colophon: 'Kolophon',
  toEndEdition: 'Die Auflage abschließen',

  // Etiketten.
  labels: 'Etiketten',
  forSleeves: 'für Hüllen und Rahmen, nicht für den Bogen',

  // Über diesen Druck.
  aboutThisPrint: 'Über diesen Druck',
  toKeep: 'bei der Auflage aufzubewahren',
  title: 'Titel',
  artist: 'Künstlerin, Künstler',
  year: 'Jahr',
  workshopPrinter: 'Werkstatt, Drucker',
  image: 'Bild',
  medium: 'Technik',
  screenprint: ({ runs }) => `Siebdruck, Handschnitt, ${many(runs, 'Lauf', 'Läufe')}`,
  printedFromTo: 'gedruckt von … bis …',
  fromTo: ({ from, to }) => `${from} bis ${to}`,
  mesh: 'Gewebe',
  runMesh: ({ run, mesh }) => `Lauf ${run}: ${mesh}`,
  meshIs: ({ count, thread }) => `${count} / cm, Faden ${thread}`,
  papersAndNumbers: 'Papiere und Zahlen',
  edition: 'Auflage',
  allVaried: 'alle Papiere, eine variierte Auflage',
  runsInOrder: 'Läufe, vom ersten zum letzten',
  paperOfSize: ({ letter, paper, size }) => `${letter}  ${paper}, ${size}`,
  runLine: ({ run, layer, ink, stencil }) => `${run}  ${layer}: ${ink}; ${stencil}`,
  statedByArtist: 'Erklärung der Künstlerin, des Künstlers',
  signedHow: ({ how }) => `Signiert: ${how}.`,
  signedByHand: 'Alle Bogen sind eigenhändig signiert.',
  stencilsKept: 'Schablonen: nach dem Druck aufbewahrt.',
  stencilsCancelled: 'Schablonen: nach dem Druck annulliert.',
  stencilsDestroyed: 'Schablonen: nach dem Druck vernichtet.',
  stencilsWornOut: 'Schablonen: beim Druck verbraucht.',
  stencilsStrikeOut: 'Schablonen: aufbewahrt / annulliert / vernichtet / verbraucht (Nichtzutreffendes streichen).',
  otherEditions: ({ which }) => `Andere Auflagen: ${which}`,
  noOtherEdition: 'Es gibt keine andere Auflage dieses Bildes. Falls doch: wie viele, wann, worin sie abweicht.',
  proofsCounted: 'Probedrucke außerhalb der Auflage sind oben gezählt.',
  posthumous: 'Postum gedruckt.',
  inLifetime: 'Zu Lebzeiten gedruckt, eigenhändig oder unter eigener Aufsicht.',
  signature: 'Unterschrift',
  dateAndPlace: 'Datum und Ort',
  lawsDiffer: 'Was offenzulegen ist, regeln Gesetze von Ort zu Ort anders; dieses Blatt ist ein Nachweis, kein Rat.',

  // Überdrucke.
  overlaps: 'Überdrucke',
  notedOf: ({ paper, note }) => `${paper}: ${note}`,
  partingHead: 'Unter einer Lampe gleich, unter einer anderen nicht',
  overlapsOn: ({ paper }) => `Überdrucke auf ${paper}`,
  coverArea: ({ n }) => `${n} mit Fläche`,
  howToReadIt: 'So ist es zu lesen',
  layerOpen: ({ run, layer }) => `${run}  ${layer} (offen)`,
  readingTheChart:
    'Balken: welche Farben dort liegen, der erste Lauf unten. Anteil am Bild. Lab (D50). Streifen unter jedem Feld: Farbtöne, als die es auch ausfallen kann. Letzte Zeile: ΔE00, in dem neun von zehn Drucken bleiben. „Kräftiger“: farbiger, als ein Bildschirm zeigt.',
  sheetAsItIs: 'der Bogen, wie er ist',
  barePaper: 'blankes Papier',
  under: ({ share }) => `< ${share}`,
  measured: ({ band }) => `gemessen, ±${band}`,
  band: ({ how, band }) => `${how}, ±${band}`,
  richer: ({ band }) => `${band}, kräftiger`,
  worthReading: ({ paper }) => `Zuerst zu messen auf ${paper}`,
  onceWithFirstSheets: 'mit den ersten Bogen',
  worthSteps1: 'Je Lauf einen Streifen wie gezeichnet aus dem Material seiner Schablone schneiden.',
  worthSteps2:
    'Die Streifen neben dem Bild oder auf einem übrigen Bogen übereinander drucken: gleiche Ecke, gleiches Papier, gleiche Reihenfolge, jeder Lauf trocken.',
  worthSteps3: 'Die Quadrate trocken messen und unter Farben, Lernen eintragen. Alle vorhergesehenen Farbtöne folgen.',
  worthNow: 'Band im Mittel jetzt',
  worthThen: ({ n }) => (n === 1 ? 'mit der ersten' : `mit den ersten ${n}`),
  worthAt: ({ at }) => `im Druck bei ${at} von der linken oberen Ecke`,
  stripOfRun: ({ run, layer }) => `${run}  ${layer}`,
  stripOpen: 'Weiße Quadrate werden ausgeschnitten; am Eckzeichen treffen sich alle Streifen.',
  stripSquare: ({ size }) => `Quadrate von ${size}, wahre Größe`,
  sure: 'sicher',
  shadeOff: 'ungefähr',
  clearlyOff: 'grob',
  guess: 'geraten',
};
