import type { FilmText, LengthText, ListText, NameText, SayingText } from '../../text.ts';

/** Screen, tape, stops, register and its test sheet. */
export const setUpPages = {
  // The screen.
  setUpScreen: 'Set up the screen',
  noScreen: 'no screen chosen yet',
  gapUnderMesh: 'Gap under the mesh',
  ownGap: ({ run, layer, gap }: { run: number; layer: NameText; gap: LengthText }) => `Run ${run}, ${layer}: ${gap}`,
  ownMesh: ({ run, layer, mesh, film }: { run: number; layer: NameText; mesh: NameText; film: FilmText }) =>
    `Run ${run}, ${layer}: a screen of its own, mesh ${mesh}, wet film about ${film}`,
  ownGapFront: ({ run, layer, gap, risers }: { run: number; layer: NameText; gap: LengthText; risers: SayingText }) =>
    `Run ${run}, ${layer}: ${gap}; ${risers}`,
  frontOf: ({ front }: { front: LengthText }) => `front risers ${front}`,
  underHinge: ({ by }: { by: LengthText }) => `${by} under the hinge`,
  underPaper: ({ by }: { by: LengthText }) => `${by} of board under the paper`,
  frontRisers: 'Risers at the front',
  hingePacking: 'Packing under the hinge',
  boardUnderPaper: 'Board under the paper',
  boards: ({ n, one, all, card }: { n: number; one: LengthText; all: LengthText; card?: LengthText }) =>
    card === undefined ? `${n} × ${one} gives ${all}.` : `${n} × ${one} and ${card} of card give ${all}.`,
  gapBuilt: ({ gap }: { gap: LengthText }) => `With these boards the gap comes to ${gap}.`,
  squeegee: 'Squeegee',
  squeegeeYours: ({ best, own }: { best: LengthText; own: LengthText }) => `${best} (yours: ${own})`,
  top: 'top',
  bottom: 'bottom',
  left: 'left',
  right: 'right',
  free: ({ side, free }: { side: SayingText; free: LengthText }) => `${side}: ${free} free`,
  tooLittleFree: ({ side, free, missing }: { side: SayingText; free: LengthText; missing: LengthText }) =>
    `${side}: ${free} free, ${missing} too little`,
  imageGrows: ({ along, across }: { along: LengthText; across: LengthText }) =>
    `The mesh stretches: the image grows by ${along} along the stroke, ${across} across. Keep screen and place the same for all runs.`,
  nameScreen: 'Name the frame and the mesh in the job, and this page will show margins, tape and risers.',

  // Tape.
  tape: 'Tape, all runs',
  tapeAll: ({ tape, width }: { tape: LengthText; width: LengthText }) => `${tape} of ${width}`,
  image: 'image',
  fromSqueegee: 'from the squeegee side',
  layDrawing: ({ top, left }: { top: LengthText; left: LengthText }) =>
    `Measure from the inside of the frame: the image begins ${top} from the top and ${left} from the left. Lay the first stencil so, under the screen.`,

  // Stops.
  farStop: ({ number, along }: { number: number; along: LengthText }) =>
    `Stop ${number}: on its edge, its middle ${along} from this corner.`,
  stops: 'Stops',
  sheet: 'sheet',
  stopsThick: 'Stops, thick',
  imageFromCorner: 'Image from the stops’ corner',
  acrossUp: ({ across, up }: { across: LengthText; up: LengthText }) => `${across} across, ${up} up`,
  stopsSetting: ({ n, of }: { n: number; of: number }) => `Stops: setting ${n} of ${of}`,
  stopsForPapers: ({ papers }: { papers: ListText }) => `stops for ${papers}`,
  onTheBoard: 'Printed side up, on the board, under the screen.',

  // Register.
  register: 'Register',
  howFarOff: 'how far off, and what forgives it',
  fallsWithin: 'One layer falls within',
  within: ({ tolerance }: { tolerance: LengthText }) => `± ${tolerance}`,
  notPlannedWith: 'Test sheets were read, but the job is not planned with them yet.',
  likely: 'likely',
  worst: 'worst',
  overlap: 'overlap',
  holds: 'holds',
  tight: 'tight',
  opens: 'may open',
  lineShows: 'a line may show',
  morePairs: ({ n }: { n: number }) => `and ${n} more that meet, none of them worse than these`,
  howToRead:
    'Likely, worst, overlap: one pair, along one axis, at the image’s edge farthest from the stops. Likely holds nineteen times in twenty; worst adds everything up; overlap is what the drawing has where the two meet.',
  measureYours: 'Measure your own press with the register test sheet; then these figures become yours.',
  gapsDiffer: 'Gaps differ: the image prints in different sizes',
  gap: 'gap',
  across: 'across',
  along: 'along',
  grows: ({ by }: { by: LengthText }) => `+ ${by}`,
  howSheetsFall: 'How sheets will fall',
  inRegister: 'in register',
  halfNoWorse: 'half are no worse',
  noneMeet: 'No two runs only meet edge to edge: where they overlap, what is off shows as a changed rim, not as a gap.',
  apartAtCorner: ({ apart }: { apart: LengthText }) => `worst pair, in the plane, at the worst corner: ${apart}`,
  oneInTwenty: 'one in twenty is worse',
  apart: ({ apart }: { apart: LengthText }) => `${apart} apart`,

  // Test sheet.
  measureRegister: 'Measure your register',
  onceOnAnyPaper: 'once, on any paper',
  reads: 'Reads',
  upTo: 'Up to',
  eachWay: ({ range }: { range: LengthText }) => `${range} each way`,
  places: 'Places',
  cutBoth: 'Cut both drawings as stencils, or print the first and cut the second.',
  typeNumbersIn:
    'Type the numbers in at the press station (register, test sheets), or as a table for “laydown register”: σ, turn and drift come out, and this studio’s figures replace the usual ones.',
  testFirst: 'register test, first run',
  testSecond: 'register test, second run',
  testFirstTitle: 'Register test, first run',
  testSecondTitle: 'Register test, second run',
  sheetNumber: 'Sheet',
  down: 'down',
};
