import { useSignal } from '@preact/signals';
import { words } from '../../../store/words.ts';
import type { StationProps } from '../../station.ts';
import { useAwake } from './awake.ts';
import { countOf } from './count.ts';
import { CountFoot } from './CountFoot.tsx';
import { Hand } from './Hand.tsx';
import { queueOf, runToPull } from './queue.ts';
import { RunCard } from './RunCard.tsx';
import { SheetChips } from './SheetChips.tsx';

/** The page that stands at the press: one run at a time, the sheet that is next, and what happened to it. */
export function PullingView({ bench }: StationProps) {
  const w = words().pulling;
  const count = countOf(bench);
  const awake = useAwake();
  const chosenRun = useSignal<string | null>(null);
  const chosenSheet = useSignal<string | null>(null);
  const plan = bench.plan.value;
  if (!plan) return null;
  if (!count.ready.value) return <p class="opening">{w.reading}</p>;
  const layer = plan.layers.find((l) => l.id === chosenRun.value) ?? runToPull(plan, count.state.value);
  if (!layer || !plan.edition.sheets) return <p class="opening">{w.needsRuns}</p>;
  // The run stays when its last sheet is pulled: the next one is begun on purpose.
  if (chosenRun.peek() === null)
    queueMicrotask(() => {
      chosenRun.value ??= layer.id;
    });

  const queue = queueOf(plan, layer, count.state.value);
  const sheet =
    queue.find((s) => s.id === chosenSheet.value && s.state !== 'lostBefore') ?? queue.find((s) => s.state === 'waiting') ?? null;
  const goTo = (run: number): void => {
    const next = plan.layers.find((l) => l.run === run);
    if (!next) return;
    chosenRun.value = next.id;
    chosenSheet.value = null;
  };
  return (
    <div class="pulling">
      <div class="pulling-runs">
        <a class="button" href="#press">
          {w.backToBench}
        </a>
        <button
          type="button"
          class="button run-step"
          disabled={layer.run === 1}
          aria-label={w.runBefore}
          onClick={() => goTo(layer.run - 1)}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M11 2L5 8l6 6" />
          </svg>
        </button>
        <h2>
          {w.run(layer.run, plan.layers.length)}
          <span>{layer.name}</span>
        </h2>
        <button
          type="button"
          class="button run-step"
          disabled={layer.run === plan.layers.length}
          aria-label={w.runAfter}
          onClick={() => goTo(layer.run + 1)}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M5 2l6 6-6 6" />
          </svg>
        </button>
      </div>
      <RunCard bench={bench} plan={plan} layer={layer} paperId={sheet?.paper ?? plan.papers[0]?.id ?? ''} />
      <div class="press-hand">
        <Hand
          bench={bench}
          count={count}
          layer={layer}
          queue={queue}
          sheet={sheet}
          onDone={() => {
            chosenSheet.value = null;
          }}
          onNextRun={() => goTo(layer.run + 1)}
          isLast={layer.run === plan.layers.length}
        />
        <SheetChips
          queue={queue}
          current={sheet?.id ?? null}
          onChoose={(id) => {
            chosenSheet.value = id;
          }}
        />
        <CountFoot bench={bench} count={count} awake={awake.value} />
      </div>
    </div>
  );
}
