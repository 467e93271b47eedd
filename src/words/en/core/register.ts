import { many } from '../grammar.ts';
import type { LengthText, ListText, NameText, NumberText, SayingText, ShareText } from '../../text.ts';

/** How sheets are placed, how far off layers fall, test sheets and stops. */
export const register = {
  // Methods and what they hold.
  stopsTorn: 'Three stops, torn or deckle edge',
  stopsCut: 'Three stops, cut edge',
  hingedSheet: 'Hinged clear sheet',
  pins: 'Punched pins',
  byEye: 'Marks by eye',
  measuredHere: ({ sigma }: { sigma: LengthText }) => `Measured here: σ ${sigma}.`,
  usualTolerance: ({ method, tolerance }: { method: SayingText; tolerance: LengthText }) =>
    `${method}: ± ${tolerance}, common practice. Print a test sheet to know your own.`,
  sigmaTooLarge: ({ most }: { most: LengthText }) => `The spread of register must lie between nought and ${most}.`,
  sigmaNegative: 'The spread of register must be nought or more.',
  measureSigma: 'Measure it with a test sheet, or leave it out.',

  // Pairs of layers.
  nothingToDo: 'Nothing to do.',
  lookAtEverySheet: 'Holds nineteen times in twenty; look at every sheet.',
  letOverlap: ({ by }: { by: LengthText }) => `Where these two should meet, let them overlap by ${by}.`,
  spreadUnder: ({ first, second, by }: { first: NameText; second: NameText; by: LengthText }) =>
    `Spread ${first} under ${second} by ${by} where they meet.`,
  spreadOver: ({ first, second, by }: { first: NameText; second: NameText; by: LengthText }) =>
    `Spread ${second} over ${first} by ${by} where they meet.`,
  orFinerMethod: 'Or place the sheets by a finer method.',
  orSteadierAir: 'Or keep the room’s humidity steadier (35 to 50 %) and let the paper rest in it for a day.',
  orSameGap: 'Or print both with the same screen, place and gap.',
  orMoveStops: 'Or move the stops by the steady shift.',
  howToSpread:
    'Spread the lighter of the two, or choke a window that surrounds it. In transparent inks the overlap shows as a third colour.',
  pairOpens: ({ first, second, off, overlap }: { first: NameText; second: NameText; off: LengthText; overlap: LengthText }) =>
    `${second} can fall ${off} off ${first}, but they overlap by only ${overlap}: bare paper can show.`,
  pairTouches: ({ first, second, off }: { first: NameText; second: NameText; off: LengthText }) =>
    `${second} can fall ${off} off ${first}, but they only touch: bare paper can show.`,
  lineShows: ({ first, second, off }: { first: NameText; second: NameText; off: LengthText }) =>
    `${second} can fall ${off} off ${first}: a line of the colour beneath can show between them, no bare paper.`,
  otherEdge: ({ papers, tolerance, pairs }: { papers: ListText; tolerance: LengthText; pairs: ListText }) =>
    `Torn edges hold one layer within ± ${tolerance} only: on ${papers} these can open too: ${pairs}.`,
  otherEdgeCut: ({ papers, tolerance }: { papers: ListText; tolerance: LengthText }) => `${papers}: one layer falls within ± ${tolerance}.`,
  pairOf: ({ first, second, off }: { first: NameText; second: NameText; off: LengthText }) => `${first} and ${second} (${off})`,

  // Paper that moves with damp.
  humidityImpossible: ({ humidity }: { humidity: ShareText }) => `Air cannot have ${humidity} humidity.`,
  readHygrometer: 'Read a hygrometer in the room before each run.',
  growth: 'the growth of the paper',
  growthNeedsSpan: 'The growth of paper needs the span of humidity that it was measured over.',
  giveSpan: 'Give the span in points of humidity, such as 33.',

  // Sheets drawn by lot.
  drawnSheets: 'the sheets drawn by lot',
  tooManyShifts: 'Shifts can be drawn for 1 to 100000 sheets of 1 to 64 layers.',
  askForFewer: 'Ask for fewer.',

  // The test sheet and its places.
  testSheet: 'the register test sheet',
  topLeft: 'top left',
  topRight: 'top right',
  bottomLeft: 'bottom left',
  bottomRight: 'bottom right',
  scaleTooDense: 'The lines of the scale would run into one another.',
  widerPitch: 'Take a wider pitch or thinner lines.',
  testSheetSmall: ({ least }: { least: LengthText }) => `A test sheet needs at least ${least} each way.`,
  printTestLarger: 'Print it larger, or take fewer steps.',
  printTestTwice:
    'Print the first run on ten sheets or more, let them dry, then print the second run; number the backs in the order of printing.',
  findLine: ({ step }: { step: LengthText }) =>
    `On each scale find the pair of lines that meets best; its number times ${step} is the shift (to the right and down positive).`,
  writeLines: 'Write place, sheet, across and down. At least two places tell the turn.',

  // Test sheets read.
  fewSheets: ({ n }: { n: number }) => `${many(n, 'test sheet', 'test sheets')} cannot tell chance from a steady shift.`,
  readMoreSheets: 'Read at least 3 sheets, better 10.',
  noSuchPlace: ({ place }: { place: NameText }) => `The test sheet has no place “${place}”.`,
  placesAre: ({ places }: { places: ListText }) => `Its places are: ${places}.`,
  readingMissing: 'A reading is missing.',
  writeBoth: 'Write both, across and down.',
  noSuchLine: ({ line }: { line: NumberText }) => `The scales have no line ${line}.`,
  linesRun: ({ most }: { most: number }) =>
    `Lines run from −${most} to ${most}, and halves may be written. What lies farther off is no reading of this scale: find out why that sheet slipped, and leave it out.`,
  readTwice: 'This place of this sheet was read twice.',
  keepOneReading: 'Keep one of the two readings.',
  spreadRough: ({ n }: { n: number }) => `From ${many(n, 'sheet', 'sheets')} the spread is known only roughly.`,
  tenSheets: 'Ten sheets or more tell it better.',
  finerThanScale: ({ step }: { step: LengthText }) => `The spread is finer than the scale’s steps of ${step} can tell.`,
  noWorseThan: 'Take the figure as “no worse than”, or print the test with a finer step.',
  creepsAcross: ({ by }: { by: LengthText }) => `The register creeps across by ${by} a sheet.`,
  creepsDown: ({ by }: { by: LengthText }) => `The register creeps down by ${by} a sheet.`,
  lookForLoose: 'Look for a loose stop or hinge, or paper that dries while you print.',

  // A table of readings.
  columnsMissing: ({ n }: { n: number }) => `It has ${n} of 4 columns.`,
  notASheet: ({ written }: { written: NameText }) => `“${written}” is not the number of a sheet.`,
  notALine: ({ written }: { written: NameText }) => `“${written}” is not a line of the scale.`,
  writeTable: 'Write sheet, place, across, down: 3, top left, -2, 1. laydown register JOB --form prints an empty table.',

  // What to do about a steady shift.
  toRight: ({ by }: { by: LengthText }) => `${by} to the right`,
  toLeft: ({ by }: { by: LengthText }) => `${by} to the left`,
  downwards: ({ by }: { by: LengthText }) => `${by} down`,
  upwards: ({ by }: { by: LengthText }) => `${by} up`,
  steadyShift: ({ shift }: { shift: ListText }) =>
    `The second run lies ${shift} on every sheet. That is not chance: before a run, lay stencil or screen back by as much.`,
  turnedClockwise: ({ degrees }: { degrees: NumberText }) =>
    `The second run is turned clockwise by ${degrees}° on every sheet: set the stencil straight in the frame, or move one of the two stops.`,
  turnedAnticlockwise: ({ degrees }: { degrees: NumberText }) =>
    `The second run is turned anticlockwise by ${degrees}° on every sheet: set the stencil straight in the frame, or move one of the two stops.`,
  printsLarger: ({ by }: { by: ShareText }) =>
    `The second run is ${by} larger: another gap, or paper that moved with damp between the runs.`,
  printsSmaller: ({ by }: { by: ShareText }) =>
    `The second run is ${by} smaller: another gap, or paper that moved with damp between the runs.`,

  // Stops.
  imageOffSheet: 'The image reaches past the edge of the sheet.',
  moveImage: 'Move it, make it smaller or take a larger sheet.',
  tornEdge: 'A torn edge never lies the same way twice.',
  cardStrip: 'Tape a strip of cut card to the back of each sheet and push that against the stops, or use pins.',
  settingOf: ({ n, papers, from }: { n: number; papers: ListText; from: LengthText }) =>
    `${n}: ${papers}, image ${from} from the corner (across × up)`,
  severalSettings: ({ n, settings }: { n: number; settings: ListText }) =>
    `The papers ask for ${n} settings of the stops, because their image lies in different places: ${settings}.`,
  oneSetting:
    'In each run print all sheets of setting 1, move stops or screen, check the marks, then print the next. Better: place the image on one paper only, and the others will follow it.',
  tapeDrawing: 'Tape this drawing to the board under the screen so that its image lies under the stencil’s.',
  glueStops: ({ thickness }: { thickness: LengthText }) => `Glue the three stops in their places: ${thickness} thick, with straight edges.`,
  pushSheets: 'Push each sheet against 1 and 2 first, then along to 3, always with the same hand.',
  leaveStops: 'The stops stand once, for every sheet that is pushed against them: leave them alone until the last run is done.',
};
