import { many } from '../grammar.ts';
import type { FilmText, LengthText, ListText, MassText, NameText, NumberText, ShareText } from '../../text.ts';

/** Screen, mesh and film, fit, taping, gap and risers, ink for a run. */
export const press = {
  // Sizes.
  frameSize: ({ size }: { size: LengthText }) => `The inside of the frame cannot be ${size}.`,
  imageSize: ({ size }: { size: LengthText }) => `The image cannot be ${size}.`,
  sheetSize: ({ size }: { size: LengthText }) => `The sheet cannot be ${size}.`,
  giveSize: ({ most }: { most: LengthText }) => `Give a width and a height, both above nought and at most ${most}.`,

  // Mesh.
  noScreen: ({ threads }: { threads: NumberText }) =>
    `No screen is chosen yet: films and grams are for a usual mesh (${threads} threads a cm).`,
  enterScreen: 'Enter frame and mesh to plan the press.',
  meshFigure: ({ value }: { value: NumberText }) => `A mesh cannot have ${value} here.`,
  copyMeshFigure: 'Copy the figure from the mesh, or leave it out.',
  meshClosed: ({ threads, pitch, thread }: { threads: NumberText; pitch: FilmText; thread: FilmText }) =>
    `${threads} threads a cm leave ${pitch} for each, and the thread is ${thread} thick: nothing stays open.`,
  countPerCm: 'Check that the count is per cm and not per inch (divide threads per inch by 2.54).',
  meshAllOpen: ({ open }: { open: ShareText }) => `${open} open leaves no thread.`,
  copyOpenArea: 'Copy the open area from the mesh, or leave it out.',

  // Choice of a mesh.
  noLeastDetail: 'The drawing has no finest detail.',
  giveNarrowestLine: 'Give the width of its narrowest line.',
  fineLinesSaw: ({ under }: { under: LengthText }) => `Lines under ${under} get saw-toothed edges.`,
  grainsBlock: ({ grain, opening }: { grain: FilmText; opening: FilmText }) => `Grains of ${grain} block openings of ${opening}.`,
  rulingNeeds: ({ lines, threads }: { lines: NumberText; threads: number }) => `${lines} lines a cm need at least ${threads} threads a cm.`,
  otherFilm: ({ film, wanted }: { film: FilmText; wanted: FilmText }) => `It lays down about ${film} instead of ${wanted}.`,

  // Film on the paper.
  sharesReversed: ({ low, high }: { low: NumberText; high: NumberText }) =>
    `The range ${low} to ${high} does not run from a smaller to a larger share.`,
  giveShares: ({ most }: { most: NumberText }) => `Give two shares, the smaller first, above 0 and at most ${most}.`,
  solids: 'the volume solids of the ink',
  weighing: 'the weighing',
  nothingGained: 'The weighed sheet must have gained something on a printed area.',
  weighTen: 'Weigh ten sheets together before printing and again at once after it, and divide by ten.',
  noWeighing: 'There is no weighing to go by.',
  weighOne: 'Weigh at least one sheet before and after printing.',
  stencilThickness: ({ thickness }: { thickness: LengthText }) => `A stencil ${thickness} thick cannot be printed.`,
  giveThickness: ({ newsprint, film }: { newsprint: LengthText; film: LengthText }) =>
    `Give the thickness of the sheet: newsprint is about ${newsprint}, film ${film}.`,
  edgeEven: 'The edge prints about as thick as the middle.',
  edgeRidge: ({ within, times }: { within: LengthText; times: NumberText }) =>
    `Within ${within} of an edge the film can be up to ${times} times as thick: darker rims, slower drying. A thinner stencil or a second, lighter stroke evens it out.`,

  // Ink for a run.
  inkAmounts: 'Area, film, pulls and what stays must be nought or more, and the density above nought.',
  checkInkFigures: 'Check mesh, ink density and number of sheets.',
  rangeReversed: 'A range runs from its larger to its smaller end.',
  smallerFirst: 'Write the smaller figure first.',
  tapeOnEdge: ({ n }: { n: number }) =>
    `${n === 1 ? 'This piece has' : `These ${n} pieces have`} no border: tape the mesh on the paper side exactly on the image’s edge, and lay ${n === 1 ? 'it' : 'them'} by the cut drawing.`,
  changeAfter: ({ sheet, n, stencil, of }: { sheet: NameText; n: number; stencil: number; of: number }) =>
    `After sheet ${sheet}: stencil ${stencil} of ${of}${n > 0 ? `, check the register on ${many(n, 'offcut', 'offcuts')}` : ''}.`,
  changeBeforeFirst: ({ n, stencil, of }: { n: number; stencil: number; of: number }) =>
    `After the set-up sheets: stencil ${stencil} of ${of}${n > 0 ? `, check the register on ${many(n, 'offcut', 'offcuts')}` : ''}.`,
  changeOften: ({ sheets, n, of }: { sheets: ListText; n: number; of: number }) =>
    `The next of ${of} stencils after each of sheets ${sheets}${n > 0 ? `; check the register on ${many(n, 'offcut', 'offcuts')} each time` : ''}.`,
  fineShapes: ({ share, times, counted }: { share: ShareText; times: NumberText; counted: NumberText }) =>
    `Fine shapes: ${share} of the print lies in the ridge along its edges. Film up to ${times} times as thick: darker (the forecast counts on ${counted} times), and slower to dry.`,
  changeScreen: ({ mesh }: { mesh: NameText }) => `Change the screen: mesh ${mesh}.`,
  runNamed: ({ run, layer, share }: { run: number; layer: NameText; share: ShareText }) => `run ${run} (${layer}, ${share} of the image)`,
  cockles: ({ paper, runs }: { paper: NameText; runs: ListText }) => `“${paper}” goes wavy where much wet ink lies: ${runs}.`,
  pressFlat: 'Once dry to the touch, press the sheets flat under boards before the next run; wavy sheets lie badly against the stops.',
  noSheetThrough: 'No sheet goes through this run.',
  mostStays: ({ printed, share }: { printed: MassText; share: ShareText }) =>
    `The sheets take ${printed}; most of the pot (${share}) stays in screen and knife. Scrape it back into a labelled jar.`,
  someStays: ({ printed, staying }: { printed: MassText; staying: MassText }) =>
    `The sheets take ${printed}; screen and knife keep about ${staying}.`,

  // Does the screen fit?
  atTop: 'at the top',
  atBottom: 'at the bottom',
  atLeft: 'on the left',
  atRight: 'on the right',
  imageOverSheet: ({ image, sheet }: { image: LengthText; sheet: LengthText }) =>
    `The image (${image}) is larger than the sheet (${sheet}).`,
  smallerImage: 'Make the image smaller or take a larger sheet.',
  imagePastFrame: ({ past, sides }: { past: LengthText; sides: ListText }) =>
    `The image reaches ${past} past the inside of the frame ${sides}.`,
  wellTooSmall: ({ room, sides, missing }: { room: LengthText; sides: ListText; missing: LengthText }) =>
    `Only ${room} between image and frame ${sides}: the ink well needs at least ${missing} more.`,
  wellTight: ({ room, sides, missing }: { room: LengthText; sides: ListText; missing: LengthText }) =>
    `Only ${room} between image and frame ${sides}: ${missing} more for the ink well would let you print at ease.`,
  bladeEndTooSmall: ({ room, sides, missing }: { room: LengthText; sides: ListText; missing: LengthText }) =>
    `Only ${room} between image and frame ${sides}: the end of the blade needs at least ${missing} more.`,
  bladeEndTight: ({ room, sides, missing }: { room: LengthText; sides: ListText; missing: LengthText }) =>
    `Only ${room} between image and frame ${sides}: ${missing} more for the end of the blade would let you print at ease.`,
  squeegeeShort: ({ own, image, missing }: { own: LengthText; image: LengthText; missing: LengthText }) =>
    `The squeegee (${own}) is ${missing} too short for an image that is ${image} across the stroke.`,
  takeSqueegeeOrHinge: ({ suits }: { suits: LengthText }) => `Take one of ${suits}, or hinge the frame on another side.`,
  squeegeeLong: ({ own, room }: { own: LengthText; room: LengthText }) =>
    `The squeegee (${own}) leaves less than ${room} to the frame at each end: the mesh cannot give.`,
  takeShorterSqueegee: ({ most }: { most: LengthText }) => `Take one of at most ${most}.`,

  // What would fit.
  centreImage: 'Put the image in the middle of the frame.',
  turnImage: 'Give the image a quarter turn on the screen.',
  hingeLeftOrRight: 'Hinge the frame on the left or right side.',
  hingeTopOrBottom: 'Hinge the frame on the top or bottom side.',
  thenFits: 'Then it fits.',
  thenLess: ({ then, now }: { then: LengthText; now: LengthText }) => `Then it is ${then} short instead of ${now}.`,
  frameThatFits: ({ size }: { size: LengthText }) => `A frame of ${size} inside holds this image at ease.`,
  imageThatFits: ({ size }: { size: LengthText }) => `An image of ${size} fits this frame.`,
  imageThatFitsTightly: ({ size }: { size: LengthText }) => `An image of ${size} fits this frame with care.`,

  // Taping.
  noRoomForStencil: ({ within }: { within: LengthText }) =>
    `No stencil sheet can be held around this image: it comes within ${within} of the frame.`,
  layDrawing: 'Lay this drawing under the dry screen, with the inside of the frame on the outer line.',
  tapeRest: ({ n, tape }: { n: number; tape: LengthText }) =>
    n === 0
      ? 'Turn the screen over: all tape goes on the paper side.'
      : `Turn the screen over and tape the rest of the mesh on the paper side: ${many(n, 'strip', 'strips')}, ${tape}. They stay on until the last run.`,
  bladeSideFree: 'Put no tape on the squeegee side: the blade must never ride on it.',
  layStencil: 'Lay the stencil on the paper side, square to the frame.',
  tapeStencil: ({ n, tape, on }: { n: number; tape: LengthText; on: LengthText }) =>
    `Tape it down along its edges, ${on} on the stencil: ${many(n, 'strip', 'strips')}, ${tape}, anew for each stencil.`,
  mayLeak: ({ sides }: { sides: ListText }) =>
    `Ink gets past the stencil’s edge ${sides}, and would leak there: press the tape down hard, and look under the screen after the first sheets.`,
  marginHoldsInk: 'The stencil’s margin is wider than blade and stroke: no ink reaches its edge.',
  holdToLight: 'Hold the screen up to the light: every bright gap outside the image would print.',

  // Gap.
  tensionImpossible: ({ tension }: { tension: NumberText }) => `A mesh cannot have a tension of ${tension} N/cm.`,
  leaveTensionOut: 'Leave the tension out when it is not known.',
  tightMeshGap: ({ tension, most }: { tension: NumberText; most: LengthText }) => `A mesh of ${tension} N/cm needs at most ${most}.`,
  slackMeshGap: ({ size, tension }: { size: NameText; tension: NumberText }) =>
    `A print up to ${size} on slack mesh (${tension} N/cm): half as much again as usual. New mesh would keep register better.`,
  gapByHand: ({ size }: { size: NameText }) => `A print up to ${size} by hand. Enough when the mesh snaps up behind the blade.`,
  gapTensionUnknown: ({ size }: { size: NameText }) =>
    `A print up to ${size} by hand, tension not known. Enough when the mesh snaps up behind the blade.`,
  gapImpossible: ({ gap }: { gap: LengthText }) => `No screen has a gap of ${gap}.`,
  giveGap: ({ usual }: { usual: LengthText }) => `Give the gap between mesh and paper, usually ${usual}.`,
  noMeshAround: ({ frame, image }: { frame: LengthText; image: LengthText }) =>
    `The inside of the frame (${frame}) leaves no mesh around the image (${image}).`,
  largerFrame: 'Take a larger frame or a smaller image.',
  gapTears: ({ gap, strain }: { gap: LengthText; strain: ShareText }) =>
    `A gap of ${gap} stretches the mesh by ${strain} so near the frame: it can tear or come off the frame.`,
  gapStretches: ({ gap, strain }: { gap: LengthText; strain: ShareText }) =>
    `A gap of ${gap} stretches the mesh by ${strain}: the edges of the image drift outwards and the mesh slackens in time.`,
  lowerGap: ({ safe }: { safe: LengthText }) => `Lower the gap to about ${safe} or leave more room between image and frame.`,

  // Gaps run by run.
  gapPrintsLarger: ({ run, layer, gap, usual, across, along, edge }: GapDiffers) =>
    `Run ${run} (${layer}) prints with a gap of ${gap}, the others with ${usual}. Its image comes out larger, by ${across} across the stroke and ${along} along it, so its edges lie ${edge} off.`,
  gapPrintsSmaller: ({ run, layer, gap, usual, across, along, edge }: GapDiffers) =>
    `Run ${run} (${layer}) prints with a gap of ${gap}, the others with ${usual}. Its image comes out smaller, by ${across} across the stroke and ${along} along it, so its edges lie ${edge} off.`,
  ofWhatDrawingForgives: ({ share, forgives }: { share: ShareText; forgives: LengthText }) =>
    `That is ${share} of the ${forgives} that the drawing forgives.`,
  ofWhatLayerMayBeOff: ({ share, tolerance }: { share: ShareText; tolerance: LengthText }) =>
    `That is ${share} of the ± ${tolerance} that one layer may be off.`,
  oneGap: ({ best }: { best: LengthText }) =>
    `Print all runs with one gap, or take ${best} here: then it costs a quarter of the register at most.`,
  mindWhereItMeets: 'Keep it in mind where this run must meet another.',
  gapAboveUsual: ({ gap, usual }: { gap: LengthText; usual: LengthText }) =>
    `The gap of ${gap} is more than this size and mesh usually ask for (${usual}).`,
  tryLowerGap: 'Right for a slack mesh that sticks to the sheet. Mesh marks, thin flats or a stretched image: lower it.',
  gapBelowUsual: ({ gap, usual }: { gap: LengthText; usual: LengthText }) =>
    `The gap of ${gap} is less than this size and mesh usually ask for (${usual}).`,
  tryHigherGap: 'Soft edges, or a mesh that does not snap up behind the blade: raise it.',

  // Risers.
  heights: ({ range }: { range: LengthText }) => `Gap, paper, stencil and hinge must each be ${range} high.`,
  measureClamps: 'Measure how high the clamps hold the mesh above the board.',
  imageNotInFrame: 'The image must lie between the hinge and the front of the frame.',
  giveFrameLength: 'Give the frame’s length, and where the image begins and ends, from the hinge.',
  boardThickness: 'A board or coin needs a thickness.',
  measureTen: 'Measure ten of them together and divide by ten.',
  gapUneven: ({ gaps }: { gaps: LengthText }) => `With risers at the front alone the gap runs from ${gaps} over the image.`,
  packUnderHinge: ({ by }: { by: LengthText }) => `Pack ${by} under the hinge clamps too.`,
  boardUnderPaper: ({ by }: { by: LengthText }) => `Lay ${by} of board under the paper too.`,
};

export interface GapDiffers {
  readonly run: number;
  readonly layer: NameText;
  readonly gap: LengthText;
  readonly usual: LengthText;
  readonly across: LengthText;
  readonly along: LengthText;
  readonly edge: LengthText;
}
