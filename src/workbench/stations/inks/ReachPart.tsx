import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { withLayer } from '../../store/edits.ts';
import { step, words } from '../../store/words.ts';
import { chosenLayer, LayerChoice } from './LayerChoice.tsx';
import { at, useAnswer, type InkPartProps } from './state.ts';

/** The whole reach of a layer: every ink at every strength, with all overlaps that follow; a field is chosen by a touch. */
export function ReachPart({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const all = plan.layers.map((l) => l.id);
  if (at.layer.value === null) at.layer.value = plan.layers.find((l) => l.inkId === null)?.id ?? null;
  const id = chosenLayer({ plan, only: all });
  const layer = plan.layers.find((l) => l.id === id);
  const { answer } = useAnswer(bench, 'reach', id === null ? null : { layer: id, paperId: paper.id }, [id, paper.id, job]);
  if (!layer) return null;
  const strengths = [...new Set(answer?.map((r) => r.strength) ?? [])];
  const inkIds = [...new Set(answer?.map((r) => r.inkId) ?? [])];
  const nameOf = (inkId: string): string => job.inks.find((k) => k.id === inkId)?.name ?? inkId;
  const now = job.layers.find((l) => l.id === id);
  const choose = (inkId: string, strength: number): void => {
    bench.tryInk(layer.id, null);
    bench.edit(step('inks', 'reach', layer.name), (before) => withLayer(before, layer.id, { ink: inkId, strength }));
    bench.announce(w.reached(layer.name, nameOf(inkId), Math.round(strength * 100)));
  };
  return (
    <div class="part-two part-wide reach-part">
      <div class="part-words">
        <LayerChoice plan={plan} only={all} />
        <h2>
          {w.reachHead(layer.name)}
          <Why of={w.reachHead(layer.name)}>{w.reachWhy}</Why>
        </h2>
        <p>{w.reachText}</p>
        <table class="reach">
          <thead>
            <tr>
              <th>
                <span class="unseen">{w.title}</span>
              </th>
              {strengths.map((s) => (
                <th key={s} scope="col">
                  {Math.round(s * 100)}
                  {'\u00a0'}%
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {inkIds.map((inkId) => (
              <tr key={inkId}>
                <th scope="row">{nameOf(inkId)}</th>
                {strengths.map((strength) => {
                  const field = answer?.find((r) => r.inkId === inkId && r.strength === strength);
                  const chosen = now?.ink === inkId && Math.abs(now.strength - strength) < 0.005;
                  return (
                    <td key={strength}>
                      <button
                        type="button"
                        class="reach-field"
                        aria-pressed={chosen}
                        aria-label={w.reachField(nameOf(inkId), Math.round(strength * 100), field?.overlaps.length ?? 0)}
                        onClick={() => choose(inkId, strength)}
                      >
                        {field?.overlaps.map((o) => (
                          <i key={o.layers.join()} style={{ background: o.srgb, flexGrow: Math.sqrt(o.areaMm2) }} />
                        ))}
                      </button>
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <figure class="proof-figure">
        <PaperSwitch bench={bench} />
        <ProofSheet plan={plan} paper={paper}>
          <ProofCanvas bench={bench} plan={plan} paper={paper} label={words().laydown.proofOfAll(paper.name, plan.layers.length)} />
        </ProofSheet>
      </figure>
    </div>
  );
}
