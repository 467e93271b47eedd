import type { Plan } from '../../types.ts';

/**
 * Tape for the whole job: what closes the mesh stays on till the last run; each stencil, also one that follows a worn one, is
 * taped down anew; a piece without a border is taped round on the image's edge instead.
 */
export function tapeForJob({ press: { taping }, cuts, layers }: Pick<Plan, 'press' | 'cuts' | 'layers'>): number {
  if (!taping || layers.length === 0) return 0;
  const uses = cuts.flatMap((c) => c.uses);
  return layers.reduce((metres, layer) => {
    const border = uses.find((u) => u.layerId === layer.id)?.border ?? 'sheet';
    return metres + (border === 'sheet' ? taping.eachMetres * (1 + layer.changes.length) : taping.onEdgeMetres);
  }, taping.onceMetres);
}
