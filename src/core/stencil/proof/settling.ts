/**
 * At most so many rounds, the first of which widen openings too; and so much work in all of them, so that none takes more than a few
 * seconds. Most that were given up after half as much came to their end within it.
 */
export const mostRounds = 20,
  roundsOfBoth = 7,
  leastRounds = 3,
  mendingEffort = 100_000;
/** Pixels of windows, and of the raster for bridges, that take as long as one point of an outline looked at. */
export const pixelsAPoint = 250;
/** Strips that add less than this join nothing; bridges are told however little they add. */
export const idleMm2 = 0.1,
  idleBridgesMm2 = 0.01;
/** It ends when the faults have not become fewer for so many rounds. */
export const patience = 4;
/**
 * So many left after the first rounds are not mended one by one, so many times more at no time; so many after all of them do
 * not come to an end by closing.
 */
export const hopelessFaults = 300,
  beyondHope = 3,
  mostYielding = 24;
export const mostHairRounds = 2,
  mostDropRounds = 6;
/** Then openings close where they can't be cut, however large each is: at most so many rounds, and so much more work. */
export const yieldingRounds = 12,
  yieldingEffort = 25_000;
/** So much of their surroundings closes with openings late on. */
export const lateMm = 0.2;
/** Rounding moves an outline beside a change by some microns. */
export const changeMm = 0.1;
/** What lies beside one another by less than this too little is not in each other's way. */
export const seamMm = 0.02;
/** So many times an opening is widened in one place; where paper has grown into it again, or late, it closes. */
export const mostWidenings = 2;
/** What is added is broader than the least width by this much: room for the fitted curve and for rounding. */
export const spareMm = 0.06;
/** An opening that can't be cut closes unasked up to this area, or this share of the drawing; all together up to the last. */
export const leastLossMm2 = 6,
  lossShare = 0.01,
  mostLossShare = 0.1,
  yieldingLossShare = 0.2;
/** Where hairlines make up more of what prints than this, the drawing is made of fine lines. */
export const fineShare = 0.25;
