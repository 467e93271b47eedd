import type { ListText, NameText } from '../../text.ts';
import { many } from '../grammar.ts';

/** Questions a printmaker asks. */
export const asks = {
  // Which paper, which layer
  noPaperRead: 'The job has no paper that was read.',
  noSuchPaper: ({ paper }: { paper: NameText }) => `The job has no paper “${paper}” that was read.`,
  noSuchGround: ({ n, paper }: { n: number; paper: NameText }) => `“${paper}” has no ground ${n}.`,
  groundsAre: ({ n }: { n: number }) => many(n, 'It has one ground: 1.', `Its grounds are numbered 1 to ${n}, the broadest first.`),
  paperNotPrinted: 'Grounds are the colours of a sheet that carries an earlier print, with its picture.',
  belowWhat: 'What lies below is asked for, and no run is named.',
  nameTheRun: 'Name the run that prints the colour.',
  readPaper: 'Read a paper first.',
  noSuchLayer: ({ layer }: { layer: NameText }) => `The job has no layer “${layer}”.`,
  addLayer: 'Add a layer first.',
  useOneOf: ({ all }: { all: ListText }) => `Use one of: ${all}.`,

  // An open layer
  openNoColour: 'Its ink is not decided yet, so there is no colour its pot should have.',
  openNothingInPot: 'Its ink is not decided yet, so its pot holds nothing.',
  openNothingToMix: 'Its ink is not decided yet, so there is nothing to mix.',
  chooseInk: 'Choose an ink first.',
  nothingToOrder: 'An order needs at least two layers whose ink is decided.',
  chooseInks: 'Choose inks for the layers first.',

  // Where
  theRecipe: 'the recipe',
  drawdownNo: ({ n }: { n: number }) => `drawdown ${n}`,
  earlierPrint: 'the earlier print',

  // The studio's shelf
  noSuchLot: ({ lot }: { lot: NameText }) => `The shelf has no lot “${lot}” of this ink.`,
  noSuchInk: ({ ink }: { ink: NameText }) => `The job has no ink “${ink}”.`,
  giveInkId: 'Write the id of one of its inks.',
  noJars: 'No jar has anything left in it.',
  sayWhatIsLeft: 'Say of a mix or an ink how many grams are left in its jar.',
  noSuchStarter: ({ ink }: { ink: NameText }) => `The starter shelf has no ink “${ink}”.`,
  mixStays: 'A mix is no lot of its own; it stays in the job.',
  partsOnShelf: 'The inks it is mixed from are on the shelf.',

  // A photograph of the print
  printNotFound: 'No sheet was found in the photograph.',
  layPrintCorners: 'Lay a corner on each corner of the print, clockwise, beginning with its top left.',
  printCornersCrossed: 'The four corners span no sheet.',
  printOnPrinted: 'Colours on a sheet that is printed already change from place to place; none is read from the photograph.',
  lookOnly: 'Look at it beside the proof.',

  // A drawdown sheet
  nothingDrawnDown: 'Every box of the sheet still looks like bare paper.',
  drawDown: 'Draw the ink down in the boxes, let it dry, and photograph it again.',
};
