import type {
  DeltaText,
  LabText,
  LengthText,
  ListText,
  MassText,
  NameText,
  NumberText,
  SayingText,
  ShareText,
  TimeText,
} from '../../text.ts';
import { many } from '../grammar.ts';

/** What commands answer about inks, readings, pictures, and things traced. */
export const inkAnswers = {
  // order
  orders: ({ n, paper, now }: { n: number; paper: NameText; now: NameText }) => `${many(n, 'order', 'orders')} on ${paper}; now: ${now}`,
  orderNo: ({ n, layers }: { n: number; layers: NameText }) => `${n}. ${layers}`,
  wantedWithin: ({ deltaE }: { deltaE: DeltaText }) => `wanted colours within ${deltaE} ΔE00`,
  coloursDiffer: ({ n }: { n: number }) => `${many(n, 'colour', 'colours')} that differ`,
  lightnessRange: ({ range }: { range: NumberText }) => `lightness over ${range}`,
  meanChroma: ({ chroma }: { chroma: NumberText }) => `mean chroma ${chroma}`,
  movedBy: ({ deltaE, films }: { deltaE: DeltaText; films: ShareText }) => `moved by ${deltaE} ΔE00 when films vary by ${films}`,
  noDifference: 'The order makes no difference to these colours. Keep the one there is, or order by drying and by what follows.',
  orderWarns: ({ ridges, register }: { ridges: number; register: number }) =>
    `check would warn of ${many(ridges, 'ridge', 'ridges')} and ${many(register, 'place where layers may not meet', 'places where layers may not meet')}`,
  alikeOrders: ({ n }: { n: number }) => `${n} more ${n === 1 ? 'order comes' : 'orders come'} out the same`,
  givesUp: ({ what }: { what: ListText }) => `gives up: ${what}`,

  // recipe
  printedBy: ({ layer, under }: { layer: NameText; under: SayingText }) => `Printed by ${layer}, over: ${under}.`,
  printedOver: ({ under }: { under: SayingText }) => `Over ${under}.`,
  onTheSheet: 'nothing but the sheet',
  recipe: ({ parts, deltaE, lab }: { parts: ListText; deltaE: DeltaText; lab: LabText }) =>
    `${parts}, rest base: off by ΔE00 ${deltaE} (Lab ${lab})`,
  part: ({ share, ink }: { share: ShareText; ink: NameText }) => `${share} ${ink}`,

  leftovers: ({ n, deltaE, lab }: { n: number; deltaE: DeltaText; lab: LabText }) =>
    `From ${many(n, 'jar', 'jars')}, off by ΔE00 ${deltaE} (Lab ${lab}):`,
  leftoversFar: ({ deltaE, lab }: { deltaE: DeltaText; lab: LabText }) =>
    `Nothing comes near enough. The nearest is off by ΔE00 ${deltaE} (Lab ${lab}):`,
  leftoversNoHelp: ({ deltaE, lab }: { deltaE: DeltaText; lab: LabText }) =>
    `What is left in jars is no help here. From new ink, off by ΔE00 ${deltaE} (Lab ${lab}):`,
  fromJar: ({ mass, ink }: { mass: MassText; ink: SayingText }) => `${mass} ${ink}, from its jar`,
  newInk: ({ mass, ink }: { mass: MassText; ink: SayingText }) => `${mass} ${ink}, new`,
  ofBase: ({ mass, ink }: { mass: MassText; ink: SayingText }) => `${mass} ${ink}`,
  newAgainst: ({ mass, fresh }: { mass: MassText; fresh: MassText }) => `${mass} of new ink; without the jars it would be ${fresh}.`,
  newInAll: ({ mass }: { mass: MassText }) => `${mass} of new ink.`,
  // spread
  spreadHead: ({ hand, deltaE }: { hand: ShareText; deltaE: DeltaText }) =>
    `Films vary by ${hand} from pull to pull: nine sheets in ten stay within ± ${deltaE} ΔE00 on average.`,
  spreadNoWay: 'No order and no strength lessens it without making another print of it.',
  spreadOrder: ({ layers, deltaE, moved }: { layers: SayingText; deltaE: DeltaText; moved: DeltaText }) =>
    `${layers}: ± ${deltaE}; colours move by ${moved} ΔE00`,
  spreadStrength: ({ layer, strength, deltaE, moved }: { layer: SayingText; strength: ShareText; deltaE: DeltaText; moved: DeltaText }) =>
    `${layer} at ${strength}: ± ${deltaE}; colours move by ${moved} ΔE00`,

  // mix
  potHolds: ({ layer, mass }: { layer: NameText; mass: MassText }) => `${layer}, ${mass}`,
  byVolume: ({ share }: { share: ShareText }) => `${share} by volume`,
  rounding: ({ deltaE }: { deltaE: DeltaText }) => `rounding to the scale moves the colour by ΔE00 ${deltaE}`,
  retarder: ({ share, mass }: { share: ShareText; mass: MassText }) =>
    `and retarder, ${share} (${mass}), for this pace and air; wear gloves, the label decides`,

  // pot
  potOff: ({ deltaE, mass }: { deltaE: DeltaText; mass: MassText }) => `The pot is off by ΔE00 ${deltaE} (${mass}).`,
  nearEnough: 'Near enough: leave it as it is.',
  add: ({ mass, ink }: { mass: MassText; ink: NameText }) => `add ${mass} ${ink}`,
  afterAdding: ({ deltaE, mass, times }: { deltaE: DeltaText; mass: MassText; times: NumberText }) =>
    `Then it is off by ΔE00 ${deltaE}; the pot grows to ${mass} (× ${times}).`,
  aLittle: 'a little',
  clearly: 'clearly',
  very: 'very',

  // again
  newLot: ({ ink, times }: { ink: NameText; times: NumberText }) => `${ink}: the new lot is ${times} times as strong`,
  shareWas: ({ share }: { share: ShareText }) => `(was ${share})`,
  clearBase: 'clear base',
  otherLight: ({ daylight, lamp }: { daylight: DeltaText; lamp: DeltaText }) =>
    `off by ΔE00 ${daylight} in daylight, by ${lamp} in lamp light`,

  // readings, photo
  spectrum: 'spectrum',
  xyz: 'XYZ',
  lab: 'Lab',
  photo: 'photo',
  patches: ({ n }: { n: number }) => many(n, 'patch', 'patches'),
  sheetPaper: 'paper',
  blackBar: 'black bar',
  doubt: ({ sigma }: { sigma: DeltaText }) => `± ${sigma} ΔE00`,
  lightEven: ({ times }: { times: NumberText }) => `The light was uneven by a factor of ${times}; that is evened out.`,
  takenAsLadder: ({ n }: { n: number }) => `Taken as a ladder of ${n} strengths.`,
  takenAsTwo: 'Taken as read over white and over black.',

  seenApart: ({ how, deltaE }: { how: SayingText; deltaE: DeltaText }) => `${how} (ΔE00 ${deltaE})`,
  hardlySeen: 'hardly seen',
  besideSeen: 'seen side by side',
  plainlySeen: 'plainly seen',
  anotherShade: 'another shade',
  beyondDoubt: 'more than photograph and forecast may be off',
  readByInstrument: 'read by an instrument',
  suspectRun: ({ layer }: { layer: NameText }) => `All overlaps with ${layer} differ, and no others do: look at its pot and its film.`,
  tooNarrow: ({ n }: { n: number }) =>
    n === 1 ? '1 overlap lies nowhere broad enough to be read.' : `${n} overlaps lie nowhere broad enough to be read.`,
  squaredWritten: ({ file }: { file: NameText }) => `${file}: the print squared up`,
  seenKept: ({ n }: { n: number }) => `${many(n, 'reading', 'readings')} taken into the job.`,
  seenNotKept: 'Nothing was changed; --keep takes these readings into the job.',

  // eye
  byEye: ({ lab, sigma }: { lab: LabText; sigma: DeltaText }) => `By eye: Lab ${lab}, ± ${sigma} ΔE00`,
  patchNo: ({ n, what }: { n: number; what: SayingText }) => `${n}  ${what}`,
  patchMiddle: 'as guessed',
  patchLighter: 'lighter',
  patchDarker: 'darker',
  patchStronger: 'stronger',
  patchDuller: 'duller',
  patchTurned: 'turned one way',
  patchTurnedBack: 'turned the other',
  nextChoice: 'Which looks most like the drawdown? Add its number to --chose.',
  choicesDone: 'Done: more choices would hardly narrow it.',
  guessed: ({ ink, lab }: { ink: NameText; lab: LabText }) => `${ink}: guessed as Lab ${lab}`,
  notReadYet: 'Not read yet.',
  noGuesses: 'No ink of this job is or was a guess.',

  // drawdowns
  sheetsMade: ({ file, n }: { file: NameText; n: number }) =>
    `${file}: ${many(n, 'sheet', 'sheets')}. Print at true size (100 %), on the paper you print on if your printer takes it.`,

  // shelf
  inkOnShelf: ({ ink, density }: { ink: NameText; density: NumberText }) => `${ink}, ${density} g/mL`,
  baseOnShelf: ({ ink, role, density }: { ink: NameText; role: SayingText; density: NumberText }) => `${ink} (${role}), ${density} g/mL`,
  transparentBase: 'transparent base',
  extenderBase: 'extender base',
  retarderRole: 'retarder',
  lotNo: ({ lot }: { lot: NameText }) => `lot ${lot}`,
  oneGround: 'one ground',
  twoGrounds: 'white and black',
  ladder: 'a ladder',
  clear: 'clear',
  paperOnShelf: ({ paper }: { paper: NameText }) => `${paper} (paper)`,
  potOnShelf: ({ pot, n }: { pot: NameText; n: number }) => `${pot} (pot, ${many(n, 'drawdown', 'drawdowns')})`,
  shelfHas: ({ inks, papers, pots }: { inks: number; papers: number; pots: number }) =>
    `${many(inks, 'ink', 'inks')}, ${many(papers, 'paper', 'papers')}, ${many(pots, 'pot', 'pots')}`,

  // trace
  boardMade: ({ file }: { file: NameText }) => `${file}: the board, to be printed at 100 %`,
  lensRead: ({ file, n, off }: { file: NameText; n: number; off: NumberText }) =>
    `${file}: the lens, from ${many(n, 'photograph', 'photographs')}, met to ${off} pixels`,
  cameraIs: ({ camera }: { camera: NameText }) => `Camera: ${camera}`,
  cameraZoomed: ({ camera, focal }: { camera: NameText; focal: LengthText }) => `Camera: ${camera}, zoomed to ${focal}`,
  cameraUnknown:
    'The photographs do not say which camera took them: the lens is used for others that say nothing and have the same proportions.',
  noCameraKept: 'No lens is kept of the camera that took this: the sheet itself shows how it bends.',
  fewBoards: ({ n }: { n: number }) =>
    `Read from ${many(n, 'photograph', 'photographs')} only: three and more, with the board in all corners of the picture, tell the lens better.`,
  lensKept: ({ file, columns, rows, off }: { file: NameText; columns: number; rows: number; off: NumberText }) =>
    `${file}: the lens, from a board of ${columns} × ${rows} squares between its corners, met to ${off} pixels`,
  drawingIs: ({ file, size, n }: { file: NameText; size: LengthText; n: number }) =>
    `${file}: ${size}, ${many(n, 'outline', 'outlines')}. Its colours, back to front:`,
  layersMade: ({ file, n }: { file: NameText; n: number }) => `${file}: ${many(n, 'layer', 'layers')} more, their inks still open`,
  traced: ({ file, size, n }: { file: NameText; size: LengthText; n: number }) => `${file}: ${size}, ${many(n, 'outline', 'outlines')}`,

  // separate
  wholePicture: ({ size, pixels }: { size: LengthText; pixels: SayingText }) => `${size}: all of the picture, ${pixels}`,
  partOfPicture: ({
    size,
    width,
    height,
    x,
    y,
    pixels,
  }: {
    size: LengthText;
    width: ShareText;
    height: ShareText;
    x: ShareText;
    y: ShareText;
    pixels: SayingText;
  }) => `${size}: of the picture ${width} of its width and ${height} of its height, from ${x} left and ${y} down, ${pixels}`,
  pixelsPerMm: ({ px }: { px: NumberText }) => `${px} pixels of it for each mm`,
  pixelsPerInch: ({ px }: { px: NumberText }) => `${px} pixels of it for each inch`,
  tooCoarse: 'That is coarser than a knife cuts: edges will be soft guesses.',
  separated: ({ folder, runs }: { folder: NameText; runs: number }) =>
    `${folder}: a job of ${many(runs, 'run', 'runs')}. In compare/ are the picture, the print and flat inks at the same size, and the print struck through where colours are out of reach and where detail was lost.`,
  runAs: ({ run }: { run: number }) => `run ${run}`,
  newRunAs: ({ run }: { run: number }) => `new run ${run}`,
  potIs: ({ parts, along, pieces, bridges }: { parts: ListText; along: SayingText; pieces: number; bridges: number }) =>
    `${parts}: ${along}, ${many(pieces, 'piece', 'pieces')}, ${many(bridges, 'bridge', 'bridges')}`,
  toPicture: 'ΔE00 to the picture',
  mean: 'mean',
  median: 'median',
  within95: '95 % within',
  inRegister: 'in register',
  offBy: ({ sigma }: { sigma: LengthText }) => `layers off by σ ${sigma}`,
  flatInks: 'as many flat opaque inks, same knife',
  flatInksOff: 'these inks off by as much',
  ofFlatInks: ({ times }: { times: NumberText }) => `The mean is ${times} times that of flat inks.`,
  drawing: ({
    kept,
    invented,
    flatKept,
    flatInvented,
  }: {
    kept: ShareText;
    invented: ShareText;
    flatKept: ShareText;
    flatInvented: ShareText;
  }) =>
    `Of the picture’s edges the print keeps ${kept}; ${invented} of its own are not in the picture (flat inks: ${flatKept}, ${flatInvented}).`,
  knifeAsked: ({ along, pieces, bridges, time }: { along: SayingText; pieces: number; bridges: number; time: TimeText }) =>
    `${along} to cut, ${many(pieces, 'piece', 'pieces')}, ${many(bridges, 'bridge', 'bridges')}, about ${time} with the knife`,
  waysDrawn: ({ file, ways }: { file: NameText; ways: ListText }) => `${file}: from the left the picture, then ${ways}.`,
  takenAsDrawing:
    'Taken as a drawing: its paper is bare, its colours flat, thin lines are made broad enough to cut. If it is none: --taken-as photograph.',
  wayNear: 'near the picture',
  wayBold: 'bold',
  wayLight: 'by light and shade',
  wayAsks: ({
    time,
    along,
    kept,
    invented,
    deltaE,
  }: {
    time: TimeText;
    along: SayingText;
    kept: ShareText;
    invented: ShareText;
    deltaE: DeltaText;
  }) => `about ${time} with the knife, ${along}; ${kept} of the edges kept, ${invented} made up; ΔE00 ${deltaE}`,
  outOfReach: ({ share, lost }: { share: ShareText; lost: DeltaText }) =>
    `${share} of the picture is out of these inks’ reach; cutting and bridging cost ΔE00 ${lost}`,
  moreKnife: ({ all }: { all: ListText }) => `more knife, less error: ${all}`,
  onCurve: ({ along, deltaE, price }: { along: SayingText; deltaE: DeltaText; price: NumberText }) =>
    `${along} → ${deltaE} (--price ${price})`,
  stoppedEarly: 'Stopped early: this is the best so far.',
  progress: ({ share, note }: { share: ShareText; note: SayingText }) => `${share}  ${note}`,

  // serve
  open: ({ address }: { address: NameText }) => `The Workbench is open at ${address}  (Ctrl-C ends it)`,
};
