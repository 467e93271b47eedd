import { sayFilm, sayLength, sayMass, sayMinutes } from '../../../ui/fields/units.ts';
import { Parts } from '../../../ui/Parts.tsx';
import { words } from '../../../store/words.ts';
import type { StationProps } from '../../station.ts';
import { DayPart } from './DayPart.tsx';
import { GapPart } from './screen/GapPart.tsx';
import { InkPart } from './screen/InkPart.tsx';
import { PapersPart } from './PapersPart.tsx';
import { pullingPlace } from '../pulling/index.ts';
import { openPart } from './at.ts';
import { RegisterPart } from './register/RegisterPart.tsx';
import { ScreenPart } from './screen/ScreenPart.tsx';

/** The press: screen, gap, ink, register, papers and stops, the day. */
export function PressView({ bench }: StationProps) {
  const w = words().press;
  const plan = bench.plan.value;
  const job = bench.job.value;
  if (!plan || !job) return null;
  const { press, register, edition } = plan;
  const { units } = job;
  const props = { bench, plan };
  const grams = plan.layers.reduce((sum, layer) => sum + (layer.mix?.totalGrams ?? 0), 0);
  const opens = register.budget?.pairs.some((pair) => pair.verdict === 'opens') ?? false;
  return (
    <div class="press">
      <Parts
        label={w.parts}
        at={openPart}
        page={{ id: 'pulling', title: words().pulling.title, says: pullingPlace.state(bench).knows, href: '#pulling' }}
        parts={[
          {
            id: 'screen',
            title: w.screen,
            look: !press.screenKnown || press.fit?.verdict !== 'holds',
            says: press.fit ? { holds: w.fitHolds, tight: w.fitTight, no: w.fitNo }[press.fit.verdict] : w.needsScreen,
            view: () => <ScreenPart {...props} />,
          },
          {
            id: 'gap',
            title: w.gap,
            look:
              press.screenKnown &&
              (press.risers === null ||
                (press.offContact?.problems.length ?? 0) > 0 ||
                register.problems.some((p) => p.code === 'gaps-differ' && p.severity === 'warning')),
            says: sayLength(press.gapMm, units),
            view: () => <GapPart {...props} />,
          },
          {
            id: 'ink',
            title: w.ink,
            look: plan.layers.some((l) => l.inkId === null),
            says: grams > 0 ? sayMass(grams, units, units === 'mm' ? 0 : 1) : sayFilm(press.deposit.wetMicrons, units, 0),
            view: () => <InkPart {...props} />,
          },
          {
            id: 'register',
            title: w.register,
            look: opens,
            says: `± ${sayLength(register.sigma.toleranceMm, units)}`,
            view: () => <RegisterPart {...props} />,
          },
          {
            id: 'papers',
            title: w.papers,
            look: job.papers.length === 0,
            says: job.papers.map((p) => p.count).join(' + '),
            view: () => <PapersPart {...props} />,
          },
          {
            id: 'day',
            title: w.day,
            look: edition.day === null || edition.day.problems.length > 0,
            says: edition.day ? sayMinutes(edition.day.workMinutes) : w.dayNone,
            view: () => <DayPart {...props} />,
          },
        ]}
      />
    </div>
  );
}
