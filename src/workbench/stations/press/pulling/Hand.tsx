import { useSignal } from '@preact/signals';
import { sayFault, usualFaults, type Fault } from '../../../../core/edition/index.ts';
import type { PlannedLayer } from '../../../../core/plan/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { told, words } from '../../../store/words.ts';
import { lookAtSigning } from '../../edition/at.ts';
import type { Count, Tap } from './count.ts';
import type { QueuedSheet } from './queue.ts';
import { isEcho } from './taps.ts';

interface Props {
  readonly bench: Bench;
  readonly count: Count;
  readonly layer: PlannedLayer;
  readonly queue: readonly QueuedSheet[];
  /** The sheet in hand; null when the run is done. */
  readonly sheet: QueuedSheet | null;
  readonly onDone: () => void;
  readonly onNextRun: () => void;
  readonly isLast: boolean;
}

/** The sheet in hand, and the big buttons: pulled, spoiled, note, undo. Nothing changes before the tap is written down. */
export function Hand({ bench, count, layer, queue, sheet, onDone, onNextRun, isLast }: Props) {
  const w = words().pulling;
  /** Sheet that a fault or a note is being said of. */
  const faultOf = useSignal<string | null>(null);
  const noteOn = useSignal<string | null>(null);
  const text = useSignal('');
  const state = count.state.value;
  const busy = count.writing.value;
  const pulled = queue.filter((s) => s.state === 'done').length;
  const spoiled = queue.filter((s) => s.state === 'lost').length;
  const going = queue.filter((s) => s.state !== 'lostBefore');
  const last = state.standing.filter(({ event }) => event.run === layer.id).at(-1)?.event;
  const say = (event: NonNullable<typeof last>): string =>
    (event.kind === 'pull' ? w.eventPull : event.kind === 'spoil' ? w.eventSpoil : w.eventNote)(event.sheet);
  const lastSheet = last?.sheet ?? null;

  const tap = async (what: Tap, said: string): Promise<boolean> => {
    const written = await count.tap(what);
    bench.announce(written ? said : count.kept.peek() === 'not' ? w.notCounted : bench.announced.peek());
    return written;
  };
  const pull = async (id: string): Promise<void> => {
    if (!(await tap({ kind: 'pull', run: layer.id, sheet: id }, w.saidPulled(id)))) return;
    faultOf.value = null;
    onDone();
  };
  const spoil = async (id: string): Promise<void> => {
    if (!(await tap({ kind: 'spoil', run: layer.id, sheet: id }, w.saidSpoiled(id)))) return;
    faultOf.value = id;
    onDone();
  };
  const keepNote = async (id: string, note: Fault): Promise<void> => {
    if (note.text === '' || !(await tap({ kind: 'note', run: layer.id, sheet: id, ...note }, w.saidNote(id)))) return;
    faultOf.value = null;
    noteOn.value = null;
    text.value = '';
  };
  const undo = async (): Promise<void> => {
    if (!last) return;
    faultOf.value = null;
    await tap({ kind: 'undo', run: layer.id }, w.saidUndone(say(last)));
    onDone();
  };
  const noteSheet = sheet?.id ?? lastSheet;

  return (
    <section class="hand" aria-busy={busy}>
      {sheet ? (
        <p class="sheet-now" aria-live="polite">
          <b>{sheet.id}</b>
          <span>{w.sheetOf(going.findIndex((s) => s.id === sheet.id) + 1, going.length)}</span>
          <span data-count={`${pulled} ${spoiled}`}>{w.count(pulled, spoiled)}</span>
        </p>
      ) : (
        <p class="sheet-now" aria-live="polite">
          <b>{w.runDone}</b>
          <span data-count={`${pulled} ${spoiled}`}>{w.runDoneText(pulled, spoiled)}</span>
        </p>
      )}
      {count.kept.value === 'not' && (
        <p class="notice" role="alert">
          {w.notCounted}
        </p>
      )}
      <div class="taps">
        {sheet ? (
          <>
            <button
              type="button"
              class="tap tap-pulled"
              aria-label={w.pulledSheet(sheet.id)}
              disabled={busy || sheet.state === 'lost'}
              onClick={(e) => void (isEcho(e) || pull(sheet.id))}
            >
              {w.pulled}
            </button>
            <button
              type="button"
              class="tap tap-spoiled"
              aria-label={w.spoiledSheet(sheet.id)}
              disabled={busy || sheet.state === 'lost'}
              onClick={(e) => void (isEcho(e) || spoil(sheet.id))}
            >
              {w.spoiled}
            </button>
          </>
        ) : isLast ? (
          <a class="tap tap-pulled tap-link" href="#edition" onClick={lookAtSigning}>
            {w.toSigning}
          </a>
        ) : (
          <button type="button" class="tap tap-pulled" onClick={onNextRun}>
            {w.runAfter}
          </button>
        )}
        <button
          type="button"
          class="tap"
          disabled={noteSheet === null}
          aria-expanded={noteOn.value !== null}
          onClick={() => {
            noteOn.value = noteOn.value === null ? noteSheet : null;
          }}
        >
          {w.note}
        </button>
        <button
          type="button"
          class="tap tap-undo"
          disabled={busy || !last}
          title={last ? w.undoThis(say(last)) : w.nothingToUndo}
          onClick={() => void undo()}
        >
          {w.undo}
          {last && <small>{say(last)}</small>}
        </button>
      </div>
      {faultOf.value !== null && (
        <fieldset class="fault-row">
          <legend>{w.whatWasIt(faultOf.value)}</legend>
          {usualFaults.map((fault) => (
            <button key={fault} type="button" class="button" disabled={busy} onClick={() => void keepNote(faultOf.peek()!, { fault })}>
              {told(sayFault({ fault }))}
            </button>
          ))}
        </fieldset>
      )}
      {noteOn.value !== null && (
        <form
          class="note-row"
          onSubmit={(e) => {
            e.preventDefault();
            void keepNote(noteOn.peek()!, { text: text.peek().trim() });
          }}
        >
          <label>
            {w.noteOn(noteOn.value)}
            <input
              class="text"
              maxLength={400}
              value={text.value}
              onInput={(e) => {
                text.value = e.currentTarget.value;
              }}
            />
          </label>
          <button type="submit" class="button button-strong" disabled={busy || text.value.trim() === ''}>
            {w.keepNote}
          </button>
        </form>
      )}
    </section>
  );
}
