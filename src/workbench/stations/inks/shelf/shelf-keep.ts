import { signal } from '@preact/signals';
import { openDB, type DBSchema } from 'idb';
import type { InkShelf } from '../../../../core/ink/index.ts';

interface Rooms extends DBSchema {
  shelf: { key: 'studio'; value: InkShelf };
}

/** The studio's ink shelf in this browser: a room of its own, for every job. */
const room = async (): ReturnType<typeof openDB<Rooms>> =>
  openDB<Rooms>('laydown-shelf', 1, {
    upgrade(db) {
      db.createObjectStore('shelf');
    },
  });

export const studioShelf = signal<InkShelf | null>(null);
let loaded: Promise<void> | null = null;

export function loadShelf(): Promise<void> {
  loaded ??= room()
    .then(async (db) => {
      studioShelf.value = (await db.get('shelf', 'studio')) ?? null;
      db.close();
    })
    .catch(() => undefined);
  return loaded;
}

/** Keeps a shelf; false when the browser has no room: then it is on the page only, to be saved as a file. */
export async function keepShelf(shelf: InkShelf): Promise<boolean> {
  studioShelf.value = shelf;
  try {
    const db = await room();
    await db.put('shelf', shelf, 'studio');
    db.close();
    return true;
  } catch {
    return false;
  }
}
