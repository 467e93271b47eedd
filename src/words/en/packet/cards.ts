import type { FilmText, LengthText, ListText, MassText, NameText, SayingText, ShareText } from '../../text.ts';
import { many } from '../grammar.ts';

/** Mixing cards, pot labels, the laydown, and the cards that stand at the press. */
export const cards = {
  // Mixing.
  mix: 'Mix',
  oneCardARun: 'one card for each run',
  stillOpen: ({ runs }: { runs: ListText }) => `Still open: ${runs}. The card follows when the ink is chosen.`,
  runLayer: ({ run, layer }: { run: number; layer: NameText }) => `run ${run}, ${layer}`,
  inkOfPot: ({ layer, share }: { layer: NameText; share: ShareText }) => `for “${layer}”: ink is ${share} of the pot by volume`,
  parts: 'parts by volume',
  weigh: 'weigh',
  weighed: 'weighed',
  together: 'together',
  mayNeed: ({ least, most }: { least: MassText; most: MassText }) => `You may need between ${least} and ${most}.`,
  retarderOnTop: ({ mass, share }: { mass: MassText; share: ShareText }) => `Retarder on top: ${mass} (${share}).`,
  noRetarder: ({ least, most }: { least: MassText; most: MassText }) =>
    `No retarder at this pace; if the ink dries in the mesh, ${least} to ${most}.`,
  neverMore: ({ most }: { most: MassText }) => `Never more than ${most}: the ink would not dry.`,
  aloneOn: ({ paper }: { paper: NameText }) => `alone on ${paper}`,
  alone: 'alone',
  drawdownHere: 'Drawdown of this pot, fully dry. Date, lot:',

  // Pot labels.
  potLabels: 'Pot labels',
  cutApart: 'cut apart',
  potOf: ({ title, run, layer }: { title: NameText; run: number; layer: NameText }) => `${title}, run ${run}: ${layer}`,
  part: ({ name, share }: { name: SayingText; share: ShareText }) => `${name} ${share}`,
  potHolds: ({ parts, mass }: { parts: ListText; mass: MassText }) => `${parts}. Mixed ${mass}.`,
  mixedOn: 'mixed on; lot; what is left',

  // The laydown.
  laydown: 'Laydown',
  readUpwards: 'read upwards: run 1 is printed first',
  prints: ({ side, share }: { side: SayingText; share: ShareText }) => `${side}, prints ${share} of the image`,

  // At the press.
  printLayer: ({ layer }: { layer: NameText }) => `Print: ${layer}`,
  runOf: ({ run, runs }: { run: number; runs: number }) => `run ${run} of ${runs}`,
  inPot: ({ mass, pulls }: { mass: MassText; pulls: number }) => `${mass} in the pot, ${many(pulls, 'pull', 'pulls')}`,
  chooseInk: ({ pulls }: { pulls: number }) => `choose the ink first; ${many(pulls, 'pull', 'pulls')}`,
  wetFilm: ({ film }: { film: FilmText }) => `Wet film about ${film}`,
  gap: ({ gap }: { gap: LengthText }) => `gap ${gap}`,
  ownGap: ({ gap, others }: { gap: LengthText; others: LengthText }) => `Gap for this run: ${gap} (others ${others})`,
  ownGapRisers: ({ gap, others, risers }: { gap: LengthText; others: LengthText; risers: SayingText }) =>
    `Gap for this run: ${gap} (others ${others}); ${risers}`,
  beforeBare: 'before: the bare sheet',
  before: 'before',
  afterUnknown: 'after: not known yet',
  after: 'after',
  fromFilm: 'film, as it prints',
  fromSqueegee: 'stencil, from the squeegee side',
  sheets: 'Sheets',
  tickCross: 'tick: printed    cross: spoiled',
  notes: 'Notes',
  setUp: 'Set up',
  newsprint: ({ n }: { n: number }) => `${n} newsprint`,
  newsprintOffcuts: ({ n, offcuts }: { n: number; offcuts: number }) => `${n} newsprint, ${many(offcuts, 'offcut', 'offcuts')}`,
  newsprintLetter: 'n',
  offcutLetter: 'o',
  restInRecord: ({ row, n }: { row: SayingText; n: number }) => `${row}, ${n} in the record`,
  morePapers: 'More papers than this card holds: tick them in the record.',

  // What to look for.
  stopsTried: 'Stops fixed, three sheets tried.',
  marksMatch: 'Marks match on the first three sheets.',
  underlayersDry: 'Under-layers dry to the touch.',
  loosePiecesDown: ({ n }: { n: number }) => `${many(n, 'loose piece', 'loose pieces')} down, none shifted.`,
  bridgesFlat: 'Bridges flat, no ink under them.',
  largeFlat: 'Large flat: even pressure. Mesh marks: less gap.',
  edgesSharp: 'Edges soft? Less ink, or more gap.',
  thickEdges: 'Thick ink along edges: dry it longer.',
  noBrightGap: 'No bright gap outside the image.',
};
