import { withPrintPhoto, type SeenOverlap } from '../../../../core/asks/index.ts';
import { srgbFromXyz, xyzFromLab } from '../../../../core/colour/index.ts';
import type { Answer, ShownPaper, ShownPlan } from '../../../engine/protocol.ts';
import type { Bench } from '../../../store/bench.ts';
import { step, words } from '../../../store/words.ts';
import { sayDelta } from '../../../ui/fields/format.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { Films } from '../../../ui/proof/Films.tsx';
import { isoDay } from '../../inks/state.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly found: Answer<'printPhoto'>;
}

/** What a photograph shows of each overlap beside what was foreseen; all or one of them become readings of the job. */
export function SeenOverlaps({ bench, plan, paper, found }: Props) {
  const w = words().overlaps;
  const { seen, suspect, narrow } = found;
  if (seen.length === 0) return null;
  const nameOf = (layers: readonly string[]): string => w.films(layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id));
  const isTaken = (one: SeenOverlap): boolean =>
    plan.job.proofReadings.some(
      ({ paper: on, layers, reading }) =>
        on === paper.id &&
        reading.kind === 'photo' &&
        layers.toSorted().join(' ') === one.layers.toSorted().join(' ') &&
        reading.lab.join() === one.reading.lab.join(),
    );
  const take = (some: readonly SeenOverlap[]): void => {
    bench.edit(step('inks', 'photograph', ''), (job) => withPrintPhoto(job, paper.id, some, isoDay()));
    bench.announce(w.photoTook(some.length));
  };
  const beyond = seen.filter((one) => one.beyond);
  const offered = seen.filter((one) => !one.foreseen.measured && !isTaken(one));
  return (
    <div class="print-photo-seen">
      <h3>
        {w.photoSeen(seen.length)}
        <Why of={w.photoSeen(seen.length)}>{w.photoWhy}</Why>
      </h3>
      <p class="big-say">
        {suspect !== null
          ? w.photoSuspect(nameOf([suspect]))
          : beyond.length === 0
            ? w.photoWithin
            : w.photoBeyond(beyond.length, beyond.map((one) => nameOf(one.layers)).join('; '))}
      </p>
      {offered.length > 1 && (
        <div>
          <button type="button" class="button button-strong" onClick={() => take(offered)}>
            {w.photoTakeAll(offered.length)}
          </button>
        </div>
      )}
      <ul class="versus-overlaps">
        {seen.map((one) => (
          <li key={one.code}>
            <span class="versus-pair" aria-hidden="true">
              <span class="versus-swatch" style={{ background: one.foreseen.srgb }} />
              <span class="versus-swatch" style={{ background: srgbFromXyz(xyzFromLab(one.reading.lab)).hex }} />
            </span>
            <Films layers={plan.layers} here={one.layers} />
            <div class="print-photo-one">
              <b>{nameOf(one.layers)}</b>
              <span>
                {w.apartWords(one.deltaE)}
                {one.beyond && (
                  <>
                    , <b>{w.photoIsBeyond}</b>
                  </>
                )}
              </span>
              <small>{w.photoApart(sayDelta(one.deltaE), sayDelta(one.reading.sigma ?? 0))}</small>
              {one.foreseen.measured && <small>{w.photoByInstrument}</small>}
              {isTaken(one) ? (
                <b>{w.photoTaken}</b>
              ) : (
                <button type="button" class="button button-box" onClick={() => take([one])}>
                  {w.photoTake}
                  <span class="unseen">{w.photoTakeOf(nameOf(one.layers))}</span>
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {narrow > 0 && <p>{w.photoNarrow(narrow)}</p>}
    </div>
  );
}
