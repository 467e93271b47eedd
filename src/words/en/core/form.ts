import type { LengthText, ListText, NameText, NumberText } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Shapes: drawings, photographs of things, placing. */
export const form = {
  // Too much of it.
  tooManyCharacters: ({ size, most }: { size: NumberText; most: number }) =>
    `The drawing has ${size} million characters; Laydown reads up to ${most} million.`,
  tooManyElements: ({ most }: { most: number }) => `The drawing has more than ${most} elements.`,
  tooManyElementsRepeated: ({ most }: { most: number }) => `With its repeats written out, the drawing has more than ${most} elements.`,
  tooManyAttributes: ({ most }: { most: number }) => `One element of the drawing has more than ${most} attributes.`,
  tooManyRules: 'The drawing’s style sheet has too many rules for so many shapes.',
  unpacksTooLarge: 'Unpacked, the drawing is too large.',
  packedBroken: 'The drawing is packed, and damaged.',
  saveUnpacked: 'Save it again, unpacked.',
  tooManyLinesInBlocks: 'With its blocks written out, the drawing has too many lines.',
  groupsTooDeep: ({ most }: { most: number }) => `Groups are nested more than ${most} deep.`,
  tangled: 'Too many lines of the drawing cross or crowd one another.',
  leaveOutUncut: 'Leave out what is not to be cut.',
  simplify: 'Simplify it in the program it came from.',
  simplifyOutlines: 'Simplify it in the program it came from; a knife needs plain outlines.',
  fewerRepeats: 'Use fewer repeats in the drawing, or repeat the form in the job.',
  ungroup: 'Ungroup the drawing and save it again.',

  // SVG that cannot be read.
  svgBroken: 'The file breaks off here or is not an SVG drawing.',
  beginsOtherwise: ({ tag }: { tag: NameText }) => `The file begins with “${tag}”, not with an SVG drawing.`,
  noDrawing: 'There is no drawing in this file.',
  hidesContents: 'The file hides its contents behind abbreviations that refer to one another.',
  notUnderstood: 'Laydown can’t make sense of the drawing.',
  pageWithoutSize: 'The drawing’s page has no width or no height.',
  saveSvg: 'Save the drawing as plain SVG.',
  saveSvgAgain: 'Save it again as plain SVG.',
  saveWithoutEffects: 'Save it again as plain SVG, without effects.',
  givePageSize: 'Give it a page size (width, height or viewBox) and save it again.',

  // What a knife cannot cut.
  text: ({ text }: { text: NameText }) => `The drawing holds text (“${text}”); a knife needs outlines.`,
  textInFont: ({ text, font }: { text: NameText; font: NameText }) =>
    `The drawing holds text (“${text}”) in ${font}, a font that Laydown doesn’t carry; a knife needs outlines.`,
  textToOutlinesFirst: 'Turn the text into outlines in the program it came from, then save it again.',
  pixels: 'The drawing holds a picture made of pixels; a knife needs outlines.',
  tracePixels: 'Trace the picture as a photograph of its own, or take it out of the drawing.',
  softMask: 'A mask in the drawing fades out; it was cut where half shows through.',
  fades: 'Something in the drawing fades out; it was cut where half of it is seen.',
  chooseThreshold: 'Look whether the edge is right; the form takes another threshold.',
  offPage: 'All shapes lie outside the drawing’s page.',
  nothingVisible: 'Nothing visible is drawn.',
  fillAndFit: 'Fill the shapes that are to be cut, and fit the page to them.',
  farAway: 'Shapes lie so far from the drawing’s origin, or are so huge, that their outlines come out coarse.',
  moveToOrigin: 'Move everything near the origin in the program it came from, then save it again.',

  // What was left out of a drawing, or taken otherwise than drawn.
  movedByStyle: 'A style in the drawing moves or sizes shapes in a way that Laydown can’t follow.',
  attributesForStyles: 'Save it as plain SVG, with attributes in place of styles.',
  effects: 'The drawing uses blur, shadow or another effect; a knife cuts the plain outline.',
  script: 'The drawing holds a script or part of a web page; it was left out.',
  moves: 'The drawing is animated; it was taken at rest.',
  fineIfRight: 'If the shapes look right, there is nothing to do.',
  elsewhere: 'The drawing refers to other files; they were not opened.',
  allInside: 'Put everything into the drawing itself.',
  plainLines: 'Some lines keep their width when scaled, or have their dashes counted along the whole line; they were taken as plain lines.',
  linesToShapes: 'If these lines look different, turn them into filled shapes in the program they came from.',
  whiteIsPaper: 'White that lies on other shapes was taken for bare paper.',
  whiteAsShape: 'If white is to be cut as well, say at the form that white is a shape.',
  coloursAllTaken: ({ n }: { n: number }) => `The drawing shows ${n} colours; everything but white was taken as one shape.`,
  coloursDarkTaken: ({ n }: { n: number }) => `The drawing shows ${n} colours and fills its page; what is dark was taken.`,
  readOtherwise: 'Say at the form what is to be cut: all of it, what is dark, some of its colours, or one cut for each colour.',
  coloursNotThere: ({ colours }: { colours: ListText }) => `The drawing doesn’t show ${colours}; the nearest colours were taken.`,
  coloursThere: ({ colours }: { colours: ListText }) => `It shows ${colours}.`,
  nothingLeft: 'Read this way, nothing of the drawing is left.',
  pattern: 'A shape is filled with a pattern; its whole area was taken.',
  patternToShapes: 'If the pattern is to be cut, turn it into shapes.',
  beyondPage: 'Shapes reach over the edge of the drawing’s page; they were cut off there, as every viewer shows them.',
  largerPage: 'If they should be whole, make the page larger.',

  // DXF.
  dxfBinary: 'This DXF file is binary.',
  saveDxfAsText: 'Save it as a text (ASCII) DXF.',
  notDxf: 'This is not a DXF file.',
  dxfBreaksOff: 'The DXF file breaks off before its end; part of the drawing is missing.',
  farOut: ({ n }: { n: number }) =>
    `${many(n, 'outline lies', 'outlines lie')} so far out that nothing of the drawing could be seen beside it; left out.`,
  dxfDamaged: 'This is not a DXF file, or it is damaged here.',
  saveDxfAgain: 'Save the drawing again as DXF.',
  noUnit: 'The file names no unit of length; millimetres were taken.',
  giveTrueSize: 'Give the form its true size in the job.',
  linesOpen: ({ n }: { n: number }) => `${many(n, 'line does not close and was', 'lines do not close and were')} left out.`,
  closeOutlines: 'Close the outlines in the drawing.',
  noOutline: 'The drawing has no closed outline.',
  closeAndSaveDxf: 'Close the outlines in the drawing and save it again as DXF.',
  curveByPoints: 'A curve is given only by the points it passes through; they were joined by straight lines.',
  curvesToPolylines: 'Turn curves into polylines in the program it came from, then save it again.',
  textLeftOut: 'The file holds text; it was left out.',
  textToOutlines: 'If the text is to be cut, turn it into outlines.',
  solidsLeftOut: 'The file holds hatches or solids; only plain outlines were read.',
  explodeSolids: 'Explode them into lines and save it again.',

  // Photographs, scans and black-and-white pictures of things.
  photoSize: ({ width, height }: { width: number; height: number }) => `A picture of ${width} × ${height} pixels can’t be traced.`,
  photoSizes: ({ least, most }: { least: number; most: number }) =>
    `Use one that is at least ${least} pixels wide and high and has at most ${most} million.`,
  noBoard: 'The photograph shows no checked board with at least 16 whole corners.',
  showBoard: 'Print a board of black and white squares, stick it to something flat, and photograph all of it.',
  anotherCamera: 'This photograph was taken by another camera, or with another zoom, than the first.',
  oneCamera: 'Read one camera at a time: this photograph was left out.',
  noSheet: 'The photograph shows no bright sheet with four corners.',
  laySheet: 'Lay the thing on white paper on a darker table, with all four corners in the picture, or set the corners by hand.',
  sheetWithoutSize: 'The sheet has no size.',
  whichPaper: 'Say which paper the thing lies on.',
  photoCoarse: ({ pixel }: { pixel: LengthText }) => `The photograph is coarse: each pixel covers ${pixel} of the sheet.`,
  goNearer: 'For fine outlines go nearer or use a sharper camera.',
  resolutionUnknown: 'The resolution of the scan is missing or makes no sense.',
  giveResolution: 'Give the pixels per inch that the scanner was set to.',
  maskWithoutSize: 'The picture has no true size.',
  giveTrueWidth: 'Give its true width.',
  nothingFound: 'Nothing stands out from the paper.',
  evenLight: 'Use more even light, or say how dark or colourful the thing is.',

  // Repeats.
  copiesLeftOut: ({ n, asked, least }: { n: number; asked: number; least: LengthText }) =>
    `Only ${n} of ${asked} copies ${which(n, 'fits', 'fit')} with ${least} between them.`,
  fewerCopies: 'Ask for fewer copies or a smaller distance.',
};
