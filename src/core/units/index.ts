/** Lengths, films, masses, volumes, areas and paper sizes: reading what people write, writing what they read. */
export type { LengthUnits } from './length.ts';
export type { Reading } from './read.ts';
export type { PaperSize } from './paper-sizes.ts';
export { bareInches, mmPerInch, readLength, sayFilm, sayInchFraction, sayLength, saySize, tryReadLength } from './length.ts';
export { gramsPerOunce, millilitresPerFluidOunce, readMass, readVolume, sayMass, sayVolume, tryReadMass, tryReadVolume } from './amount.ts';
export { sayArea, sayShare } from './area.ts';
export { nameSize, paperSizes, smallestHolding } from './paper-sizes.ts';
export { readNumber, sayNumber } from './number.ts';
