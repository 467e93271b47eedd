import type { LengthText, ListText, MassText, NameText, SayingText } from '../../text.ts';
import { many } from '../grammar.ts';

/** What to buy, and how it is said on the list. */
export const buying = {
  title: 'To buy',
  haveItFirst: 'have it before the first day',
  papers: 'Papers',
  inks: 'Inks and bases',
  stencils: 'For the stencils',
  press: 'At the press',

  paper: ({ paper, size }: { paper: NameText; size: LengthText }) => `${paper}, ${size}`,
  sheets: ({ n }: { n: number }) => many(n, 'sheet', 'sheets'),
  parents: ({ n, size }: { n: number; size: LengthText }) => `${many(n, 'sheet', 'sheets')} of ${size}`,
  fromEach: ({ each, n }: { each: number; n: number }) => `${each} out of each: ${n} wanted`,
  cutToSize: 'cut to size',
  printedAlready: 'the earlier prints themselves',
  parentTooSmall: ({ size }: { size: LengthText }) => `a parent sheet of ${size} is too small`,

  grams: ({ mass }: { mass: MassText }) => mass,
  forRuns: ({ n, runs }: { n: number; runs: ListText }) => (n === 1 ? `for run ${runs}` : `for runs ${runs}`),
  retarder: 'Retarder',
  openInk: 'Ink still open',
  notKnown: 'not known yet',

  material: ({ material, thickness }: { material: SayingText; thickness: LengthText }) => `${material}, ${thickness}`,
  stencilsOnThem: ({ n }: { n: number }) => `${many(n, 'stencil', 'stencils')} laid on ${n === 1 ? 'it' : 'them'}`,
  oneAStencil: 'one a stencil',

  tape: ({ width }: { width: LengthText }) => `Tape, ${width} wide`,
  tapeLength: ({ length }: { length: LengthText }) => length,
  tapeFor: ({ runs }: { runs: number }) => `for ${many(runs, 'run', 'runs')}`,
  card: ({ thickness }: { thickness: LengthText }) => `Card, ${thickness}`,
  board: ({ thickness }: { thickness: LengthText }) => `Board, ${thickness}`,
  pieces: ({ n }: { n: number }) => many(n, 'piece', 'pieces'),
  boardFor: 'risers under the frame',
  newsprint: 'Newsprint',
  offcuts: 'Offcuts of the good paper',
  eachRun: ({ n }: { n: number }) => `${n} each run`,
  eachRunKept: ({ n }: { n: number }) => `${n} each run; kept when the sheets are cut`,
  withoutSpoilage: 'Papers count the sheets that will be spoiled; inks count what stays in screen and pot.',
};
