import { ridgeMatters } from '../../press/index.ts';
import { figure, name as asName, say, share, type Saying } from '../../../words/say.ts';
import type { PlannedLayer } from '../planned.ts';
import type { Plan } from '../types.ts';

/** What the printer must know of a run before the first pull: a piece without a border, where the next stencil comes, fine shapes. */
export function pressNotes({ cuts, edition }: Pick<Plan, 'cuts' | 'edition'>, layer: PlannedLayer): Saying[] {
  const use = cuts.flatMap((c) => c.uses).find((u) => u.layerId === layer.id);
  const of = layer.changes.length + 1;
  return [
    ...(use?.border === 'tape-on-edge' ? [say('press.tapeOnEdge', { n: Math.max(1, layer.stencil.loosePieces.length) })] : []),
    ...layer.changes.map(({ afterSheets, checkSheets: n, stencil }) => {
      const sheet = edition.sheetNames[afterSheets - 1]?.id;
      return sheet === undefined
        ? say('press.changeBeforeFirst', { n, stencil, of })
        : say('press.changeAfter', { sheet: asName(sheet), n, stencil, of });
    }),
    ...(layer.ridge.share > ridgeMatters && layer.ridge.timesTheFilm > 2
      ? [say('press.fineShapes', { share: share(layer.ridge.share, 0), times: figure(layer.ridge.meanTimes, 1, false) })]
      : []),
  ];
}
