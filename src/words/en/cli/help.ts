import type { ListText, NameText, SayingText } from '../../say.ts';
import { capital } from '../grammar.ts';

/** What the command line says about itself: how each command is called, what it does, its options. Names of commands and options are typed: they stay. */
export const help = {
  // All commands.
  intro: 'Laydown plans layered stencil prints, from the first shape to the signed edition.',
  call: 'laydown COMMAND …',
  jobIs: 'JOB is a folder with job.json in it, or a .laydown file.',
  more: 'laydown COMMAND --help says more about a command.',
  callOf: ({ usage }: { usage: SayingText }) => `laydown ${usage}`,
  sentence: ({ text }: { text: SayingText }) => `${capital(text)}.`,
  moreOf: ({ command }: { command: NameText }) => `laydown ${command} --help says more.`,
  lang: ({ languages }: { languages: ListText }) => `the language: ${languages}; if left out, the one your system is set to`,
  langPrinted: ({ languages }: { languages: ListText }) =>
    `the language: ${languages}; if left out, what is printed follows the job, the terminal your system`,
  showHelp: 'shows this',

  // What stands for something that is typed.
  language: 'LANGUAGE',
  job: 'JOB',
  job2: 'JOB2',
  layer: 'LAYER',
  layers: 'LAYER,…',
  file: 'FILE',
  csvFile: 'FILE.csv',
  folder: 'FOLDER',
  paper: 'PAPER',
  inks: 'INK,…',
  name: 'NAME',
  step: 'STEP',
  percent: 'PERCENT',
  grams: 'GRAMS',
  amounts: 'INK=GRAMS,…',
  reading: 'READING',
  lot: 'INK=READING',
  words: 'WORDS',
  wishes: 'WISHES',
  photo: 'PHOTO',
  picture: 'PICTURE',
  parts: 'LIST',
  size: 'SIZE',
  mark: 'MARK',
  layerInk: 'N=INK@S',
  material: 'MATERIAL',
  way: 'HOW',

  // Shared by several.
  asJson: 'as JSON',
  replaceFile: 'replaces a file of that name',
  layerIs: 'its id, its name, or its run (1 is printed first)',
  onFirst: 'on this paper; if left out, the first',

  checkUsage: 'check JOB',
  checkSummary: 'lists everything that is wrong or doubtful in a job',
  checkText: 'Each problem comes with its place and what to do. Ends with code 1 if one of them stops the packet.',

  forecastUsage: 'forecast JOB [--json]',
  forecastSummary: 'foretells the colour of every overlap on every paper',
  forecastText:
    'Shows each overlap that covers area: its colour on a screen, its Lab (D50, 2°), how near the print is likely to come (± ΔE00), its area, and its layers, first down first.',

  packetUsage: 'packet JOB [--out FOLDER] [--replace] [--paper a4|letter] [--json]',
  packetSummary: 'makes the printed matter: proofs, cut sheets, cards, record',
  packetOut: 'where to put it; if left out, a folder beside the job, named after it with -packet',
  packetReplace: 'takes the place of an earlier packet',
  packetPaper: 'the paper in your printer: a4 (if left out) or letter',
  packetJson: 'prints plan.json instead and writes nothing',

  cutUsage: 'cut JOB LAYER|--stock N [--out FILE] [--paper a4|letter] [--replace] [--json]',
  cutSummary: 'shows one stencil, or a sheet of stock with several, and writes its cut file at true size',
  cutStock: 'instead of one stencil, sheet N of the stock with all that lie on it',
  cutOut:
    'the cut file to write, .svg or .dxf; a sheet of stock also as .pdf. A stencil is only written if it is proven to hold together',
  cutPaper: 'with --stock and a .pdf: in parts on a4 or letter, with joining marks',
  cutJson: 'islands, bridges with what each costs in the print, certificate, knife work, as JSON',

  orderUsage: 'order JOB [--for WISHES] [--on PAPER] [--keep N] [--before A,B …] [--json]',
  orderSummary: 'ranks every order of the layers by what you want of it',
  orderFor: 'what counts, separated by commas; all alike unless weighed (clean=2):',
  orderWanted: 'nearest to the colours the job wants',
  orderColours: 'most colours that differ',
  orderRange: 'widest range from light to dark',
  orderClean: 'most chroma',
  orderSteady: 'least moved by a heavy or a light hand',
  orderKeep: 'how many to show (5 if left out)',
  orderBefore: 'A must be printed before B; as often as you like',

  recipeUsage: 'recipe JOB "L a b" [--on PAPER] [--over LAYER,…] [--pots INK,…] [--most N] [--retarder PERCENT] [--json]',
  recipeSummary: 'finds what to mix for a wanted colour, fewest pots first',
  recipeColour: 'the wanted colour: Lab, D50, 2°',
  recipeOver: 'over these layers, already printed',
  recipePots: 'from these pots only; if left out, from all inks of the job',
  recipeMost: 'at most so many pots (3 if left out)',
  recipeRetarder: 'how much of the pot is kept for retarder',

  mixUsage: 'mix JOB LAYER [--grams N] [--scale STEP] [--json]',
  mixSummary: 'weighs out the pot of a layer',
  mixGrams: 'so much in all; if left out, what the run needs, with what stays in screen and pot',
  mixScale: 'smallest step of the scale in grams (1 if left out)',

  potUsage:
    'pot JOB LAYER --holds INK=GRAMS,… --reads READING [--added INK=GRAMS,… --reads READING …] [--within ΔE] [--need GRAMS] [--on PAPER] | --looks "too weak"',
  potSummary: 'saves a pot whose drawdown is off',
  potHolds: 'what was weighed in: rockpool=70,clear-base=30',
  potReads: 'the dry drawdown: Lab in quotes, or a file of readings; once more after each --added',
  potAdded: 'what has been added since, round by round; each round needs its own --reads',
  potLooks:
    'without an instrument: "too weak", "too strong", "too warm", "too cool", "too dull" or "too clean". Shows colours to compare the drawdown with, and the reading each stands for',
  potWithin: 'how near is near enough (ΔE00 2 if left out)',
  potNeed: 'what the run still needs',

  pressUsage: 'press JOB [--json]',
  pressSummary: 'screen, film, gap and risers, register',
  pressText:
    'Does the image fit the screen, how thick is the film, how high are the gap and the risers, how far does the image grow, and how much does the drawing forgive?',
  pressJson: 'everything as JSON',

  registerUsage: 'register JOB [FILE.csv] [--form] [--out JOB2] [--json]',
  registerSummary: 'reads register test sheets: how far off layers fall in this studio',
  registerText:
    'The packet has the register test sheet. Print it twice on ten sheets, read which lines of the scales meet, and write them in a table.',
  registerFile:
    'a row for each place of each sheet: sheet, place, across, down. A line of the scale, or what a rule measures ("2.4 mm"). If left out, the readings in the job',
  registerForm: 'prints an empty table to fill in: laydown register JOB --form > readings.csv',
  registerOut: 'writes the job with these readings, planned with what they tell: a folder, or a .laydown file',

  dayUsage: 'day JOB [--hands N] [--json]',
  daySummary: 'the day by the hour: set-up, pulls, cleaning, and what to do while ink dries',
  dayText: 'From what the job says of the day: pulls an hour, set-up, cleaning, drying, rack, screens, humidity, people.',
  dayHands: 'as if so many people were at work: one pulls, the others rack, wash, mix and set up',

  editionUsage: 'edition JOB [--csv] [--json]',
  editionSummary: 'how many sheets to start with, proofs to hold back, numbers for the pencil, the record',
  editionText:
    'Before printing: how many sheets to start with. Once they are counted at the press (press-count.log in the job): every sheet with its mark.',
  editionCsv: 'the register of sheets as CSV',

  againUsage: 'again JOB LAYER --lot INK=READING … [--shelf FILE] [--was READING] [--on PAPER] [--json]',
  againSummary: 'matches an earlier colour with new lots of ink',
  againText: 'The job is the record of what was printed then.',
  againLot: 'the new lot drawn down on the paper: Lab in quotes, or a file of readings; once for each ink with a new lot',
  againShelf: 'the lots in use on this shelf are the new ones, for all inks without a --lot',
  againWas: 'what the print of then reads now, if it can be read',
  againOn: 'the paper that the new lots were drawn down on and that is printed on; if left out, the first',

  readingsUsage: 'readings FILE [--json]',
  readingsSummary: 'reads measured colours: CGATS.17, CxF3, or a table (CSV)',
  readingsText: 'Lists every patch with its Lab (D50, 2°).',
  readingsJson: 'each patch as a reading that job.json takes',

  photoUsage: 'photo PHOTO --ink NAME [--parts 1:0,1:1,1:2] [--paper "L a b"] [--grey "L a b"] [--json]',
  photoSummary: 'reads a photograph of a drawdown sheet',
  photoText: 'The sheet is found by its four corner marks, and uneven light is evened out by the bare paper.',
  photoInk: 'what was drawn down',
  photoParts: 'strengths of the sheet, as it was printed (1:0,1:1,1:2,1:4,1:8,1:16 if left out)',
  photoPaper: 'the colour of the sheet itself, if it was ever read',
  photoGrey: 'the colour of the grey card on the sheet; it sets the scale better than paper does',
  photoJson: 'the ink as job.json takes it',

  drawdownsUsage: 'drawdowns [JOB] [--ink NAME …] [--parts 1:0,1:1,1:2] --out FILE.pdf [--replace]',
  drawdownsSummary: 'prints the sheets that inks are drawn down on and photographed',
  drawdownsText:
    'A page for each ink, with a place for each strength, over white and over a black bar, and with marks by which a photograph is found.',
  drawdownsJob: 'a page for every ink of the job',
  drawdownsInk: 'a page for this ink; as often as you like',
  drawdownsParts: 'ink to base by volume, up to seven strengths (1:0,1:1,1:2,1:4,1:8,1:16 if left out)',
  drawdownsOut: 'the PDF to write',

  shelfUsage: 'shelf FILE … [--from JOB] [--out FILE] [--replace] [--json]',
  shelfSummary: 'shows the studio’s ink shelf, puts shelves together, takes a job’s inks onto it',
  shelfText: 'Lists inks, lots, papers and pots of a shelf file. Several files are put together: the same ink gets the lots of all.',
  shelfFrom: 'puts the inks and papers of a job on the shelf (FILE need not exist yet)',
  shelfOut: 'writes the shelf that comes of it',

  traceUsage: 'trace PHOTO --sheet SIZE | --scan PPI | --mask MM [--out FILE.svg] [--smooth MM] [--corners "x,y x,y x,y x,y"] [--replace]',
  traceSummary: 'draws the outline of a real thing, photographed on a sheet of paper, at true size',
  traceSheet:
    'the paper it lies on: a4, letter, or width x height in mm (300x400). Its corners are found and the perspective is taken out',
  traceCorners: 'the sheet’s corners in pixels, clockwise from the top left, if they were not found right',
  traceScan: 'a flat scan of so many pixels an inch',
  traceMask: 'a black-and-white picture, so many mm wide: black is the shape',
  traceSmooth: 'how far smoothing may move the outline (0.2 if left out)',
  traceOut: 'the drawing to write; if left out, the photo’s name with .svg',

  separateUsage: 'separate [PICTURE] --with JOB [--layers N] [--out FOLDER] [--replace] …',
  separateSummary: 'turns a picture into stencils, inks and an order: a new job',
  separatePicture:
    'JPEG, PNG, WebP or TIFF. If left out: the picture that JOB keeps, with all that is asked of it there (marks painted at the bench, too) and what you say here over it',
  separateLayers: 'how many stencils (1 to 8; 4 if left out)',
  separateWith: 'the job whose inks, papers, materials and register are used',
  separateOut: 'where the new job goes; if left out, the picture’s name. The job keeps the picture and what was asked',
  separateReplace: 'puts the new job in the place of one that this command made before',
  thePicture: 'The picture',
  separateCrop: 'the part that is printed, in per cent of the picture: from the left, from the top, width, height',
  separateWidth: 'width of the image',
  separateHeight:
    'height of the image. Of one the other follows the part that is printed. With both, or with neither (the image of the job), the largest piece of that part with these proportions is printed, around its middle',
  separateMark:
    'where a wrong colour counts more (four times), less (a quarter) or not at all (none), in per cent of the picture: "more box 20,30,25,40" as for --crop, or "less brush 5 10,20 40,25", a brush 5 wide drawn from place to place. As often as you like; later marks lie over earlier ones',
  separateMarks: 'the same from a text file, a mark a line',
  layersAndInks: 'Layers and inks',
  separatePots: 'inks to choose from; if left out, all that were read',
  separateMostInPot: 'at most so many inks in one pot (1 to 3; 2 if left out)',
  separateLayer: 'layer N (1 is printed first) is of this ink: 2=brick, or at a strength, 2=brick@40%. As often as you like',
  separateInPlace: 'layers that keep their place in the laydown',
  separatePairs: 'window and piece of one cut as two layers: half the cutting',
  separateOver: 'the job’s layers are printed already: go on from them',
  separateOn: 'the paper it is planned on; if left out, the first',
  knifeAndRegister: 'Knife and register',
  separateMetres: 'at most so many metres to cut, all stencils together',
  separateMinutes: 'at most so many minutes with the knife',
  separatePieces: 'at most so many pieces to lift out',
  separateLeast: 'narrowest line and strip; if left out, what the material allows',
  separatePrice:
    'instead of metres: what a mm of outline must save, ΔE·mm² (2 if left out), as the list “more knife, less error” names it',
  separateMaterial: 'what is cut; if left out, the job’s first material',
  separateSigma: 'register error planned for; if left out, the job’s register',
  theSearch: 'The search',
  separateReach: 'what colours out of reach do: keep their lightness, chroma or contrast, or become the nearest (if left out)',
  separateEffort: 'how long to search: 0.3 for a quick look, 3 for a long one',
  separateSeed: 'the number that chance starts from: same number, same result',
  separateStop: 'Ctrl-C stops the search and takes the best so far.',

  serveUsage: 'serve [JOB] [--port N]',
  serveSummary: 'opens the Workbench in the browser, on this machine only',
  serveText: 'Serves the Workbench at 127.0.0.1, with JOB open if one is named. Nothing leaves the machine. Ctrl-C ends it.',
  servePort: 'which port (4180 if left out, or a free one if that is taken)',
};
