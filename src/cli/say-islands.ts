import type { Plan } from '../core/plan/index.ts';
import { regionBox, type Region } from '../core/form/index.ts';
import { shownBy } from '../core/plan/parts/costs.ts';

type Stencil = Plan['layers'][number]['stencil'];

/** More than this are summed up. */
const mostSaid = 24;

/** Islands and loose pieces, each with what dropping it costs in the print. */
export function sayIslands(stencil: Stencil): string[] {
  const cost = (deltaE: number | undefined, areaMm2: number): string =>
    `${areaMm2.toFixed(areaMm2 < 100 ? 1 : 0)} mm²${deltaE === undefined ? '' : `, seen as ΔE00 ${deltaE.toFixed(1)}`}`;
  const { loosePieces } = stencil;
  const islands = stencil.islands.filter((i) => i.handled !== 'loose');
  const lines = [
    ...islands
      .slice(0, mostSaid)
      .map(
        (i) =>
          `island at ${middleOf(i.region)} ${i.handled === 'dropped' ? 'given up: prints' : 'held by bridges; given up it would print'} ${cost(i.costDeltaE, i.areaMm2)}`,
      ),
    ...loosePieces
      .slice(0, mostSaid)
      .map(
        (p) =>
          `loose piece ${p.number} at ${p.at.map((v) => v.toFixed(0)).join(', ')} mm; left out it would print ${cost(p.costDeltaE, p.areaMm2)}`,
      ),
  ];
  const unsaid = Math.max(0, islands.length - mostSaid) + Math.max(0, loosePieces.length - mostSaid);
  if (unsaid > 0) lines.push(`and ${unsaid} more (all with --json)`);
  const all = shownBy(stencil.islands),
    bridges = shownBy(stencil.bridges);
  if (all.count > 1 || (all.count > 0 && bridges.count > 0)) {
    lines.push(
      `all islands together: ${cost(all.deltaE, all.areaMm2)}${bridges.count > 0 ? `; all bridges: ${cost(bridges.deltaE, bridges.areaMm2)}` : ''}`,
    );
  }
  return lines;
}

function middleOf(region: Region): string {
  const { minX, minY, maxX, maxY } = regionBox(region);
  return `${((minX + maxX) / 2).toFixed(0)}, ${((minY + maxY) / 2).toFixed(0)} mm`;
}
