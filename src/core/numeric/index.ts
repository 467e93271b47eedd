/** What several rooms reckon with: small systems of equations, plane to plane, sums over bytes. */
export { crc32 } from './crc32.ts';
export { deflatedLength, unpackDeflate, zlibHeadBytes } from './deflate.ts';
export { homography, mapPoint, type Homography, type Point } from './homography.ts';
export { solveDamped, solveLinear, solvePositive } from './solve.ts';
