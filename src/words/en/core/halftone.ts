import { many } from '../grammar.ts';
import type { DeltaText, FilmText, LengthText, ListText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';

export interface WayValues {
  readonly work: TimeText;
  readonly make: TimeText;
  readonly metres: LengthText;
  readonly off: DeltaText;
}

/** Runs of tone: films, dots, wedges, splits. */
export const halftone = {
  exposed: 'Exposed through a film: nothing is cut, and the emulsion holds every dot.',

  // A chart of tones against the forecast.
  chartEmpty: 'There are no rows in this file.',
  writeChart: 'Write a heading with the short names of the layers, and below it one row a field: what each film covers, 0 to 1.',
  chartTooLong: ({ most }: { most: number }) => `This file has more than ${many(most, 'row', 'rows')}.`,
  splitChart: 'Ask in several files.',
  noLayerNamed: 'No column is named after a layer of this job.',
  nameLayers: ({ ids }: { ids: ListText }) => `The layers are ${ids}.`,
  columnUnknown: ({ column }: { column: NameText }) => `There is no layer “${column}”; its column is left out.`,
  notACover: ({ text }: { text: NameText }) => `“${text}” is not what a film can cover.`,
  coverFromTo: 'Write shares from 0 (bare) to 1 (solid): a half tone is 0.5.',
  noTone: 'No run of this job carries tone on a paper that was read.',
  giveTone: 'Give a layer a tone: see laydown explain layers.tone.',
  isN: ({ n }: { n: NumberText }) => `Light spreads between the dots as Yule–Nielsen’s n = ${n} has it.`,
  noWedge: ({ layers }: { layers: ListText }) =>
    `No wedge was read of ${layers}: what the dots gain is taken from the mesh. Print a wedge and read it; the bands get narrower.`,

  byFilm: 'exposed through a film',
  films: 'Films',
  filmsSide: 'One film a run of tone',
  filmsIntro: 'Make the films at the printer’s own resolution: at the bench beside each film, or with laydown positive.',
  filmsWedge: 'Beside its image each film carries a small wedge: printed along with the run, it shows whether the curve still holds.',
  filmFacts: ({ ruling, angle, threads, gain }: { ruling: NumberText; angle: NumberText; threads: NumberText; gain: ShareText }) =>
    `${ruling} dots a cm at ${angle}°: ${threads} threads a dot (the handbook asks 2.5 to 5); half a tone is taken to come to ${gain}`,
  grainFacts: ({ least, gain }: { least: FilmText; gain: ShareText }) => `Grain of ${least}; half a tone is taken to come to ${gain}`,
  filmCovers: ({ film, paper }: { film: ShareText; paper: ShareText }) => `Covers ${film} of the image on the film, ${paper} on the paper`,
  moireOf: ({ layers, period }: { layers: ListText; period: LengthText }) => `Bands of ${layers}: about ${period} wide, weak`,
  moireStrong: ({ layers, period }: { layers: ListText; period: LengthText }) =>
    `Bands of ${layers}: about ${period} wide, plain to see. Turn one of the films, or change its ruling.`,
  toneLook: 'Tone, as it will look',
  fromArm: 'The print as eyes see it from arm’s length, where they no longer tell the dots apart.',
  fromArmFile: ({ paper }: { paper: NameText }) => `The print on ${paper} from arm’s length`,
  bandsPatch:
    'Half tones of all films on one another, at true size and through their meshes: what bands there are show here as they will in the print.',
  toneRegister:
    'Dots at angles of their own may shift against one another and hardly change colour; lines, and edges beside cut runs, show it.',
  theMesh: 'the mesh',

  // Lines that a knife cuts.
  pitchTooSmall: ({ pitch, least }: { pitch: LengthText; least: LengthText }) =>
    `Lines ${pitch} apart are too close: the narrowest opening and the narrowest strip of this material need ${least}.`,
  widerPitch: 'Set them farther apart, or take another material.',
  noLines: 'The picture is too light everywhere for a single opening.',
  darkerPicture: 'Take a darker picture, or set the lines closer.',
  linesMade: ({ n, pitch, lightest, darkest }: { n: number; pitch: LengthText; lightest: ShareText; darkest: ShareText }) =>
    `${many(n, 'opening', 'openings')}, ${pitch} from line to line: tones from ${lightest} to ${darkest}; what is lighter stays bare.`,
  linesReach: ({ bare, darkest }: { bare: NumberText; darkest: NumberText }) =>
    `Printed in this ink the picture’s darkest place comes to a lightness L* of ${darkest}; bare paper is ${bare}.`,
  inkTooPale: ({ ink }: { ink: NameText }) => `“${ink}” hardly differs from the paper in lightness: it draws no picture.`,
  strongerInk: 'Take a darker ink, or a lighter paper.',
  linesWritten: ({ folder, layer }: { folder: NameText; layer: NameText }) =>
    `Written to ${folder}. The cut file: laydown cut ${folder} ${layer} --out lines.svg.`,

  // On the film itself.
  filmOf: ({ title, run, layer }: { title: NameText; run: number; layer: NameText }) => `${title}: run ${run}, ${layer}`,
  filmDots: ({
    ruling,
    angle,
    shape,
    least,
    dpi,
  }: {
    ruling: NumberText;
    angle: NumberText;
    shape: SayingText;
    least: FilmText;
    dpi: number;
  }) => `${ruling} a cm, ${angle}°, ${shape}, none under ${least}; ${dpi} dpi`,
  filmGrain: ({ least, dpi }: { least: FilmText; dpi: number }) => `grain of ${least}; ${dpi} dpi`,
  filmStraight: 'Not mirrored: lay the printed face on the emulsion.',
  filmMirrored: 'Mirrored: lay the unprinted face on the emulsion.',
  roundDots: 'round dots',
  ellipseDots: 'long dots',
  lineDots: 'lines',
  filmWritten: ({
    file,
    width,
    height,
    ruling,
    angle,
  }: {
    file: NameText;
    width: number;
    height: number;
    ruling: NumberText;
    angle: NumberText;
  }) => `${file}: ${width} × ${height} pixels; the dots come out at ${ruling} a cm and ${angle}°`,
  grainWritten: ({ file, width, height }: { file: NameText; width: number; height: number }) =>
    `${file}: ${width} × ${height} pixels of grain`,
  noToneRun: 'No run of this job carries tone.',
  filmCaution:
    'Emulsion and its cleaners: gloves, eye protection and fresh air, out of children’s reach; never look into the exposure light; catch the first wash water. The labels and local rules decide.',

  // The wedge page and the exposure strip.
  wedgeFor: ({ title, layers }: { title: NameText; layers: ListText }) => `${title}: wedge, to be printed in ${layers}`,
  wedgePhoto: 'Read the dry print with an instrument, or photograph it: all four rings in view, even light, no gloss, nothing burnt out.',
  stripFor: ({ title }: { title: NameText }) => `${title}: exposure test strip`,
  stripHow: 'Cover row after row from the top: each one gets 1.4 times the light of the row above it.',
  stripDots: ({ ruling, angle, dpi }: { ruling: NumberText; angle: NumberText; dpi: number }) =>
    `${ruling} a cm, ${angle}°, down to the printer’s own dot; ${dpi} dpi`,
  stepOf: ({ cover }: { cover: ShareText }) => `step of ${cover}`,
  wedgePale: 'The solid of this wedge hardly differs from the paper in the photograph.',
  wedgeByNumbers: 'Read its steps with an instrument and type them in, or print a stronger pot.',
  wedgeUneven: ({ by }: { by: ShareText }) => `The two fields of one step differ by ${by}: the pull or the light was uneven.`,
  pullEvenly: 'Their mean is taken. Better print the wedge again with one even pull.',
  wedgeUnread: 'No steps of a wedge were found here.',
  typeWedge:
    'Write a step a line, in per cent of the film, with density or Lab behind it: “50: 0.62”, the solid as 100 and the paper as 0.',
  notADensity: ({ density }: { density: NumberText }) => `No print has a density of ${density}.`,
  nameSteps: ({ n }: { n: number }) => `Name the patches by their steps (5, 10 … 100), or read all ${n} fields of the page in its order.`,
  wedgeNoSolid: 'Densities need that of the solid, and it must be higher than the paper’s.',
  wedgeFallsBack: ({ cover }: { cover: ShareText }) => `The step of ${cover} lies farther from the solid than a lighter one.`,
  readStepAgain: 'The two are levelled out. Check that no steps were mixed up, and read them again.',
  wedgeShort: 'Few steps were read: the curve between them is a guess.',
  readMoreSteps: 'Read at least three, better all of them.',
  wedgeWritten: ({ file, layer }: { file: NameText; layer: NameText }) => `${file}: the wedge of ${layer}, to be printed at true size.`,
  stripWritten: ({ file }: { file: NameText }) => `${file}: the exposure test strip, to be printed at true size.`,
  curveOf: ({ layer, paper }: { layer: NameText; paper: NameText }) =>
    `${layer} on ${paper}: what stands on the film, and what comes to lie on the paper`,
  curveRead: ({ half, n, off }: { half: ShareText; n: NumberText; off: DeltaText }) =>
    `Half a tone comes to ${half}; light spreads with n = ${n}; the steps are met within ${off} on average.`,
  curveGuessed: ({ half }: { half: ShareText }) => `No wedge was read: half a tone is taken to come to ${half}, from mesh and paper.`,
  wedgeKept: ({ n }: { n: number }) => `${many(n, 'step', 'steps')} kept in the job: plan, split and films go by them.`,
  wedgeNotKept: 'Nothing was kept: say --keep to take these steps into the job.',
  filmExposed: ({ time }: { time: NumberText }) => `Expose ${time} s, as the test strip showed`,
  notARow: ({ text }: { text: NameText }) => `“${text}” says nothing about a row.`,
  writeRows: 'Write for each row the lightest tint that opened and the darkest that stood, “5-95”, or “-” where nothing did.',
  rowsWanted: ({ most }: { most: number }) => `A strip has one to ${many(most, 'row', 'rows')}.`,
  stripHeldNothing: 'No row of this strip held a tone.',
  stripAgain: 'Check coating and drying, and expose another strip with much longer times.',
  rowHad: ({ row, time }: { row: number; time: NumberText }) => `Row ${row}: ${time} s in all`,
  rowsAre: ({ first, more }: { first: NumberText; more: ListText }) =>
    `Expose the whole strip for ${first} s, cover row 1, then expose ${more} s more, covering one row more after each.`,
  exposeFor: ({ time, row, lightest, darkest }: { time: NumberText; row: number; lightest: ShareText; darkest: ShareText }) =>
    `Expose ${time} s, as row ${row}: it holds tones from ${lightest} to ${darkest}.`,
  stripAtShortest: 'The first row is among the best: another strip with shorter times may find a better one.',
  stripAtLongest: 'The last row is among the best: another strip with longer times may find a better one.',
  leastTaken: ({ least }: { least: FilmText }) => `Films draw no dot and no hole under ${least}: what emulsion and mesh both hold.`,
  exposureKept: 'Kept in the job, for every run on this mesh.',
  wedgeHead: 'Wedge and exposure',
  wedgeSide: 'Two films before the films',
  stripUse:
    'First the strip: coat and dry a screen as always, lay the film on, and expose it row by row as the table says. Wash out, and write down for each row the lightest tint that opened and the darkest whose emulsion still stands.',
  wedgeUse:
    'Then the wedge: expose it for that time, print it in the run’s own pot on its own paper with one even pull, and let it dry. Read every step, or photograph the sheet.',
  wedgeFiles: 'Both lie in this packet’s folder films, at 600 dpi; with laydown wedge they come out at any other resolution.',
  percentIs: ({ share }: { share: ShareText }) => `${share}`,
  curveHalf: ({ layer, half }: { layer: NameText; half: ShareText }) => `${layer}: no wedge yet; half a tone is taken to come to ${half}`,
  curveHalfRead: ({ layer, half, n }: { layer: NameText; half: ShareText; n: NumberText }) =>
    `${layer}: read; half a tone comes to ${half}, n = ${n}`,
  wedgeFile: ({ layers }: { layers: ListText }) => `Film of the wedge for ${layers}, 600 dpi`,
  stripFile: 'Film of the exposure strip, 600 dpi',
  timesFirst: ({ times }: { times: NumberText }) => `× ${times}`,
  wedgeTable: 'Step on the film',
  wedgeReading: 'read: density or Lab',
  stripRow: 'Row',
  stripTime: 'time',
  stripOpen: 'opened',
  stripHeld: 'stood',

  // The split.
  splitInks: ({ least, most }: { least: number; most: number }) => `A split takes ${least} to ${most} inks.`,
  nameInks: ({ ids }: { ids: ListText }) => `Name inks of this shelf: ${ids}.`,
  noSuchInk: ({ ink }: { ink: NameText }) => `There is no ink “${ink}” on this shelf.`,
  splitUnread: 'Not every ink and the paper have been read.',
  readFirst: 'Read their drawdowns first, or take other inks.',
  splitRun: ({ layer, mean, ruling, angle }: { layer: NameText; mean: ShareText; ruling: NumberText; angle: NumberText }) =>
    `${layer}: covers ${mean} of the image; ${ruling} dots a cm at ${angle}°`,
  splitGrain: ({ layer, mean }: { layer: NameText; mean: ShareText }) => `${layer}: covers ${mean} of the image; grain`,
  splitBack: ({ mean, p95 }: { mean: DeltaText; p95: DeltaText }) =>
    `In the inks’ reach the split comes back within ${mean} on average, ${p95} for nineteen in twenty colours.`,
  splitOut: ({ share, mean }: { share: ShareText; mean: DeltaText }) =>
    `${share} of the picture lies out of their reach, ${mean} off on average.`,
  splitWide: ({ share }: { share: ShareText }) =>
    `${share} of the picture is more colourful than sRGB can show; the split takes it as the file’s own profile has it.`,
  splitMost: ({ most }: { most: ShareText }) => `The films cover ${most} together at most.`,
  splitWritten: ({ folder }: { folder: NameText }) => `Written to ${folder}. The films: laydown positive ${folder}.`,

  // Ways of printing a run's tone, with what each costs.
  waysOf: ({ layer }: { layer: NameText }) => `${layer} could be printed:`,
  wayFilm: ({ work, make }: { work: TimeText; make: TimeText }) => `through a film: ${work}, ${make} of it for film and screen`,
  wayLines: ({ work, make, metres, off }: WayValues) =>
    `as cut lines: ${work}, ${make} of it at the knife (${metres}); ${off} off the film’s tones`,
  waySteps: ({ strengths, work, make, metres, off }: WayValues & { strengths: ListText }) =>
    `in flat strengths, ${strengths} of ink: ${work}, ${make} of it at the knife (${metres}); ${off} off`,
  wayLeast: ({ layer, way }: { layer: NameText; way: SayingText }) => `Without a film ${layer} is least work ${way}.`,
  wayTaken: ({ layer, way }: { layer: NameText; way: SayingText }) => `${layer} is printed ${way}.`,
  inFilm: 'through a film',
  inLines: 'as cut lines',
  inTwo: 'in two flat strengths',
  inThree: 'in three flat strengths',
  wayMinutes: 'Estimated, hands only, without drying. Flats lie one over the other, each a step darker; what is off is the mean ΔE00.',
  notThatWay: ({ layer, way }: { layer: NameText; way: SayingText }) =>
    `${layer} can’t be printed ${way}: this ink or this material does not hold it.`,
  otherWay: 'Choose another way: film, lines, 2, 3 or least.',
  tooManyRuns: ({ layer, n, most }: { layer: NameText; n: number; most: number }) =>
    `With ${layer} in flat strengths the job would have ${n} runs; ${most} is the most.`,
  fewerStrengths: 'Take two strengths, cut lines or a film for one of the inks.',
};
