import { signal } from '@preact/signals';
import type { BoardSeen, KeptLens } from '../../../core/form/index.ts';

/** The camera's lens, from photographs of a checked board: kept in this browser, for it belongs to the camera and not to a job. */
const lensPlace = 'laydown-lens',
  boardsPlace = 'laydown-lens-boards';

function kept<T>(place: string): T | null {
  try {
    return JSON.parse(localStorage.getItem(place) ?? 'null') as T | null;
  } catch {
    return null;
  }
}

function keep(place: string, what: unknown): void {
  try {
    if (what === null) localStorage.removeItem(place);
    else localStorage.setItem(place, JSON.stringify(what));
  } catch {
    // Without room it is kept as long as the page is open.
  }
}

export const keptLens = signal<KeptLens | null>(kept(lensPlace));
/** The boards that it was read from: each further one makes it better. */
export const keptBoards = signal<readonly BoardSeen[]>(kept<readonly BoardSeen[]>(boardsPlace) ?? []);
/** More would no longer change it. */
const mostBoards = 24;

export function keepLens(lens: KeptLens | null, boards: readonly BoardSeen[]): void {
  keptLens.value = lens;
  keptBoards.value = boards.slice(-mostBoards);
  keep(lensPlace, lens);
  keep(boardsPlace, boards.length > 0 ? keptBoards.value : null);
}
