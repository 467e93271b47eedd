import { NewJob } from '../stations/forms/NewJob.tsx';
import { startJob } from './actions.ts';
import { words } from '../words/index.ts';
import type { ShellProps } from './App.tsx';
import { OpenChoices } from './OpenChoices.tsx';

export function EmptyBench(props: ShellProps) {
  const w = words().shell;
  return (
    <section class="empty-bench">
      <h2>{w.emptyTitle}</h2>
      <p>{w.emptyText}</p>
      <OpenChoices {...props} />
      <NewJob onStart={(text) => void startJob(props.bench, props.keeping, props.keeper, text)} />
      <p class="empty-note">{w.onThisMachine}{props.offline.ready.value && ` ${w.worksOffline}`}</p>
    </section>
  );
}
