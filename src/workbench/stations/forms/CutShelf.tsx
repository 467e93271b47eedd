import type { Job, JobCut, JobLayer } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { regionPath } from '../../ui/region-path.ts';
import { step, words } from '../../store/words.ts';
import { withNewLayer, withoutCut } from './edits.ts';
import { inHand, takeCut, takePart } from './state.ts';

/** Layers that a cut serves, as said beside it. */
function servedBy(job: Job, cutId: string): string[] {
  const w = words().forms;
  const printing = job.layers.filter((l) => !l.off);
  return job.layers
    .filter((l) => l.cut === cutId)
    .map((l) => {
      if (l.off) return w.printsOff(l.name);
      const run = printing.indexOf(l) + 1;
      return l.side === 'window' ? w.printsWindow(l.name, run) : w.printsPiece(l.name, run);
    });
}

/** Every cut as the opening it makes; touch one to work on it. */
export function CutTiles({ bench, cutId }: { readonly bench: Bench; readonly cutId: string | null }) {
  const w = words().forms;
  const job = bench.job.value!;
  const plan = bench.plan.value;
  const { widthMm, heightMm } = job.image;
  return (
    <section class="forms-part" aria-labelledby="cut-shelf">
      <h2 id="cut-shelf">{w.cuts}</h2>
      <ul class="tiles tiles-cuts">
        {job.cuts.map((cut) => {
          const region = plan?.cuts.find((c) => c.id === cut.id)?.region;
          const served = servedBy(job, cut.id);
          return (
            <li key={cut.id}>
              <button
                type="button"
                class="tile tile-cut"
                aria-pressed={cut.id === cutId}
                aria-label={`${w.cutOf(cut.name)}: ${served.length > 0 ? w.prints(served) : w.printsNothing}`}
                onClick={() => takeCut(cut.id, cut.parts.length === 1 ? 0 : null)}
              >
                <svg class="tile-picture" viewBox={`0 0 ${widthMm} ${heightMm}`} aria-hidden="true">
                  <rect class="tile-sheet" width={widthMm} height={heightMm} />
                  {region && <path fill-rule="evenodd" d={regionPath(region)} />}
                </svg>
                <b>{cut.name}</b>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The cut in hand: its name, what it prints, and the forms on it. */
export function CutInHand({ bench, cut }: { readonly bench: Bench; readonly cut: JobCut }) {
  const w = words().forms;
  const job = bench.job.value!;
  const served = servedBy(job, cut.id);
  const layers = job.layers.filter((l) => l.cut === cut.id);
  const print = (side: JobLayer['side']): void => {
    const made = withNewLayer(job, cut.id, side, layers.length === 0 ? cut.name : `${cut.name} ${words().laydown[side].toLowerCase()}`);
    if (!made) return bench.announce(w.tooManyLayers);
    bench.edit(step('newLayer', made.layer.name), () => made.job);
    bench.announce(w.layerMade(made.layer.name, made.job.layers.filter((l) => !l.off).length));
  };
  const rename = (name: string): void => {
    if (name && name !== cut.name)
      bench.edit(step('nameCut', name), (j) => ({ ...j, cuts: j.cuts.map((c) => (c.id === cut.id ? { ...c, name } : c)) }));
  };
  const has = (side: JobLayer['side']): boolean => layers.some((l) => l.side === side);
  return (
    <section class="cut-in-hand" aria-label={w.cutOf(cut.name)}>
      <input
        class="text cut-name"
        aria-label={w.cutName}
        value={cut.name}
        maxLength={200}
        onChange={(e) => {
          rename(e.currentTarget.value.trim());
          e.currentTarget.value = e.currentTarget.value.trim() || cut.name;
        }}
      />
      <p class="cut-serves">{served.length > 0 ? w.prints(served) : w.printsNothing}</p>
      <div class="row">
        {!has('window') && (
          <button type="button" class={`button ${layers.length === 0 ? 'button-strong' : 'button-line'}`} onClick={() => print('window')}>
            {w.asWindow}
          </button>
        )}
        {!has('piece') && (
          <button type="button" class="button button-line" onClick={() => print('piece')}>
            {w.asPiece}
          </button>
        )}
      </div>
      <ol class="part-tags" aria-label={w.on}>
        {cut.parts.map((part, i) => {
          const name = job.forms.find((f) => f.id === part.form)?.name ?? part.form;
          return (
            <li key={i}>
              <button
                type="button"
                class="part-tag"
                aria-pressed={inHand.value.part === i}
                onClick={() => takePart(inHand.value.part === i ? null : i)}
              >
                <span aria-hidden="true" class={`how how-${part.how}`} /> {name}
                {part.how !== 'add' && <small> {w.how[part.how]}</small>}
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

export function TakeCutAway({ bench, cut }: { readonly bench: Bench; readonly cut: JobCut }) {
  const w = words().forms;
  const layers = bench.job.value!.layers.filter((l) => l.cut === cut.id).length;
  return (
    <button
      type="button"
      class="button button-line"
      onClick={() => {
        bench.edit(step('removeCut', cut.name), (j) => withoutCut(j, cut.id));
        inHand.value = { cutId: null, part: null, formId: null };
      }}
    >
      {layers === 0 ? w.takeCutAway : w.takeCutAwayWith(layers)}
    </button>
  );
}
