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
  /** Under `last` the Plan; under the name of a print its small proof, as an address that holds the picture. */
  sight: { key: string; value: Sight | string };
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
    return sight && typeof sight === 'object' ? sight : null;
  } catch {
    return null;
  }
}

const ofPrint = 'print ';

/** Keeps the small proof of a print. Never rejects: a proof is made anew whenever the print is opened. */
export async function keepProof(print: string, address: string): Promise<void> {
  try {
    const db = await open();
    await db.put('sight', address, ofPrint + print);
    db.close();
  } catch {
    // The wall shows an empty sheet.
  }
}

/** Small proofs by their prints. */
export async function smallProofs(wanted: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  try {
    const db = await open();
    for (const key of await db.getAllKeys('sight')) {
      if (!key.startsWith(ofPrint)) continue;
      const print = key.slice(ofPrint.length);
      const address = await db.get('sight', key);
      if (wanted.includes(print) && typeof address === 'string') found.set(print, address);
    }
    db.close();
  } catch {
    // None then.
  }
  return found;
}

/** A Plan follows from the job, its files and the edition of Laydown (the address of its worker): all three are in the key. */
export async function sightKey(job: Job, attachments: Attachments, edition: string): Promise<string> {
  const files = await Promise.all([...attachments].map(async ([path, bytes]) => `${path} ${await fingerprint(bytes)}`));
  return fingerprint(new TextEncoder().encode([edition, JSON.stringify(job), ...files].join('\n')));
}
