/** What several rooms reckon with: small systems of equations, plane to plane. */
export { homography, mapPoint, type Homography, type Point } from './homography.ts';
export { solveDamped, solveLinear, solvePositive } from './solve.ts';
