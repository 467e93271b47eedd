import { useSignal } from '@preact/signals';
import { words } from '../store/words.ts';
import { queueOfRun } from '../stations/press/pulling/queue.ts';
import { guarded, isEcho, setGuarded } from '../stations/press/pulling/taps.ts';
import type { Session } from './session.ts';

export function AwayPage({ session }: { readonly session: Session }) {
  return (
    <main class="away">
      <h1 class="unseen">{words().away.title}</h1>
      <Counting session={session} />
    </main>
  );
}

/** One run at a time, the sheet that is next, and what happened to it; what the desk does not have yet is said. */
function Counting({ session }: { readonly session: Session }) {
  const w = words().away;
  const p = words().pulling;
  const chosen = useSignal<string | null>(null);
  const view = session.view.value;
  if (session.token.value === null && (view === null || session.refused.value || !session.inReach.value || view.runs.length === 0))
    return <Enter session={session} />;
  if (!view || view.runs.length === 0) return <p class="opening">{w.waiting}</p>;

  const state = session.state.value;
  const queueAt = (id: string, sheets: (typeof view.runs)[number]['sheets']) => queueOfRun(sheets, id, state);
  const run =
    view.runs.find((one) => one.id === chosen.value) ??
    view.runs.find((one) => queueAt(one.id, one.sheets).some((sheet) => sheet.state === 'waiting')) ??
    view.runs[view.runs.length - 1];
  const at = view.runs.indexOf(run);
  const queue = queueAt(run.id, run.sheets);
  const sheet = queue.find((one) => one.state === 'waiting') ?? null;
  const going = queue.filter((one) => one.state !== 'lostBefore');
  const pulled = queue.filter((one) => one.state === 'done').length;
  const spoiled = queue.filter((one) => one.state === 'lost').length;
  const last = state.standing.filter(({ event }) => event.run === run.id).at(-1)?.event;
  const tap = (event: Parameters<Session['tap']>[0]): void => {
    chosen.value = run.id;
    session.tap(event);
    void session.meet();
  };
  const goTo = (to: number) => (): void => {
    chosen.value = view.runs[to].id;
  };
  return (
    <>
      <div class="pulling-runs">
        <button type="button" class="button run-step" disabled={at === 0} aria-label={p.runBefore} onClick={goTo(at - 1)}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M11 2L5 8l6 6" />
          </svg>
        </button>
        <h2>
          {p.run(at + 1, view.runs.length)}
          <span>{run.name}</span>
        </h2>
        <button type="button" class="button run-step" disabled={at === view.runs.length - 1} aria-label={p.runAfter} onClick={goTo(at + 1)}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M5 2l6 6-6 6" />
          </svg>
        </button>
      </div>
      {run.proof && <img class="away-proof" src={run.proof} alt={p.afterPicture(at + 1)} />}
      <section class="hand">
        <p class="sheet-now" aria-live="polite">
          <b>{sheet ? sheet.id : p.runDone}</b>
          {sheet && <span>{p.sheetOf(going.findIndex((one) => one.id === sheet.id) + 1, going.length)}</span>}
          <span data-count={`${pulled} ${spoiled}`}>{p.count(pulled, spoiled)}</span>
        </p>
        <div class="taps">
          {sheet ? (
            <>
              <button
                type="button"
                class="tap tap-pulled"
                aria-label={p.pulledSheet(sheet.id)}
                onClick={(e) => void (isEcho(e) || tap({ kind: 'pull', run: run.id, sheet: sheet.id }))}
              >
                {p.pulled}
              </button>
              <button
                type="button"
                class="tap tap-spoiled"
                aria-label={p.spoiledSheet(sheet.id)}
                onClick={(e) => void (isEcho(e) || tap({ kind: 'spoil', run: run.id, sheet: sheet.id }))}
              >
                {p.spoiled}
              </button>
            </>
          ) : (
            at < view.runs.length - 1 && (
              <button type="button" class="tap tap-pulled" onClick={goTo(at + 1)}>
                {p.runAfter}
              </button>
            )
          )}
          <button type="button" class="tap tap-undo" disabled={!last} onClick={() => tap({ kind: 'undo', run: run.id })}>
            {p.undo}
            {last && <small>{(last.kind === 'pull' ? p.eventPull : last.kind === 'spoil' ? p.eventSpoil : p.eventNote)(last.sheet)}</small>}
          </button>
        </div>
      </section>
      <footer class="count-foot">
        <p role="status" data-only-here={session.onlyHere.value}>
          <b>{session.onlyHere.value === 0 ? w.handedOver : w.toHandOver(session.onlyHere.value)}</b>
        </p>
        {!session.safe.value && <p role="alert">{w.notKept}</p>}
        {session.token.value === null && <Enter session={session} />}
        <label class="tick">
          <input type="checkbox" checked={guarded.value} onChange={(e) => setGuarded(e.currentTarget.checked)} />
          <span>{w.guard}</span>
        </label>
        <p>
          {w.keepOn} {w.notPrivate}
        </p>
      </footer>
    </>
  );
}

function Enter({ session }: { readonly session: Session }) {
  const w = words().away;
  const code = useSignal('');
  return (
    <form
      class="away-enter"
      onSubmit={(e) => {
        e.preventDefault();
        void session.enter(code.peek()).then(() => session.meet());
      }}
    >
      <h2>{w.title}</h2>
      <label class="num">
        <span>{w.code}</span>
        <input
          class="text"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={12}
          value={code.value}
          onInput={(e) => {
            code.value = e.currentTarget.value;
          }}
        />
      </label>
      <button type="submit" class="button button-strong">
        {w.enter}
      </button>
      {session.refused.value && <p role="alert">{w.wrong}</p>}
      <p>{w.notPrivate}</p>
    </form>
  );
}
