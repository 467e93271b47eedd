import { regionPath } from '../../../ui/region-path.ts';
import { told, words } from '../../../store/words.ts';
import { CutUses } from './CutUses.tsx';
import type { PartProps } from '../parts.ts';

/** Window and piece of the same knife path side by side, what each prints, and how often it must be cut. */
export function CutPair({ bench, planned }: PartProps) {
  const w = words().stencils;
  const plan = bench.plan.value!;
  const cut = plan.cuts.find((c) => c.id === planned.cutId);
  if (!cut) return null;
  const { widthMm, heightMm } = plan.job.image;
  const path = regionPath(cut.region);
  const clip = `pair-${cut.id}`;
  const users = (side: 'window' | 'piece'): string[] =>
    plan.layers.filter((l) => l.cutId === cut.id && l.side === side).map((l) => `${l.run} ${l.name}`);
  const half = (side: 'window' | 'piece') => (
    <figure class="pair-half">
      <svg viewBox={`0 0 ${widthMm} ${heightMm}`} role="img" aria-label={side === 'window' ? w.windowSide : w.pieceSide}>
        <clipPath id={`${clip}-${side}`}>
          <rect width={widthMm} height={heightMm} />
        </clipPath>
        <g id={`${clip}-${side}-picture`}>
          <rect width={widthMm} height={heightMm} class={side === 'window' ? 'tile-sheet' : 'pair-dark'} />
          <path fill-rule="evenodd" d={path} class={side === 'window' ? 'pair-dark' : 'tile-sheet'} clip-path={`url(#${clip}-${side})`} />
        </g>
      </svg>
      <figcaption>
        <b>{side === 'window' ? w.windowSide : w.pieceSide}</b>
        <br />
        {users(side).length > 0 ? w.usedBy(users(side)) : w.usedByNone}
      </figcaption>
    </figure>
  );
  return (
    <section class="beside" aria-labelledby="pair">
      <h2 id="pair">{w.pair}</h2>
      <p class="outcome">{w.times(cut.timesToCut)}</p>
      <p>
        {cut.sets.length > 1 ? '' : `${w.pairText(cut.name)} `}
        {told(cut.why)}
      </p>
      <div class="cut-pair">
        {half('window')}
        {half('piece')}
      </div>
      <CutUses
        uses={cut.uses}
        nameOf={(id) => plan.layers.find((l) => l.id === id)?.name ?? id}
        picture={(side) => `${clip}-${side}-picture`}
        image={plan.job.image}
      />
    </section>
  );
}
