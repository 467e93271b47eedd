import type { DeltaText, FilmText, LengthText, ListText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';
import { many } from '../grammar.ts';

/** The day, the record, numbers for the pencil, labels, what to keep, and the chart of overlaps. */
export const recordPages = {
  // The day.
  theDay: 'The day',
  work: ({ days, time }: { days: number; time: TimeText }) => `${many(days, 'day', 'days')}, ${time} of work`,
  workForHands: ({ days, time, hands }: { days: number; time: TimeText; hands: number }) =>
    `${many(days, 'day', 'days')}, ${time} of work for ${hands}`,
  dayNumber: ({ n }: { n: number }) => `Day ${n}`,
  dayLabel: ({ n }: { n: number }) => `day ${n}`,
  blackPulling: 'Black: pulling.',
  greyRacking: 'Dark grey: racking. In a box: whose hands; 1 pulls.',
  greyWhite: ({ dry, most, wet }: { dry: TimeText; most: TimeText; wet: number }) =>
    `Grey: cutting, mixing, setting up, cleaning. White: waiting for ink (flats dry in ${dry}, the thickest run in ${most}) or for the screen to dry. At most ${many(wet, 'sheet', 'sheets')} wet at once.`,

  // The record.
  editionRecord: 'Edition record',
  plannedPaper: ({
    paper,
    edition,
    proofs,
    start,
    met,
  }: {
    paper: NameText;
    edition: number;
    proofs?: ListText;
    start: number;
    met: number;
  }) =>
    `${paper}: ${edition} in the edition${proofs === undefined ? '' : ` and ${proofs}`}, from ${many(start, 'sheet', 'sheets')} (met in ${met} cases of 100)`,
  proofsOf: ({ n, mark }: { n: number; mark: SayingText }) => `${n} ${mark}`,
  surplus: ({ where }: { where: ListText }) =>
    `More good sheets are spare (about ${where}): no number, not signed. Declare the edition larger before you sign, or destroy them.`,
  surplusOn: ({ n, paper }: { n: number; paper: NameText }) => `${n} on ${paper}`,
  wantedOnly: ({ n }: { n: number }) => `${n} wanted.`,
  variedEdition: 'Several papers, one varied edition: E.V. 1/n. Proofs in Roman numerals.',
  subEditions: 'Each paper is an edition of its own: 1/n. Proofs (A/P, P/P, H.C.) in Roman numerals.',
  sheet: 'Sheet',
  whatIsWrong: 'What is wrong',
  number: 'Number',
  signed: 'Signed',
  whereItWent: 'Where it went',
  rejected: 'rejected',
  spare: 'spare',
  setUpSheet: 'set-up',

  // Numbers for the pencil.
  forThePencil: 'Numbers for the pencil',
  softPencil:
    'Soft pencil, under the image: number left, title in the middle, name and year right. Find the sheet by the name on its back.',
  goodUnnumbered: 'Good, without a number',
  setUpWith: 'Set up with',
  rejectedMark: 'Rejected: tear or mark across the image',
  faultIn: ({ sheet, run, fault }: { sheet: NameText; run: number; fault: SayingText }) => `${sheet} (run ${run}: ${fault})`,
  faulty: ({ sheet, fault }: { sheet: NameText; fault: SayingText }) => `${sheet} (${fault})`,
  colophon: 'Colophon',
  toEndEdition: 'To end the edition',

  // Labels.
  labels: 'Labels',
  forSleeves: 'for sleeves and frames, not the sheet',

  // About this print.
  aboutThisPrint: 'About this print',
  toKeep: 'to keep with the edition',
  title: 'title',
  artist: 'artist',
  year: 'year',
  workshopPrinter: 'workshop, printer',
  image: 'image',
  medium: 'medium',
  screenprint: ({ runs }: { runs: number }) => `screenprint, hand-cut stencils, ${many(runs, 'run', 'runs')}`,
  printedFromTo: 'printed from … to …',
  fromTo: ({ from, to }: { from: NameText; to: NameText }) => `${from} to ${to}`,
  mesh: 'mesh',
  runMesh: ({ run, mesh }: { run: number; mesh: NameText }) => `run ${run}: ${mesh}`,
  meshIs: ({ count, thread }: { count: NumberText; thread: FilmText }) => `${count} / cm, thread ${thread}`,
  papersAndNumbers: 'Papers and numbers',
  edition: 'edition',
  allVaried: 'all papers, one varied edition',
  runsInOrder: 'Runs, first to last',
  paperOfSize: ({ letter, paper, size }: { letter: NameText; paper: NameText; size: LengthText }) => `${letter}  ${paper}, ${size}`,
  runLine: ({ run, layer, ink, stencil }: { run: number; layer: NameText; ink: SayingText; stencil: SayingText }) =>
    `${run}  ${layer}: ${ink}; ${stencil}`,
  statedByArtist: 'Stated by the artist',
  signedHow: ({ how }: { how: NameText }) => `Signed: ${how}.`,
  signedByHand: 'All sheets are signed by the artist’s own hand.',
  stencilsKept: 'Stencils: kept after printing.',
  stencilsCancelled: 'Stencils: cancelled after printing.',
  stencilsDestroyed: 'Stencils: destroyed after printing.',
  stencilsWornOut: 'Stencils: worn out in printing.',
  stencilsStrikeOut: 'Stencils: kept / cancelled / destroyed / worn out (strike out what does not apply).',
  otherEditions: ({ which }: { which: NameText }) => `Other editions: ${which}`,
  noOtherEdition: 'No other edition of this image exists. If one does: how many, when, how it differs.',
  proofsCounted: 'Proofs outside the edition are counted above.',
  posthumous: 'Printed after the artist’s death.',
  inLifetime: 'Printed in the artist’s lifetime, by the artist or under the artist’s eyes.',
  signature: 'signature',
  dateAndPlace: 'date and place',
  lawsDiffer: 'Laws on what must be disclosed differ from place to place; this sheet is a record, not advice.',

  // Overlaps.
  overlaps: 'Overlaps',
  notedOf: ({ paper, note }: { paper: NameText; note: SayingText }) => `${paper}: ${note}`,
  partingHead: 'Alike under one lamp, not under another',
  overlapsOn: ({ paper }: { paper: NameText }) => `Overlaps on ${paper}`,
  overlapsOnGrounds: ({ paper }: { paper: NameText }) => `On what ${paper} carries`,
  ground: ({ n, share }: { n: number; share: ShareText }) => `Ground ${n}, ${share}`,
  otherLight: 'In other light',
  otherLightIs: 'as eyes used to each lamp see it',
  changesMost: ({ what, lamp, deltaE }: { what: SayingText; lamp: SayingText; deltaE: DeltaText }) =>
    `${lamp}: ${what} changes most, by ΔE00 ${deltaE}.`,
  coverArea: ({ n }: { n: number }) => `${n} that cover area`,
  howToReadIt: 'How to read it',
  layerOpen: ({ run, layer }: { run: number; layer: NameText }) => `${run}  ${layer} (open)`,
  readingTheChart:
    'Bars: which inks lie there, first run at the bottom. Share of the image. Lab (D50). Under each swatch: colours it may come out as. Last line: ΔE00 that nine prints in ten stay within. “Richer”: more colourful than a screen shows.',
  rampsOfTone: 'Ramps: the topmost tone there, from bare (left) to solid (right); the figures hold for the solid.',
  sheetAsItIs: 'the sheet as it is',
  barePaper: 'bare paper',
  under: ({ share }: { share: ShareText }) => `< ${share}`,
  measured: ({ band }: { band: DeltaText }) => `measured, ±${band}`,
  band: ({ how, band }: { how: SayingText; band: DeltaText }) => `${how}, ±${band}`,
  richer: ({ band }: { band: SayingText }) => `${band}, richer`,
  worthReading: ({ paper }: { paper: NameText }) => `Worth reading first on ${paper}`,
  onceWithFirstSheets: 'with the first sheets',
  worthSteps1: 'Cut one strip a run, as drawn, from the material of its stencil.',
  worthSteps2:
    'Print the strips one over the other beside the image or on a spare sheet: same corner, same paper, same order, each run dry.',
  worthSteps3: 'Read the squares when they are dry and type them in under Inks, Learn. All foreseen colours follow.',
  worthNow: 'mean band now',
  worthThen: ({ n }: { n: number }) => (n === 1 ? 'with the first' : `with the first ${n}`),
  worthAt: ({ at }: { at: LengthText }) => `on the print at ${at} from the top left corner`,
  stripOfRun: ({ run, layer }: { run: number; layer: NameText }) => `${run}  ${layer}`,
  stripOpen: 'White squares are cut out; the corner mark is where all strips meet.',
  stripSquare: ({ size }: { size: LengthText }) => `squares of ${size}, true size`,
  sure: 'sure',
  shadeOff: 'near',
  clearlyOff: 'rough',
  guess: 'a guess',
};
