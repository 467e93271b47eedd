import type { Signal } from '@preact/signals';
import { lampName, sayParting, underLamp } from '../../../core/asks/index.ts';
import { lamps, type Illuminant } from '../../../core/colour/index.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap } from './names.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly lamp: Signal<Illuminant>;
  readonly held: number | null;
  readonly onShow: (code: number) => void;
}

/** Which light the print hangs in: the proof and all swatches follow it. Overlaps that match under one lamp only are shown under both. */
export function Lamps({ plan, paper, lamp, held, onShow }: Props) {
  const w = words().overlaps;
  const light = paper.lights.find((l) => l.lamp === lamp.value);
  const most = light && [...light.overlaps].sort((a, b) => b.moved - a.moved)[0];
  const mostOverlap = most && paper.overlaps.find((o) => o.code === most.code);
  return (
    <section class="lamps" aria-label={w.lamp}>
      <fieldset class="ink-chips">
        <legend>
          {w.lamp}
          <Why of={w.lamp}>{w.lampWhy}</Why>
        </legend>
        {lamps.map((one) => (
          <label key={one} class="ink-chip">
            <input
              type="radio"
              name="lamp"
              checked={lamp.value === one}
              onChange={() => {
                lamp.value = one;
              }}
            />
            {told(lampName(one))}
          </label>
        ))}
      </fieldset>
      {most && mostOverlap && <p>{w.lampMoves(nameOverlap(plan, mostOverlap), sayDelta(most.moved))}</p>}
      {paper.parting.length > 0 && (
        <>
          <h2>{w.parting}</h2>
          <ul class="parting">
            {paper.parting.map((pair) => (
              <li key={pair.codes.join()}>
                {([pair.alikeUnder, pair.apartUnder] as const).map((one) => {
                  const lit = underLamp(paper, one);
                  return (
                    <span key={one} class="parting-pair" aria-hidden="true">
                      {pair.codes.map((code) => (
                        <i key={code} style={{ background: lit.overlaps.find((o) => o.code === code)?.srgb }} />
                      ))}
                    </span>
                  );
                })}
                <p>{told(sayParting(plan, paper.overlaps, pair))}</p>
                <span class="row">
                  {pair.codes.map((code) => {
                    const overlap = paper.overlaps.find((o) => o.code === code);
                    return (
                      overlap && (
                        <button
                          key={code}
                          type="button"
                          class="button button-small"
                          aria-pressed={held === code}
                          onClick={() => onShow(code)}
                        >
                          {nameOverlap(plan, overlap)}
                        </button>
                      )
                    );
                  })}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
