import type { DeltaText, LengthText, ListText, NameText, NumberText, SayingText, ShareText } from '../../text.ts';
import { many } from '../grammar.ts';

/** Inks from drawdowns, mixing, bands, learning, the drawdown sheet. */
export const ink = {
  // How far an ink can be trusted.
  trustCovers:
    'Read over one ground, yet lighter than it in places: this ink covers as well as tints, and only a drawdown over white and black shows how much.',
  trustOneGround:
    'Read over one ground and taken as fully transparent. Good for clear inks; over dark layers a milky ink will look lighter than foreseen.',
  trustContradicts: 'The two readings contradict each other; see the problems.',
  trustHides: 'Hides its ground: the colour is sure, but how it thins out is a guess. A drawdown let down with base would show more.',
  trustTwoGrounds: 'Read over white and over black: tinting and covering are told apart, so overlaps with dark layers can be foreseen.',
  trustLadderContradicts: 'The steps of the ladder contradict each other; see the problems.',
  trustOneStep: 'A single step: strength is taken to rise straight with the share of ink.',
  trustStraight: ({ within }: { within: ShareText }) => `Strength rises straight with the share of ink (within ${within}).`,
  trustBent: ({ power, most }: { power: NumberText; most: ShareText }) =>
    `Strength rises with the share of ink to the power of ${power}; single steps depart from that by up to ${most}.`,
  trustClear: 'Taken as perfectly clear.',
  trustPublished: 'Not yours: taken over from published values. Its bands are wide until you read a drawdown of your own.',
  trustByEye: 'Matched by eye, not read: its bands are wide until an instrument or a photograph has read a drawdown.',
  inksPublished: ({ inks, n }: { inks: ListText; n: number }) =>
    `${inks} ${n === 1 ? 'is a starter ink' : 'are starter inks'} from published values, not yours.`,
  inksByEye: ({ inks, n }: { inks: ListText; n: number }) => `${inks} ${n === 1 ? 'was' : 'were'} matched by eye, not read.`,
  readOwn: 'Good enough to begin with; its colours may come out well off. Make a drawdown of your own and read it.',
  guessWithin: ({ off, sigma }: { off: DeltaText; sigma: DeltaText }) =>
    `The guess before was off by ΔE00 ${off}: within the ± ${sigma} it was given.`,
  guessNear: ({ off, sigma }: { off: DeltaText; sigma: DeltaText }) =>
    `The guess before was off by ΔE00 ${off}: more than the ± ${sigma} it was given, but no more than one guess in ten is.`,
  guessFar: ({ off, sigma }: { off: DeltaText; sigma: DeltaText }) =>
    `The guess before was off by ΔE00 ${off}, far more than the ± ${sigma} it was given: was it the same ink, as thick, in the same light?`,
  guessesKept: ({ within, n }: { within: number; n: number }) =>
    `${within} of ${n} guesses lay within the doubt they were given; two in three should.`,
  trustMix: 'Worked out from the inks it is mixed from.',

  // Drawdowns that cannot be.
  lighterThanGround: ({ by }: { by: ShareText }) =>
    `In part of the spectrum the drawdown is lighter than its ground, by up to ${by} of white.`,
  readBothGrounds:
    'A transparent ink only takes light away. Either this ink scatters, or the two readings are swapped or from different sheets. Read it over white and over black.',
  darkAsGloss: 'Part of the drawdown reads as dark as the gloss that was taken off.',
  lowerGloss: 'Lower the gloss of this surface, or read a thinner drawdown.',
  groundsAlike: 'The white and the black ground are too much alike to tell covering from tinting.',
  useDrawdownCard: 'Use a drawdown card with a bright white and a deep black, or swap the two if they were mixed up.',
  darkerOverWhite: ({ bands, all }: { bands: number; all: number }) =>
    `The drawdown is darker over white than over black in ${bands} of ${all} bands, which no film can be.`,
  groundsSwapped: 'The two readings are probably swapped, or the film is not equally thick on both grounds.',
  ladderEmpty: 'No step of the ladder has ink in it.',
  giveAStep: 'Give at least one step with a share between 0 and 1.',
  ladderOutOfOrder: ({ step, below }: { step: ShareText; below: ShareText }) =>
    `The step of ${step} reads weaker than the one of ${below}.`,
  stepsSwapped: 'Two drawdowns are probably swapped, or one film is much thinner.',

  // Mixing and overlaps.
  noSuchPart: ({ part }: { part: NumberText }) => `A part of ${part} can’t be mixed.`,
  partsFromNought: 'Give each part a number of 0 or more.',
  potOverfull: ({ whole }: { whole: ShareText }) => `The parts add up to ${whole} of the pot.`,
  divideBySum: 'Divide each part by their sum.',
  noParts: 'A mix needs at least one part, and none below 0.',
  enterParts: 'Enter the parts again.',
  transparentBase: 'Transparent base',
  tooManyLayers: ({ n }: { n: number }) => `${many(n, 'layer makes', 'layers make')} more overlaps than can be told apart.`,
  fewerLayers: ({ most }: { most: number }) => `Print at most ${most} layers on one sheet.`,

  // One pot let down with different bases.
  baseStaysClear: ({ off }: { off: DeltaText }) => `ΔE00 ${off} from the colour wanted; stays clear over black.`,
  baseVeils: ({ off, lightness }: { off: DeltaText; lightness: NumberText }) =>
    `ΔE00 ${off} from the colour wanted; veils black a little (L ${lightness}).`,
  baseCovers: ({ off, lightness }: { off: DeltaText; lightness: NumberText }) =>
    `ΔE00 ${off} from the colour wanted; covers black (L ${lightness}).`,

  // Where a band comes from.
  bandSamples: ({ n }: { n: number }) =>
    `Worked out from ${many(n, 'calculated print', 'calculated prints')}, with readings, spectra behind colours, films, gloss and how films lie on one another varied by chance within their doubt.`,
  bandOfSpectra: 'All readings are spectra from an instrument.',
  bandOfColours: 'Some readings are colours without a spectrum.',
  bandOfPhotographs: 'Some colours come from photographs, from published values or from the eye.',
  bandFromTrials:
    'Nine prints in ten fall within the band, by trials on published overprints, not a measurement of this studio; sheets vary besides from pull to pull.',
  bandOverPicture:
    'Colours and bands are those on the unprinted parts of the sheet; over the earlier print they are others, and less sure.',
  almostSurely: 'almost surely',
  likely: 'likely',
  asLikelyAsNot: 'as likely as not',
  unlikely: 'unlikely',
  hardly: 'hardly',

  // What readings of proofs taught.
  learnt: ({ n, before, after }: { n: number; before: DeltaText; after: DeltaText }) =>
    `${many(n, 'reading', 'readings')}: foreseen colours were off by ΔE00 ${before} on average, and are now off by ${after}.`,
  liesHeavier: ({ layer, by }: { layer: NameText; by: ShareText }) => `${layer} lies ${by} heavier than planned.`,
  liesLighter: ({ layer, by }: { layer: NameText; by: ShareText }) => `${layer} lies ${by} lighter than planned.`,
  nothingLearnt: 'The readings contradict each other, so nothing was changed.',
  unlikeTheOthers: ({ off }: { off: DeltaText }) => `This reading is off by ΔE00 ${off} from what all the others say together.`,
  moreUnlike: ({ n }: { n: number }) => `${many(n, 'more reading lies', 'more readings lie')} far from what all the others say together.`,
  readThemAgain: 'Look at the worst first, which are named. If most are off, the inks or the order are others than the job says.',
  readItAgain: 'Check which layers lie there, and read it again. It counted for little.',

  // The drawdown sheet.
  overWhite: ({ strength }: { strength: SayingText }) => `${strength} over white`,
  overBlack: ({ strength }: { strength: SayingText }) => `${strength} over black`,
  bareBlack: 'bare black',
  strengthOf: ({ share }: { share: ShareText }) => share,
  drawdownSheets: 'Drawdown sheets',
  trueSizeLine: ({ long }: { long: LengthText }) => `This line is ${long} long when printed at true size.`,
  greyCardHere: 'Lay the grey card here. Photograph in open shade, all four corner marks in the picture, no flash.',
  sheetStrengths: ({ most }: { most: number }) => `A sheet takes 1 to ${most} strengths between 0 and 1.`,
  secondSheet: 'Use a second sheet for more.',
};
