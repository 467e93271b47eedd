import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { openPatiently } from '../../../store/keep/open-rooms.ts';

interface Rooms extends DBSchema {
  lines: { key: number; value: { readonly job: string; readonly line: string }; indexes: { job: string } };
}

/** Where lines of the count are written down, on this machine, apart from the job: two legs, so that one may fail. */
export interface CountKeep {
  /**
   * Resolves once the line is written: 'both' on disk in the browser's database and in the simpler storage, 'one' in one of them only.
   * Rejects when neither took it.
   */
  write(job: string, line: string): Promise<'both' | 'one'>;
  /** Every line ever written for a job, in the order they were; `all` is false where the database can't be read and only the simpler storage was. */
  linesOf(job: string): Promise<{ readonly lines: readonly string[]; readonly all: boolean }>;
  /** Gives all lines of a job another name: nothing is thrown away. */
  putAway(job: string, as: string): Promise<void>;
}

const prefix = 'laydown-press ';

export function openCountKeep(name = 'laydown-press'): CountKeep {
  const opening: Promise<IDBPDatabase<Rooms>> = openPatiently(() =>
    openDB<Rooms>(name, 1, {
      upgrade(db) {
        db.createObjectStore('lines', { autoIncrement: true }).createIndex('job', 'job');
      },
    }),
  );
  opening.catch(() => undefined);

  return {
    async write(job, line) {
      // The second leg goes first: it takes no time. It stays, so that a database that breaks takes nothing with it.
      const spare = setSpare(job, line);
      try {
        const tx = (await opening).transaction('lines', 'readwrite', { durability: 'strict' });
        await tx.store.add({ job, line });
        await tx.done;
      } catch (error) {
        if (!spare) throw error;
        return 'one';
      }
      return spare ? 'both' : 'one';
    },
    async linesOf(job) {
      const kept = await opening.then((db) => db.getAllFromIndex('lines', 'job', job)).catch(() => null);
      return {
        lines: [...new Set([...(kept ?? []).map((one) => one.line), ...sparesOf(job).map(([, line]) => line)])],
        all: kept !== null,
      };
    },
    async putAway(job, as) {
      const db = await opening;
      const tx = db.transaction('lines', 'readwrite', { durability: 'strict' });
      const moved = new Set<string>();
      for (let at = await tx.store.index('job').openCursor(job); at; at = await at.continue()) {
        moved.add(at.value.line);
        await at.update({ ...at.value, job: as });
      }
      const spares = sparesOf(job);
      for (const [, line] of spares) if (!moved.has(line)) await tx.store.add({ job: as, line });
      await tx.done;
      for (const [key] of spares) dropSpare(key);
    },
  };
}

/** False where the browser gives no such room. */
function setSpare(job: string, line: string): boolean {
  try {
    localStorage.setItem(prefix + line, job);
    return true;
  } catch {
    return false;
  }
}

function dropSpare(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // It stays: a line met twice counts once.
  }
}

function sparesOf(job: string): (readonly [key: string, line: string])[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix) && localStorage.getItem(key) === job)
      .sort()
      .map((key) => [key, key.slice(prefix.length)] as const);
  } catch {
    return [];
  }
}
