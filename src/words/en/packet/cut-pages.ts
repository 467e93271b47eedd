import type { AreaText, DeltaText, LengthText, ListText, NameText, SayingText, ShareText, TimeText } from '../../text.ts';
import { many } from '../grammar.ts';

/** Stencils at true size, what each is made of, and how they lie on stock. */
export const cutPages = {
  // The drawing.
  drawing: ({ layer, run, side }: { layer: NameText; run: number; side: SayingText }) => `${layer} — run ${run}, ${side}`,
  greyDropsOut: 'Printed side faces the mesh. Grey drops out, white stays.',
  island: 'island',
  topToMesh: 'top — this face to the mesh',
  topHinge: 'top — this face to the mesh — hinge on this side',
  topHingeBottom: 'top — this face to the mesh — hinge at the bottom',
  topHingeLeft: 'top — this face to the mesh — hinge on the left',
  topHingeRight: 'top — this face to the mesh — hinge on the right',

  // Facts.
  cutCards: 'Cut',
  oneCardAStencil: 'one card for each stencil',
  sideOfThick: ({ side, material, thickness }: { side: SayingText; material: SayingText; thickness: LengthText }) =>
    `${side}, ${material}, ${thickness}`,
  bridgesAre: ({ what }: { what: SayingText }) => `Bridges: ${what}.`,
  droppedAre: ({ what }: { what: SayingText }) => `Islands given up: ${what}.`,
  drawnOnPage: ({ page }: { page: number }) => `True size: page ${page}.`,
  drawnOnPages: ({ first, last }: { first: number; last: number }) => `True size: pages ${first} to ${last}.`,
  material: 'Material',
  materialThick: ({ material, thickness }: { material: SayingText; thickness: LengthText }) => `${material}, ${thickness}`,
  yourChoice: 'your choice',
  sheetToBegin: 'Sheet to start with',
  knifeAndLift: ({ n }: { n: number }) => `Knife; ${many(n, 'cut-out', 'cut-outs')} to lift`,
  knifeWork: ({ length, corners }: { length: LengthText; corners: number }) => `${length}, ${many(corners, 'corner', 'corners')}`,
  timeAt: ({ pace }: { pace: LengthText }) => `Time, at ${pace} a minute`,
  timeAndHow: ({ time, how }: { time: TimeText; how: SayingText }) => `${time}, ${how}`,
  easy: 'easy',
  steady: 'steady hand',
  fine: 'fine',
  trying: 'trying',
  hopeless: 'hopeless by hand',
  bridgesKept: 'Bridges, to be kept',
  islandsIfDropped: ({ n }: { n: number }): string => (n === 1 ? 'Island, if it were given up' : 'Islands, if they were given up'),
  islandsDropped: 'Islands given up',
  loosePieces: 'Loose pieces',
  numberEach: ({ n }: { n: number }) => `${n}: number each`,
  shows: ({ n, area, deltaE }: { n: number; area: AreaText; deltaE: DeltaText }) => `${n} (${area}, ΔE00 ${deltaE})`,
  keptFree: ({ what, largest }: { what: SayingText; largest: LengthText }) =>
    `Drawn, but kept free of ink so that it holds (white, dotted): ${what}, the largest at ${largest}. Look before you cut.`,
  printsMore: ({ what, largest }: { what: SayingText; largest: LengthText }) =>
    `Not drawn, but prints so that it can be cut (dark): ${what}, the largest at ${largest}. Look before you cut.`,
  cutThisTimes: ({ times }: { times: SayingText }) => `Cut this one ${times}.`,
  proven: 'Proven: the sheet holds together and nothing is too narrow for the knife.',
  provenWidths: ({ strip, opening }: { strip: LengthText; opening: LengthText }) =>
    `Proven: the sheet holds together; no strip is under ${strip}, no opening under ${opening}.`,
  notProven: ({ n }: { n: number }) => `Not proven: ${many(n, 'weak place', 'weak places')}, ringed on the picture.`,

  // What each sheet is for.
  use: ({ run, side, sheets }: { run: number; side: SayingText; sheets: SayingText }) => `Run ${run}: ${side} of ${sheets}.`,
  useSpent: ({ run, side, sheets }: { run: number; side: SayingText; sheets: SayingText }) =>
    `Run ${run}: ${side} of ${sheets}, then spent.`,
  useWashed: ({ run, side, sheets, again }: { run: number; side: SayingText; sheets: SayingText; again: number }) =>
    `Run ${run}: ${side} of ${sheets}; then wash it and keep it for run ${again}.`,
  keepPiece: ({ run }: { run: number }) => `Keep the piece that drops out flat for run ${run}.`,
  keepSurround: ({ run }: { run: number }) => `Keep the sheet around it flat for run ${run}.`,
  noBorder: 'It has no border of its own: the mesh is taped on the image’s edge.',
  oneSheet: ({ n }: { n: number }) => `sheet ${n}`,
  twoSheets: ({ first, last }: { first: number; last: number }) => `sheets ${first} and ${last}`,
  manySheets: ({ first, last }: { first: number; last: number }) => `sheets ${first} to ${last}, one after the other`,

  // Steps.
  layOnMaterial: 'Lay the true-size sheets on the material, printed side up. Cut through both.',
  innerFirst: 'Inner shapes first, the longest outline last. Turn the sheet, not the wrist.',
  stopAtRings: 'Ringed corners: stop just there, or the paper tears on.',
  stopAtBridges: 'Stop at every bridge (dashed, with its number): it stays.',
  greyOutWhiteStays: 'Grey drops out. White stays.',
  keepWhatDrops: ({ run }: { run: number }) => `Keep what drops out: run ${run} prints with it.`,
  keepSheet: ({ run }: { run: number }) => `Keep the sheet: run ${run} prints with it.`,
  numberPieces: 'Number the loose pieces and keep them flat, in order.',
  punch: ({ n, across }: { n: number; across: LengthText }) =>
    `Punch ${many(n, 'circle', 'circles')} of ${across} (small crosses), before you cut.`,
  writeRun: 'Write run and “mesh side” on the top edge.',

  // Parts to join.
  sheetsToJoin: ({ n }: { n: number }) => `${many(n, 'sheet', 'sheets')} to join.`,
  howToJoin: 'Where a drawing takes several: at the dashed line cut one of two neighbours, lay ring on ring, tape.',
  rowsFirst: 'Join the rows first.',
  edgeNotDrawn: 'Where the sheet’s outer edge is not drawn, rule it with the image in the middle.',

  // From the side.
  fromTheSide: 'Seen from the side',
  mesh: 'mesh',
  stencil: 'stencil',
  sheetToPrint: 'sheet to print',
  readsAsItPrints: 'The side you read faces the mesh. Seen from above it reads as it prints; on the tipped-up screen it reads backwards.',

  // On stock.
  stockSheets: 'Stock',
  labelled: ({ label, value }: { label: SayingText; value: SayingText }) => `${label}: ${value}`,
  leftOverIs: ({ share }: { share: ShareText }) => `Left over: ${share}`,
  stock: ({ material }: { material: SayingText }) => `Stock: ${material}`,
  sheet: 'Sheet',
  cutLikeThis: 'Cut like this',
  leftOver: 'Left over',
  grain: 'Grain',
  allOneWay: 'all one way',
  anyWay: 'does not matter',
  machineTakes: 'Machine takes',
  thickBar:
    'Thick bar: top of the stencil. Grey drops out. Shapes first, the lines between the stencils last. A coated or waxed face lies up: it faces the mesh and meets the ink.',
  moreAsDrawn: ({ n }: { n: number }) => `and ${n} more, as drawn`,
  placedRun: ({ layer, run }: { layer: NameText; run: number }) => `${layer}: run ${run}`,
  placedRuns: ({ layer, runs }: { layer: NameText; runs: ListText }) => `${layer}: runs ${runs}`,
  upright: 'upright',
  turned: 'turned a quarter, its top to the right',
  keepPieces: ({ way, n }: { way: SayingText; n: number }) =>
    `${way}; keep ${n === 1 ? 'the piece that drops' : `the ${n} pieces that drop`} out`,

  // Stock in parts.
  pagesToJoin: ({ n }: { n: number }) => `${n} pages to join. At the dashed line cut one of two neighbours, lay ring on ring, tape.`,
  oneHoldsAll: 'One page holds it all.',
  stockEdge:
    'Dotted: the edge of the stock. Lay the joined drawing in its top left corner and cut through both, shapes first, the lines between the stencils last.',
};
