import type { ListText, NameText, SayingText } from '../../say.ts';

/** A thing of a list: by its name, or by its number while it has none. */
interface Nth {
  readonly n: number;
  readonly name?: NameText;
}
interface In {
  readonly of: SayingText;
}
/** Whose field it is: `of run 6 (Foam)`, and `run 6 (Foam)` alone. */
interface Field {
  readonly of: SayingText;
  readonly it: SayingText;
}
const thing =
  (noun: string) =>
  ({ n, name }: Nth) =>
    name === undefined ? `${noun} ${n}` : `the ${noun} “${name}”`;
const ofThing =
  (noun: string) =>
  ({ n, name }: Nth) =>
    name === undefined ? `of ${noun} ${n}` : `of the ${noun} “${name}”`;
const numbered =
  (noun: string) =>
  ({ n }: Nth) =>
    `${noun} ${n}`;
const inner =
  (noun: string) =>
  ({ n, name, of }: Nth & In) =>
    name === undefined ? `${noun} ${n} ${of}` : `${noun} ${n} (${name}) ${of}`;
const field =
  (noun: string) =>
  ({ of }: Field) =>
    `${noun} ${of}`;
const whether =
  (what: string) =>
  ({ it }: Field) =>
    `whether ${it} ${what}`;

/** Where something is: places outside the job, the things in a job (as they are, and with “of”), and the fields of each. */
export const where = {
  // No field of the job.
  theFile: 'the file',
  file: ({ file }: { file: NameText }) => file,
  fileLine: ({ file, line }: { file: NameText; line: number }) => `${file}, line ${line}`,
  inFile: ({ what, file }: { what: SayingText; file: NameText }) => `${what} in ${file}`,
  patch: ({ file, patch }: { file: NameText; patch: NameText }) => `${file}, patch “${patch}”`,
  folder: ({ folder }: { folder: NameText }) => folder,
  option: ({ option }: { option: NameText }) => `the option ${option}`,
  commandLine: 'the command',
  typed: 'what was typed',
  workbench: 'the Workbench',
  packet: 'the packet',
  packetPage: ({ n }: { n: number }) => `page ${n} of the packet`,
  printerMargin: 'the margin of the printer',
  names: 'the names',
  version: ({ name }: { name: NameText }) => `the version “${name}”`,
  sheet: ({ sheet }: { sheet: NameText }) => `sheet ${sheet}`,
  sheetOfPaper: ({ sheet, paper }: { sheet: NameText; paper: NameText }) => `sheet ${sheet} of the paper “${paper}”`,
  testSheet: ({ sheet }: { sheet: number }) => `test sheet ${sheet}`,
  testPlace: ({ sheet, place }: { sheet: number; place: SayingText }) => `test sheet ${sheet}, ${place}`,
  drawdown: 'the drawdown',
  drawdownSheet: 'the drawdown sheet',
  reading: 'the reading',
  stencilOf: ({ layer }: { layer: NameText }) => `the stencil of ${layer}`,
  stockSheet: ({ n, material }: { n: number; material: NameText }) => `sheet ${n} of ${material}`,
  mix: 'the mix',
  mixOf: ({ layer }: { layer: NameText }) => `the mix for ${layer}`,
  pot: 'the pot',
  potOf: ({ layer }: { layer: NameText }) => `the pot of ${layer}`,
  overlap: ({ layers }: { layers: ListText }) => `the overlap of ${layers}`,
  inkShelf: 'the ink shelf',
  inkOnShelf: ({ ink }: { ink: NameText }) => `the ink “${ink}” on the shelf`,
  paperOnShelf: ({ paper }: { paper: NameText }) => `the paper “${paper}” on the shelf`,
  potOnShelf: ({ pot }: { pot: NameText }) => `the pot “${pot}” on the shelf`,
  count: 'the count at the press',

  // Things in a job.
  job: 'the job',
  run: ({ n, name }: Nth) => (name === undefined ? `run ${n}` : `run ${n} (${name})`),
  ofRun: ({ n, name }: Nth) => (name === undefined ? `of run ${n}` : `of run ${n} (${name})`),
  layer: thing('layer'),
  ofLayer: ofThing('layer'),
  bridge: inner('bridge'),
  ofBridge: inner('of bridge'),
  bridgeless: inner('bridgeless spot'),
  ofBridgeless: inner('of bridgeless spot'),
  form: thing('form'),
  ofForm: ofThing('form'),
  cut: thing('cut'),
  ofCut: ofThing('cut'),
  partOfCut: inner('form'),
  ofPartOfCut: inner('of form'),
  ink: thing('ink'),
  ofInk: ofThing('ink'),
  base: thing('base'),
  ofBase: ofThing('base'),
  retarder: thing('retarder'),
  ofRetarder: ofThing('retarder'),
  mixture: thing('mix'),
  ofMixture: ofThing('mix'),
  partOfMix: inner('part'),
  ofPartOfMix: inner('of part'),
  strengthOfLadder: inner('strength'),
  ofStrengthOfLadder: inner('of strength'),
  paper: thing('paper'),
  ofPaper: ofThing('paper'),
  onPaper: ({ n, name }: Nth) => (name === undefined ? `on paper ${n}` : `on the paper “${name}”`),
  material: thing('material'),
  ofMaterial: ofThing('material'),
  ofStock: ({ of }: In) => `of the sheets ${of}`,
  image: 'the image',
  ofImage: 'of the image',
  testReading: numbered('test reading'),
  ofTestReading: numbered('of test reading'),
  wantedColour: numbered('wanted colour'),
  ofWantedColour: numbered('of wanted colour'),
  proofReading: numbered('proof reading'),
  ofProofReading: numbered('of proof reading'),
  potLog: ({ n, name }: Nth) => (name === undefined ? `pot log ${n}` : `the pot log of ${name}`),
  ofPotLog: ({ n, name }: Nth) => (name === undefined ? `of pot log ${n}` : `of the pot log of ${name}`),
  weighedIn: inner('ingredient'),
  ofWeighedIn: inner('of ingredient'),
  round: inner('drawdown'),
  ofRound: inner('of drawdown'),
  picture: 'the picture',
  ofPicture: 'of the picture',
  ofCrop: 'of the crop of the picture',
  mark: ({ n }: Nth) => `mark ${n} on the picture`,
  ofMark: ({ n }: Nth) => `of mark ${n} on the picture`,
  pictureLayer: ({ n }: Nth) => `layer ${n} of the picture`,
  ofPictureLayer: ({ n }: Nth) => `of layer ${n} of the picture`,

  // Fields that many things have.
  id: field('the short name'),
  name: field('the name'),
  note: field('the note'),
  kind: field('the kind'),
  width: field('the width'),
  height: field('the height'),
  thickness: field('the thickness'),
  across: field('the position across'),
  down: field('the position down'),
  position: field('the position'),
  start: field('the start'),
  end: field('the end'),
  radius: field('the radius'),
  date: field('the date'),
  layersOf: field('the layers'),
  paperIn: field('the paper'),
  inkOf: field('the ink'),
  materialOf: field('the material'),
  labOf: field('the Lab'),
  readingOf: field('the reading'),
  inReading: ({ reading, part }: { reading: SayingText; part: SayingText }) => `${reading}, ${part}`,
  itsKind: 'its kind',
  itsSpectrum: 'its spectrum',
  itsXyz: 'its XYZ',
  itsLab: 'its Lab',
  itsDoubt: 'its doubt',
  itsNote: 'its note',

  // The job as a whole.
  format: 'the format of the job',
  title: 'the title of the job',
  maker: 'the maker’s name',
  units: 'the units of the job',
  language: 'the language of the packet',
  stencilMargin: 'the margin of the stencils',
  materials: 'the materials',
  forms: 'the forms',
  cuts: 'the cuts',
  layers: 'the layers',
  inks: 'the inks',
  papers: 'the papers',
  wanted: 'the wanted colours',
  proofReadings: 'the readings of proofs',
  potLogs: 'the pot logs',
  chance: 'the number that chance starts from',
  jobNote: 'the note on the job',
  knifePace: 'the pace of the knife',
  paceAlong: 'the pace of the knife along a line',
  paceCorner: 'the time the knife takes for a corner',
  pacePiece: 'the time it takes to lift out a piece',

  // Forms and cuts.
  drawing: field('the drawing'),
  outline: field('the outline'),
  formsOn: field('the forms'),
  formIn: field('the shape'),
  how: ({ it }: Field) => `how ${it} is joined to the rest`,
  angle: field('the angle'),
  scale: field('the scale'),
  mirror: whether('is mirrored'),
  repeat: field('the repeat'),
  repeatKind: field('the kind of repeat'),
  columns: field('the columns'),
  rows: field('the rows'),
  stepAcross: field('the step across'),
  stepDown: field('the step down'),
  copies: field('the number of copies'),
  centre: field('the centre'),
  turns: ({ of }: Field) => `whether the copies ${of} are turned`,
  throw: field('the throw'),
  leastDistance: field('the least distance'),

  // Layers.
  cutOf: field('the cut'),
  side: field('the side of the cut'),
  strength: field('the strength'),
  baseOf: field('the base'),
  spread: field('the spread'),
  gapOf: ({ it }: Field) => `the gap under the screen in ${it}`,
  islands: field('the islands'),
  bridgesBy: ({ of }: Field) => `how the bridges ${of} are laid`,
  bridges: field('the bridges'),
  bridgelessSpots: field('the bridgeless spots'),
  leftOut: whether('is left out'),
  via: field('the path'),

  // Inks.
  madeFrom: ({ it }: Field) => `how ${it} was read`,
  density: field('the density'),
  drawdownFilm: field('the wet film of the drawdown'),
  role: field('the role'),
  ground: field('the reading of the bare ground'),
  over: field('the reading'),
  white: field('the reading of the bare white'),
  overWhite: field('the reading over white'),
  black: field('the reading of the bare black'),
  overBlack: field('the reading over black'),
  ladder: field('the tint ladder'),
  shareOf: field('the share'),
  parts: field('the parts'),
  grams: field('the grams'),

  // Papers.
  sheets: field('the number of sheets'),
  grain: field('the grain'),
  edge: field('the edge'),
  imageAt: field('the position of the image'),
  printed: field('the earlier print'),
  printedPicture: field('the picture'),
  printedAt: field('the position of the earlier print'),
  printedWidth: field('the width of the earlier print'),
  printedNote: field('the note on the earlier print'),

  // Materials.
  leastBridge: field('the narrowest bridge'),
  leastOpening: field('the narrowest opening'),
  lasts: ({ of }: Field) => `how many prints a stencil ${of} lasts`,
  washable: ({ of }: Field) => `whether a stencil ${of} can be washed`,
  stock: field('the sheet size'),
  margin: field('the margin'),
  kerf: field('the kerf'),

  // Screen.
  screen: 'the screen',
  frameWidth: 'the inside width of the frame',
  frameHeight: 'the inside height of the frame',
  mesh: 'the mesh',
  threadCount: 'the thread count of the mesh',
  thread: 'the thread of the mesh',
  opening: 'the openings of the mesh',
  openArea: 'the open area of the mesh',
  meshThickness: 'the thickness of the mesh',
  inkVolume: 'the ink volume of the mesh',
  hinge: 'the side of the hinge',
  gap: 'the gap under the screen',
  hingeLift: 'the height of the hinge',
  tension: 'the tension of the mesh',
  squeegee: 'the squeegee',
  transfer: 'the share of the ink that reaches the paper',
  riserBoard: 'the board for the risers',
  screenNote: 'the note on the screen',

  // Register.
  register: 'the register',
  method: 'how the sheets are placed',
  sigma: 'the measured register error',
  measured: 'this studio’s register',
  measuredAcross: 'the register error across',
  measuredDown: 'the register error down',
  measuredTurn: 'the register error in turning',
  measuredSheets: 'the number of test sheets',
  testSheets: 'the test sheets',
  testImage: 'the image size of the test sheets',
  testScale: 'the scales of the test sheets',
  testReadings: 'the readings of the test sheets',
  sheetOf: field('the sheet'),
  humidityRange: 'the range of humidity',

  // Edition.
  edition: 'the edition',
  target: 'the size of the edition',
  certainty: 'the certainty of the edition',
  spoilage: 'the spoilage in each run',
  setUpSheets: 'the set-up sheets for each run',
  artistsProofs: 'the share of A/P',
  batProofs: 'the number of B.A.T.',
  printersProofs: 'the number of P/P',
  horsCommerce: 'the number of H.C.',
  papersAre: 'what several papers make',
  year: 'the year of the edition',
  workshop: 'the workshop',
  setApart: 'the sheets set apart',
  record: 'the record',
  signature: 'the signature in the record',
  printer: 'the printer in the record',
  printedFrom: 'the first day of printing in the record',
  printedTo: 'the last day of printing in the record',
  master: 'the fate of the stencils in the record',
  otherEditions: 'the other editions in the record',
  posthumous: 'whether the record says it was printed posthumously',

  // The day.
  day: 'the day',
  startHour: 'the start of the day',
  endHour: 'the end of the day',
  pace: 'the pulls an hour',
  setUpTime: 'the time to set up a run',
  cleanTime: 'the time to wash a screen',
  dryTime: 'the time the ink takes to dry',
  rackPlaces: 'the places on the rack',
  screens: 'the number of screens',
  humidity: 'the humidity of the day',
  hands: 'the people at work',
  helpedPace: 'the pulls an hour with someone racking',

  // Pots that were corrected.
  logLayer: field('the layer'),
  contents: field('the contents'),
  rounds: field('the drawdowns'),
  added: field('what was added'),
  says: field('what was said'),
  adding: field('what was stirred in last'),

  // The picture.
  pictureFile: 'the file of the picture',
  pictureName: 'the name of the picture',
  crop: 'the crop of the picture',
  marks: 'the marks on the picture',
  weight: field('the weight'),
  stroke: field('the stroke'),
  pictureLayers: 'the number of layers from the picture',
  pots: 'the pots to choose from',
  wishes: 'what is decided about the layers from the picture',
  placeFixed: whether('keeps its place'),
  overLayers: 'whether the picture goes over the job’s own layers',
  cutPairs: 'whether the picture is printed in cut pairs',
  knifeBudget: 'the limits of the knife work',
  knifeMetres: 'the metres the knife may take',
  knifeMinutes: 'the minutes the knife may take',
  knifePieces: 'the pieces the knife may take',
  knifeWidth: 'the narrowest line for the knife',
  knifePrice: 'the price of the knife work',
  pictureMaterial: 'the material for the picture',
  pictureSigma: 'the register error that the picture allows for',
  reach: 'what colours out of reach keep',
  mostInPot: 'the most inks in a pot',
  effort: 'the length of the search',
  pictureChance: 'the number that the search starts from',
};
