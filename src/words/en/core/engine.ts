import type { LengthText, NameText } from '../../text.ts';

/** What is being done while long work goes on, and what the page's worker says itself. */
export const engine = {
  // Long work
  drawingProofs: 'drawing the proofs',

  // Not there yet
  notPlanned: 'The job is not planned yet.',
  stencilNotPlanned: 'This stencil is not planned yet.',
  stockNotPlanned: 'This sheet of stock is not planned yet.',
  waitAndTry: 'Wait a moment and try again.',
  noJob: 'There is no job on the bench.',
  openOne: 'Open one first.',
  sheetNotDrawn: ({ sheet }: { sheet: number }) => `There is no sheet ${sheet} among those drawn by lot.`,
  chooseSheet: ({ last }: { last: number }) => `Choose one from 0 to ${last}.`,

  // Stencils
  noOpening: 'There is no opening to bridge at this place.',
  pointIntoOpening: 'Point into an opening, between two parts of the paper.',
  doesNotHold: ({ at }: { at: LengthText }) =>
    `This stencil does not hold together, so its cut sheet is not written. The first place to mend is at ${at}.`,
  mendPlaces: 'Mend the places marked on the stencil first.',

  // Pictures
  pictureUnread: 'This browser cannot read the picture.',
  saveAsPicture: 'Save it as JPEG or PNG and choose it again.',
  pictureTooLarge: ({ megapixels }: { megapixels: number }) => `The picture has ${megapixels} megapixels.`,
  saveSmaller: 'Save it smaller; 12 megapixels are plenty.',
  noRoom: 'This browser has no room for the picture.',
  saveSmallerAgain: 'Save it smaller and choose it again.',
  photographGone: 'The photograph is no longer at hand.',
  chooseAgain: 'Choose it again.',

  // When something fails
  partMissing: ({ part }: { part: NameText }) => `A part of Laydown is missing (${part}).`,
  loadAgain: 'Load the page again.',
  workerLost: 'The part of Laydown that works things out stopped and was started again.',
  pictureWorkerLost: 'The part of Laydown that works on pictures stopped and was started again.',
  tookTooLong: 'This took longer than any file should, so it was stopped.',
  planStopped: 'You stopped the working out: pictures and figures are old or missing.',
  planGoOn: 'Go on with it, or undo the change.',
  tryAgain: 'Try again. If it stops once more, save the job and load the page again.',
  wentWrong: 'Something went wrong that Laydown did not foresee.',
  saveAndReload: ({ trace }: { trace: NameText }) => `Save the job and load the page again. For whoever looks into it: ${trace}`,
};
