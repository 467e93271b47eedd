import type { ComponentChildren } from 'preact';
import { words } from '../../store/words.ts';
import { measuredMm, printedScale } from './print-scale.ts';
import { sayNumber } from '../fields/units.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';

interface Props {
  readonly plan: Pick<ShownPlan, 'job'>;
  readonly paper: Pick<ShownPaper, 'swatch'>;
  readonly children: ComponentChildren;
}

/** The proof on a strip of its own paper, so that the paper's colour is judged with it. */
export function ProofSheet({ plan, paper, children }: Props) {
  const { widthMm, heightMm } = plan.job.image;
  const scale = printedScale(widthMm, heightMm);
  const w = words().sheet;
  const print = {
    '--print-wide': `${widthMm * scale}mm`,
    '--print-high': `${heightMm * scale}mm`,
    '--print-line': `${measuredMm * scale}mm`,
  };
  return (
    <>
      <div class="proof-sheet" style={{ background: paper.swatch.srgb, '--ratio': String(widthMm / heightMm), ...print }}>
        <div class="proof-image">{children}</div>
      </div>
      <p class="print-only print-measure" style={print} aria-hidden="true">
        {scale === 1 ? w.printedTrue : w.printedSmaller(sayNumber(1 / scale, 2, true))}
      </p>
    </>
  );
}
