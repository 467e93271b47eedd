import { useEffect } from 'preact/hooks';
import type { ShelfInk } from '../../../../core/ink/index.ts';
import { download } from '../../../store/keep/files.ts';
import { Pot } from '../../../ui/Pot.tsx';
import { step, words } from '../../../store/words.ts';
import { withInk } from '../edits.ts';
import { FileButton } from '../../../ui/fields/FileButton.tsx';
import { keepShelf, loadShelf, studioShelf } from './shelf-keep.ts';
import { at, isoDay, refuse, useAnswer, type InkPartProps } from '../state.ts';

/** The studio's shelf: inks that every job draws from. */
export function StudioShelf({ bench, job }: InkPartProps) {
  const w = words().inks;
  useEffect(() => {
    void loadShelf();
  }, []);
  const shelf = studioShelf.value;
  const { answer } = useAnswer(bench, 'shelf', { mine: shelf }, [shelf, job.papers]);
  const keep = async (ask: {
    readonly file?: { readonly text: string; readonly name: string };
    readonly from?: typeof job;
    readonly date?: string;
  }): Promise<void> => {
    try {
      const put = await bench.ask('shelf', { mine: studioShelf.value, ...ask });
      const kept = await keepShelf(put.shelf);
      bench.announce(kept ? w.shelfNow(put.shelf.inks.length) : w.shelfDenied);
      if (put.problems.length > 0) bench.refuse(put.problems);
    } catch (error) {
      refuse(bench, error);
    }
  };
  const take = async (ink: ShelfInk): Promise<void> => {
    try {
      const taken = await bench.ask('shelfInk', { ink });
      at.ink.value = taken.id;
      bench.edit(step('inks', 'fromShelf', taken.name), (now) => withInk(now, taken));
    } catch (error) {
      refuse(bench, error);
    }
  };
  return (
    <section class="studio-shelf" aria-label={w.studio}>
      <div class="studio-head">
        <h2>{w.studio}</h2>
        <p>{shelf && shelf.inks.length > 0 ? w.studioText : `${w.studioEmpty} ${w.studioText}`}</p>
      </div>
      {shelf && (
        <div class="ink-pots">
          {shelf.inks.map((ink) => (
            <button key={ink.id} type="button" class="ink-pot" aria-label={w.takeInk(ink.name)} onClick={() => void take(ink)}>
              <Pot srgb={answer?.swatches[ink.id] ?? null} />
              <b>{ink.name}</b>
              <small>{w.lots(ink.lots.length)}</small>
            </button>
          ))}
        </div>
      )}
      <div class="row">
        <button type="button" class="button button-box" onClick={() => void keep({ from: job, date: isoDay() })}>
          {w.toShelf}
        </button>
        <FileButton
          label={w.openShelf}
          accept=".json"
          onFile={(name, bytes) => keep({ file: { text: new TextDecoder().decode(bytes), name } })}
        />
        {shelf && answer && (
          <button
            type="button"
            class="button button-box"
            onClick={() => download(new TextEncoder().encode(answer.text), 'ink-shelf.json', 'application/json')}
          >
            {w.saveShelf}
          </button>
        )}
      </div>
    </section>
  );
}
