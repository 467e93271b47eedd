/** What several rooms reckon with: small systems of equations, plane to plane, sums over bytes. */
export { crc32 } from './crc32.ts';
export { deflatedLength, unpackDeflate, zlibHeadBytes } from './deflate.ts';
export { cbrt, exp, expm1, log, log10, log1p, pow, tanh } from './exact.ts';
export { homography, mapPoint, type Homography, type Point } from './homography.ts';
export { solveDamped, solveLinear, solvePositive } from './solve.ts';
