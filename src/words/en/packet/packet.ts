import type { LengthText, LabText, ListText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';
import { many } from '../grammar.ts';

/** What all pages of the packet share, its cover, what is to be known before the start, and its files. */
export const packet = {
  // Heads and feet.
  continued: 'continued',
  pageOfJob: ({ mark, page, pages }: { mark: NameText; page: number; pages: number }) => `job ${mark} · ${page} of ${pages}`,
  pageOf: ({ page, pages }: { page: number; pages: number }) => `${page} of ${pages}`,

  // Inks, stencils, counts.
  open: 'open',
  inkOpen: 'ink still open',
  inkAt: ({ ink, strength }: { ink: NameText; strength: ShareText }) => `${ink} at ${strength}`,
  window: 'window',
  film: 'film',
  piece: 'piece',
  none: 'none',
  times: ({ n }: { n: number }) => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`),
  sheets: ({ n }: { n: number }) => many(n, 'sheet', 'sheets'),
  lab: ({ lab }: { lab: LabText }) => `Lab ${lab}`,
  labRicher: ({ lab }: { lab: LabText }) => `Lab ${lab}; richer than shown`,
  sheetOfStock: ({ material, number }: { material: SayingText; number: number }) => `${material}, sheet ${number}`,

  // Drawings at true size.
  titled: ({ title, drawing }: { title: NameText; drawing: SayingText }) => `${title}: ${drawing}`,
  onRuler: ({ line }: { line: LengthText }) => `${line} on the ruler? If not, print again at 100 %.`,
  onRulerInches: ({ millimetres, line }: { millimetres: NumberText; line: LengthText }) =>
    `${millimetres} mm = ${line} on the ruler? If not, print again at 100 %.`,
  lensBoard: 'Board for a camera’s lens',
  lensMeasure: ({ line, square }: { line: LengthText; square: LengthText }) =>
    `Print at 100 %. Measure the line: ${line}; then a square is ${square} wide. If it is not, give the squares their true width.`,
  lensHow:
    'Glue the sheet to something flat. Photograph it five times or more, with the zoom as it will be used: from the front, tilted to each side, and once filling each corner of the picture. Every photograph shows the whole board, sharp and evenly lit.',
  facesMesh: 'The side you see faces the mesh.',
  printedSideToMesh: 'Printed side faces the mesh.',

  // Cover.
  foreseenOn: ({ paper }: { paper: NameText }) => `foreseen on ${paper}`,
  onPaper: ({ paper }: { paper: NameText }) => `Paper: ${paper}`,
  workInOrder: 'In the order of the work',
  judgeByDrawdowns: 'No screen and no office printer shows these colours truly: judge by drawdowns. Print at 100 %, never “fit to page”.',
  image: 'Image',
  runs: 'Runs',
  runsOpen: ({ runs, open }: { runs: number; open: number }) => `${runs} (${open} open)`,
  sheetsToStart: 'Sheets to start',
  wanted: 'Wanted',
  wantedWithProofs: ({ n }: { n: number }) => `${n} and proofs`,
  toCut: 'To cut',
  lengthAndTime: ({ length, time }: { length: LengthText; time: TimeText }) => `${length}, ${time}`,
  inkToMix: 'Ink to mix',
  thingsFirst: ({ n }: { n: number }) => `${many(n, 'thing', 'things')} to mend or to weigh up: page 2`,

  // Steps of the work, and what each is.
  mix: 'Mix',
  mixIs: 'a card and a label for each pot',
  cut: 'Cut',
  cutIs: 'stencils at true size, and which side faces the mesh',
  setUp: 'Set up',
  setUpIs: 'gap, risers, tape, stops, register',
  print: 'Print',
  printIs: 'the day, and a card for each run',
  number: 'Number',
  numberIs: 'each sheet’s life, its number, where it went',
  keep: 'Keep',
  keepIs: 'what this print is, for whoever owns it later',
  buy: 'Buy',
  buyIs: 'papers, inks, stock, tape: all that is used up',
  lookUp: 'Look up',
  lookUpIs: 'every overlap on every paper',
  teach: 'Teach',
  teachIs: 'a hand-out with this print’s steps, and a blank one',

  // Before you start.
  beforeYouStart: 'Before you start',
  note: 'for your information',
  warning: 'warning',
  error: 'error',
  kindAt: ({ kind, place }: { kind: SayingText; place: SayingText }) => `${kind}: ${place}`,
  lettersMissing: 'The fonts of these pages lack some letters of this job’s names; a ? stands for each.',
  writeThemIn: 'Write them in by hand, or give a second name in Latin letters.',

  // Files: what each is for.
  handOutToPrint: ({ pages }: { pages: number }) => `a hand-out for a class, ${many(pages, 'page', 'pages')}`,
  lightAndGroundsToPrint: ({ pages }: { pages: number }) =>
    `what a printed sheet’s colours and other lamps make of the print, ${many(pages, 'page', 'pages')}`,
  proofStripToPrint: ({ pages }: { pages: number }) => `the overlaps most worth reading, ${many(pages, 'page', 'pages')}`,
  registerTestToPrint: ({ pages }: { pages: number }) => `the register test, ${many(pages, 'page', 'pages')}`,
  tableToPrint: ({ pages }: { pages: number }) => `for the table: buying, mixing, cutting, ${many(pages, 'page', 'pages')}`,
  pressToPrint: ({ pages }: { pages: number }) => `for the press: setting up, printing, counting, ${many(pages, 'page', 'pages')}`,
  partsToPrint: ({ pages }: { pages: number }) => `the parts asked for, ${many(pages, 'page', 'pages')}`,
  madeFromFile: 'which state of the job this was made from',
  noSuchPart: ({ part }: { part: NameText }) => `The packet has no part “${part}”.`,
  partsAre: ({ all }: { all: ListText }) => `Its parts: ${all}.`,
  parts: 'the parts of the packet',
  everythingToPrint: ({ pages }: { pages: number }) => `everything to print, ${many(pages, 'page', 'pages')}`,
  showFile: 'the print and its runs as one page, to show or to send',
  showOn: ({ paper }: { paper: NameText }) => `The print on ${paper}`,
  showAfter: ({ run, layer }: { run: NumberText; layer: NameText }) => `The sheet after run ${run}, ${layer}`,
  showRuns: 'Run by run',
  showLight: 'In other light',
  showLit: ({ paper, lamp }: { paper: NameText; lamp: SayingText }) => `The print on ${paper}. ${lamp}`,
  showForeseen: 'Foreseen from readings, not photographed. Screens do not show these colours truly.',
  proof: ({ paper }: { paper: NameText }) => `the print on ${paper}, true size`,
  proofAfter: ({ paper, run }: { paper: NameText; run: number }) => `${paper} after run ${run}`,
  proofAfterHalf: ({ paper, run }: { paper: NameText; run: number }) => `${paper} after run ${run}, at half the density`,
  stencilOfRun: ({ run }: { run: number }) => `stencil of run ${run}, true size`,
  sameForMachine: 'the same for a cutting machine, in mm',
  stencilsOnStock: ({ n, material }: { n: number; material: SayingText }) =>
    `${n === 1 ? 'one stencil' : `${n} stencils`} on one sheet of ${material}`,
  stencilsOnStockTimes: ({ n, material, times }: { n: number; material: SayingText; times: SayingText }) =>
    `${n === 1 ? 'one stencil' : `${n} stencils`} on one sheet of ${material}; cut it ${times}`,
  sameInParts: 'the same in parts, for this printer, with joining marks',
  testFirst: 'register test, stencil of its first run',
  testSecond: 'register test, stencil of its second run',
  overlapsTable: 'every overlap on every paper, for a spreadsheet',
  recordTable: 'the edition record, one line a sheet',
  registerTable: 'every sheet with its life and its number',
  colophonText: 'the colophon, to be set or pasted',
  planFile: 'the Plan: every figure of the packet',

  // Inside the cut files.
  cutFileTitle: ({ title, layer, side, run }: { title: NameText; layer: NameText; side: SayingText; run: number }) =>
    `${title}: ${layer}, ${side}, run ${run}`,
  inMillimetres: 'Millimetres.',
  kerfAllowed: ({ kerf }: { kerf: LengthText }) => `Kerf ${kerf}: lines run half of it inside what drops out.`,
  cutMoreLikeIt: ({ n }: { n: number }) => `Cut ${n} sheets like this one.`,
  numbersDrawn: 'Numbers are drawn, not cut.',
  numbered: ({ number, layer }: { number: number; layer: NameText }) => `${number}: ${layer}`,
  firstRun: 'first run',
  secondRun: 'second run',

  // What is refused.
  stockNotWritten: 'This stencil does not hold together, so the sheet that it lies on is not written.',
  mendMarked: 'Mend the places marked on the stencil first.',
  printerMargin: 'the printer’s margin',
  marginNoRoom: ({ margin }: { margin: LengthText }) => `A margin of ${margin} leaves no room for the pages.`,
  giveMargin: ({ range }: { range: LengthText }) => `Give the printer’s margin, ${range}.`,
  page: ({ n }: { n: number }) => `page ${n}`,
  overMargin: ({ over }: { over: LengthText }) => `It would go ${over} over the printer’s margins.`,
  smallerMargin: 'Set a smaller printer margin; and tell us, for a page should never do this.',
};
