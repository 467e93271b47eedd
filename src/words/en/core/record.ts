import type { FilmText, LengthText, ListText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';
import { capital, many } from '../grammar.ts';

/** A text that ends in `B.A.T.` has its full stop. */
const ended = (text: string): string => (text.endsWith('.') ? text : `${text}.`);
const counting = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];

/** What is written down about an edition: documentation, colophon, labels; and the hand-out for a class. */
export const record = {
  // The lines of the documentation.
  title: 'Title',
  artist: 'Artist',
  signed: 'Signed',
  medium: 'Medium',
  year: 'Year of printing',
  edition: 'Edition',
  stencils: 'Stencils',
  otherEditions: 'Other editions',
  lifetime: 'Made in the artist’s lifetime',
  workshop: 'Workshop',
  printedBy: 'Printed by',
  image: 'Image',
  papers: 'Papers',
  printed: 'Printed',
  note: 'Note',

  // What stands on them.
  signedInPencil: 'in pencil by the artist, on each sheet',
  screenprint: ({ runs }: { runs: number }) => `screenprint from cut stencils, ${many(runs, 'run', 'runs')}`,
  kept: 'kept after printing',
  cancelled: 'cancelled after printing',
  destroyed: 'destroyed after printing',
  wornOut: 'worn out in printing',
  yes: 'yes',
  no: 'no',
  size: ({ size }: { size: LengthText }) => size,
  paperOf: ({ paper, size }: { paper: NameText; size: LengthText }) => `${paper}, ${size}`,
  dates: ({ from, to }: { from: NameText; to: NameText }) => `${from} to ${to}`,
  windowIn: ({ material }: { material: SayingText }) => `window in ${material}`,
  pieceOf: ({ material }: { material: SayingText }) => `piece of ${material}`,
  inkOpen: 'open',
  recipePart: ({ share, ink }: { share: ShareText; ink: SayingText }) => `${share} ${ink}`,
  mesh: ({ perCm, thread }: { perCm: NumberText; thread: FilmText }) => `${perCm} threads a cm, ${thread}`,
  footing: ({ printed, rejected }: { printed: number; rejected: number }) =>
    `${many(printed, 'sheet was', 'sheets were')} printed in all; ${rejected} rejected. For what the law asks beyond this, take local advice.`,
  footingSpare: ({ printed, rejected, spare }: { printed: number; rejected: number; spare: number }) =>
    `${many(printed, 'sheet was', 'sheets were')} printed in all; ${rejected} rejected, ${many(spare, 'good one', 'good ones')} without a number. For what the law asks beyond this, take local advice.`,
  lineOpen: ({ line }: { line: SayingText }) => `The record says nothing yet under “${line}”.`,
  fillIn: 'Write it in by hand, or in the job.',
  cancelledOrKept: 'There is a cancellation proof, yet the record says the stencils were kept.',
  sayCancelled: 'Say that they were cancelled.',

  // Counts.
  allPapers: 'all papers (varied)',
  numbered: ({ n }: { n: number }) => `${n} numbered`,
  marked: ({ n, mark }: { n: number; mark: SayingText }) => `${n} ${mark}`,
  states: ({ n }: { n: number }) => many(n, 'state proof', 'state proofs'),
  trials: ({ n }: { n: number }) => many(n, 'colour trial', 'colour trials'),
  countsOn: ({ paper, counts }: { paper: SayingText; counts: ListText }) => `${paper}: ${counts}`,

  // The colophon.
  colophonTitle: ({ title, artist, year }: { title: NameText; artist?: NameText; year?: NumberText }) =>
    `${title}${artist ? `, by ${artist}` : ''}${year ? `, ${year}` : ''}.`,
  colophonMedium: ({ runs, papers, image }: { runs: number; papers?: ListText; image: LengthText }) =>
    `Screenprint in ${counting[runs] ?? runs} ${runs === 1 ? 'run' : 'runs'} from cut stencils, with transparent water-based inks, on ${papers ?? 'paper'}. Image ${image}.`,
  colophonEdition: ({ counts }: { counts: SayingText }) => ended(`The edition: ${counts}`),
  colophonPrinted: ({ printer, workshop, when }: { printer?: NameText; workshop?: NameText; when?: NameText }) =>
    `Printed${printer ? ` by ${printer}` : ''}${workshop ? ` at ${workshop}` : ''}${when ? `, ${when}` : ''}.`,
  colophonCancelled: 'The stencils were cancelled after printing.',
  colophonDestroyed: 'The stencils were destroyed after printing.',

  // How an edition is ended.
  cutThrough: 'Cut or punch a clear mark through every stencil, across the image, not at its edge.',
  pullCancellation: 'Pull one proof from each cancelled stencil, write “Cancellation proof” on it and keep it with the record.',
  writeCancelled: 'Write the date and “cancelled” in the record; throw the pieces away or keep them.',
  sayWornOut: 'If stencils wore out or tore, say that instead, and at which sheet.',

  // Labels.
  labelTitle: ({ title, year }: { title: NameText; year?: NumberText }) => `${title}${year ? `, ${year}` : ''}`,
  labelMedium: ({ image, paper }: { image: LengthText; paper: NameText }) => `Screenprint, ${image}, on ${paper}`,

  // The hand-out.
  intro: ({ runs, image, sheet, maker }: { runs: number; image: LengthText; sheet: LengthText; maker?: NameText }) =>
    `A print in ${many(runs, 'run', 'runs')}, ${image} on sheets of ${sheet}${maker ? `, after a job by ${maker}` : ''}.`,
  lookFirst: 'Look first',
  lookFirstText: 'Which colours lie over one another, and which colour comes out of no pot? Find the overlaps on the chart.',
  cutStencils: 'Cut the stencils',
  cutStencilsText: ({ n, materials }: { n: number; materials: ListText }) =>
    `${many(n, 'stencil', 'stencils')} from ${materials}. A window prints through its opening, a piece prints all around itself; one cut gives both.`,
  mixInks: 'Mix the inks',
  mixInksText: ({ inks }: { inks?: ListText }) =>
    `${inks ?? 'Inks still open'}. Weigh, stir, pull a drawdown on the same paper and judge it dry.`,
  setUpScreen: 'Set up screen and stops',
  meshIs: ({ mesh }: { mesh: SayingText }) => `Mesh ${mesh}.`,
  gapIs: ({ gap }: { gap: LengthText }) => `Gap between mesh and paper ${gap}.`,
  gapOfRun: ({ run, layer, gap }: { run: number; layer: NameText; gap: LengthText }) => `For run ${run} (${layer}) make the gap ${gap}.`,
  runTitle: ({ run, layer }: { run: number; layer: NameText }) => `Run ${run}: ${layer}`,
  runPot: ({ stencil, ink, recipe, amount }: { stencil: SayingText; ink?: SayingText; recipe?: SayingText; amount: SayingText }) =>
    `${capital(stencil)}; ${ink ?? 'ink open: choose'}${recipe ? `, ${recipe}` : ''}; ${amount}.`,
  amountOnCard: 'amount on the mixing card',
  newsprintFirst: ({ n }: { n: number }) => `${n} on newsprint first, then every sheet in the same order.`,
  sameOrder: 'Every sheet in the same order.',
  lookFor: ({ note }: { note: NameText }) => `Look for: ${note}`,
  dryFor: ({ time }: { time: TimeText }) => `Dry for ${time}.`,
  cleanUp: 'Clean up',
  cleanUpText:
    'Ink back into labelled jars; wash the screen before doing anything else with it. Film stencils are washed and hung up; paper ones are done.',
  chooseAndSign: 'Choose and sign',
  chooseAndSignText:
    'Lay all the sheets out, compare each with the one chosen as the measure (B.A.T.), number the good ones in pencil. The order of the numbers means nothing.',
  bringPaper: ({ n, paper }: { n: number; paper: NameText }) => `${n === 0 ? 'sheets' : many(n, 'sheet', 'sheets')}: ${paper}`,
  bringNewsprint: ({ n }: { n: number }) => `${many(n, 'sheet', 'sheets')} of newsprint, to set up with`,
  bringMaterial: ({ material }: { material: SayingText }) => `stencil material: ${material}`,
  bringInk: ({ ink }: { ink: SayingText }) => `ink: ${ink}`,
  bringBase: 'transparent base, scales, jars with lids, labels',
  bringKnife: 'knife with fresh blades, steel rule, cutting mat',
  bringScreen: 'screen, squeegee, tape, stops, risers',
  bringPencil: 'pencil, apron, gloves, rags',

  // The blank one.
  myPrint: 'My print',
  yourName: 'Name',
  imageSize: 'Size of the image',
  paperAndSheets: 'Paper and number of sheets',
  meshHead: 'Mesh',
  gapHead: 'Gap',
  dateHead: 'Date',
  runHead: 'Run',
  stencilHead: 'Stencil: window or piece',
  potHead: 'Ink and base, parts',
  gramsHead: 'Grams',
  sheetsIn: 'Sheets in',
  sheetsGood: 'Sheets good',
  whatISaw: 'What I saw',
};
