import { FallChoice } from '../../../../ui/proof/FallChoice.tsx';
import { useFalling } from '../../../../ui/proof/falling.ts';
import { PaperSwitch } from '../../../../ui/proof/PaperSwitch.tsx';
import { ProofCanvas } from '../../../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../../../ui/proof/ProofSheet.tsx';
import { words } from '../../../../store/words.ts';
import type { PartProps } from '../part.ts';

/** The proof as one sheet of many falls: in register, as most do, or among the worst twentieth. */
export function SheetProof({ bench, plan }: PartProps) {
  const falling = useFalling(bench, plan, 'typical')!;
  const { sheet, here, shown } = falling;
  const paper = bench.paper.value;
  return (
    <figure class="proof-figure sheet-proof" data-sheet={sheet === null ? 'none' : here ? sheet : undefined}>
      {paper && (
        <ProofSheet plan={plan} paper={paper}>
          <ProofCanvas
            bench={bench}
            plan={shown}
            paper={paper}
            sheet={sheet ?? undefined}
            label={words().press.registerProof(paper.name)}
          />
        </ProofSheet>
      )}
      <figcaption>
        <FallChoice falling={falling} plan={plan} />
        <PaperSwitch bench={bench} />
      </figcaption>
    </figure>
  );
}
