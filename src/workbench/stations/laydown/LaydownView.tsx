import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { Making } from '../../ui/Making.tsx';
import { FallChoice } from '../../ui/proof/FallChoice.tsx';
import { useFalling } from '../../ui/proof/falling.ts';
import { OverlapLine } from '../../ui/proof/OverlapLine.tsx';
import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';
import { ProofWhy } from '../../ui/proof/ProofWhy.tsx';
import { words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { lookAtPapers } from '../press/setup/at.ts';
import { DrawnProof } from './DrawnProof.tsx';
import { useShelfDrag } from './drag.ts';
import { Shelf } from './Shelf.tsx';
import { WantedColours } from './WantedColours.tsx';

/** The laydown: runs as shelves, the first at the bottom as ink lies on paper, and the proof beside them. */
export function LaydownView({ bench }: StationProps) {
  const pointed = useSignal<number | null>(null);
  const all = useSignal(false);
  const rack = useRef<HTMLOListElement>(null);
  const drag = useShelfDrag(bench, rack);
  const w = words().laydown;
  const job = bench.job.value;
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  const falling = useFalling(bench, plan, 'register');
  if (!job) return null;

  const drawn = bench.drawn.value;
  const runs = plan?.layers.length ?? 0;
  const sheet = falling?.sheet ?? null;
  const point = (code: number | null): void => {
    pointed.value = code;
  };
  return (
    <div class={job.wanted.length > 0 ? 'laydown laydown-wanted' : 'laydown'}>
      <div class="laydown-side">
        <figure class="proof-figure" data-sheet={sheet === null ? 'none' : falling?.here ? sheet : undefined}>
          {!plan && drawn && <DrawnProof bench={bench} drawn={drawn} />}
          {!plan && <Making bench={bench} large />}
          {plan &&
            paper &&
            falling &&
            (all.value ? (
              <div class="laydown-papers" role="group" aria-label={w.onAllPapers}>
                {plan.papers.map((one) => (
                  <div key={one.id}>
                    <ProofSheet plan={plan} paper={one}>
                      <ProofCanvas
                        bench={bench}
                        plan={falling.shown}
                        paper={one}
                        sheet={sheet ?? undefined}
                        label={w.proofOfAll(one.name, runs)}
                        onPoint={point}
                      />
                    </ProofSheet>
                    <p>{one.name}</p>
                  </div>
                ))}
              </div>
            ) : (
              <ProofSheet plan={plan} paper={paper}>
                <ProofCanvas
                  bench={bench}
                  plan={falling.shown}
                  paper={paper}
                  sheet={sheet ?? undefined}
                  label={w.proofOfAll(paper.name, runs)}
                  onPoint={point}
                />
              </ProofSheet>
            ))}
          <figcaption>
            <OverlapLine plan={plan} paper={paper} code={pointed} hint={plan ? w.point : ''} />
            {plan && <ProofWhy plan={plan} />}
          </figcaption>
        </figure>
        {plan && paper && falling && (
          <div class="laydown-ways">
            <WantedColours plan={plan} paper={paper} wanted={job.wanted} />
            <FallChoice falling={falling} plan={plan} />
          </div>
        )}
      </div>
      <ol class="rack" reversed aria-label={w.rack} ref={rack}>
        {job.layers.toReversed().map((layer, fromTop) => (
          <Shelf key={layer.id} bench={bench} layer={layer} place={job.layers.length - 1 - fromTop} drag={drag} />
        ))}
        <li class="shelf shelf-base">
          <span class="shelf-base-name">{w.paperHead}</span>
          <div class="shelf-papers">
            <PaperSwitch bench={bench} />
            {plan && plan.papers.length > 1 && (
              <button
                type="button"
                class="button button-line"
                aria-pressed={all.value}
                onClick={() => {
                  all.value = !all.value;
                }}
              >
                {w.allPapers}
              </button>
            )}
            <a class="button button-line button-link" href="#compare">
              {words().compare.open}
            </a>
            <a class="button button-line button-link" href="#press" onClick={lookAtPapers}>
              {w.changePapers}
            </a>
          </div>
          <div class="shelf-sheet">
            {plan && paper && <ProofCanvas bench={bench} plan={plan} paper={paper} runs={0} label={w.bareSheet} />}
          </div>
        </li>
      </ol>
    </div>
  );
}
