/**
 * A place struck through is told by shape and not by colour: slanting stripes of black and white.
 * @param width of the raster, pixels
 * @returns whether this pixel is in a black stripe
 */
export function isBlackStripe(x: number, y: number, width: number): boolean {
  const stripe = Math.max(6, Math.round(width / 90));
  return (x + y) % stripe < stripe / 2;
}
