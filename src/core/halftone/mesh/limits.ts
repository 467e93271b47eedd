/** Of the mesh: what dots it can carry. */
export interface MeshThreads {
  readonly perCm: number;
  readonly threadMicrons: number;
  readonly openingMicrons: number;
}

/** The smallest dot that prints wherever it falls on the weave: two threads and an opening across (common practice). */
export function leastDotMicrons({ threadMicrons, openingMicrons }: Omit<MeshThreads, 'perCm'>): number {
  return 2 * threadMicrons + openingMicrons;
}

/** Rulings a mesh carries by the handbook: four threads a dot is usual, two and a half the least [S46, S47]. */
export const threadsADot = { least: 2.5, usual: 4, most: 5 } as const;

/** By hand 35 to 55 lines an inch [M]. */
const mostByHandPerCm = 20;

export function usualRuling(meshPerCm: number): number {
  return Math.min(mostByHandPerCm, Math.round((meshPerCm / threadsADot.usual) * 2) / 2);
}

/** The finest ruling whose tones from a tenth to nine tenths still have dots as large as the least: area of the dot against its cell. */
export function finestRuling(leastMicrons: number, meshPerCm: number, darkest = 0.1): number {
  const cellMicrons = leastMicrons / Math.sqrt((4 * darkest) / Math.PI);
  return Math.min(10000 / cellMicrons, meshPerCm / threadsADot.least);
}

/** How far ink runs beyond an edge: half a thread's width through the saw of the weave, more on paper that drinks [M]. */
export function edgeSpreadMicrons(threadMicrons: number, absorbency: 'low' | 'usual' | 'high', thinPaper: boolean): number {
  const paper = { low: 8, usual: 14, high: 26 }[absorbency];
  return threadMicrons / 4 + paper + (thinPaper && absorbency !== 'low' ? 6 : 0);
}
