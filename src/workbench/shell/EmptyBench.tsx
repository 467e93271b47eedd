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
      <p class="empty-note">{w.onThisMachine}</p>
    </section>
  );
}
