import { type PlannedLayer, pressNotes } from '../../../../core/plan/index.ts';
import { sayLength, sayMass } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { Pot } from '../../../ui/Pot.tsx';
import { ProofCanvas } from '../../../ui/proof/ProofCanvas.tsx';
import type { ShownPlan } from '../../../engine/protocol.ts';
import { told, words } from '../../../store/words.ts';
import { lookFor } from './look-for.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly layer: PlannedLayer;
  /** Paper of the sheet in hand: the pictures are on it. */
  readonly paperId: string;
}

/** The run: its pot, the sheet before and after it, what to look for. */
export function RunCard({ bench, plan, layer, paperId }: Props) {
  const w = words().pulling;
  const { units, image } = plan.job;
  const paper = plan.papers.find((p) => p.id === paperId) ?? plan.papers[0];
  const ink = plan.inks.find((i) => i.id === layer.inkId);
  // Open layers leave nothing on the sheet; the progressive proofs count those that print.
  const printed = (run: number): number => plan.layers.filter((l) => l.inkId !== null && l.run <= run).length;
  const ratio = { '--ratio': String(image.widthMm / image.heightMm) };
  const gap = plan.press.gaps.find((one) => one.layerId === layer.id);
  const setUp = plan.edition.sheets?.setUp;
  return (
    <section class="run-card" aria-label={w.run(layer.run, plan.layers.length)}>
      <div class="run-pictures" style={ratio}>
        {paper && (
          <>
            <figure>
              <div class="run-picture" style={{ background: paper.swatch.srgb }}>
                <ProofCanvas bench={bench} plan={plan} paper={paper} runs={printed(layer.run - 1)} label={w.beforePicture(layer.run)} />
              </div>
              <figcaption>{layer.run === 1 ? w.bareSheet : w.before}</figcaption>
            </figure>
            <figure class="proof-figure">
              <div class="run-picture" style={{ background: paper.swatch.srgb }}>
                <ProofCanvas bench={bench} plan={plan} paper={paper} runs={printed(layer.run)} label={w.afterPicture(layer.run)} />
              </div>
              <figcaption>{w.after}</figcaption>
            </figure>
          </>
        )}
      </div>
      <div class="run-pot">
        <Pot srgb={layer.swatch?.srgb ?? null} />
        <p>
          <b>{ink ? w.inkAt(ink.name, Math.round(layer.strength * 100)) : w.inkOpen}</b>
          <span>
            {[
              layer.mix && w.inPot(sayMass(layer.mix.totalGrams, units, units === 'mm' ? 0 : 1)),
              w.gapIs(sayLength(gap?.gapMm ?? plan.press.gapMm, units)),
              gap?.own && w.gapOwn(sayLength(plan.press.gapMm, units)),
            ]
              .filter(Boolean)
              .join(' · ')}
          </span>
          {setUp && setUp.perRun > 0 && <span>{w.setUp(told(setUp.text))}</span>}
          {pressNotes(plan, layer).map((note) => (
            <b key={note.key + JSON.stringify(note.values)}>{told(note)}</b>
          ))}
        </p>
      </div>
      <div class="look-for">
        <h3>{w.lookFor}</h3>
        <ul>
          {lookFor(plan, layer).map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
        <p class="caution">{w.hinge}</p>
      </div>
    </section>
  );
}
