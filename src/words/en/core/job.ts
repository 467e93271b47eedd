import { many, which } from '../grammar.ts';
import type { LengthText, ListText, NameText, NumberText, SayingText, ShareText } from '../../text.ts';

/** The job as a document and as a file, and what in it doesn't fit together. */
export const job = {
  // Files.
  noJobFile: ({ file }: { file: NameText }) => `There is no ${file} here, so this is not a job.`,
  chooseJobFolder: ({ file }: { file: NameText }) => `Choose the folder that holds ${file}, or a .laydown file.`,
  notAJobFile: 'This cannot be opened as a .laydown file: it is cut short or something else.',
  chooseAnotherCopy: 'Choose another copy; nothing was changed.',
  damagedFile: 'The .laydown file is damaged: what is in it no longer fits its own check sums.',
  lockedFile: 'The .laydown file is locked with a password.',
  unlockFile: 'Unlock it with the program that locked it, and choose the open copy.',
  changedFile: ({ file }: { file: NameText }) => `Another program changed the .laydown file: ${file} is not the one that Laydown put in.`,
  unpackFirst: 'If that was meant, unpack it and open the folder; else choose another copy.',
  unpacksTooLarge: 'It unpacks to more than 1 GB.',
  takePicturesOut: 'Take the large pictures out of the job and try again.',
  notAJob: 'This is not a job: it holds no fields.',
  chooseWritten: ({ file }: { file: NameText }) => `Choose the ${file} that Laydown wrote.`,
  notJson: 'The file stops making sense here: it is no longer JSON.',
  mendOrGoBack: 'It may have been cut short or edited by hand: mend that place, or go back to an earlier copy.',

  // Fields that are not known.
  unknownField: ({ field }: { field: NameText }) => `“${field}” is not known here. It is kept, and changes nothing.`,
  didYouMean: ({ meant }: { meant: NameText }) => `Did you mean ${meant}?`,
  keptAsItIs: 'If it is a note of your own, leave it.',

  // Done is done.
  stencilCut: ({ layer }: { layer: NameText }) => `The stencil of ${layer} is cut.`,
  potMixed: ({ layer }: { layer: NameText }) => `The pot of ${layer} is mixed.`,
  runPulled: ({ layer }: { layer: NameText }) => `The run of ${layer} is pulled.`,
  wouldTouch: ({ what }: { what: ListText }) => `${what} This change would no longer agree with what is done.`,
  doneWithoutLayer: ({ layer }: { layer: NameText }) => `Something is marked as done for “${layer}”, which is not in the job.`,
  takeMarkAway: 'Take the mark away.',
  cutTouched: ({ layer }: { layer: NameText }) => `The stencil of ${layer} is cut, and the job has changed since: it asks for another one.`,
  cutInstead: 'Undo the change; or take the mark away and cut it anew.',
  mixedTouched: ({ layer }: { layer: NameText }) => `The pot of ${layer} is mixed, and the job has changed since: it asks for another mix.`,
  mixedInstead: 'Undo the change; or take the mark away and mix it anew.',
  pulledTouched: ({ layer }: { layer: NameText }) => `The run of ${layer} is pulled, and the job has changed since: what is printed stays.`,
  pulledInstead: 'Undo the change; or go on, and trust the print more than the forecast.',

  // Format.
  withoutVersion: 'The job does not say which version of Laydown’s format it is written in.',
  addVersion: ({ version }: { version: number }) => `If you wrote it by hand, add "schemaVersion": ${version}.`,
  newer: ({ version, most }: { version: number; most: number }) =>
    `A newer Laydown wrote this job (format ${version}; this one reads up to ${most}).`,
  openWithNewer: 'Open it with that newer version, or fetch the newest Laydown. Nothing was changed.',
  versionGap: ({ from, to }: { from: number; to: number }) => `There is no way from format ${from} to ${to}.`,
  openWithOlder: 'Open and save the job with an older Laydown first.',

  // Fields that cannot be read.
  missing: 'This is missing.',
  missingOneOf: ({ allowed }: { allowed: ListText }) => `This is missing. It can be ${allowed}.`,
  wanted: ({ what }: { what: SayingText }) => `This should be ${what}.`,
  wantedNot: ({ what, found }: { what: SayingText; found: NameText }) => `This should be ${what}, not “${found}”.`,
  aText: 'a text',
  aNumber: 'a number',
  aWholeNumber: 'a whole number',
  yesOrNo: 'true or false',
  aList: 'a list',
  aGroup: 'a group of fields',
  somethingElse: 'something else',
  oneOf: ({ allowed }: { allowed: ListText }) => `This can only be ${allowed}.`,
  oneOfNot: ({ allowed, found }: { allowed: ListText; found: NameText }) => `This can be ${allowed}, but not “${found}”.`,
  atLeast: ({ least, is }: { least: NumberText | LengthText; is: NumberText | LengthText }) =>
    `This must be at least ${least}, and it is ${is}.`,
  moreThan: ({ least, is }: { least: NumberText | LengthText; is: NumberText | LengthText }) =>
    `This must be more than ${least}, and it is ${is}.`,
  atMost: ({ most, is }: { most: NumberText | LengthText; is: NumberText | LengthText }) =>
    `This must be at most ${most}, and it is ${is}.`,
  lessThan: ({ most, is }: { most: NumberText | LengthText; is: NumberText | LengthText }) =>
    `This must be less than ${most}, and it is ${is}.`,
  shareAbove1: ({ is }: { is: NumberText }) => `This is a share of one whole, and it is ${is}.`,
  writeShare: ({ percent, written }: { percent: ShareText; written: NameText }) =>
    `Write shares as a number from 0 to 1: ${percent} is written ${written}.`,
  empty: 'This must not be empty.',
  tooLong: ({ most }: { most: number }) => `This is too long: ${many(most, 'letter is', 'letters are')} the most.`,
  tooFew: ({ least }: { least: number }) => `There are too few here: at least ${least} ${which(least, 'is', 'are')} needed.`,
  tooMany: ({ most }: { most: number }) => `There are too many here: ${most} at most.`,
  exactly: ({ wanted }: { wanted: number }) => `There must be exactly ${wanted} here.`,
  shortName: 'A short name is made of small letters, digits, points, - and _, and begins with a letter or a digit.',
  colourWritten: 'A colour is written as # and six digits or letters up to f, like #d04020.',
  plainLine: 'There are characters in this that can’t be seen and that other programs stumble over (control characters, line breaks).',
  plainNote: 'There are control characters in this, which can’t be seen and which other programs stumble over.',
  tooDeep: ({ most }: { most: number }) => `Groups lie in groups more than ${most} deep here.`,
  takeOut: 'Take it out; Laydown has no such field.',
  tooManyCopies: ({ copies, most }: { copies: number; most: number }) =>
    `The cut asks for ${copies} copies of its forms; ${most} are the most that it takes.`,
  fewerCopies: 'Repeat fewer of them, or draw the whole pattern as one form.',
  fileInside: 'This must be a file inside the job’s folder.',
  notUnderstood: 'This cannot be read as it stands.',
  writeIn: 'Write it in; docs/job-schema.json lists every field.',
  correctKind: 'Correct it; docs/job-schema.json lists every field.',
  useAllowed: 'Use one of the words it allows.',
  useLarger: 'Use a larger value.',
  useSmaller: 'Use a smaller value.',
  shorten: 'Shorten it.',
  addOrRemove: 'Add what is missing, or take out what is too much.',
  correct: 'Correct it in the job.',

  // What does not fit together.
  tooManyLayers: ({ layers, most }: { layers: number; most: number }) =>
    `There are ${layers} layers; Laydown prints at most ${most} in one run of a sheet.`,
  leaveSomeOut: 'Leave some out, or plan the rest as a second job over the printed sheets.',
  idTwice: ({ id, other }: { id: NameText; other: SayingText }) => `“${id}” is already the short name of ${other}.`,
  ownId: 'Give each a short name of its own.',
  noSuchForm: ({ cut, form }: { cut: NameText; form: NameText }) => `The cut “${cut}” uses the form “${form}”, which the job doesn’t have.`,
  noSuchMaterial: ({ cut, material }: { cut: NameText; material: NameText }) =>
    `The cut “${cut}” is to be cut from “${material}”, which is not among the materials.`,
  noSuchCut: ({ layer, cut }: { layer: NameText; cut: NameText }) =>
    `The layer “${layer}” uses the cut “${cut}”, which the job doesn’t have.`,
  noSuchInk: ({ layer, ink }: { layer: NameText; ink: NameText }) =>
    `The layer “${layer}” is printed with “${ink}”, an ink the job doesn’t have.`,
  basesShare: ({ layer, together }: { layer: NameText; together: ShareText }) =>
    `The bases of the layer “${layer}” come to ${together} of what is no ink.`,
  coveragesCount: ({ n, layers }: { n: number; layers: number }) =>
    `This reading names ${many(n, 'coverage', 'coverages')} for ${many(layers, 'layer', 'layers')}.`,
  oneCoverageEach: 'Give one coverage for each of its layers, or none where all lay solid.',
  toneWithoutPicture: ({ layer }: { layer: NameText }) => `“${layer}” carries tone, but no picture says which.`,
  givePicture: 'Give it a grey picture in the job’s folder. Until then it is planned as half a tone all over.',
  basesMakeOne: 'Let their shares come to 100 %. Until then they are taken in proportion.',
  stencilSheetSmall: ({ cut, sheet, image }: { cut: NameText; sheet: LengthText; image: LengthText }) =>
    `The sheet of the cut “${cut}” (${sheet}) is too small for the image (${image}).`,
  stencilSheetLarger: ({ least }: { least: LengthText }) => `Take ${least} at least.`,
  noSuchBase: ({ layer, base }: { layer: NameText; base: NameText }) =>
    `The layer “${layer}” is let down with “${base}”, which the job doesn’t have.`,
  noSuchLayer: ({ layer }: { layer: NameText }) => `This names the layer “${layer}”, which the job doesn’t have.`,
  noSuchPaper: ({ paper }: { paper: NameText }) => `This names the paper “${paper}”, which the job doesn’t have.`,
  noSuchPart: ({ mix, ink }: { mix: NameText; ink: NameText }) => `The mix “${mix}” takes “${ink}”, an ink the job doesn’t have.`,
  useOneOf: ({ ids }: { ids: ListText }) => `Use one of these: ${ids}.`,
  useOneOrOpen: ({ ids }: { ids: ListText }) => `Use one of these: ${ids}; or leave it open.`,
  useOneOrNone: ({ ids }: { ids: ListText }) => `Use one of these: ${ids}; or leave it out.`,
  addOne: 'The job has none yet: add one first.',
  leaveOpen: 'The job has no ink yet: leave it open.',
  leaveOut: 'The job has no base yet: leave it out.',
  addOrTakeOut: 'Add that ink, or take the part out.',
  mixOfItself: ({ mix }: { mix: NameText }) => `The mix “${mix}” ends up containing itself.`,
  breakCircle: 'Take one of the mixes out of the circle.',
  fileMissing: ({ file }: { file: NameText }) => `The file “${file}” is not in the job’s folder.`,
  putBack: 'Put the file back there, or choose another.',
  formWithoutShape: ({ form }: { form: NameText }) =>
    `The form “${form}” needs a drawing, an outline or a made shape, and only one of them.`,
  giveShape: 'Give it one.',
  noColoursNamed: ({ form }: { form: NameText }) => `The form “${form}” is read by its colours, but none is named.`,
  nameColours: 'Name colours of the drawing, or read it otherwise.',
  imageOffSheet: ({ image, over, paper, sheet }: { image: LengthText; over: LengthText; paper: NameText; sheet: LengthText }) =>
    `The image (${image}) hangs ${over} over the edge of “${paper}” (${sheet}).`,
  smallerImage: 'Make the image smaller, move it on the sheet, or take a larger sheet.',
  noPaper: 'The job has no paper yet.',
  addPaper: 'Add at least one, with a reading of its colour.',
  noLayers: 'The job has no layers yet.',
  addLayer: 'Add a layer: a cut, a side of it, and an ink.',
  layerOpen: ({ layer }: { layer: NameText }) => `The layer “${layer}” is open: it has no ink yet, so the proofs leave it out.`,
  chooseInk: 'Choose an ink when you are ready.',
};
