/** What a stencil becomes when it is written for a knife or a machine: fitted lines, kerf, the proof of just that, and its place on stock. */
export { certifyWritten, writePaths } from './write-paths.ts';
export type { WrittenPaths } from './write-paths.ts';
export { writeCut } from './lines.ts';
export type { CutLines, WrittenCut } from './lines.ts';
export { layOnStock } from './stock.ts';
export type { LaidOut, Stock, ToCut } from './stock.ts';
export { edgesOnStock } from './stock-edges.ts';
export type { EdgeLine } from './stock-edges.ts';
