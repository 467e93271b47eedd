import { grammarOf } from '../../grammar.ts';
import type { DeltaText, ListText, MassText, NameText, NumberText, SayingText, ShareText } from '../../text.ts';

const { which } = grammarOf('en-GB');

/** Recipes, pots, orders, shelves. */
export const recipes = {
  // Weighing a batch
  sharesNotWhole: ({ whole }: { whole: ShareText }) => `The shares add up to ${whole} of the pot.`,
  fillWithBase: 'Add base until they make 100\u00a0%.',
  batchWeighsNothing: 'A batch needs an amount above 0.',
  giveAmount: 'Give the amount to mix.',
  partNeedsDensity: 'Every part needs a density above 0 and a share of 0 or more.',
  usualDensity: 'Water weighs 1\u00a0g/mL, most water-based inks 1.05 to 1.15.',
  roundingCosts: ({ step, off }: { step: MassText; off: DeltaText }) => `Rounding to ${step} costs ΔE00 ${off}.`,
  finerScale: 'Mix more at once, use a finer scale, or let the strongest ink down with base first and weigh that.',
  partBelowScale: ({ part, step }: { part: SayingText; step: MassText }) => `${part} weighs less than the scale’s step of ${step}.`,
  letDownFirst: 'Let it down with base first and weigh that.',
  strengthOutOfReach: ({ from, to, addition }: { from: ShareText; to: ShareText; addition: ShareText }) =>
    `An addition of strength ${addition} can’t bring a pot from ${from} to ${to}.`,
  strongerAddition: 'The addition must be stronger than the strength wanted.',
  baseCannot: ({ from, to }: { from: ShareText; to: ShareText }) => `Base can’t bring a pot from strength ${from} to ${to}.`,
  baseOnlyWeakens: 'Base only weakens, and never to nothing.',

  // Additions
  tooMuchRetarder: ({ share, ceiling }: { share: ShareText; ceiling: ShareText }) =>
    `${share} of retarder is above the ceiling of ${ceiling}; such ink may never dry.`,
  retarderWithin: ({ from, to }: { from: ShareText; to: ShareText }) => `Stay between ${from} and ${to}, and follow the label.`,
  muchRetarder: ({ share, from, to }: { share: ShareText; from: ShareText; to: ShareText }) =>
    `${share} of retarder is more than the usual ${from} to ${to}.`,
  driesSlowly: 'Use so much only in very dry air, and expect slow drying. The label decides. Wear gloves with retarder.',
  manyAdditions: ({ share }: { share: ShareText }) => `Additions make up ${share} of the pot.`,
  binderThin: 'The binder gets thin: the film may rub off (common practice).',

  // A recipe for a colour, and why it comes no nearer
  noPots: 'There is no pot to mix from.',
  addInks: 'Add the inks at hand.',
  groundDarker: ({ ground, wanted }: { ground: NumberText; wanted: NumberText }) =>
    `What lies there already is darker (L ${ground}) than the colour wanted (L ${wanted}), and a clear ink only darkens. Print it before the dark layers, or use an ink that covers.`,
  showsThrough: ({ by }: { by: NumberText }) => `Every recipe of that hue comes out darker by L ${by}: what lies below shows through.`,
  tooWeak: ({ by }: { by: NumberText }) =>
    `Even without any base the ink is too weak by L ${by}: print it twice, or through a coarser mesh.`,
  tooDull: ({ by, hue }: { by: NumberText; hue: NumberText }) =>
    `The pots at hand are duller in that hue, by a chroma of ${by}; it takes a cleaner ink of hue ${hue}°.`,
  tooColourful: ({ by }: { by: NumberText }) =>
    `The result stays more colourful than wanted, by a chroma of ${by}: what lies below, or the only pot that fits, brings it in.`,
  atItsLimit: ({ part, limit }: { part: NameText; limit: ShareText }) => `${part} is at its limit of ${limit}.`,
  tooLittleToWeigh: 'There is too little of it in the pot to weigh. Let some of it down first, one to ten, and weigh that.',
  hueBetween: ({ by }: { by: NumberText }) => `The hue lies between the pots at hand; the nearest is off by ${by}° of hue.`,

  // The same colour again
  recipeHolds: ({ off }: { off: DeltaText }) => `The old recipe still holds: ΔE00 ${off} with the new lots.`,
  recipeCorrected: ({ unchanged, corrected }: { unchanged: DeltaText; corrected: DeltaText }) =>
    `Unchanged, the old recipe would be off by ΔE00 ${unchanged}; corrected, it is off by ${corrected}.`,
  recipeCorrectedLamp: ({ unchanged, corrected, lamp }: { unchanged: DeltaText; corrected: DeltaText; lamp: DeltaText }) =>
    `Unchanged, the old recipe would be off by ΔE00 ${unchanged}; corrected, it is off by ${corrected}, and by ${lamp} in lamp light.`,

  // Correcting a pot
  noDrawdown: 'There is no drawdown of this pot to judge it by.',
  pullOne: 'Pull one, let it dry and read it; or say what is wrong with the colour.',
  notOnShelf: ({ ink }: { ink: NameText }) => `“${ink}” is in the pot but not on the shelf.`,
  addReading: 'Add its reading to the shelf.',
  potEmpty: 'The pot is empty.',
  listContents: 'List what was weighed into it.',
  potStronger: ({ by }: { by: ShareText }) => `This pot works ${by} stronger than its recipe says.`,
  potWeaker: ({ by }: { by: ShareText }) => `This pot works ${by} weaker than its recipe says.`,
  drawdownMayDiffer:
    'The drawdown may be thicker or thinner than usual, or something was weighed wrongly. The additions take it into account.',
  nothingReaches: ({ off }: { off: DeltaText }) => `No addition from the shelf brings this pot nearer than ΔE00 ${off}; mix a fresh one.`,
  potWouldGrow: ({ grown, need, added }: { grown: MassText; need: MassText; added: MassText }) =>
    `The pot would grow to ${grown} where ${need} are needed: a fresh pot takes less ink than the correction (${added}).`,

  // Orders
  tryingStacks: 'trying every stack once',
  tryingOrders: 'trying every order',
  tooManyOrders: ({ n }: { n: number }) => `${n} layers make too many orders to try.`,
  tryFewer: ({ most }: { most: number }) => `Fix the place of some, or try at most ${most}.`,
  noOrder: 'No order obeys all the rules of what must come before what.',
  dropRule: 'Take one of the rules away.',
  orderChangesNothing: 'By their readings these inks are clear through and through, so the order changes no colour.',
  orderByDrying: 'Choose the order for drying and register; read the inks over black as well to see what they cover.',
  losesWanted: ({ by }: { by: DeltaText }) => `the wanted overlaps are ΔE00 ${by} further off than in the order that meets them best`,
  losesColours: ({ n }: { n: number }) => `${n} fewer ${which(n, 'overlap', 'overlaps')} can be told apart`,
  losesRange: ({ by }: { by: NumberText }) => `lightness spans ${by} less`,
  losesChroma: ({ by }: { by: NumberText }) => `overlaps are duller, by a chroma of ${by} on average`,
  losesSteadiness: ({ by }: { by: DeltaText }) => `colours move more when a film comes out heavier, by ΔE00 ${by}`,

  // The studio's shelf, as a file
  shelfTooLarge: 'The file is too large for an ink shelf.',
  checkFile: 'Check that it is the right file.',
  shelfBroken: 'The file is cut short or no ink shelf.',
  takeEarlierCopy: 'Take an earlier copy; this one was left as it is.',
  shelfNewer: ({ version, ours }: { version: number; ours: number }) =>
    `The shelf was written by a newer Laydown (version ${version}; this one reads ${ours}).`,
  updateLaydown: 'Update Laydown; the file was left as it is.',
  twice: ({ id }: { id: NameText }) => `“${id}” stands there twice.`,
  renameOne: 'Rename one of them.',
  potHoldsUnknown: ({ pot, ink }: { pot: NameText; ink: NameText }) => `The pot ${pot} holds “${ink}”, which is not on the shelf.`,
  addOrTakeOut: 'Add the ink, or take it out of the record.',

  // Where in that file
  inFile: ({ file, steps }: { file: SayingText; steps: ListText }) => `${file}: ${steps}`,
  inkNo: ({ n, name }: { n: number; name?: NameText }) => numbered('ink', n, name),
  paperNo: ({ n, name }: { n: number; name?: NameText }) => numbered('paper', n, name),
  potNo: ({ n, name }: { n: number; name?: NameText }) => numbered('pot', n, name),
  lotNo: ({ n, name }: { n: number; name?: NameText }) => numbered('lot', n, name),
  stepNo: ({ n }: { n: number }) => `step ${n}`,
  drawdownNo: ({ n }: { n: number }) => `drawdown ${n}`,
  partNo: ({ n }: { n: number }) => `part ${n}`,
  additionNo: ({ n }: { n: number }) => `addition ${n}`,
  field: ({ field }: { field: NameText }) => `“${field}”`,

  // What is wrong with a field of it

  // Shelves put together, and their lots
  theShelf: ({ id }: { id: NameText }) => `ink shelf, “${id}”`,
  renamed: ({ id, now }: { id: NameText; now: NameText }) =>
    `Both shelves have “${id}”, and they are different things; the added one is now “${now}”.`,
  joinByHand: 'Join them by hand if they are the same.',
  clearBase: 'Clear base: nothing is absorbed or scattered.',
  lotReading: ({ ink, lot, reading }: { ink: NameText; lot: NameText; reading: SayingText }) => `${ink}, lot ${lot}, ${reading}`,
  bareGround: 'bare ground',
  inkOnGround: 'ink on its ground',
  bareWhite: 'bare white',
  inkOnWhite: 'ink on white',
  bareBlack: 'bare black',
  inkOnBlack: 'ink on black',
};

function numbered(what: string, n: number, name: string | undefined): string {
  return name === undefined ? `${what} ${n}` : `${what} ${n} (${name})`;
}
