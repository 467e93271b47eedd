import type { DeltaText, NameText, NumberText, SayingText, ShareText } from '../../text.ts';
import { many } from '../grammar.ts';

/** Readings: typed, out of files, out of photographs. */
export const readings = {
  // Where.
  row: ({ file, row }: { file: NameText; row: number }) => `${file}, row ${row}`,
  patchAt: ({ where, patch }: { where: SayingText; patch: SayingText }) => `${where}, ${patch}`,

  // Numbers that no surface has.
  notHex: 'This is no colour as a picture program writes it.',
  typeHex: 'Type six digits, such as #c0392b.',
  threeNumbers: 'One of the three numbers is missing or is no number.',
  readOrType: 'Read the patch again or type all three.',
  xyzOutOfRange: ({ what, value }: { what: NameText; value: NumberText }) => `${what} is ${value}; it has to lie between 0 and 120.`,
  checkScale: 'Check the scale: the perfect white has Y = 100.',
  lightnessOutOfRange: ({ value }: { value: NumberText }) =>
    `L is ${value}; it has to lie between 0 (no light at all, which no surface has) and 105.`,
  aOutOfRange: ({ value }: { value: NumberText }) => `a is ${value}; it has to lie between −130 and 130.`,
  bOutOfRange: ({ value }: { value: NumberText }) => `b is ${value}; it has to lie between −150 and 150.`,
  checkLabOrder: 'Check that the three numbers are L, a and b in that order.',
  spectrumBands: ({ n, needed }: { n: number; needed: number }) =>
    `The spectrum has ${many(n, 'value', 'values')}, and ${needed} are needed.`,
  giveSpectrum: 'Give the reflectance from 380 to 730 nm in steps of 10 nm.',
  spectrumGap: 'A value of the spectrum is missing or is no number.',
  readAgain: 'Read the patch again.',
  spectrumHigh: ({ high }: { high: NumberText }) => `The spectrum goes up to ${high}, where 1 is the perfect white.`,
  looksLikePercent: 'These look like percentages: divide by 100.',
  calibrateWhite: 'Calibrate the instrument on its white tile and read again.',
  spectrumLow: ({ low }: { low: NumberText }) => `The spectrum goes down to ${low}, and no surface reflects less than nothing.`,
  calibrateDark: 'Calibrate the instrument on its dark trap and read again.',
  notUnderstood: ({ text }: { text: NameText }) => `“${text}” can’t be read as a colour.`,
  typeColour: 'Type three numbers L a b, or XYZ and three numbers, or the 36 values of a spectrum.',

  // Files of any kind.
  fileTooLarge: ({ megabytes }: { megabytes: number }) => `The file has ${megabytes} MB; no file of readings is so large.`,
  checkFile: 'Check that it is the right file.',
  fileEmpty: 'The file is empty.',
  exportReadings: 'Export the readings again.',
  isPicture: 'This is a picture, not a file of readings.',
  openAsPhoto: 'Open it as a photograph of drawdowns.',
  isPacked: 'This is a spreadsheet or another packed file.',
  saveAsCsv: 'Save the table as CSV first.',
  notText: 'This is no text file.',
  exportAsText: 'Export the readings as CGATS, CxF or CSV.',
  tooManyPatches: ({ most }: { most: number }) => `The file has more than ${most} patches.`,
  exportFewer: 'Export only the drawdowns you need.',
  patchWithoutColour: ({ patch }: { patch: NameText }) => `The patch ${patch} has neither a usable spectrum nor XYZ nor Lab.`,
  leftOutReadAgain: 'It is left out; read it again.',
  patchLeftOut: 'The patch is left out.',
  spectraShort: 'The spectra do not reach from 380 to 730 nm.',
  endsCarriedOn: 'The outermost values are carried on to the ends; the eye sees little there.',
  otherLight: 'The file says its colours are for a light other than D50.',
  exportForD50: 'Export spectra, or colours for D50.',
  otherObserver: 'The file says its colours are for the 10° observer.',
  exportFor2: 'Export spectra, or colours for the 2° observer.',

  // CGATS.
  cutShort: 'The file ends in the middle of its readings.',
  exportForRest: 'What is there was read; export it again to get the rest.',
  rowTooShort: ({ has, needed }: { has: number; needed: number }) =>
    `The last row has ${many(has, 'value', 'values')}, and the table has ${many(needed, 'column', 'columns')}.`,
  leftOut: 'It is left out.',
  rowsMissing: ({ promised, found }: { promised: number; found: number }) =>
    `The table promises ${many(promised, 'patch', 'patches')} and holds ${found}.`,
  checkWhole: 'Check that the file is whole.',
  noColumns: 'The readings begin before the file says what its columns are.',
  exportWithFormat: 'Export the file again with its BEGIN_DATA_FORMAT part.',
  tooManyColumns: ({ most }: { most: number }) => `The file has more than ${most} columns.`,
  notReadings: 'This is no file of readings.',
  noTable: 'There is no table of readings in this file.',
  exportTable: 'A CGATS file has its readings between BEGIN_DATA and END_DATA; export it again.',

  // Tables.
  tooManyRows: ({ most }: { most: number }) => `The file has more than ${most} rows.`,
  keepFewer: 'Keep only the drawdowns you need.',
  noColourColumn: 'No column of this table is a colour.',
  giveHeadings: 'Give the first row headings: name, L, a, b; or X, Y, Z; or the wavelengths 380 to 730.',
  noHeadings: 'The table has no headings; its three numbers are taken as L, a and b.',
  addHeadings: 'Add a first row with the headings if they are something else.',

  // CxF.
  documentType: 'The file declares a document type, through which other files could be drawn in.',
  exportWithout: 'Export it again without one; it was not read.',
  xmlBroken: 'From here on the file is no well-formed XML.',
  exportCutShort: 'Export it again; it may have been cut short on its way.',
  tooDeep: 'The file is nested too deep for a file of readings.',
  exportFromProgram: 'Export it again from the measuring program.',
  nothingMeasured: 'There is no reflectance, XYZ or Lab in this file.',
  exportMeasured: 'Export the measured colours, not only those wanted on a screen.',

  // Photographs.
  photoTooSmall: 'The photograph is too small or cut short.',
  fillFrame: 'Take it again, filling the frame.',
  littlePaper: ({ n, needed }: { n: number; needed: number }) =>
    `Bare paper is marked in ${many(n, 'place', 'places')}; ${needed} are needed.`,
  markPaper: 'Mark paper on all sides of the drawdowns.',
  burntOut: 'The paper is burnt out: the photograph shows nothing but white there.',
  exposeLess: 'Expose less, so that the paper is light grey in the picture.',
  partlyBurntOut: ({ n, all }: { n: number; all: number }) => `The paper is burnt out in ${n} of ${all} places.`,
  exposeEvenly: 'Expose less and light it more evenly.',
  lightUneven: ({ times }: { times: NumberText }) => `The light on the sheet is uneven by a factor of ${times}.`,
  betterLight: 'It was evened out, but open shade or two lamps would do better.',
  lightPatchy: ({ by }: { by: ShareText }) => `After evening out, the paper still differs by ${by}: a shadow or a reflection lies on it.`,
  noShadows: 'Take it again without shadows.',
  chartFitsBadly: ({ off }: { off: DeltaText }) => `The chart’s own colours come back off by ΔE00 ${off}.`,
  checkChart: 'Check that its patches are marked in the right order and lie in the same light.',
  chartTooSmall: ({ n, needed }: { n: number; needed: number }) =>
    `Only ${many(n, 'patch', 'patches')} of the chart can be used; ${needed} are needed.`,
  balancedInstead: 'The picture was balanced by grey card or paper instead.',
  scaleUnknown: 'Neither a grey card nor the paper’s colour is known; the paper is taken as ordinary white.',
  layGreyCard: 'Lay a grey card beside the drawdowns.',
  patchBurntOut: 'Part of this patch is burnt out.',
  distrustColour: 'Expose less; its colour can’t be trusted.',
  outsidePhoto: 'This colour lies outside what the photograph can hold: one of its channels is empty.',
  readsDuller: 'It will read duller than it is.',
  saveWider: 'It will read duller than it is. Save the photograph in a wider colour space.',
  patchUneven: 'This patch is uneven: dust, glare, or a mark that overlaps its edge.',
  markEven: 'Mark an even part of the drawdown.',
  lighterThanPaper: 'This patch comes out lighter than any paper can be: the marks for paper lie on something darker.',
  movePaperMarks: 'Move the paper marks onto the bare sheet, and read again.',
  profileUnusable: 'The colour profile inside the photograph can’t be used.',
  saveAsRgb: 'Save it with an ordinary RGB profile, or read it as sRGB.',
  marksNotFound: 'The four corner marks of the sheet are not all in the picture, or not sharp.',
  wholeSheet: 'Take it again from above with the whole sheet in view; or mark the patches by hand.',
};
