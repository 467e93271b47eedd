import { useSignal } from '@preact/signals';
import type { JobInk } from '../../../../core/job/index.ts';
import { download } from '../../../store/keep/files.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { Pot } from '../../../ui/Pot.tsx';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { language, words } from '../../../store/words.ts';
import { freshId } from '../edits.ts';
import { InkDetail } from '../InkDetail.tsx';
import { ReadingsEditor } from '../read/ReadingsEditor.tsx';
import { at, refuse, useAnswer, type InkPartProps } from '../state.ts';
import { ByEye } from '../read/ByEye.tsx';
import { StarterShelf } from './StarterShelf.tsx';
import { StudioShelf } from './StudioShelf.tsx';

/** The ink shelf of the job: pots, how far to trust them, curves, readings; and the studio's shelf below. */
export function ShelfPart(props: InkPartProps) {
  const { bench, job, plan, paper } = props;
  const w = words().inks;
  /** An ink being read; not in the job until it is kept. */
  const editing = useSignal<JobInk | 'new' | 'eye' | null>(null);
  const { answer } = useAnswer(bench, 'inks', { paperId: paper.id }, [job.inks, paper.id, job.screen]);
  const chosen = job.inks.find((k) => k.id === at.ink.value) ?? job.inks[0];
  const choose = (id: string): void => {
    at.ink.value = id;
    editing.value = null;
  };
  const print = async (): Promise<void> => {
    try {
      const titles = job.inks.filter((k) => k.role === 'ink' && k.from !== 'mix').map((k) => k.name);
      download(
        await bench.ask('drawdowns', { titles: titles.length > 0 ? titles : [w.newInkName], language: language.value }),
        'drawdown-sheets.pdf',
        'application/pdf',
      );
      bench.announce(w.sheetsReady);
    } catch (error) {
      refuse(bench, error);
    }
  };
  const pots = (list: readonly JobInk[]) =>
    list.map((ink) => {
      const sheet = answer?.find((s) => s.id === ink.id);
      const says =
        ink.known === 'published' && ink.from !== 'clear'
          ? w.notYours
          : ink.known === 'by-eye'
            ? w.byEyeShort
            : ink.from === 'mix'
              ? w.mixOf
              : ink.from === 'clear'
                ? ''
                : sheet?.level
                  ? w.levels[sheet.level]
                  : '';
      return (
        <label key={ink.id} class="ink-pot" data-ink={ink.id}>
          <input type="radio" name="ink" checked={editing.value === null && ink === chosen} onChange={() => choose(ink.id)} />
          <Pot srgb={plan.inks.find((k) => k.id === ink.id)?.swatch.srgb ?? null} />
          <b>{ink.name}</b>
          <small>{says}</small>
        </label>
      );
    });
  const sheet = answer?.find((s) => s.id === chosen?.id);
  return (
    <>
      {job.inks.length === 0 && editing.value === null && <StarterShelf {...props} />}
      <div class="ink-room">
        <section class="ink-shelves" aria-label={w.shelfHead}>
          <PaperSwitch bench={bench} />
          <h2>{w.shelfHead}</h2>
          <div class="ink-pots">{pots(job.inks.filter((k) => k.role === 'ink'))}</div>
          <h2>{w.basesHead}</h2>
          <div class="ink-pots ink-pots-small">{pots(job.inks.filter((k) => k.role !== 'ink'))}</div>
          <div class="row">
            <button
              type="button"
              class="button button-strong"
              onClick={() => {
                editing.value = 'new';
              }}
            >
              {w.newInk}
            </button>
            <button
              type="button"
              class="button button-box"
              onClick={() => {
                editing.value = 'eye';
              }}
            >
              {w.byEye}
            </button>
            <button type="button" class="button button-box" onClick={() => void print()}>
              {w.printSheets}
            </button>
          </div>
        </section>
        {editing.value === 'eye' ? (
          <ByEye
            {...props}
            id={freshId(w.newInkName, job.inks)}
            onDone={(id) => {
              if (id !== null) at.ink.value = id;
              editing.value = null;
            }}
          />
        ) : editing.value !== null ? (
          <ReadingsEditor
            key={editing.value === 'new' ? 'new' : editing.value.id}
            {...props}
            ink={editing.value === 'new' ? null : editing.value}
            id={editing.value === 'new' ? freshId(w.newInkName, job.inks) : editing.value.id}
            onDone={(id) => {
              if (id !== null) at.ink.value = id;
              editing.value = null;
            }}
          />
        ) : (
          chosen && (
            <section class="ink-detail" aria-label={chosen.name}>
              <InkDetail
                {...props}
                ink={chosen}
                sheet={sheet}
                onRead={() => {
                  editing.value = chosen;
                }}
              />
              {sheet && sheet.problems.length > 0 && <ProblemList problems={sheet.problems} />}
            </section>
          )
        )}
      </div>
      <StudioShelf {...props} />
      {job.inks.length > 0 && <StarterShelf {...props} later />}
    </>
  );
}
