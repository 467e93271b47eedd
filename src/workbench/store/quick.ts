import type { Job } from '../../core/job/index.ts';
import { createMemory, recolour, recolourDrawn, type Drawn, type Recoloured } from '../../core/plan/index.ts';
import type { ShownPlan } from '../engine/protocol.ts';

/** Plans remembered, each with other codes: a run that was left out comes back at once. */
const mostKept = 3;

/** Colours on the page's own thread, so that a slider, a new order or a run left out never waits for a Plan under way. */
export interface Quick {
  /** A whole Plan came. */
  know(plan: ShownPlan): void;
  /** Other files, another job. */
  forget(): void;
  /**
   * What is shown, with all bare papers in the colours of the job. Null when only the worker can say: a new stencil, a
   * sheet that is printed already, or colours learned from readings of proofs.
   */
  show(shown: ShownPlan, job: Job, paperId: string): ShownPlan | null;
  /** The same of a print whose first Plan is not there yet. */
  drawn(drawn: Drawn, job: Job): Drawn | null;
}

export function createQuick(): Quick {
  const memory = createMemory();
  let known: readonly ShownPlan[] = [];
  let warm = false;
  const quick: Quick = {
    know(plan) {
      known = [plan, ...known.filter((one) => one.codes.data !== plan.codes.data)].slice(0, mostKept);
      if (warm) return;
      // The first time takes far longer than all that follow: it is had while nobody waits.
      warm = true;
      setTimeout(() => {
        if (known.length > 0) quick.show(known[0], known[0].job, known[0].papers[0]?.id ?? '');
      }, 300);
    },
    forget() {
      known = [];
    },
    show(shown, job, paperId) {
      if (job.proofReadings.length > 0) return null;
      for (const base of known) {
        if (base.papers.some((p) => p.id === paperId && p.overPicture)) return null;
        const last = { ...base, papers: base.papers.map((p) => ({ ...p, overPicture: null })) };
        const on = (id: string): Recoloured | null => recolour(last, job, id, memory, () => base.areasMm2);
        const made = on(paperId);
        if (made) {
          const papers = base.papers.map((p) =>
            p.overPicture ? p : { ...((p.id === paperId ? made : on(p.id))?.paper ?? p), overPicture: false },
          );
          return { ...shown, codes: base.codes, layers: made.layers, papers };
        }
      }
      return null;
    },
    drawn: (drawn, job) => (drawn.job === job ? drawn : recolourDrawn(drawn, job, memory)),
  };
  return quick;
}
