import type { LengthText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';
import { many } from '../grammar.ts';

/** A picture into stencils and inks. */
export const separate = {
  // What is being done.
  lookingAtPicture: 'looking at the picture',
  lookingForInks: 'looking for inks and their order',
  choosingInks: 'choosing inks and their order',
  cutting: 'cutting stencils and looking for bridges',
  comparing: 'comparing with flat inks',

  // Where it is.
  printedLayer: ({ n }: { n: number }) => `layer ${n} already printed`,

  // What a run prints: its name in the job.
  keyRun: 'Key',
  lightGround: 'Light ground',
  middleGround: 'Ground',
  darkGround: 'Dark ground',
  lightBackground: 'Background, light',
  middleBackground: 'Background, middle tones',
  darkBackground: 'Background, dark',
  highlights: 'Highlights',
  paleTones: 'Pale tones',
  lightTones: 'Light tones',
  middleTones: 'Middle tones',
  darkTones: 'Dark tones',
  shadows: 'Shadows',
  toneAt: ({ tone, place }: { tone: SayingText; place: SayingText }) => `${tone}, ${place}`,
  top: 'top',
  bottom: 'bottom',
  left: 'left',
  right: 'right',
  centre: 'centre',

  // How many layers.
  noLayers: ({ layers }: { layers: NumberText }) => `${layers} layers make no print.`,
  askForLayers: ({ most }: { most: number }) => `Ask for 1 to ${most}.`,
  tooManyLayers: ({ layers }: { layers: number }) => `${layers} layers are more than Laydown can plan on one sheet.`,
  tooManyLayersOver: ({ layers, printed }: { layers: number; printed: number }) =>
    `${layers} layers, ${printed} of them already printed, are more than Laydown can plan on one sheet.`,
  askForFewerOver: ({ most }: { most: number }) => `Ask for fewer: ${most} at most, with those already printed.`,
  oddPairs: ({ layers }: { layers: number }) =>
    `${many(layers, 'layer does', 'layers do')} not make pairs: each cut gives a window and a piece.`,
  askForEven: ({ more, fewer }: { more: number; fewer: number }) => `Ask for ${fewer} or ${more} layers, or for single cuts.`,
  askForTwo: 'Ask for 2 layers, or for single cuts.',
  tonesNotPaired: 'Tones that lie one inside the other can’t be window and piece of one cut.',
  keyNotPaired: 'A key layer can’t be half of a cut pair.',
  singleCuts: 'Ask for single cuts, or for the picture another way.',
  keyAlone: 'With one layer there is nothing for a key to be laid on.',
  moreForKey: 'Ask for two layers or more, or go without a key.',
  moreWishesThanLayers: ({ wishes, layers }: { wishes: number; layers: number }) =>
    `${many(wishes, 'layer is', 'layers are')} described, but only ${layers} asked for.`,
  moreLayersOrFewerWishes: 'Ask for more layers, or drop some of those described.',

  // Size, picture, paper, register.
  sizeImpossible: ({ size }: { size: LengthText }) => `Laydown cannot plan an image of ${size}.`,
  giveSize: ({ between }: { between: LengthText }) => `Give a width and a height of ${between}.`,
  pictureTooSmall: ({ width, height }: { width: number; height: number }) =>
    `The picture is ${width} × ${height} pixels: there is nothing in it to separate.`,
  giveLargerPicture: 'Give a picture some hundred pixels wide.',
  paperUnread: 'The colour of the paper is not known.',
  readPaper: 'Read the bare paper, or type its colour.',
  registerImpossible: ({ off }: { off: LengthText }) => `Laydown cannot plan with a register error of ${off}.`,
  giveRegister: ({ between, usual }: { between: LengthText; usual: LengthText }) => `Give ${between}; by hand it is ${usual}.`,
  importanceSize: 'What was marked as important does not fit the picture.',
  markAgain: 'Mark it again.',

  // The knife.
  budgetImpossible: ({ budget, value }: { budget: SayingText; value: NumberText }) => `${budget}: ${value} leaves nothing to cut.`,
  metres: 'Metres of cut',
  pieces: 'Parts to cut out',
  minutes: 'Minutes of cutting',
  leastWidth: 'Least width',
  aboveNought: 'Give a number above 0, or leave it out.',
  budgetExceeded: ({ over, parts, time }: { over: ShareText; parts: number; time: TimeText }) =>
    `These layers ask ${over} more of the knife than you allowed: ${many(parts, 'part', 'parts')} to cut out, ${time} in all.`,
  allowMore: 'Allow more, ask for fewer layers, or give a picture of larger shapes.',
  drawingLost: ({ x, y }: { x: LengthText; y: LengthText }) =>
    `What is drawn ${x} from the left and ${y} from the top is lost at this size.`,
  eyeLost: 'An eye is lost at this size.',
  eyesLost: 'The eyes are lost at this size.',
  mouthLost: 'The mouth is lost at this size.',
  dotLost: ({ x, y }: { x: LengthText; y: LengthText }) =>
    `The dot ${x} from the left and ${y} from the top, perhaps an eye, is lost at this size.`,
  dotsLost: ({ x, y }: { x: LengthText; y: LengthText }) =>
    `Dots, perhaps eyes, are lost at this size, the largest ${x} from the left and ${y} from the top.`,
  cropEnlargeOrAdd: ({ width }: { width: LengthText }) => `Crop closer, make the image ${width} wide, or add a run.`,
  layerNotNeeded: 'Nothing is left for this run to print: the picture, the knife and these inks do without it.',
  oneLayerLess: 'Ask for one layer less.',

  // Inks.
  shelfEmpty: 'There is no ink to choose from.',
  readDrawdown: 'Read at least one drawdown first.',
  tooManyInks: ({ n }: { n: number }) => `${n} inks are too many to choose from.`,
  chooseInks: ({ most }: { most: number }) => `Choose at most ${most} of them.`,
  inkTwice: 'Two inks have the same name.',
  renameOne: 'Rename one of them.',
  inkNotOnShelf: ({ ink }: { ink: NameText }) => `The ink “${ink}” is not among those to choose from.`,
  chooseShelfInk: 'Choose one that is, or leave the ink free.',
  strengthImpossible: ({ strength }: { strength: NumberText }) => `The strength ${strength} is no share of a pot.`,
  giveShare: 'Give a number above 0, up to 1.',
  strengthWithoutInk: 'A strength is given, but not of which ink.',
  nameInk: 'Name the ink, or leave the strength free too.',
  printedInkNotOnShelf: ({ ink }: { ink: NameText }) => `The ink it was printed with, “${ink}”, has no reading.`,
  addReading: 'Add its reading.',
  inksClear: 'None of the inks changes the paper: all are clear.',
  readColoured: 'Read drawdowns of coloured inks.',
  inksAlike: 'All the inks are the same: the print will be in tones of one colour.',
  addColours: 'Add inks of other colours if the picture needs them.',
};
