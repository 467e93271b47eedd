import type { Bench } from '../../store/bench.ts';
import { words } from '../../store/words.ts';

/** Which paper the proofs are shown on: little sheets to choose from. */
export function PaperSwitch({ bench }: { readonly bench: Bench }) {
  const papers = bench.plan.value?.papers ?? [];
  const chosen = bench.paper.value?.id;
  return (
    <fieldset class="paper-switch">
      <legend class="unseen">{words().laydown.paper}</legend>
      {papers.map((paper) => (
        <label key={paper.id} class="paper-choice">
          <input type="radio" name="paper" value={paper.id} checked={paper.id === chosen} onChange={() => bench.choosePaper(paper.id)} />
          <span class="paper-chip" style={{ background: paper.swatch.srgb }} />
          <span>{paper.name}</span>
        </label>
      ))}
    </fieldset>
  );
}
