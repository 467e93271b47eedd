/** What several rooms reckon with: small systems of equations, plane to plane, sums over bytes. */
export { crc32 } from './crc32.ts';
export { deflatedLength, unpackDeflate, zlibHeadBytes } from './deflate.ts';
export { cbrt, exp, expm1, log, log10, log1p, pow, tanh } from './exact.ts';
export { homography, mapPoint, type Homography, type Point } from './homography.ts';
export { inverse3, product3, times3, turned3, type Matrix3 } from './matrix3.ts';
export { solveDamped, solveLinear, solvePositive } from './solve.ts';
