import { useSignal, type Signal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Job } from '../../core/job/index.ts';
import type { Bench } from '../store/bench.ts';
import type { Keeping } from '../store/keep/keeping.ts';
import type { Offline } from '../engine/offline/install.ts';
import { breathe } from '../engine/breathe.ts';
import { places, stations } from '../stations/index.ts';
import { Making } from '../ui/Making.tsx';
import { Arriving, later } from '../ui/later.tsx';
import { ProblemList } from '../ui/ProblemList.tsx';
import { followed } from '../store/leads.ts';
import { told, words } from '../store/words.ts';
import { createPrinting, openJob, saveNow } from './actions.ts';
import { Drawer, takeFocus, type DrawerName } from './Drawer.tsx';
import { EmptyBench } from './EmptyBench.tsx';
import { Tour } from './Guide.tsx';
import { Header } from './header/Header.tsx';
import { showThing } from './next-step.ts';
import { hasPrintBeside, PrintBeside } from './PrintBeside.tsx';
import type { ShellProps } from './props.ts';

const wall = later(() => import('./prints/Wall.tsx').then((m) => m.Wall));
const compare = later(() => import('./compare/CompareView.tsx').then((m) => m.CompareView));

/** Stations with something to do before there is a Plan: they say themselves where it is missing. */
const showsJob: ReadonlySet<string> = new Set(['forms', 'picture', 'laydown']);

/** The shell: header with the stations, one drawer under it at a time, and the station in use. */
export function App({ bench, keeping, keeper, offline, starting }: ShellProps & { readonly starting: Promise<void> }) {
  const started = useSignal(false);
  const station = useStation();
  const drawer = useSignal<DrawerName | null>(null);
  const printing = useMemo(createPrinting, []);
  const w = words().shell;
  useEffect(() => {
    void starting.finally(() => {
      started.value = true;
    });
  }, []);
  useEscape(() => {
    if (bench.held.peek()) bench.answerHeld(false);
    else if (bench.refused.peek()) bench.refuse(null);
    else drawer.value = null;
  });
  useDrop((file) => void openJob(bench, keeping, { file }));

  const job = useNextTask(bench.job.value);
  useEffect(() => {
    document.title = job ? `${job.title} · Laydown` : 'Laydown';
  }, [job?.title]);
  useEffect(() => {
    drawer.value = null;
  }, [job === null, bench.refused.value]);
  useEffect(() => {
    scrollTo(0, 0);
    drawer.value = null;
  }, [station.value]);
  const lead = followed.value;
  useEffect(() => {
    if (!lead) return;
    drawer.value = null;
    // The station is there and drawn by then.
    void (places.find((place) => place.id === lead.station)?.view.load() ?? Promise.resolve()).then(() =>
      setTimeout(() => showThing(lead)),
    );
  }, [lead]);
  const current = places.find((s) => s.id === station.value) ?? stations.find((s) => s.id === 'laydown') ?? stations[0];
  const older = useOlder(bench);
  const unplanned = bench.plan.value === null;
  const comparing = station.value === 'compare';
  const walled = station.value === 'prints';
  const page = comparing ? 'compare' : walled ? 'prints' : current.id;
  const title = comparing ? words().compare.title : walled ? words().prints.title : current.title();
  const refused = bench.refused.value;
  const held = bench.held.value;
  const onNew = (): void => {
    drawer.value = 'open';
  };
  const waiting = {
    meanwhile: <p class="opening">{w.opening}</p>,
    instead: (again: () => void) => <NotHere again={again} />,
  };
  return (
    <>
      <a
        class="skip"
        href="#station"
        onClick={(e) => {
          e.preventDefault();
          document.getElementById('station')?.focus();
        }}
      >
        {w.skip}
      </a>
      <Header
        bench={bench}
        keeping={keeping}
        station={page}
        drawer={drawer}
        printing={printing}
        older={older !== null || (unplanned && !walled && showsJob.has(current.id))}
      />
      <Tour
        bench={bench}
        station={page}
        drawer={drawer}
        printing={printing}
        onExample={() =>
          void openJob(bench, keeping, 'example').then(() => {
            location.hash = 'laydown';
          })
        }
      />
      <Drawer bench={bench} keeping={keeping} keeper={keeper} offline={offline} name={drawer} printing={printing} />
      {held && (
        <section ref={takeFocus} tabIndex={-1} class="drawer" role="alertdialog" aria-label={told(held.says)}>
          <p>{told(held.says)}</p>
          <button type="button" class="button" onClick={() => bench.answerHeld(true)}>
            {w.doItAnyway}
          </button>
          <button type="button" class="button button-strong" onClick={() => bench.answerHeld(false)}>
            {w.leaveIt}
          </button>
        </section>
      )}
      {refused && (
        <section class="drawer" role="alert">
          <ProblemList problems={refused} />
          <button type="button" class="button button-small" onClick={() => bench.refuse(null)}>
            {w.close}
          </button>
        </section>
      )}
      {keeping.state.value === 'other-tab' && (
        <div class="notice notice-row" role="alert">
          <span>{w.otherTab}</span>
          <button type="button" class="button" onClick={() => void keeping.workHere()}>
            {w.workHere}
          </button>
        </div>
      )}
      {offline.newer.value && <NewerNotice offline={offline} />}
      {keeping.state.value === 'full' && <NotKept text={w.storageFull} bench={bench} keeping={keeping} />}
      {keeping.state.value === 'denied' && <NotKept text={w.notKept} bench={bench} keeping={keeping} />}
      {bench.failure.value !== null && (
        <p class="notice" role="alert">
          {bench.failure.value.map((p) => `${told(p.message)} ${told(p.advice)}`).join(' ')}{' '}
          {bench.stopped.value && (
            <button type="button" class="button" onClick={() => bench.goOn()}>
              {w.goOnMaking}
            </button>
          )}
        </p>
      )}
      {job && (
        <p class="print-only print-station" aria-hidden="true">
          {title}
        </p>
      )}
      <main
        id="station"
        tabindex={-1}
        aria-busy={bench.working.value}
        data-old={older ?? undefined}
        style={{ '--older': JSON.stringify(w.older) }}
        aria-label={job ? title : w.noJob}
      >
        <h1 class="unseen">{job ? title : w.noJob}</h1>
        {job && unplanned && !walled && !showsJob.has(current.id) && <Making bench={bench} large />}
        {job && walled ? (
          <Arriving part={wall} props={{ bench, keeping, keeper, offline, onNew }} {...waiting} />
        ) : job && comparing ? (
          <Arriving part={compare} props={{ bench, keeping, keeper }} {...waiting} />
        ) : job ? (
          <div class={hasPrintBeside(bench, current.id) ? 'with-print' : undefined}>
            <Arriving key={current.id} part={current.view} props={{ bench }} {...waiting} />
            {hasPrintBeside(bench, current.id) && <PrintBeside bench={bench} />}
          </div>
        ) : started.value && bench.job.value === null ? (
          <EmptyBench bench={bench} keeping={keeping} keeper={keeper} offline={offline} drawer={drawer} />
        ) : (
          <p class="opening">{w.opening}</p>
        )}
      </main>
    </>
  );
}

/** The first job on the bench is drawn in a task of its own, after the header that names it. */
function useNextTask(job: Job | null): Job | null {
  const drawn = useSignal(job !== null);
  const there = job !== null;
  useEffect(() => {
    if (!there) return void (drawn.value = false);
    let wanted = true;
    void breathe().then(() => {
      if (wanted) drawn.value = true;
    });
    return () => {
      wanted = false;
    };
  }, [there]);
  return drawn.value ? job : null;
}

/** The browser keeps nothing: the job is offered as a file at once. */
function NotKept({ text, bench, keeping }: { readonly text: string; readonly bench: Bench; readonly keeping: Keeping }) {
  return (
    <div class="notice notice-row" role="alert">
      <span>{text}</span>
      {bench.job.value && (
        <button type="button" class="button" onClick={() => void saveNow(bench, keeping)}>
          {words().shell.saveFile}
        </button>
      )}
    </div>
  );
}

/** A part of the page that did not come: the server is away, and nothing is kept on this machine yet. */
function NotHere({ again }: { readonly again: () => void }) {
  const w = words().shell;
  return (
    <div class="notice notice-row" role="alert">
      <span>{w.notHere}</span>
      <button type="button" class="button" onClick={again}>
        {w.fetchAgain}
      </button>
    </div>
  );
}

/** A newer Laydown waits; it is taken when the person says so, and what lies on the bench is written first. */
function NewerNotice({ offline }: { readonly offline: Offline }) {
  const w = words().shell;
  return (
    <div class="notice notice-row" role="status">
      <span>{w.newerLaydown}</span>
      <button type="button" class="button" onClick={() => offline.take()}>
        {w.takeNewer}
      </button>
    </div>
  );
}

/** Longer than an ordinary change takes: what is in sight doesn't blink at each. */
const olderMs = 500;

/** What in sight has been older than the job for a while: all of it, or all but the colours. */
function useOlder(bench: Bench): 'old' | 'colours' | null {
  const older = useSignal<'old' | 'colours' | null>(null);
  const fit = bench.plan.value === null ? 'whole' : bench.fit.value;
  useEffect(() => {
    if (fit === 'whole') return void (older.value = null);
    const timer = setTimeout(() => {
      older.value = fit;
    }, olderMs);
    return () => clearTimeout(timer);
  }, [fit]);
  return fit === 'whole' ? null : older.value;
}

/** The station in the address, so that back and forward go through stations. */
function useStation(): Signal<string> {
  const station = useSignal(location.hash.slice(1));
  useEffect(() => {
    const follow = (): void => {
      station.value = location.hash.slice(1);
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return station;
}

/** Escape closes what was opened last, unless it was meant for the thing in hand. */
function useEscape(close: () => void): void {
  useEffect(() => {
    const press = (e: KeyboardEvent): void => {
      if (e.key === 'Escape' && !e.defaultPrevented) close();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}

/** A .laydown file dropped anywhere on the page. Stations that take drops of their own stop the event. */
function useDrop(take: (file: File) => void): void {
  useEffect(() => {
    const over = (e: DragEvent): void => e.preventDefault();
    const drop = (e: DragEvent): void => {
      e.preventDefault();
      const file = e.dataTransfer?.files[0];
      if (file) take(file);
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }, []);
}
