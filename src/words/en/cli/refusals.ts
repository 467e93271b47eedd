import type { LengthText, ListText, NameText, SayingText } from '../../text.ts';

/** What commands can't do as it was asked, and what to write instead. */
export const refusals = {
  // Orders
  noSuchWish: ({ wish }: { wish: NameText }) => `“${wish}” is not a wish.`,
  notTwoLayers: ({ text }: { text: NameText }) => `“${text}” does not name two layers.`,
  writeBefore: 'Write --before sky,water.',

  // Recipes, pots, lots
  wantedColour: 'the wanted colour',
  whichColour: 'Which colour is wanted?',
  noSuchComplaint: ({ text }: { text: NameText }) => `“${text}” is not among the words that are understood.`,
  whatInPot: 'What is in the pot?',
  writeHolds: 'Write --holds rockpool=70,clear-base=30.',
  roundsDiffer: ({ reads, added }: { reads: number; added: number }) =>
    `The drawdowns (${reads}) and the additions (${added}) do not go together.`,
  oneReadsMore: 'Give one --reads for the pot as first mixed, and one more after each --added.',
  lotWithoutReading: ({ text }: { text: NameText }) => `“${text}” does not say what the new lot reads.`,
  noSuchInk: ({ ink }: { ink: NameText }) => `The job has no ink “${ink}”.`,
  writeLot: ({ all }: { all: ListText }) => `Write --lot INK="L a b". The inks of this pot: ${all}.`,
  whichNewLot: 'Which ink has a new lot?',
  writeLotOrShelf: ({ all }: { all: ListText }) => `The inks of this pot: ${all}. Write --lot INK="L a b", or name a --shelf.`,

  // Readings, photographs, drawdown sheets, shelves
  whichReadings: 'Which file of readings?',
  nameReadings: 'Name a CGATS, CxF or CSV file.',
  whichInk: 'Which ink was drawn down?',
  writeInk: 'Write --ink "Weed green".',
  whichFile: 'Which file is to be written?',
  writeOut: 'Write --out drawdowns.pdf.',
  whichShelf: 'Which shelf?',
  nameShelf: 'Name a shelf file, or a job with --from.',

  // Forms
  whichForm: 'Which form is to be made?',
  sayMake: ({ kinds }: { kinds: ListText }) => `Name a drawing, or --make one of: ${kinds}.`,
  sayRead: 'Say silhouette, white, dark, or colours like #d04020.',
  figuresOf: ({ all }: { all: ListText }) => `Its figures are: ${all}.`,
  notALens: 'This file keeps no lens.',
  keepLens: 'Write one with --keep-lens from a photograph of a checked board.',
  noOpenings: 'The thing has no openings.',
  leaveOpenings: 'Leave --openings out.',
  noLine: 'The file holds no line that surrounds anything.',
  writeLine: 'Write one point a line: x,y in mm.',
  formAsSvg: 'A form is written as SVG, or into a job.',
  endInSvgOrWith: 'End the name in .svg, or name the job with --with.',
  sayEachColour: ({ all }: { all: ListText }) => `Say ${all}.`,
  layersNeedJob: 'Layers need a job that they are added to.',
  writeWithAndOut: 'Write --with JOB --out FOLDER.',
  writeFormOut: 'Write --out form.svg.',

  // Register, edition
  noTestSheets: 'No test sheets have been read yet.',
  nameTable: 'Name a table of readings; “laydown register JOB --form” prints an empty one.',
  nothingCounted: 'Nothing has been counted yet.',
  countFirst: 'Count at the press first.',

  // Cutting
  partsOnlyOfStock: 'Only a sheet of stock is written in parts here.',
  sayStock: 'Say which with --stock; one stencil in parts is in the packet.',
  cutAsSvgOrDxf: 'A cut file is SVG or DXF.',
  endInSvgOrDxf: 'End the file’s name in .svg or .dxf; the tiled PDF is in the packet.',
  noWayOut: 'This stencil needs no way out, or none was found.',
  seeWeakPlaces: 'See what “laydown cut” says of it, and its weak places at Stencils.',
  noStencil: 'It has no stencil: its cut is empty or could not be read.',
  runCheck: 'See what “laydown check” says.',
  notProven: 'The stencil would fall apart, so no cut file is written.',
  weakPlaces: ({ all }: { all: ListText }) => `Mend it here first: ${all}.`,
  faultAt: ({ fault, width, at }: { fault: SayingText; width: LengthText; at: LengthText }) => `${fault}, ${width} wide, at ${at}`,
  neck: 'a neck that is too thin',
  thinPiece: 'a piece that is too thin all over',
  tongue: 'a long thin point',
  opening: 'an opening that is too narrow',
  apart: 'a part that nothing holds',
  partsForPaper: 'Parts are made for A4 or Letter.',
  sayA4OrLetter: 'Say --paper a4 or --paper letter.',
  partsAsPdf: 'Parts to join are written as PDF.',
  endInPdf: 'End the file’s name in .pdf.',
  stockAsSvgDxfPdf: 'A sheet of stock is written as SVG, DXF or PDF.',
  endInSvgDxfPdf: 'End the file’s name in .svg, .dxf or .pdf.',
  partsNeedFile: 'Parts to join need a file to go into.',
  sayOutPdf: 'Say --out NAME.pdf.',
  noStock: 'It names no sheets that stencils could be laid on side by side.',
  giveStock: 'Give a material the size of the sheets it is bought in (“stock”).',
  noSuchStock: ({ n, all }: { n: number; all: ListText }) =>
    n === 1 ? `There is no such sheet; there is sheet ${all}.` : `There is no such sheet; there are sheets ${all}.`,
  giveItsNumber: 'Give its number.',

  // Tracing
  whichSheet: 'Which paper does it lie on?',
  writeSheet: 'Say --sheet a4, --sheet letter, or its size in mm: --sheet 300x400.',
  noSuchSheet: ({ text }: { text: NameText }) => `“${text}” is not a paper size.`,
  saySheet: 'Say a4, letter, or width x height in mm.',
  fourCorners: 'Four corners are needed, each as x,y in pixels.',
  writeCorners: 'Write --corners "120,80 2900,95 2950,3800 90,3790".',

  // A picture
  whoseInks: 'Whose inks are to be used?',
  nameWith: 'Name a job with --with: its inks, papers and materials are the shelf.',
  whichPicture: 'Which picture?',
  namePictureOrJob: 'Name a JPEG, PNG, WebP or TIFF file, or with --with a job that keeps one.',
  pictureGone: 'The picture is not in the job’s folder any more.',
  putBack: 'Put the file back there, or name the picture.',
  sheetIsPrinted: 'The sheet is printed already, so the image keeps its size.',
  leaveSizeOut: 'Leave --width and --height out.',
  metresSetPrice: 'A budget of metres sets the price itself.',
  metresOrPrice: 'Give --metres or --price, not both.',
  notAboutLayer: ({ text }: { text: NameText }) => `“${text}” says nothing about a layer.`,
  writeLayer: 'Write its place and its ink, and its strength if that is decided too: 2=brick or 2=brick@40%. 1 is printed first.',
  noLayerOfNumber: ({ text, n }: { text: NameText; n: number }) =>
    n === 1 ? `There is no layer ${text}: 1 is asked for.` : `There is no layer ${text}: ${n} are asked for.`,
  layerFromTo: ({ n }: { n: number }) => `Give a number from 1 to ${n}; 1 is printed first.`,
  noSuchPot: ({ text }: { text: NameText }) => `The job has no pot “${text}”.`,
  nothingCutFrom: ({ text }: { text: NameText }) => `Nothing in this job is cut from “${text}”.`,
  chooseAmong: ({ all }: { all: ListText }) => `Choose among ${all}.`,
  noSuchReach: ({ text }: { text: NameText }) => `“${text}” is not one of the ways.`,
  useReach: 'Use lightness, chroma, contrast or nearest.',

  // Places on a picture
  notABox: ({ text }: { text: NameText }) => `“${text}” is not a part of a picture.`,
  writeBox: 'Give four numbers, all in per cent of the picture: from the left, from the top, width, height; such as 10,5,80,60.',
  boxOff: ({ text }: { text: NameText }) => `“${text}” reaches beyond the edge of the picture.`,
  boxWithin: 'From the left and width together are at most 100 per cent, and so are from the top and height.',
  cropTooSmall: ({ text }: { text: NameText }) => `“${text}” is less than a twentieth of the picture wide or high.`,
  cropPerCent: 'Numbers are per cent of the picture: write 50 for half of it.',
  notAMark: ({ text }: { text: NameText }) => `“${text}” can’t be read as a mark.`,
  notAStroke: ({ text }: { text: NameText }) => `“${text}” can’t be read as a stroke of the brush on the picture.`,
  writeMark:
    'Write "more box 20,30,25,40" (from the left, from the top, width, height) or "less brush 5 10,20 40,25" (width of the brush, then places), all in per cent of the picture; the first word is more, less or none.',
  strokeTooLong: ({ n, most }: { n: number; most: number }) => `The stroke has ${n} places; a job keeps ${most}.`,
  makeTwoStrokes: 'Make two strokes of it.',
  noMarks: 'There is no mark in this file.',
  tooManyMarks: ({ n }: { n: number }) => `${n} marks are more than a job keeps.`,
  fewerMarks: ({ most }: { most: number }) => `Make do with ${most}: a stroke of the brush can go a long way.`,

  // The Workbench
  notBuilt: 'It is not built yet.',
  runStart: 'Run npm start, which builds it.',
  notAPort: ({ text }: { text: NameText }) => `“${text}” is not a port.`,
};
