import { words } from '../../../store/words.ts';
import type { QueuedSheet } from './queue.ts';

interface Props {
  readonly queue: readonly QueuedSheet[];
  readonly current: string | null;
  readonly onChoose: (id: string) => void;
}

/** Every sheet of the run as it stands; a touch takes one in hand. State is told by shape, not by colour. */
export function SheetChips({ queue, current, onChoose }: Props) {
  const w = words().pulling;
  return (
    <section class="chips" aria-label={w.sheets}>
      {queue.map((sheet) => (
        <button
          key={sheet.id}
          type="button"
          class={`chip chip-${sheet.state}`}
          data-sheet={sheet.id}
          aria-pressed={sheet.id === current}
          disabled={sheet.state === 'lostBefore'}
          aria-label={w.chip(sheet.id, w[sheet.state])}
          onClick={() => onChoose(sheet.id)}
        >
          <span>{sheet.id}</span>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            {sheet.state === 'done' && <path d="M2 8.5l4 4 8-9" />}
            {(sheet.state === 'lost' || sheet.state === 'lostBefore') && <path d="M3 3l10 10M13 3L3 13" />}
          </svg>
        </button>
      ))}
    </section>
  );
}
