import type { Signal } from '@preact/signals';
import { NewJob } from '../stations/forms/NewJob.tsx';
import { startJob } from './actions.ts';
import { words } from '../store/words.ts';
import type { ShellProps } from './props.ts';
import type { DrawerName } from './Drawer.tsx';
import { WordsButton } from './Guide.tsx';
import { startTour, tour } from './tour.ts';
import { Wall } from './prints/Wall.tsx';
import { OpenChoices } from './header/OpenChoices.tsx';

export function EmptyBench({ drawer, ...props }: ShellProps & { readonly drawer: Signal<DrawerName | null> }) {
  const w = words().shell;
  return (
    <section class="empty-bench">
      <h2>{w.emptyTitle}</h2>
      <p>{w.emptyText}</p>
      <OpenChoices {...props} />
      <div class="row">
        {!tour.value.on && (
          <button type="button" class="button button-strong empty-tour" onClick={startTour}>
            {tour.value.at > 0 ? words().guide.tourOn : words().guide.tourStart}
          </button>
        )}
        <WordsButton drawer={drawer} />
      </div>
      {props.keeping.prints.value.length > 0 && <Wall {...props} />}
      <NewJob onStart={(text) => void startJob(props.bench, props.keeping, text)} />
      <p class="empty-note">
        {w.onThisMachine}
        {props.offline.ready.value && ` ${w.worksOffline}`}
      </p>
    </section>
  );
}
