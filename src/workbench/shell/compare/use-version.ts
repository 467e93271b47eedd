import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Cancelled } from '../../../core/task.ts';
import type { Bench } from '../../store/bench.ts';
import type { Keeper } from '../../store/keep/keep.ts';
import type { ShownPlan } from '../../engine/protocol.ts';
import type { Which } from './state.ts';

export interface VersionPlan {
  readonly plan: ShownPlan | null;
  readonly working: boolean;
  readonly failed: boolean;
}

/** Plan of a version, worked out beside the one on the bench. One other version at a time. */
export function useVersion(bench: Bench, keeper: Keeper, which: Which): VersionPlan {
  const found = useSignal<{ readonly which: Which; readonly plan: ShownPlan | null } | null>(null);
  useEffect(() => {
    if (which === 'now') return;
    const stop = new AbortController();
    const look = async (): Promise<void> => {
      try {
        const version = await keeper.version(which);
        const plan =
          version && (await bench.ask('otherPlan', { job: version.job, attachments: version.attachments }, { signal: stop.signal }));
        if (!stop.signal.aborted) found.value = { which, plan };
      } catch (error) {
        if (!(error instanceof Cancelled) && !stop.signal.aborted) found.value = { which, plan: null };
      }
    };
    void look();
    return () => stop.abort();
  }, [which]);
  if (which === 'now') return { plan: bench.plan.value, working: bench.working.value, failed: false };
  const here = found.value?.which === which ? found.value : null;
  return { plan: here?.plan ?? null, working: here === null, failed: here !== null && here.plan === null };
}
