import { Parts } from '../../ui/Parts.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { AgainPart } from './pot/AgainPart.tsx';
import { LearnPart } from './read/LearnPart.tsx';
import { MixPart } from './pot/MixPart.tsx';
import { OrderPart } from './OrderPart.tsx';
import { PotPart } from './pot/PotPart.tsx';
import { ReachPart } from './ReachPart.tsx';
import { ShelfPart } from './shelf/ShelfPart.tsx';
import { at } from './state.ts';
import { WantedPart } from './WantedPart.tsx';

/** The ink room: from a drawdown to the pot, and back. */
export function InksView({ bench }: StationProps) {
  const w = words().inks;
  const job = bench.job.value;
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  if (!job || !plan || !paper) return null;
  const props = { bench, plan, paper, job };
  const open = plan.layers.filter((l) => l.inkId === null);
  const learning = paper.learning;
  const decided = plan.layers.length - open.length;
  return (
    <div class="inks">
      <Parts
        label={w.parts}
        at={at.part}
        parts={[
          {
            id: 'shelf',
            title: w.shelf,
            look: job.inks.length === 0,
            says: w.knows(job.inks.filter((k) => k.role === 'ink').length),
            view: () => <ShelfPart {...props} />,
          },
          { id: 'wanted', title: w.wanted, look: false, says: w.pinnedSays(job.wanted.length), view: () => <WantedPart {...props} /> },
          {
            id: 'reach',
            title: w.reach,
            look: open.length > 0,
            says: open.length > 0 ? w.openSays(open.map((l) => l.name)) : w.allDecided,
            view: () => <ReachPart {...props} />,
          },
          { id: 'order', title: w.order, look: false, says: w.orderSays(decided), view: () => <OrderPart {...props} /> },
          { id: 'mix', title: w.mix, look: false, says: w.potsSays(decided), view: () => <MixPart {...props} /> },
          { id: 'pot', title: w.pot, look: false, says: w.logsSays(job.potLogs.length), view: () => <PotPart {...props} /> },
          {
            id: 'learn',
            title: w.learn,
            look: false,
            says: learning ? w.learntSays(sayDelta(learning.after.mean)) : w.readingsSays(job.proofReadings.length),
            view: () => <LearnPart {...props} />,
          },
          { id: 'again', title: w.again, look: false, says: w.againSays, view: () => <AgainPart {...props} /> },
        ]}
      />
    </div>
  );
}
