/** What A4 and US letter both hold between margins of 10 mm, less the paper strip, the heading and the line to measure. */
const roomMm = { wide: 184, high: 244 };
/** The line to measure is so long on the print. */
export const measuredMm = 100;

/** A station prints its proof at true size where the sheet holds it, else as large as fits: the packet tiles the rest. */
export function printedScale(widthMm: number, heightMm: number): number {
  return Math.min(1, roomMm.wide / widthMm, roomMm.high / heightMm);
}
