/** Questions that a printmaker asks of a job, beyond its Plan. Command line and Workbench ask the same ones. */
export { colourEdges, cutsByColour, drawingChoices, type ByColour, type ColourEdges, type DrawingChoice } from './drawings.ts';
export { inkBench, layerOf, paperOf, potsOf, type InkBench } from './bench.ts';
export { askOrders, type OrdersAnswer, type OrdersAsk } from './ink/orders.ts';
export {
  askBatch,
  askLeftovers,
  askReach,
  askRecipe,
  type LeftoversAnswer,
  type LeftoversQuestion,
  type BatchQuestion,
  type Reach,
  type RecipeQuestion,
} from './ink/recipes.ts';
export { askAgain, askComplaint, askPot, wantedOfPot, type AgainQuestion, type PotQuestion, type PotRoundAsked } from './ink/pot.ts';
export { jobOfSeparation, pictureRequest, separateRequest, type SeparateQuestion } from './separate.ts';
export { askInks, askWanted, labOfReading, srgbOfLab, type InkSheet, type WantedNow } from './ink/inks.ts';
export { inkFromSheet, inkFromShelf, jobReading, lotOf, shelfWithJob } from './ink/shelf.ts';
export { colourInPicture, guessesOf, inkByEye, starterInks, withGuess, type GuessOf } from './ink/by-eye.ts';
export { photographOf } from './photo.ts';
export { partsOfLayer } from './ink/pot.ts';
export { changedOverlaps, differencesOf, movedRuns, type ChangedOverlap, type Difference } from './differences.ts';
export { lampName, movesMost, pictureUnderLamp, sayParting, sayPlace, underLamp } from './ink/lamps.ts';
export type { PrintedOn, PrintedOnAsk } from './ink/printed-on.ts';
export { jarsOfShelf, type ShelfJar } from './ink/shelf-jars.ts';
export { askSpread, usualHand, withWay, type Spread, type SpreadAsk, type SpreadOverlap, type SpreadWay } from './ink/spread.ts';
export { wantedHere, wantedName, wantsTone, type WantedHere } from './ink/wanted.ts';
export { copyOfPrint, nextPrint, printStages, stageOf, type PrintStage } from './prints.ts';
export { askLines, usualPitch, type LinesAnswer, type LinesQuestion } from './lines.ts';
export { bandsPatch, bandsPatchMm, filmBands, filmSays, halfTone, type WithTones } from './films.ts';
export { askSplit, fewestInks, mostInks, type SplitAnswer, type SplitQuestion } from './split.ts';
export {
  askToneWays,
  leastCut,
  minutesOf,
  toneWays,
  withToneWay,
  type RunOfTone,
  type ToneWay,
  type ToneWayName,
} from './tone/ways.ts';
export { overlapRamp, type ToneRamp } from './tone/ramp.ts';
export { inWay, sayToneWay } from './tone/say-way.ts';
export { askTones, readChart, type Chart, type ToneField } from './ink/tones.ts';
export { isWedge } from './tone/wedge-rows.ts';
export {
  wedgeCurve,
  wedgeFromFile,
  wedgeFromPhoto,
  wedgeFromText,
  wedgeProblems,
  withWedge,
  type WedgeAt,
  type WedgeCurve,
  type WedgeRead,
} from './wedge.ts';
export { askExposure, readRows, withExposure, type ExposureAnswer } from './exposure.ts';
export {
  boardAsStored,
  cameraFrom,
  cameraOf,
  jobWithCamera,
  jobWithoutCamera,
  lensOfCamera,
  readCameras,
  sameCamera,
  withBoard,
  withCamera,
  withoutCamera,
  writeCameras,
  type CameraRead,
  type KeptCamera,
} from './cameras.ts';
export { askPrintPhoto, withPrintPhoto, type PrintPhotoAnswer, type PrintPhotoAsk, type SeenOverlap } from './printed/print-photo.ts';
