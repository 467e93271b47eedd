import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { withWay, type Spread as SpreadAnswer } from '../../../core/asks/index.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { Films } from '../../ui/proof/Films.tsx';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { sayNumber } from '../../ui/fields/units.ts';
import { Why } from '../../ui/fields/Why.tsx';
import type { Bench } from '../../store/bench.ts';
import { step, words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap } from './names.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly held: number | null;
  readonly onShow: (code: number) => void;
}

const mostListed = 5;

/** Ten sheets of one edition as the hand would leave them; which overlaps vary most, and what lessens it. Asked for when it is opened. */
export function Spread({ bench, plan, paper, held, onShow }: Props) {
  const w = words().overlaps;
  const open = useSignal(false);
  const hand = useSignal(15);
  const answer = useSignal<SpreadAnswer | null>(null);
  useEffect(() => {
    if (!open.value) return;
    const stop = new AbortController();
    bench
      .upToDate()
      .then(() => bench.ask('spread', { paperId: paper.id, hand: hand.value / 100 }, { signal: stop.signal }))
      .then(
        (found) => {
          if (!stop.signal.aborted) answer.value = found;
        },
        () => undefined,
      );
    return () => stop.abort();
  }, [open.value, hand.value, plan, paper.id]);
  const found = answer.value?.paperId === paper.id ? answer.value : null;
  return (
    <details
      class="spread"
      onToggle={(e) => {
        open.value = e.currentTarget.open;
      }}
    >
      <summary>
        <b>{w.spread}</b>
      </summary>
      {open.value && (
        <>
          <div class="row">
            <CountField
              label={w.spreadHand}
              value={hand.value}
              min={1}
              max={60}
              digits={0}
              unit="%"
              onSet={(v) => {
                hand.value = v;
              }}
            />
            <Why of={w.spread}>{w.spreadWhy}</Why>
          </div>
          {found && (
            <>
              <p>{w.spreadMean(sayDelta(found.meanBand))}</p>
              {!paper.overPicture && (
                <ol class="spread-sheets">
                  {Array.from({ length: found.sheets }, (_, sheet) => (
                    <li key={sheet} style={{ aspectRatio: `${plan.job.image.widthMm} / ${plan.job.image.heightMm}` }}>
                      <ProofCanvas bench={bench} plan={plan} paper={asSheet(paper, found, sheet)} label={w.spreadSheet(sheet + 1)} />
                    </li>
                  ))}
                </ol>
              )}
              <ol class="spread-most">
                {found.overlaps.slice(0, mostListed).map((one) => {
                  const overlap = paper.overlaps.find((o) => o.code === one.code);
                  return (
                    overlap && (
                      <li key={one.code}>
                        <button type="button" class="button button-small" aria-pressed={held === one.code} onClick={() => onShow(one.code)}>
                          <Films layers={plan.layers} here={one.layers} /> {nameOverlap(plan, overlap)}
                        </button>
                        <span class="possible-strip" aria-hidden="true">
                          {one.srgb.map((srgb, i) => (
                            <i key={i} style={{ background: srgb }} />
                          ))}
                        </span>
                        <span>± {sayDelta(one.band)}</span>
                      </li>
                    )
                  );
                })}
              </ol>
              <h2>{w.spreadLess}</h2>
              {found.ways.length === 0 && <p>{w.spreadNoWay}</p>}
              <ul class="spread-ways">
                {found.ways.map((way) => {
                  const nameOf = (id: string): string => plan.layers.find((l) => l.id === id)?.name ?? id;
                  const says =
                    way.kind === 'order'
                      ? w.spreadOrder(way.layers.map(nameOf), sayDelta(way.meanBand), sayDelta(way.moved))
                      : w.spreadStrength(
                          nameOf(way.layer),
                          sayNumber(way.strength * 100, 0, true),
                          sayDelta(way.meanBand),
                          sayDelta(way.moved),
                        );
                  return (
                    <li key={says} class="row">
                      <p>{says}</p>
                      <button
                        type="button"
                        class="button button-box"
                        onClick={() => {
                          bench.edit(way.kind === 'order' ? step('inks', 'order', '') : step('strength', nameOf(way.layer)), (job) =>
                            withWay(job, way),
                          );
                          bench.announce(w.spreadTaken);
                        }}
                      >
                        {w.spreadTake}
                      </button>
                    </li>
                  );
                })}
              </ul>
            </>
          )}
        </>
      )}
    </details>
  );
}

/** The paper as that sheet comes out. */
function asSheet(paper: ShownPaper, found: SpreadAnswer, sheet: number): ShownPaper {
  const printed = paper.overlaps.reduce((bits, o) => bits | o.code, 0);
  const there = new Map(found.overlaps.map((o) => [o.code, parseInt(o.srgb[sheet].slice(1), 16)]));
  const palette = paper.palette.map((was, code) => {
    const rgb = there.get(code & printed);
    return rgb === undefined ? was : (0xff000000 | ((rgb & 0xff) << 16) | (rgb & 0xff00) | (rgb >> 16)) >>> 0;
  });
  return { ...paper, palette };
}
