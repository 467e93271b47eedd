import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { capital, many } from '../grammar.ts';

/** Ein Text, der auf `B.A.T.` endet, hat seinen Punkt. */
const ended = (text: string): string => (text.endsWith('.') ? text : `${text}.`);
const counting = ['null', 'einem', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht'];

/** Was über eine Auflage festgehalten wird: Nachweis, Kolophon, Etiketten; und das Blatt für eine Klasse. */
export const record: Same<typeof en.record> = {
  // Die Zeilen des Nachweises.
  title: 'Titel',
  artist: 'Künstlerin, Künstler',
  signed: 'Signiert',
  medium: 'Technik',
  year: 'Druckjahr',
  edition: 'Auflage',
  stencils: 'Schablonen',
  otherEditions: 'Andere Auflagen',
  lifetime: 'Zu Lebzeiten gedruckt',
  workshop: 'Werkstatt',
  printedBy: 'Gedruckt von',
  image: 'Bild',
  papers: 'Papiere',
  printed: 'Gedruckt',
  note: 'Notiz',

  // Was darauf steht.
  signedInPencil: 'mit Bleistift, eigenhändig, auf jedem Bogen',
  screenprint: ({ runs }) => `Siebdruck von geschnittenen Schablonen, ${many(runs, 'Lauf', 'Läufe')}`,
  kept: 'nach dem Druck aufbewahrt',
  cancelled: 'nach dem Druck annulliert',
  destroyed: 'nach dem Druck vernichtet',
  wornOut: 'beim Druck verbraucht',
  yes: 'ja',
  no: 'nein',
  size: ({ size }) => size,
  paperOf: ({ paper, size }) => `${paper}, ${size}`,
  dates: ({ from, to }) => `${from} bis ${to}`,
  windowIn: ({ material }) => `Fenster, ${material}`,
  pieceOf: ({ material }) => `Stück, ${material}`,
  inkOpen: 'offen',
  recipePart: ({ share, ink }) => `${share} ${ink}`,
  mesh: ({ perCm, thread }) => `${perCm} Fäden je cm, ${thread}`,
  footing: ({ printed, rejected }) =>
    `Insgesamt ${printed === 1 ? 'wurde 1 Bogen' : `wurden ${printed} Bogen`} gedruckt; ${rejected} ausgeschlossen. Ob ein Gesetz mehr verlangt, sagt örtliche Beratung.`,
  footingSpare: ({ printed, rejected, spare }) =>
    `Insgesamt ${printed === 1 ? 'wurde 1 Bogen' : `wurden ${printed} Bogen`} gedruckt; ${rejected} ausgeschlossen, ${many(spare, 'guter', 'gute')} ohne Nummer. Ob ein Gesetz mehr verlangt, sagt örtliche Beratung.`,
  lineOpen: ({ line }) => `Unter „${line}“ steht im Nachweis noch nichts.`,
  fillIn: 'Eintragen, mit Bleistift oder in der Arbeit.',
  cancelledOrKept: 'Es gibt einen Annullierungsdruck, aber laut Nachweis sind die Schablonen aufbewahrt.',
  sayCancelled: 'Sagen, dass sie annulliert sind.',

  // Zahlen.
  allPapers: 'alle Papiere (variiert)',
  numbered: ({ n }) => `${n} nummeriert`,
  marked: ({ n, mark }) => `${n} ${mark}`,
  states: ({ n }) => many(n, 'Zustandsdruck', 'Zustandsdrucke'),
  trials: ({ n }) => many(n, 'Farbprobe', 'Farbproben'),
  countsOn: ({ paper, counts }) => `${paper}: ${counts}`,

  // Das Kolophon.
  colophonTitle: ({ title, artist, year }) => `${title}${artist ? `, von ${artist}` : ''}${year ? `, ${year}` : ''}.`,
  colophonMedium: ({ runs, papers, image }) =>
    `Siebdruck in ${counting[runs] ?? runs} ${runs === 1 ? 'Lauf' : 'Läufen'} von geschnittenen Schablonen, mit transparenten Farben auf Wasserbasis, auf ${papers ?? 'Papier'}. Bild ${image}.`,
  colophonEdition: ({ counts }) => ended(`Die Auflage: ${counts}`),
  colophonPrinted: ({ printer, workshop, when }) =>
    `Gedruckt${printer ? ` von ${printer}` : ''}${workshop ? ` in der Werkstatt ${workshop}` : ''}${when ? `, ${when}` : ''}.`,
  colophonCancelled: 'Die Schablonen wurden nach dem Druck annulliert.',
  colophonDestroyed: 'Die Schablonen wurden nach dem Druck vernichtet.',

  // Wie eine Auflage endet.
  cutThrough: 'Durch jede Schablone ein deutliches Zeichen schneiden oder stanzen, quer durchs Bild, nicht am Rand.',
  pullCancellation:
    'Von jeder annullierten Schablone einen Druck machen, „Annullierungsdruck“ darauf schreiben und beim Nachweis aufbewahren.',
  writeCancelled: 'Datum und „annulliert“ in den Nachweis schreiben; die Teile wegwerfen oder aufbewahren.',
  sayWornOut: 'Wenn Schablonen sich verbraucht haben oder gerissen sind, stattdessen das sagen, mit dem Bogen, bei dem es geschah.',

  // Etiketten.
  labelTitle: ({ title, year }) => `${title}${year ? `, ${year}` : ''}`,
  labelMedium: ({ image, paper }) => `Siebdruck, ${image}, auf ${paper}`,

  // Das Blatt für die Klasse.
  intro: ({ runs, image, sheet, maker }) =>
    `Ein Druck in ${runs === 1 ? '1 Lauf' : `${runs} Läufen`}, ${image} auf Bogen von ${sheet}${maker ? `, nach einer Arbeit von ${maker}` : ''}.`,
  lookFirst: 'Zuerst schauen',
  lookFirstText: 'Welche Farben liegen übereinander, und welcher Farbton kommt aus keinem Topf? Die Überdrucke auf der Tafel suchen.',
  cutStencils: 'Die Schablonen schneiden',
  cutStencilsText: ({ n, materials }) =>
    `${many(n, 'Schablone', 'Schablonen')}; Material: ${materials}. Ein Fenster druckt durch seine Öffnung, ein Stück druckt um sich herum; ein Schnitt ergibt beides.`,
  mixInks: 'Die Farben mischen',
  mixInksText: ({ inks }) =>
    `${inks ?? 'Farben noch offen'}. Wiegen, rühren, auf demselben Papier einen Aufzug machen und ihn trocken beurteilen.`,
  setUpScreen: 'Sieb und Anlagen einrichten',
  meshIs: ({ mesh }) => `Gewebe: ${mesh}.`,
  gapIs: ({ gap }) => `Absprung zwischen Gewebe und Papier ${gap}.`,
  gapOfRun: ({ run, layer, gap }) => `Für Lauf ${run} (${layer}) den Absprung auf ${gap} stellen.`,
  runTitle: ({ run, layer }) => `Lauf ${run}: ${layer}`,
  runPot: ({ stencil, ink, recipe, amount }) =>
    `${capital(stencil)}; ${ink ?? 'Farbe offen: wählen'}${recipe ? `, ${recipe}` : ''}; ${amount}.`,
  amountOnCard: 'Menge auf der Mischkarte',
  newsprintFirst: ({ n }) => `Zuerst ${n} auf Zeitungspapier, dann jeden Bogen in derselben Folge.`,
  sameOrder: 'Jeden Bogen in derselben Folge.',
  lookFor: ({ note }) => `Achten auf: ${note}`,
  dryFor: ({ time }) => `${time} trocknen lassen.`,
  cleanUp: 'Aufräumen',
  cleanUpText:
    'Farbe zurück in beschriftete Gläser; das Sieb waschen, bevor irgendetwas anderes damit geschieht. Schablonen aus Folie werden gewaschen und aufgehängt; die aus Papier haben ausgedient.',
  chooseAndSign: 'Auswählen und signieren',
  chooseAndSignText:
    'Alle Bogen auslegen, jeden mit dem vergleichen, der als Maß gewählt wurde (B.A.T.), die guten mit Bleistift nummerieren. Die Folge der Nummern bedeutet nichts.',
  bringPaper: ({ n, paper }) => `${n === 0 ? 'Bogen' : `${n} Bogen`}: ${paper}`,
  bringNewsprint: ({ n }) => `${n} Bogen Zeitungspapier zum Einrichten`,
  bringMaterial: ({ material }) => `Schablonenmaterial: ${material}`,
  bringInk: ({ ink }) => `Farbe: ${ink}`,
  bringBase: 'Transparentbase, Waage, Gläser mit Deckel, Etiketten',
  bringKnife: 'Messer mit frischen Klingen, Stahllineal, Schneidematte',
  bringScreen: 'Sieb, Rakel, Klebeband, Anlagen, Unterlagen',
  bringPencil: 'Bleistift, Schürze, Handschuhe, Lappen',

  // Das leere Blatt.
  myPrint: 'Mein Druck',
  yourName: 'Name',
  imageSize: 'Größe des Bildes',
  paperAndSheets: 'Papier und Zahl der Bogen',
  meshHead: 'Gewebe',
  gapHead: 'Absprung',
  dateHead: 'Datum',
  runHead: 'Lauf',
  stencilHead: 'Schablone: Fenster oder Stück',
  potHead: 'Farbe und Base, Teile',
  gramsHead: 'Gramm',
  sheetsIn: 'Bogen hinein',
  sheetsGood: 'Bogen gut',
  whatISaw: 'Was mir auffiel',
};
