import { Parts } from '../../ui/Parts.tsx';
import { words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { openPart } from './at.ts';
import { HandoutPart } from './HandoutPart.tsx';
import { RecordPart } from './RecordPart.tsx';
import { SheetsPart } from './SheetsPart.tsx';
import { SigningPart } from './SigningPart.tsx';

/** The edition: sheets to start, numbers for the pencil, the record, the hand-out. */
export function EditionView({ bench }: StationProps) {
  const w = words().edition;
  const plan = bench.plan.value;
  if (!plan || !bench.job.value) return null;
  const { edition } = plan;
  const props = { bench, plan };
  const start = edition.sheets?.papers.reduce((sum, p) => sum + p.start, 0) ?? 0;
  const signed = edition.numbered?.sheets.filter((s) => s.text !== null).length ?? null;
  const lines = edition.documentation?.fields.filter((f) => f.why === 'disclosure' && f.value === null).length ?? null;
  return (
    <div class="edition">
      <Parts
        label={w.parts}
        at={openPart}
        parts={[
          {
            id: 'sheets',
            title: w.sheets,
            look: edition.sheets === null || edition.sheets.problems.length > 0,
            says: w.sheetsSays(start),
            view: () => <SheetsPart {...props} />,
          },
          {
            id: 'signing',
            title: w.signing,
            look: signed === null,
            says: signed === null ? w.signingNone : w.signingSays(signed),
            view: () => <SigningPart {...props} />,
          },
          {
            id: 'record',
            title: w.record,
            look: lines === null || lines > 0,
            says: lines === null ? w.signingNone : w.recordSays(lines),
            view: () => <RecordPart {...props} />,
          },
          {
            id: 'handout',
            title: w.handout,
            look: edition.handout === null,
            says: w.handoutSays(edition.handout?.steps.length ?? 0),
            view: () => <HandoutPart {...props} />,
          },
        ]}
      />
    </div>
  );
}
