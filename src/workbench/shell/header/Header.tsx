import { useSignal, type Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Bench } from '../../store/bench.ts';
import type { Keeping } from '../../store/keep/keeping.ts';
import { places, stations } from '../../stations/index.ts';
import { Announcer } from '../../ui/Announcer.tsx';
import { Making } from '../../ui/Making.tsx';
import { sayStep, step, words } from '../../store/words.ts';
import { saveNow, type Printing } from '../actions.ts';
import type { DrawerName } from '../Drawer.tsx';
import { Guide } from '../Guide.tsx';
import { here } from '../here.ts';
import { LanguageSwitch } from './LanguageSwitch.tsx';

interface Props {
  readonly bench: Bench;
  readonly keeping: Keeping;
  readonly station: string;
  readonly drawer: Signal<DrawerName | null>;
  readonly printing: Printing;
  /** What is in sight is older than the job. */
  readonly older: boolean;
}

export function Header({ bench, keeping, station, drawer, printing, older }: Props) {
  const w = words().shell;
  const job = bench.job.value;
  /** On a phone all but the title, undo and the stations is laid open by a touch. */
  const more = useSignal(false);
  useEffect(() => {
    more.value = false;
  }, [station, drawer.value]);
  const within = places.find((place) => place.id === station)?.within;
  return (
    <header class={more.value ? 'header header-more' : 'header'}>
      <div class="header-top">
        <p class="wordmark">{w.laydown}</p>
        {job ? (
          <input
            class="job-title"
            aria-label={w.jobTitle}
            value={job.title}
            maxLength={200}
            onChange={(e) => {
              const title = e.currentTarget.value.trim();
              if (title) bench.edit(step('title'), (j) => (j.title === title ? j : { ...j, title }));
              else e.currentTarget.value = job.title;
            }}
          />
        ) : (
          <span class="job-title job-title-none">{w.noJob}</span>
        )}
        <div class="header-actions">
          {job && <UndoRedo bench={bench} />}
          <Toggle drawer={drawer} name="open">
            {w.open}
          </Toggle>
          {job && (
            <button type="button" class="button" onClick={() => void saveNow(bench, keeping)}>
              {w.save}
            </button>
          )}
          {job && (
            <Toggle drawer={drawer} name="versions">
              {w.versions}
            </Toggle>
          )}
          {job && (
            <Toggle drawer={drawer} name="print" strong>
              {printing.share.value === null ? w.print : w.printing(Math.round(printing.share.value * 100))}
            </Toggle>
          )}
        </div>
        {job && (
          <button
            type="button"
            class="button more-ways"
            aria-expanded={more.value}
            onClick={() => {
              more.value = !more.value;
            }}
          >
            {w.more}
          </button>
        )}
        <LanguageSwitch />
      </div>
      {job && (
        <nav class={older ? 'stations stations-old' : 'stations'} aria-label={w.stations}>
          <ol>
            {stations.map((s) => {
              const current = s.id === station || s.id === within;
              const { needs, knows } = s.state(bench);
              return (
                <li key={s.id}>
                  <a ref={current ? intoView : undefined} href={`${here}#${s.id}`} aria-current={current ? 'page' : undefined}>
                    <b>{s.title()}</b>
                    <small class={needs ? 'needs' : 'knows'}>{needs ?? knows}</small>
                  </a>
                </li>
              );
            })}
          </ol>
          <Guide bench={bench} station={station} drawer={drawer} printing={printing} />
          <StatusLine bench={bench} keeping={keeping} drawer={drawer} older={older} />
        </nav>
      )}
    </header>
  );
}

/** On a narrow screen the stations run off to the side: the one in use comes into sight. */
function intoView(link: HTMLElement | null): void {
  const row = link?.closest('ol');
  if (!link || !row) return;
  // A piece of the next one shows: there is more on that side.
  const peek = Math.min(72, Math.max(0, (row.clientWidth - link.offsetWidth) / 2));
  const [left, right] = [link.offsetLeft - row.offsetLeft - peek, link.offsetLeft - row.offsetLeft + link.offsetWidth + peek];
  if (left < row.scrollLeft) row.scrollLeft = left;
  else if (right > row.scrollLeft + row.clientWidth) row.scrollLeft = right - row.clientWidth;
}

function UndoRedo({ bench }: { readonly bench: Bench }) {
  const w = words().shell;
  const back = bench.canUndo.value;
  const again = bench.canRedo.value;
  return (
    <>
      <button
        type="button"
        class="button undo-back"
        disabled={!back}
        data-step={back ? sayStep(back) : undefined}
        title={back ? w.undoThis(sayStep(back)) : w.nothingToUndo}
        aria-label={back ? w.undoThis(sayStep(back)) : w.undo}
        onClick={() => bench.undo()}
      >
        {w.undo}
      </button>
      <button
        type="button"
        class="button"
        disabled={!again}
        title={again ? w.redoThis(sayStep(again)) : w.nothingToRedo}
        aria-label={again ? w.redoThis(sayStep(again)) : w.redo}
        onClick={() => bench.redo()}
      >
        {w.redo}
      </button>
    </>
  );
}

interface ToggleProps {
  readonly drawer: Signal<DrawerName | null>;
  readonly name: DrawerName;
  readonly strong?: boolean;
  readonly children: preact.ComponentChildren;
}

function Toggle({ drawer, name, strong = false, children }: ToggleProps) {
  const open = drawer.value === name;
  return (
    <button
      type="button"
      class={`button${strong ? ' button-strong' : ''}`}
      aria-expanded={open}
      aria-controls="drawer"
      onClick={() => {
        drawer.value = open ? null : name;
      }}
    >
      {children}
    </button>
  );
}

/** What just happened, what the planner found doubtful, and whether the job is kept. */
function StatusLine({ bench, keeping, drawer, older }: Pick<Props, 'bench' | 'keeping' | 'drawer' | 'older'>) {
  const w = words().shell;
  const problems = bench.plan.value?.problems ?? [];
  const count = (severity: string): number => problems.filter((p) => p.severity === severity).length;
  const parts = [
    [count('error'), w.errors],
    [count('warning'), w.warnings],
    [count('note'), w.notes],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, say]) => say(n));
  const kept = keeping.state.value;
  return (
    <div class="status">
      <Announcer bench={bench} />
      {older && <Making bench={bench} />}
      {said.length > 0 && (
        <Toggle drawer={drawer} name="problems">
          {said.join(' · ')}
        </Toggle>
      )}
      {(kept === 'kept' || kept === 'keeping') && <span class="kept">{kept === 'kept' ? w.kept : w.keeping}</span>}
    </div>
  );
}
