import { type Plan, shownBy } from '../../core/plan/index.ts';
import { regionBox, type Region } from '../../core/form/index.ts';
import { area, deltaE, lengths, listed, say, type Saying } from '../../words/index.ts';

type Stencil = Plan['layers'][number]['stencil'];

/** More than this are summed up. */
const mostSaid = 24;

/** Islands and loose pieces, each with what dropping it costs in the print. */
export function sayIslands(stencil: Stencil): Saying[] {
  const { loosePieces } = stencil;
  const islands = stencil.islands.filter((i) => i.handled !== 'loose');
  const sayings = [
    ...islands.slice(0, mostSaid).map(({ region, handled, areaMm2, costDeltaE }) => {
      const values = { at: pointAt(middleOf(region)), cost: sayCost(areaMm2, costDeltaE) };
      return handled === 'dropped' ? say('answers.islandDropped', values) : say('answers.islandBridged', values);
    }),
    ...loosePieces
      .slice(0, mostSaid)
      .map(({ number, at, areaMm2, costDeltaE }) =>
        say('answers.loosePiece', { n: number, at: pointAt(at), cost: sayCost(areaMm2, costDeltaE) }),
      ),
  ];
  const unsaid = Math.max(0, islands.length - mostSaid) + Math.max(0, loosePieces.length - mostSaid);
  if (unsaid > 0) sayings.push(say('answers.moreIslands', { n: unsaid }));
  const all = shownBy(stencil.islands),
    bridges = shownBy(stencil.bridges);
  if (all.count > 1 || (all.count > 0 && bridges.count > 0)) {
    const cost = sayCost(all.areaMm2, all.deltaE);
    sayings.push(
      bridges.count > 0
        ? say('answers.allIslandsAndBridges', { islands: cost, bridges: sayCost(bridges.areaMm2, bridges.deltaE) })
        : say('answers.allIslands', { cost }),
    );
  }
  return sayings;
}

function middleOf(region: Region): readonly number[] {
  const { minX, minY, maxX, maxY } = regionBox(region);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** What a place of the print costs that is not as drawn: how large it is, and how it is seen. */
export function sayCost(areaMm2: number, costDeltaE: number | undefined): Saying {
  return costDeltaE === undefined
    ? listed([area(areaMm2)])
    : say('answers.seenOnArea', { area: area(areaMm2), deltaE: deltaE(costDeltaE) });
}

/** A point of the image, as one finds it with a rule. */
export function pointAt(mm: readonly number[]): ReturnType<typeof lengths> {
  return lengths([mm[0], mm[1]], ',', 0);
}
