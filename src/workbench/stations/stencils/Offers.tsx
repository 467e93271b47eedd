import { materialsOf, sayOffer, takeOffer } from '../../../core/plan/index.ts';
import type { Offer, Stencil } from '../../../core/stencil/index.ts';
import { regionPath } from '../../ui/region-path.ts';
import { step, told, words } from '../../store/words.ts';
import type { PartProps } from './parts.ts';
import { lookAt, shownPxPerMm, zoom } from './state.ts';

/** What can be done about a stencil that does not hold: each with a picture, what it costs, and one touch to take it. */
export function Offers({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { stencil } = planned;
  const offers = stencil.offers ?? [];
  if (offers.length === 0) return null;
  const materials = materialsOf(bench.job.value!);
  return (
    <section aria-labelledby="offers">
      <h3 id="offers">{w.offers}</h3>
      <p>{w.offersText}</p>
      <ul class="offers">
        {offers.map((offer, i) => (
          <li key={i}>
            <OfferPicture offer={offer} stencil={stencil} />
            <span>{told(sayOffer(offer, materials))}</span>
            <span class="row">
              {offer.atMm && (
                <button
                  type="button"
                  class="button button-line"
                  onClick={() => {
                    zoom.value = Math.max(shownPxPerMm.value, 8);
                    lookAt.value = [...offer.atMm!];
                  }}
                >
                  {w.showFault}
                </button>
              )}
              <button
                type="button"
                class="button button-strong"
                onClick={() => bench.edit(step('offer', layer.name), (job) => takeOffer(job, layer.id, offer))}
              >
                {w.takeOffer}
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The place as it prints, marked where ink would go missing or print in addition; the whole stencil where the offer changes all of it. */
function OfferPicture({ offer, stencil }: { readonly offer: Offer; readonly stencil: Stencil }) {
  const { sheet } = stencil;
  const sideMm = offer.atMm ? 16 : Math.max(sheet.maxX - sheet.minX, sheet.maxY - sheet.minY);
  const [x, y] = offer.atMm ?? [(sheet.minX + sheet.maxX) / 2, (sheet.minY + sheet.maxY) / 2];
  // A drawing made larger is shown as it would lie in the same frame.
  const by = offer.kind === 'larger' ? offer.change.scale : 1;
  const shown = sideMm / by;
  return (
    <svg class="offer-picture" viewBox={`${x - shown / 2} ${y - shown / 2} ${shown} ${shown}`} aria-hidden="true">
      <path class="tile-sheet" d={`M${sheet.minX} ${sheet.minY}H${sheet.maxX}V${sheet.maxY}H${sheet.minX}Z`} />
      <path class="offer-prints" fill-rule="evenodd" d={regionPath(stencil.prints)} />
      {offer.kind === 'drop' && offer.less && <path class="offer-closes" fill-rule="evenodd" d={regionPath(offer.less)} />}
      <path class={offer.kind === 'drop' ? 'offer-drops' : 'offer-closes'} fill-rule="evenodd" d={regionPath(offer.region)} />
    </svg>
  );
}
