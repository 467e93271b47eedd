import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Codes } from '../../../core/print/index.ts';
import { PaperSwitch } from '../../ui/PaperSwitch.tsx';
import { ProofCanvas } from '../../ui/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/ProofSheet.tsx';
import { Why } from '../../ui/Why.tsx';
import { words } from '../../words/index.ts';
import type { PartProps } from './part.ts';
import { sayFine } from './say.ts';

type Kind = 'register' | 'typical' | 'worst';

/** The proof as one sheet of many falls: in register, as most do, or among the worst twentieth. */
export function SheetProof({ bench, plan }: PartProps) {
  const w = words().press;
  const kind = useSignal<Kind>('typical');
  const turn = useSignal(0);
  const fallen = useSignal<{ readonly sheet: number; readonly of: unknown; readonly codes: Codes } | null>(null);
  const { draws } = plan.register;
  const paper = bench.paper.value;
  // Nearest to the middle first: what most sheets look like.
  const typical = [...draws.sheets.keys()].sort((a, b) => Math.abs(draws.sheets[a].offMm - draws.medianMm) - Math.abs(draws.sheets[b].offMm - draws.medianMm)).slice(0, 10);
  const from = kind.value === 'worst' ? draws.worst : typical;
  const sheet = kind.value === 'register' ? null : from[turn.value % from.length];

  useEffect(() => {
    if (sheet === null) return;
    let wanted = true;
    bench.ask('sheetCodes', { sheet }).then((codes) => { if (wanted) fallen.value = { sheet, of: plan.codes, codes }; }, () => undefined);
    return () => { wanted = false; };
  }, [sheet, plan.codes, draws]);

  const shown = sheet === null ? plan : fallen.value ? { ...plan, codes: fallen.value.codes } : null;
  const choices: readonly (readonly [Kind, string])[] = [['register', w.proofInRegister], ['typical', w.proofTypical], ['worst', w.proofWorst]];
  const say = (mm: number): string => sayFine(mm, plan.job.units);
  return (
    <figure class="proof-figure sheet-proof" data-sheet={sheet === null ? 'none' : fallen.value?.sheet === sheet ? sheet : undefined}>
      {paper && (
        <ProofSheet plan={plan} paper={paper}>
          {shown && <ProofCanvas bench={bench} plan={shown} paper={paper} sheet={sheet ?? undefined} label={w.registerProof(paper.name)} />}
        </ProofSheet>
      )}
      <figcaption>
        <fieldset class="sheet-kinds">
          <legend class="unseen">{w.proofChoice}</legend>
          {choices.map(([id, name]) => (
            <label key={id} class="sheet-kind"><input type="radio" name="sheet-kind" checked={kind.value === id} onChange={() => { kind.value = id; turn.value = 0; }} /><span>{name}</span></label>
          ))}
          <button type="button" class="button button-box" disabled={sheet === null} onClick={() => { turn.value++; }}>{w.another}</button>
        </fieldset>
        <p aria-live="polite">{sheet === null ? w.sheetInRegister : w.sheetOff(say(draws.sheets[sheet].offMm))}<Why of={w.proofChoice}>{w.sheetWhy(draws.sheets.length, say(draws.medianMm), say(draws.p95Mm))}</Why></p>
        <PaperSwitch bench={bench} />
      </figcaption>
    </figure>
  );
}
