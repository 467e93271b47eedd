import { useMemo } from 'preact/hooks';
import { starterShelf, type ShelfInk } from '../../../../core/ink/index.ts';
import { starterInks } from '../../../../core/asks/index.ts';
import { Pot } from '../../../ui/Pot.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { language, step, told, words } from '../../../store/words.ts';
import { withInk } from '../edits.ts';
import { at, useAnswer, type InkPartProps } from '../state.ts';

/** Inks to begin with, from published values: nobody's own, until they are drawn down. */
export function StarterShelf({ bench, job, later }: InkPartProps & { readonly later?: boolean }) {
  const w = words().inks;
  const shelf = useMemo(() => starterShelf(told), [language.value]);
  const { answer } = useAnswer(bench, 'shelf', { mine: shelf }, [shelf, job.papers]);
  const take = (inks: readonly ShelfInk[]): void => {
    const taken = starterInks(
      told,
      inks.map((ink) => ink.id),
    );
    bench.edit(step('inks', 'fromShelf', inks.length === 1 ? inks[0].name : w.starter), (now) =>
      taken.filter((ink) => !now.inks.some((k) => k.id === ink.id)).reduce((sum, ink) => withInk(sum, ink), now),
    );
    at.ink.value = inks[0]?.id ?? null;
    bench.announce(w.starterTaken(inks.length));
  };
  const here = (id: string): boolean => job.inks.some((k) => k.id === id);
  const inks = shelf.inks.filter((ink) => ink.role === 'ink');
  const left = inks.filter((ink) => !here(ink.id));
  if (later && left.length === 0) return null;
  return (
    <section class="studio-shelf starter-shelf" aria-label={w.starter}>
      <div class="studio-head">
        <h2>
          {w.starter}
          <Why of={w.starter}>{w.starterWhy}</Why>
        </h2>
        <p>{w.starterText}</p>
      </div>
      <div class="ink-pots">
        {inks.map((ink) => (
          <button key={ink.id} type="button" class="ink-pot" disabled={here(ink.id)} title={ink.note} onClick={() => take([ink])}>
            <Pot srgb={answer?.swatches[ink.id] ?? null} />
            <b>{ink.name}</b>
            <small>{here(ink.id) ? w.starterHere : w.notYours}</small>
          </button>
        ))}
      </div>
      <div class="row">
        <button type="button" class="button button-strong" disabled={left.length === 0} onClick={() => take(left)}>
          {w.starterAll}
        </button>
      </div>
    </section>
  );
}
