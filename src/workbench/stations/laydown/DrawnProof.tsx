import type { Drawn } from '../../../core/plan/index.ts';
import type { Bench } from '../../store/bench.ts';
import { words } from '../../store/words.ts';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';

/** The print as it is drawn, in colours that follow every slider, while its stencils are still being made. */
export function DrawnProof({ bench, drawn }: { readonly bench: Bench; readonly drawn: Drawn }) {
  const [paper] = drawn.papers;
  const says = words().laydown.asDrawn(paper.name);
  return (
    <>
      <ProofSheet plan={drawn} paper={paper}>
        <ProofCanvas bench={bench} plan={drawn} paper={paper} label={says} />
      </ProofSheet>
      <p class="as-drawn">{says}</p>
    </>
  );
}
