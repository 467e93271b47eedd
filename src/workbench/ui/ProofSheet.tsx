import type { ComponentChildren } from 'preact';
import type { ShownPaper, ShownPlan } from '../worker/protocol.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly children: ComponentChildren;
}

/** The proof on a strip of its own paper, so that the paper's colour is judged with it. */
export function ProofSheet({ plan, paper, children }: Props) {
  const { widthMm, heightMm } = plan.job.image;
  return (
    <div class="proof-sheet" style={{ background: paper.swatch.srgb, '--ratio': String(widthMm / heightMm) }}>
      <div class="proof-image">{children}</div>
    </div>
  );
}
