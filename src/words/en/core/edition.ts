import type { NameText, NumberText, SayingText, ShareText } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Sheets to start, numbers for the pencil, what was wrong with a sheet, cautions. */
export const edition = {
  // Sheets to start.
  sizeImpossible: ({ target }: { target: NumberText }) => `An edition of ${target} sheets cannot be planned.`,
  sayHowManyGood: 'Say how many good sheets you want, at least 1.',
  certaintyImpossible: ({ certainty }: { certainty: ShareText }) => `A certainty of ${certainty} cannot be had.`,
  giveCertainty: ({ usual }: { usual: ShareText }) => `Choose one between 0 and 100 %, such as ${usual}.`,
  spoilageTooHigh: ({ survive }: { survive: ShareText }) =>
    `At this spoilage only ${survive} of the sheets come through: no stack is large enough.`,
  fewerLayersOrPractise: 'Print fewer layers, or practise on newsprint until you lose fewer sheets.',
  noStackThisSure: 'No stack is large enough for this certainty.',
  lessCertainty: 'Ask for less certainty, or lose fewer sheets.',
  spoilageImpossible: ({ spoilage }: { spoilage: ShareText }) => `Sheets cannot be planned with a spoilage of ${spoilage}.`,
  giveSpoilage: ({ usual }: { usual: ShareText }) => `Give less than 100 %: ${usual} is five sheets in a hundred.`,
  proofsImpossible: ({ proofs }: { proofs: NumberText }) => `You cannot hold back ${proofs} proofs.`,
  artistsShareImpossible: ({ share }: { share: ShareText }) => `A/P cannot be ${share} of the edition.`,
  noughtOrMore: 'Give nought or more.',
  noPaper: 'No paper is named, so no sheets can be planned.',
  addPaper: 'Add a paper, with its size and how many sheets you have.',
  setUpImpossible: ({ sheets }: { sheets: NumberText }) => `You cannot set up with ${sheets} sheets.`,
  wholeNumber: 'Give a whole number, nought or more.',
  noneAtHand: ({ paper }: { paper: NameText }) => `You have no sheets of ${paper} yet.`,
  getSheets: ({ n }: { n: number }) => `Get ${many(n, 'sheet', 'sheets')}: enough for the edition, as surely as you asked.`,
  moreProofsThanSheets: ({ proofs, sheets, paper }: { proofs: number; sheets: number; paper: NameText }) =>
    `${many(proofs, 'proof is', 'proofs are')} to be held back, but there ${which(sheets, 'is', 'are')} only ${many(sheets, 'sheet', 'sheets')} of ${paper}.`,
  fewerProofsOr: ({ start }: { start: number }) => `Hold back fewer proofs, or start with ${many(start, 'sheet', 'sheets')}.`,
  morePrintsThanSheets: ({ wanted, sheets, paper }: { wanted: number; sheets: number; paper: NameText }) =>
    `You want ${many(wanted, 'good sheet', 'good sheets')} out of ${sheets} of ${paper}.`,
  sheetsShort: ({
    sheets,
    paper,
    wanted,
    reached,
    asked,
  }: {
    sheets: number;
    paper: NameText;
    wanted: number;
    reached: number;
    asked: number;
  }) =>
    `${many(sheets, 'sheet', 'sheets')} of ${paper} will give the ${wanted} good ones you want in ${reached} of 100 cases, not in ${asked}.`,
  startWithOrSmaller: ({ start }: { start: number }) => `Start with ${many(start, 'sheet', 'sheets')}, or make the edition smaller.`,
  noSetUpSheet: 'No sheet to set up with: every run risks its first good sheet.',
  setUpOffcut: '1 offcut of the good paper for each run.',
  setUpSheets: ({ newsprint }: { newsprint: number }) => `${newsprint} of newsprint, then 1 offcut of the good paper, for each run.`,

  // Numbers for the pencil.
  sheetTwice: 'A sheet is in the list twice.',
  nameSheets: 'Give every sheet a name of its own, in pencil on its back.',
  noGoodSheet: 'No sheet came through every run without a fault that rejects it.',
  lookAgain: 'Look through the sheets again, or print more.',
  spareSheets: ({ n }: { n: number }) => `${many(n, 'good sheet is', 'good sheets are')} left over.`,
  largerOrDestroy: 'Before signing, declare the edition larger or destroy them. After signing, the number stands.',
  fewerThanWanted: ({ numbered, target }: { numbered: number; target: number }) => `Only ${numbered} of ${target} sheets can be numbered.`,
  writeSmaller: 'Write the smaller number under all of them.',

  // What the pencil writes.
  markEdition: ({ number, of }: { number: number; of: number }) => `${number}/${of}`,
  markVaried: ({ number, of }: { number: number; of: number }) => `E.V. ${number}/${of}`,
  markArtists: 'A/P',
  markBat: 'B.A.T.',
  markPrinters: 'P/P',
  markHorsCommerce: 'H.C.',
  markTrial: 'Colour trial',
  markCancellation: 'Cancellation proof',
  /** In Roman numerals. */
  markOneOf: ({ mark, number, of }: { mark: SayingText; number: NameText; of: NameText }) => `${mark} ${number}/${of}`,
  markState: ({ step }: { step: NameText }) => `State ${step}`,
  markStateOneOf: ({ step, number, of }: { step: NameText; number: number; of: number }) => `State ${step}, ${number}/${of}`,

  // What was wrong with a sheet.
  offRegister: 'off register',
  smeared: 'smeared',
  blot: 'blot',
  thinInk: 'thin ink',
  creased: 'creased',
  fingerprint: 'fingerprint',
  spoiled: 'spoiled',

  // Cautions, where the risk is.
  cautionBlades:
    'Fresh blade, capped when put down. Cut away from the hand that holds, along a steel rule. Old blades in a closed tin. A cut: press something clean on it; deep or numb, see a doctor. Pupils cut only as their age and local rules allow, with someone beside them.',
  cautionInkLabel:
    'Read the label and the safety sheet first; they decide. Preservatives in water-based ink can irritate skin: wear gloves and wash splashes off. Don’t eat at the table; use no cup that anyone drinks from.',
  cautionPigment:
    'Don’t swallow pigments or breathe their dust; stir dry powder only under extraction and with the mask its label asks for. A mark of conformity says that hazards were assessed and labelled, not that there are none.',
  cautionRetarder: 'Gloves for retarder and glycerin mixes; weigh them, never pour by eye. A spill is slippery: wipe it up at once.',
  cautionLift: 'It takes two to lift a large frame. Prop the raised screen safely: a falling frame breaks fingers.',
  cautionHinge: 'Hands out before the screen comes down; nobody reaches over the board while someone else pulls.',
  cautionClean:
    'Scrape and wipe the ink off before rinsing; local rules say what may go down the drain. Cleaning agents as their label says: gloves on, window open, and never mix two of them.',
  cautionSpray:
    'Goggles on when you spray a screen out: ink and cleaner splash back. In the eye: rinse at once with plenty of water, then do as the label says.',
  cautionFans:
    'Fans, lamps and their leads stay dry: away from sink and hose, never touched with wet hands, and laid where nobody trips. Local rules for wet rooms decide.',
  cautionSolvent: 'Water first. If it must be a solvent: ventilation, no flame, rags in a closed metal bin.',
  cautionEmulsion:
    'Light-sensitive emulsion and strippers: gloves and eye protection, as the label says. Ultraviolet lamps: shield eyes and skin.',
  cautionDust: 'Talc and paper dust: wipe with a damp cloth instead of blowing. Keep the ways out of the room clear of drying sheets.',
  cautionStore: 'Every jar closed and labelled with what is in it and when it was mixed; never use food jars that still carry their label.',
};
