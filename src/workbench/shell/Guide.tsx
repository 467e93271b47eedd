import type { Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { stations } from '../stations/index.ts';
import { words } from '../store/words.ts';
import type { Printing } from './actions.ts';
import type { DrawerName } from './Drawer.tsx';
import { here } from './here.ts';
import { nextStep, showPlace } from './next-step.ts';
import { leaveTour, startTour, tour, tourAgain, tourBack, tourMinutes, tourNext, tourSteps, type TourStep } from './tour.ts';
import type { Bench } from '../store/bench.ts';

interface Props {
  readonly bench: Bench;
  readonly station: string;
  readonly drawer: Signal<DrawerName | null>;
  readonly printing: Printing;
  readonly onExample: () => void;
}

/** In the status line: the next sensible step of any job, the tour and the trade's words. */
export function Guide({ bench, station, drawer, printing }: Omit<Props, 'onExample'>) {
  const w = words().guide;
  return (
    <div class="what-next">
      {!tour.value.on && <NextStep bench={bench} station={station} drawer={drawer} printing={printing} />}
      <div class="guide-ways">
        {!tour.value.on && (
          <button type="button" class="button" onClick={startTour}>
            {w.tour}
          </button>
        )}
        <WordsButton drawer={drawer} />
      </div>
    </div>
  );
}

/** Lays the glossary open under the header. */
export function WordsButton({ drawer }: Pick<Props, 'drawer'>) {
  const open = drawer.value === 'glossary';
  return (
    <button
      type="button"
      class="button"
      aria-expanded={open}
      aria-controls="drawer"
      onClick={() => {
        drawer.value = open ? null : 'glossary';
      }}
    >
      {words().glossary.open}
    </button>
  );
}

function NextStep({ bench, drawer, printing, station }: Omit<Props, 'onExample'>) {
  const w = words().guide;
  const next = nextStep(bench, printing.fits(bench));
  const show = (name: DrawerName) => (): void => {
    drawer.value = name;
  };
  return (
    <p class="next-step">
      <b>{w.next}</b>{' '}
      {next.kind === 'mend' ? (
        <button type="button" class="link" onClick={show('problems')}>
          {w.mend(next.count)}
        </button>
      ) : next.kind === 'print' ? (
        <button type="button" class="link" onClick={show('print')}>
          {w.allSet}
        </button>
      ) : next.kind === 'keep' ? (
        <button type="button" class="link" onClick={() => bench.keepTrials()}>
          {w.keepTried(next.count)}
        </button>
      ) : next.station.id === station ? (
        <button type="button" class="link" onClick={showPlace}>
          {next.says}
        </button>
      ) : (
        <a href={`${here}#${next.station.id}`}>
          {next.says} → {next.station.title()}
        </a>
      )}
    </p>
  );
}

/** The tour, a strip under the stations: names the next thing to try, and sees when it was done. */
export function Tour(props: Props) {
  return tour.value.on ? (
    <section class="guide" aria-label={words().guide.tourTitle}>
      <TourStrip {...props} />
    </section>
  ) : null;
}

function TourStrip({ bench, station, printing, onExample }: Props) {
  const w = words().guide;
  const { at, justDone } = tour.value;
  const step: TourStep | undefined = tourSteps[at];
  const done = step?.done?.({ bench, station, packetMade: printing.fits(bench) }) ?? false;
  useEffect(() => {
    if (done) tourNext(true);
  }, [done, at]);
  useEffect(() => {
    const touch = step?.touch;
    if (!touch) return;
    // A choice is a click and a change: one step only.
    const see = (e: Event): void => {
      if (tour.peek().at === at && e.target instanceof Element && e.target.closest(touch)) tourNext(true);
    };
    const events = touch.includes('canvas') ? ['pointermove', 'pointerdown'] : ['click', 'change'];
    // Seen after the bench has done what was asked, so that the words that follow are about what is in sight.
    for (const name of events) document.addEventListener(name, see);
    return () => {
      for (const name of events) document.removeEventListener(name, see);
    };
  }, [step]);
  if (!step) {
    return (
      <>
        <p class="guide-text" role="status">
          <b>{w.done}</b> {w.finished}
        </p>
        <div class="guide-do">
          <button type="button" class="button button-small" onClick={tourAgain}>
            {w.again}
          </button>
          <button type="button" class="button button-small" onClick={leaveTour}>
            {w.close}
          </button>
        </div>
      </>
    );
  }
  const away = bench.job.value !== null && step.station !== null && step.station !== station;
  const name = stations.find((s) => s.id === step.station)?.title();
  return (
    <>
      <p class="guide-text" role="status">
        <span class="guide-count">{w.step(at + 1, tourSteps.length)}</span>
        {justDone && <b>{w.done} </b>}
        {w.steps[step.id]}
        <small> {w.minutes(Math.ceil(((tourSteps.length - at) * tourMinutes) / tourSteps.length))}</small>
      </p>
      <div class="guide-do">
        {step.id === 'open' && (
          <button type="button" class="button button-strong" onClick={onExample}>
            {words().shell.openExample}
          </button>
        )}
        {away && (
          <a class="button button-strong button-link" href={`${here}#${step.station}`}>
            {w.go}: {name}
          </a>
        )}
        {at > 0 && (
          <button type="button" class="button button-small" onClick={tourBack}>
            {w.back}
          </button>
        )}
        <button type="button" class="button button-small" onClick={() => tourNext(false)}>
          {w.skip}
        </button>
        <button
          type="button"
          class="button button-small"
          onClick={() => {
            leaveTour();
            bench.announce(w.left);
          }}
        >
          {w.leave}
        </button>
      </div>
    </>
  );
}
