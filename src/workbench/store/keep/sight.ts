import { openDB, type DBSchema } from 'idb';
import type { Job } from '../../../core/job/index.ts';
import type { Attachments, ShownPlan } from '../../engine/protocol.ts';
import { fingerprint } from './keep.ts';

/** The Plan that was in sight last, so that the bench opens with it while the worker makes it anew. */
export interface Sight {
  /** What it belongs to: `sightKey`. */
  readonly key: string;
  readonly plan: ShownPlan;
}

interface Rooms extends DBSchema {
  sight: { key: 'last'; value: Sight };
}

const open = () =>
  openDB<Rooms>('laydown-sight', 1, {
    upgrade(db) {
      db.createObjectStore('sight');
    },
  });

/** Called by the worker, which has the Plan and whose time it may take. Rejects when there is no room: nothing is lost by it. */
export async function keepSight(sight: Sight): Promise<void> {
  const db = await open();
  await db.put('sight', sight, 'last');
  db.close();
}

/** null: none, another one, or storage is denied. */
export async function lastSight(): Promise<Sight | null> {
  try {
    const db = await open();
    const sight = await db.get('sight', 'last');
    db.close();
    return sight ?? null;
  } catch {
    return null;
  }
}

/** A Plan follows from the job, its files and the edition of Laydown (the address of its worker): all three are in the key. */
export async function sightKey(job: Job, attachments: Attachments, edition: string): Promise<string> {
  const files = await Promise.all([...attachments].map(async ([path, bytes]) => `${path} ${await fingerprint(bytes)}`));
  return fingerprint(new TextEncoder().encode([edition, JSON.stringify(job), ...files].join('\n')));
}
