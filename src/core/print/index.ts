/** Layers on paper: codes, overlaps, proofs, register error. */
export { codeAreas, layerCodes, proofGrid, withLayer } from './codes.ts';
export type { CodedLayer, Codes } from './codes.ts';
export { overlapIndex, packRgb, paint, paletteOf } from './paint.ts';
export type { Palette } from './paint.ts';
export { groundCube, groundUnder, quickNodes, paintOverPicture, withinPaint } from './picture.ts';
export type { GroundCube, LaidFilms, RgbPicture } from './picture.ts';
export { cellAt, deepestCells, deepestPoints, depthsOf } from './deepest.ts';
export type { Depths } from './deepest.ts';
export { meetingOverlap } from './meeting.ts';
export { seamGrounds } from './seam.ts';
export type { SeamGround } from './seam.ts';
export { shiftCodes } from './shift.ts';
export type { FallenLayer } from './shift.ts';
export { groundColours, type GroundColours } from './ground-colours.ts';
