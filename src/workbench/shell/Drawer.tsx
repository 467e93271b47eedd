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
      onKeyDown={(e) => {
        if (e.key === 'Escape') name.value = null;
      }}
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
