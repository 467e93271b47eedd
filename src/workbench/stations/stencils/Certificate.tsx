import { sayLength } from '../../ui/fields/units.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { told, words } from '../../store/words.ts';
import { Offers } from './Offers.tsx';
import { costInWords, sayPatch, type PartProps } from './parts.ts';
import { lookAt, shownPxPerMm, zoom } from './state.ts';

/** Whether the stencil is proven to hold together, and where not. */
export function Certificate({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const { certificate, loosePieces, problems, mends = [] } = planned.stencil;
  const { holds, faults } = certificate;
  const show = (at: readonly [number, number]): void => {
    zoom.value = Math.max(shownPxPerMm.value, 8);
    lookAt.value = [...at];
  };
  const mended = problems.filter((p) => p.severity === 'warning');
  return (
    <section class="beside" aria-labelledby="certificate">
      <h2 id="certificate">{w.certificate}</h2>
      <p class={`outcome${holds ? '' : ' outcome-not'}`}>
        {holds ? (loosePieces.length > 0 ? w.holdsWithLoose(loosePieces.length) : w.holds) : w.holdsNot(faults.length)}
      </p>
      {holds && (
        <p>
          {w.necks(sayLength(certificate.leastNeckMm, units))} {w.openings(sayLength(certificate.leastOpeningMm, units))}
        </p>
      )}
      {faults.length > 0 && (
        <ul class="faults">
          {faults.slice(0, 12).map((fault, i) => (
            <li key={i}>
              <span>{w.fault(w.faultKinds[fault.kind], sayLength(fault.widthMm, units, units === 'mm' ? 1 : 3))}</span>
              <button type="button" class="button button-line" onClick={() => show(fault.atMm)}>
                {w.showFault}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Offers bench={bench} layer={layer} planned={planned} />
      {mended.map((p) => (
        <p key={p.code}>
          <b>{told(p.message)}</b> {told(p.advice)}
        </p>
      ))}
      {mends.length > 0 && (
        <>
          <ul class="faults mends" aria-label={w.strengthened}>
            {mends.slice(0, 6).map((mend, i) => (
              <li key={i}>
                <span>
                  {w.mends[mend.kind]}:{' '}
                  {mend.costDeltaE === undefined ? (
                    <b>{sayPatch(mend.areaMm2, units)}</b>
                  ) : (
                    <>
                      <b>
                        {w.wayCost(words().overlaps.apartWords(mend.costDeltaE), sayDelta(mend.costDeltaE), sayPatch(mend.areaMm2, units))}
                      </b>
                      , {costInWords(mend.costDeltaE)}
                    </>
                  )}
                </span>
                <button type="button" class="button button-line" onClick={() => show(mend.at)}>
                  {w.showFault}
                </button>
              </li>
            ))}
          </ul>
          {mends.length > 6 && <p>{w.mendsMore(mends.length - 6)}</p>}
        </>
      )}
      <details class="fold">
        <summary>{words().sheet.why}</summary>
        <p>{w.certificateWhy(told(certificate.method), sayLength(certificate.mmPerPx, units))}</p>
      </details>
    </section>
  );
}
