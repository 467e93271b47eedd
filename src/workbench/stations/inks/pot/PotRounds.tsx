import type { JobPotLog } from '../../../../core/job/index.ts';
import { sayLab } from '../../../ui/fields/format.ts';
import { words } from '../../../store/words.ts';
import { showReading } from '../state.ts';

/** The running log: what went in, and how every drawdown looked. */
export function PotRounds({ log, sayParts }: { readonly log: JobPotLog; readonly sayParts: (parts: JobPotLog['contents']) => string }) {
  const w = words().inks;
  return (
    <ol class="pot-log" aria-label={w.potLog}>
      <li>
        <span class="reading-swatch reading-none" />
        <div>
          <b>{w.nothingAdded}</b>
          <p>{sayParts(log.contents)}</p>
        </div>
      </li>
      {log.rounds.map((round, i) => {
        const shown = showReading(round.reading);
        return (
          <li key={i}>
            <span class="reading-swatch" style={{ background: shown.srgb }} />
            <div>
              <b>{w.round(i + 1)}</b>{' '}
              {(round.looks ?? round.says) && <span>{round.looks ? w.looked(round.looks.size, round.looks.how) : round.says}</span>}{' '}
              <span>{sayLab(shown.lab)}</span>
              {round.added.length > 0 && <p>{w.added(sayParts(round.added))}</p>}
              {round.date && <small>{round.date}</small>}
            </div>
          </li>
        );
      })}
    </ol>
  );
}
