import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { OverlapLine } from '../../ui/OverlapLine.tsx';
import { PaperSwitch } from '../../ui/PaperSwitch.tsx';
import { ProofCanvas } from '../../ui/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/ProofSheet.tsx';
import { words } from '../../words/index.ts';
import type { StationProps } from '../station.ts';
import { useShelfDrag } from './drag.ts';
import { Shelf } from './Shelf.tsx';

/** The laydown: runs as shelves, the first at the bottom as ink lies on paper, and the proof beside them. */
export function LaydownView({ bench }: StationProps) {
  const pointed = useSignal<number | null>(null);
  const rack = useRef<HTMLOListElement>(null);
  const drag = useShelfDrag(bench, rack);
  const w = words().laydown;
  const job = bench.job.value;
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  if (!job) return null;

  const runs = plan?.layers.length ?? 0;
  return (
    <div class="laydown">
      <figure class="proof-figure">
        {plan && paper && (
          <ProofSheet plan={plan} paper={paper}>
            <ProofCanvas bench={bench} plan={plan} paper={paper} label={w.proofOfAll(paper.name, runs)} onPoint={(code) => { pointed.value = code; }} />
          </ProofSheet>
        )}
        <figcaption>
          <OverlapLine plan={plan} paper={paper} code={pointed} hint={w.point} />
          <a class="button button-line button-link" href="#compare">{words().compare.open}</a>
        </figcaption>
      </figure>
      <ol class="rack" reversed aria-label={w.rack} ref={rack}>
        {job.layers.toReversed().map((layer, fromTop) => (
          <Shelf key={layer.id} bench={bench} layer={layer} place={job.layers.length - 1 - fromTop} drag={drag} />
        ))}
        <li class="shelf shelf-base">
          <span class="shelf-base-name">{w.paperHead}</span>
          <PaperSwitch bench={bench} />
          <div class="shelf-sheet">{plan && paper && <ProofCanvas bench={bench} plan={plan} paper={paper} runs={0} label={w.bareSheet} />}</div>
        </li>
      </ol>
    </div>
  );
}
