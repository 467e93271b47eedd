export const overlaps = {
  title: 'Overlaps',
  knows: (n: number) => `${n} colours`,
  needsPrint: 'Needs runs with ink',
  chart: 'Every overlap in the print',
  chartOn: (paper: string, n: number) => `${n} overlaps on ${paper}`,
  chartWhy: (runs: number, note: string) =>
    `${runs} runs with ink can give ${2 ** runs} overlaps; listed are those that cover area in this print, with the bare paper. ${note}`,
  sortBy: 'Sorted by',
  byFilms: 'number of films',
  byArea: 'area',
  byLightness: 'lightness',
  byHue: 'hue',
  barePaper: 'Bare paper',
  films: (names: readonly string[]) => names.join(' + '),
  lab: 'Lab',
  band: 'Sureness',
  bandValue: (deltaE: string) => `± ${deltaE} ΔE00`,
  /** ΔE00 in words: about 1 is just seen side by side; common practice. */
  bandWords: (deltaE: number): string =>
    deltaE <= 1
      ? 'hardly a difference to the eye'
      : deltaE <= 2.5
        ? 'a small difference, seen side by side'
        : deltaE <= 5
          ? 'a difference one sees'
          : 'another shade is possible',
  /** The same of two colours that are there. */
  apartWords: (deltaE: number): string =>
    deltaE <= 1 ? 'hardly seen' : deltaE <= 2.5 ? 'seen side by side' : deltaE <= 5 ? 'plainly seen' : 'another shade',
  possible: 'May come out as',
  possibleWhy: 'Nine prints in ten lie between the two ends; the middle is the colour shown.',
  lamp: 'Under which light',
  lampWhy:
    'Colours as eyes that are used to that lamp see them, worked out from spectra (CIE 015 illuminants, Bradford adaptation). Where an ink was read as a colour alone its spectrum is a guess, and so is how it changes under a lamp. An earlier print is known from a picture alone; how it changes is a guess too, and pairs are told only where they lie on one ground of it.',
  lampMoves: (what: string, deltaE: string) => `${what} changes most: by ${deltaE} ΔE00.`,
  parting: 'Alike under one lamp, not under another',
  grounds: 'On what the sheet carries already',
  groundsWhy:
    'The earlier print is taken apart into a handful of colours, those that differ by more than 5 ΔE00 and cover more than a hundredth. Each stands for the smoothest spectrum of its colour; a picture is off by about 6 ΔE00 (10 where it could not hold the colour), which is followed through the films. On nine published sets 86 % of measured overprints over a ground known by its picture lay within such bands.',
  ground: (n: number, share: string) => `Ground ${n}: ${share} of the image`,
  groundNo: (n: number) => `on ground ${n}`,
  onGround: (what: string, n: number) => `${what} on ground ${n},`,
  spread: 'Ten sheets of the edition',
  spreadHand: 'Films vary from pull to pull by',
  spreadWhy:
    'What an uneven hand does by itself: each film of each sheet heavier or lighter by so much (standard deviation; 10 to 20 % by hand), everything else as foreseen. Bands from 200 sheets; the first ten are shown. Orders and strengths are compared by what a film of that much more moves.',
  spreadMean: (deltaE: string) => `Nine sheets in ten stay within ± ${deltaE} ΔE00 on average. Those that vary most:`,
  spreadSheet: (n: number) => `Sheet ${n} of ten`,
  spreadLess: 'What would lessen it',
  spreadNoWay: 'No order and no strength lessens it without making another print of it.',
  spreadOrder: (layers: readonly string[], deltaE: string, moved: string) =>
    `${layers.join(' → ')}: ± ${deltaE}; colours move by ${moved} ΔE00.`,
  spreadStrength: (layer: string, percent: string, deltaE: string, moved: string) =>
    `${layer} at ${percent} %: ± ${deltaE}; colours move by ${moved} ΔE00.`,
  spreadTake: 'Print it this way',
  spreadTaken: 'The job is planned this way now.',
  worth: 'Worth reading first',
  worthWhy:
    'Reading these overlaps on a first proof would narrow all foreseen colours most. The packet has a strip that prints just these.',
  worthNow: (band: string) => `The mean band is ± ${band} now.`,
  worthThen: (band: string) => `then ± ${band}`,
  showWorth: (what: string) => `Show ${what} on the proof`,
  photo: 'Photograph of the print',
  photoTitle: 'The printed sheet beside the proof',
  photoHow: 'Lay it flat, in even daylight without glare, with bare paper all round, and photograph it from straight above.',
  photoAnother: 'Another photograph',
  photoClose: 'Close the photograph',
  photoReading: 'Reading the photograph …',
  photoCornersOf: 'The corners are those of',
  photoOf: { sheet: 'the whole sheet', image: 'the printed image' },
  photoTurn: 'Turn by a quarter',
  photoMoveCorners: 'Move the four corners until they lie on those of the print. Arrow keys move the one in hand.',
  photoCorner: (n: number) => `Corner ${n} of 4. Arrow keys move it by a pixel, Shift by ten.`,
  photoSquared: (paper: string) => `The photograph, squared up, on ${paper}`,
  photoProof: (paper: string) => `The proof on ${paper}`,
  photoSides: 'Left: foreseen. Right: as photographed, its light evened out by the bare paper.',
  photoSeen: (n: number) => (n === 1 ? '1 overlap read' : `${n} overlaps read`),
  photoWhy:
    'Read where each lies broadest, and set by the bare paper. A photograph is far less sure than an instrument: taken in, it teaches a little and replaces none.',
  photoBeyond: (n: number, names: string) =>
    n === 1
      ? `${names} differs by more than photograph and forecast may be off: look at its pot and its film.`
      : `${names} differ by more than photograph and forecast may be off: look at their pots and films.`,
  photoSuspect: (run: string) => `All overlaps with ${run} differ, and no others do: look at its pot and its film.`,
  photoWithin: 'Every overlap lies within what photograph and forecast may be off.',
  photoNarrow: (n: number) =>
    n === 1 ? '1 overlap lies nowhere broad enough to be read.' : `${n} overlaps lie nowhere broad enough to be read.`,
  photoApart: (deltaE: string, doubt: string) => `ΔE00 ${deltaE}, the photograph ±\u00a0${doubt}`,
  photoIsBeyond: 'more than the doubt',
  photoByInstrument: 'read by an instrument',
  photoTake: 'Take as a reading',
  photoTakeOf: (what: string) => `: ${what}`,
  photoTaken: 'Taken',
  photoTakeAll: (n: number) => (n === 1 ? 'Take the 1 reading' : `Take all ${n} readings`),
  photoTook: (n: number) => (n === 1 ? '1 reading taken into the job.' : `${n} readings taken into the job.`),
  foreseen: 'foreseen',
  measured: 'measured on a proof',
  area: 'Area',
  screen: 'Screen',
  outOfGamut: 'More vivid in print than this screen can show',
  inGamut: 'This screen can show it',
  point: 'Point at the proof, or at a swatch.',
  letGo: 'Let go',
  proofOnly: (what: string, share: string) => `Proof with only ${what} in colour, ${share} of the image`,
  /** Before the share that stands under the swatch. */
  ramp: (layer: string) => `${layer} from bare to solid; figures for the solid`,
  swatch: (what: string) => `${what},`,
  tiny: '<\u00a00.1\u00a0%',
};
