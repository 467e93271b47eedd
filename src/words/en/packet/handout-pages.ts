import type { NameText, SayingText, TimeText } from '../../text.ts';
import { capital, many } from '../grammar.ts';

/** The hand-out for a class, and the blank one. */
export const handoutPages = {
  handOut: 'Hand-out',
  onePrint: 'One print, many colours',
  filmsMake: ({ films, colours }: { films: number; colours: number }) =>
    `${many(films, 'transparent film', 'transparent films')} of ink ${films === 1 ? 'makes' : 'make'} ${many(colours, 'colour', 'colours')}, the bare paper counted: each overlap is a colour that no pot holds. Stencils are cut by hand; each layer is one stencil and one ink.`,
  bring: 'Bring',
  bringThis: ({ thing }: { thing: SayingText }) => capital(thing),
  findOnChart: 'Find on the chart',
  questions:
    'Which colour lies where three inks meet? Which is the darkest, and which run made it so? Which would change if runs 1 and 2 changed places?',
  stepByStep: 'Hand-out: step by step',
  printSteps: ({ first, last }: { first: number; last: number }) => `Steps ${first} to ${last}: print run by run (next pages)`,
  printStep: 'Print (next page)',
  runByRun: 'Hand-out: run by run',
  windowIs: ({ material }: { material: SayingText }) => `${material}, window: ink goes through the hole.`,
  pieceIs: ({ material }: { material: SayingText }) => `${material}, piece: the shape masks, ink goes all around it.`,
  aboutToCut: ({ time }: { time: TimeText }) => `About ${time} to cut.`,
  recipe: ({ recipe }: { recipe: SayingText }) => `${recipe}.`,
  chooseInk: 'Choose an ink.',
  newsprintFirst: ({ n }: { n: number }) => `${n} on newsprint, then every sheet in the same order.`,
  lookFor: ({ note }: { note: NameText }) => `Look for: ${note}`,
  dryFor: ({ time }: { time: TimeText }) => `Dry for ${time}.`,

  // The blank one.
  myOwn: 'My own laydown',
  firstAtBottom: 'first run at the bottom',
  shape: 'shape; window or piece',
  inkAndStrength: 'ink and strength',
  stencil: 'stencil',
  sheetAfter: 'sheet after it',
};
