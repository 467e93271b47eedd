import type { AreaText, DeltaText, LengthText, ListText, NameText, SayingText } from '../../text.ts';
import { many } from '../grammar.ts';

/** What the Plan says where rooms meet. */
export const plan = {
  // What is being made.
  makingForms: 'forms',
  makingStencils: 'stencils and bridges',
  makingColours: 'colours on every paper',
  makingRegister: 'register and edition',

  // Forms and cuts.
  formEmpty: 'There is no shape in it.',
  chooseShape: 'Choose a drawing with a filled or stroked shape.',
  lettersMissing: ({ letters }: { letters: ListText }) => `The font has no ${letters}.`,
  otherLetters: 'Leave them out or write them otherwise.',
  tooManyPoints: ({ most }: { most: number }) => `All copies together have more than ${most} million corners.`,
  simplerForms: 'Take simpler outlines, or repeat fewer of them.',
  nothingToCut: 'There is nothing to cut.',
  cutOutsideImage: 'All of it lies outside the image.',
  putFormInside: 'Put a form on it, inside the image.',

  // Islands.
  islandsDropped: ({ n, area, shows }: { n: number; area: AreaText; shows: DeltaText }) =>
    `${many(n, 'island is', 'islands are')} given up: ink prints over ${area} more than drawn, which shows as ΔE00 ${shows}.`,
  keepIslands: 'If that shows too much, bridge them or lay them as loose pieces.',
  islandsCheaperDropped: (v: { islandsShow: DeltaText; islands: AreaText; bridgesShow: DeltaText; bridges: AreaText }) =>
    `It would show less without its islands (ΔE00 ${v.islandsShow} over ${v.islands}) than with its bridges (ΔE00 ${v.bridgesShow} over ${v.bridges}).`,
  dropIslands: 'Drop the islands if the drawing can do without them.',

  // How often a cut must be cut, and why.
  oneCut: 'One cut is enough.',
  oneCutForBoth: 'One cut serves both: keep the piece that drops out.',
  spreadCutAlone: 'A layer that is spread needs a cut of its own.',
  bridgesDiffer: 'These layers want different bridges, so each is cut on its own.',
  bridgesInPiece: 'Bridges stay across what would drop out, so the piece is cut on its own.',
  pieceOnBridges: 'The piece hangs on bridges, so it is cut on its own.',
  kerfOffPiece: 'The machine takes a little off what drops out, so the piece is cut on its own.',
  wornBefore: ({ material, lasts, pulls }: { material: SayingText; lasts: number; pulls: number }) =>
    `${material} lasts about ${many(lasts, 'pull', 'pulls')}; this side prints ${pulls}.`,
  notWashable: ({ material, runs }: { material: SayingText; runs: number }) =>
    `${material} can’t be washed: it is spent after one run, and ${many(runs, 'run needs', 'runs need')} the same side.`,

  // Stock.
  largerThanStock: ({ layer, size, stock }: { layer: NameText; size: LengthText; stock: LengthText }) =>
    `The stencil “${layer}” (${size}) is larger than the stock (${stock}).`,
  largerStockOrTape: 'Use larger stock, leave less around the image, or tape two sheets together outside the image.',
  manyCopies: ({ most }: { most: number }) =>
    `Some stencils must be cut more than ${most} times; only the first ${most} are laid on stock.`,
  lastingMaterial: 'Choose a material that lasts longer.',
};
