import { doneKinds, isDone, markDone, type DoneKind, type Job, type JobLayer } from '../../../../core/job/index.ts';
import type { PlannedLayer } from '../../../../core/plan/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { step, words } from '../../../store/words.ts';

/** What of a run is done and stays as it is: its stencil with its bridges, its pot, its pull. */
export function DoneMarks({ bench, layer, planned }: { readonly bench: Bench; readonly layer: JobLayer; readonly planned: PlannedLayer }) {
  const w = words().shell;
  const job = bench.job.value;
  if (!job) return null;
  const set = (kind: DoneKind, done: boolean): void => {
    const bridges = planned.stencil.bridges.map(({ from, to, widthMm }) => ({
      fromMm: [from[0], from[1]] as [number, number],
      toMm: [to[0], to[1]] as [number, number],
      widthMm,
    }));
    bench.edit(step('markDone', layer.name), (before: Job) => markDone(before, layer.id, kind, { done, bridges }));
  };
  return (
    <fieldset class="row print-parts">
      <legend>{w.doneTitle}</legend>
      {doneKinds.map((kind) => (
        <label key={kind} class="print-way">
          <input type="checkbox" checked={isDone(job, layer.id, kind)} onChange={(e) => set(kind, e.currentTarget.checked)} />{' '}
          {w.doneKind[kind]}
        </label>
      ))}
    </fieldset>
  );
}
