import type { PlannedGap } from '../../../../../core/plan/index.ts';
import { LengthBox } from '../../../../ui/fields/LengthField.tsx';
import { Pot } from '../../../../ui/Pot.tsx';
import { bareLength, sayFine, sayLength } from '../../../../ui/fields/units.ts';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { setLayerGap, setLayerMesh } from '../edits.ts';
import type { PartProps } from '../part.ts';

/** Every run's gap, and how large it prints the image: bars that are not as long do not fit one another. */
export function RunGaps({ bench, plan }: PartProps) {
  const w = words().press;
  const { gaps, gapMm } = plan.press;
  const { units } = plan.job;
  const growth = (gap: PlannedGap): number => (gap.growth ? Math.max(gap.growth.alongMm, ...gap.growth.acrossMm) : 0);
  const most = Math.max(0.1, ...gaps.map(growth));
  const bare = bareLength(gapMm, units);
  const meshOf = (id: string): string => {
    const mesh = bench.job.value?.layers.find((l) => l.id === id)?.mesh;
    return mesh ? `${mesh.perCm}-${mesh.threadMicrons}` : '';
  };
  return (
    <section class="run-gaps" aria-label={w.runGaps}>
      <h3>
        {w.runGaps}
        <Why of={w.runGaps}>{w.runGapsWhy}</Why>
      </h3>
      <ol>
        {gaps.map((gap) => {
          const layer = plan.layers.find((l) => l.id === gap.layerId);
          const edge = Math.max(gap.differsMm.alongMm, gap.differsMm.acrossMm) / 2;
          const said = plan.register.problems.find((p) => p.code === 'gaps-differ' && p.path === `layers[#${gap.layerId}].offContactMm`);
          return (
            layer && (
              <li key={gap.layerId} class={gap.own ? 'run-gap run-gap-own' : 'run-gap'} data-gap={gap.layerId}>
                <b class="run-number">{layer.run}</b>
                <Pot srgb={layer.swatch?.srgb ?? null} />
                <LengthBox
                  label={layer.name}
                  mm={bench.job.value?.layers.find((l) => l.id === gap.layerId)?.offContactMm ?? null}
                  units={units}
                  minMm={0}
                  maxMm={50}
                  optional
                  hint={bare}
                  onSet={(mm) => setLayerGap(bench, gap.layerId, mm ?? undefined)}
                />
                <select
                  class="choice"
                  aria-label={w.meshOfRun(layer.name)}
                  value={meshOf(gap.layerId)}
                  onChange={(e) =>
                    setLayerMesh(bench, gap.layerId, plan.press.meshes.find((m) => m.mesh.id === e.currentTarget.value)?.mesh)
                  }
                >
                  <option value="">{w.meshAsScreen}</option>
                  {plan.press.meshes.map((m) => (
                    <option key={m.mesh.id} value={m.mesh.id}>
                      {m.mesh.id}
                    </option>
                  ))}
                  {meshOf(gap.layerId) !== '' && !plan.press.meshes.some((m) => m.mesh.id === meshOf(gap.layerId)) && (
                    <option value={meshOf(gap.layerId)}>{meshOf(gap.layerId)}</option>
                  )}
                </select>
                <div class="run-grows">
                  <span class="run-grows-bar" aria-hidden="true">
                    <span style={{ width: `${(100 * growth(gap)) / most}%` }} />
                  </span>
                  <span>
                    {gap.growth && w.runGrows(sayFine(gap.growth.alongMm, units), sayFine(Math.max(...gap.growth.acrossMm), units))}
                    {edge >= 0.05 && <b> {w.edgesOff(sayFine(edge, units))}</b>}
                  </span>
                  {gap.own && gap.risers && <span>{w.runRisers(sayLength(gap.risers.built.frontMm, units))}</span>}
                </div>
                {said && (
                  <p class={said.severity === 'note' ? 'field-note' : 'says-do'}>
                    {told(said.message)} {said.severity !== 'note' && told(said.advice)}
                  </p>
                )}
              </li>
            )
          );
        })}
      </ol>
    </section>
  );
}
