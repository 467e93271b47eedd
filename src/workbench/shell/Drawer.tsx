import type { Signal } from '@preact/signals';
import type { Bench } from '../store/bench.ts';
import type { Keeper } from '../store/keep/keep.ts';
import type { Keeping } from '../store/keep/keeping.ts';
import type { Offline } from '../engine/offline/install.ts';
import { ProblemList } from '../ui/ProblemList.tsx';
import { words } from '../store/words.ts';
import { NewJob } from '../stations/forms/NewJob.tsx';
import { startJob, type Printing } from './actions.ts';
import { Glossary } from './Glossary.tsx';
import { OpenChoices } from './header/OpenChoices.tsx';
import { PrintChoices } from './header/PrintChoices.tsx';
import { Versions } from './header/Versions.tsx';

export type DrawerName = 'open' | 'print' | 'versions' | 'problems' | 'glossary';

interface Props {
  readonly bench: Bench;
  readonly keeping: Keeping;
  readonly keeper: Keeper;
  readonly offline: Offline;
  readonly name: Signal<DrawerName | null>;
  readonly printing: Printing;
}

/** What had the keys before something opened, per what opened. */
const before = new WeakMap<HTMLElement, Element | null>();
let opened: HTMLElement | null = null;

/** As a `ref`: what opens takes the keys, and gives them back where they were when it closes. */
export function takeFocus(element: HTMLElement | null): void {
  if (element) {
    // From one drawer to the next: back goes to what opened the first.
    const from = document.activeElement;
    before.set(element, opened && (from === document.body || opened.contains(from)) ? (before.get(opened) ?? null) : from);
    opened = element;
    element.focus({ preventScroll: true });
    return;
  }
  const closed = opened;
  opened = null;
  if (!closed) return;
  queueMicrotask(() => {
    const now = document.activeElement;
    const back = before.get(closed);
    // Whoever went elsewhere meanwhile stays there.
    if (
      opened ||
      (now !== null && now !== document.body && !closed.contains(now)) ||
      !(back instanceof HTMLElement || back instanceof SVGElement)
    )
      return;
    const seen = back.isConnected && back.checkVisibility();
    (seen ? back : document.querySelector<HTMLElement>('.more-ways, #station'))?.focus({ preventScroll: true });
  });
}

/** Opens under the header and pushes the bench down: it never covers the print. */
export function Drawer({ bench, keeping, keeper, offline, name, printing }: Props) {
  const w = words().shell;
  const open = name.value;
  const close = (): void => {
    name.value = null;
  };
  if (open === null) return <div id="drawer" hidden />;
  return (
    <section
      id="drawer"
      class="drawer"
      aria-label={{ open: w.open, print: w.print, versions: w.versions, problems: w.warning, glossary: words().glossary.title }[open]}
      key={open}
      ref={takeFocus}
      tabIndex={-1}
    >
      {open === 'open' && (
        <div class="open-ways">
          <div class="row">
            <a class="button button-link" href="#prints" onClick={close}>
              {words().prints.title}
            </a>
            <OpenChoices bench={bench} keeping={keeping} keeper={keeper} offline={offline} onOpened={close} />
          </div>
          <details class="fold">
            <summary>{words().prints.newPrint}</summary>
            <NewJob
              onStart={(text) =>
                void startJob(bench, keeping, text).then(() => {
                  if (!bench.refused.value) close();
                })
              }
            />
          </details>
        </div>
      )}
      {open === 'versions' && <Versions bench={bench} keeping={keeping} keeper={keeper} offline={offline} />}
      {open === 'problems' && <ProblemList problems={bench.plan.value?.problems ?? []} />}
      {open === 'glossary' && <Glossary />}
      {open === 'print' && <PrintChoices bench={bench} printing={printing} />}
      <button
        type="button"
        class="button button-small drawer-close"
        onClick={() => {
          name.value = null;
        }}
      >
        {w.close}
      </button>
    </section>
  );
}
