import type { Signal } from '@preact/signals';
import { lampName, movesMost, sayParting, underLamp } from '../../../core/asks/index.ts';
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
  readonly held: Signal<number | null>;
  /** Which ground of a printed sheet is looked at. */
  readonly region: Signal<number | null>;
}

/** Which light the print hangs in: the proof and all swatches follow it. Overlaps that match under one lamp only are shown under both. */
export function Lamps({ plan, paper, lamp, held, region }: Props) {
  const w = words().overlaps;
  const most = movesMost(paper, lamp.value);
  /** On a printed sheet with the ground it lies on. */
  const nameAt = (code: number, ground: number | null): string => {
    const overlap = paper.overlaps.find((o) => o.code === code);
    const name = overlap && code !== 0 ? nameOverlap(plan, overlap) : ground === null ? w.barePaper : '';
    return [name, ground === null ? '' : w.groundNo(ground + 1)].filter(Boolean).join(' ');
  };
  const isHeld = (code: number, ground: number | null): boolean => held.value === code && (ground === null || region.value === ground);
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
      {most && <p>{w.lampMoves(nameAt(most.code, most.ground), sayDelta(most.moved))}</p>}
      {paper.parting.length > 0 && (
        <>
          <h2>{w.parting}</h2>
          <ul class="parting">
            {paper.parting.map((pair) => (
              <li key={`${pair.ground} ${pair.codes.join()}`}>
                {([pair.alikeUnder, pair.apartUnder] as const).map((one) => {
                  const lit = underLamp(paper, one);
                  const there = pair.ground === null ? lit.overlaps : (lit.grounds?.colours[pair.ground].overlaps ?? []);
                  return (
                    <span key={one} class="parting-pair" aria-hidden="true">
                      {pair.codes.map((code) => (
                        <i key={code} style={{ background: there.find((o) => o.code === code)?.srgb }} />
                      ))}
                    </span>
                  );
                })}
                <p>{told(sayParting(plan, paper.overlaps, pair))}</p>
                <span class="row">
                  {pair.codes.map((code) => (
                    <button
                      key={code}
                      type="button"
                      class="button button-small"
                      aria-pressed={isHeld(code, pair.ground)}
                      onClick={() => {
                        held.value = isHeld(code, pair.ground) ? null : code;
                        region.value = pair.ground;
                      }}
                    >
                      {nameAt(code, pair.ground)}
                    </button>
                  ))}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
