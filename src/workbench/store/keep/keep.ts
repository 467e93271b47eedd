import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Job } from '../../../core/job/index.ts';
import { openPatiently } from './open-rooms.ts';

/** A job as it is kept in the browser: the document, and its attachments by fingerprint (each stored once). */
export interface KeptJob {
  readonly job: Job;
  readonly attachments: readonly (readonly [path: string, print: string])[];
  /** Fingerprint of the file that the job was opened from, if it was served with the page. */
  readonly servedPrint: string | null;
  readonly changed: boolean;
  readonly keptAt: number;
}
/** What a version goes by: the name it was given, or, if it was put aside because another job was opened, its title. */
export interface VersionName {
  readonly name: string;
  readonly putAside?: boolean;
  /** Another tab was at work on it. */
  readonly otherTab?: boolean;
}
export interface KeptVersion extends KeptJob, VersionName {
  readonly id: number;
}

interface Rooms extends DBSchema {
  /** `now`: what lies on the bench. Under the name of a tab: what was done there while another tab was the bench. */
  bench: { key: string; value: KeptJob };
  versions: { key: number; value: Omit<KeptVersion, 'id'> & { id?: number } };
  attachments: { key: string; value: Uint8Array };
}

export interface Snapshot {
  readonly job: Job;
  readonly attachments: ReadonlyMap<string, Uint8Array>;
  readonly servedPrint: string | null;
  readonly changed: boolean;
}

/** The browser's own storage: what is on the bench now, and named versions. Every method rejects when storage is denied or full. */
export interface Keeper {
  keep(snapshot: Snapshot): Promise<void>;
  kept(): Promise<Snapshot | null>;
  /** What is done in a tab that is not the bench. */
  keepAside(tab: string, snapshot: Snapshot): Promise<void>;
  dropAside(tab: string): Promise<void>;
  /** Tabs that left something aside. */
  tabsAside(): Promise<readonly string[]>;
  /** Makes a version of what a tab left aside, in one go. */
  keepAsideAsVersion(tab: string): Promise<void>;
  keepVersion(version: VersionName, snapshot: Snapshot): Promise<void>;
  versions(): Promise<readonly KeptVersion[]>;
  version(id: number): Promise<Snapshot | null>;
}

const aside = 'aside ';

const prints = new WeakMap<Uint8Array, string>();

export async function fingerprint(bytes: Uint8Array): Promise<string> {
  let print = prints.get(bytes);
  if (print === undefined) {
    const hash = await crypto.subtle.digest('SHA-256', bytes as BufferSource);
    print = Array.from(new Uint8Array(hash), (b) => b.toString(16).padStart(2, '0')).join('');
    prints.set(bytes, print);
  }
  return print;
}

export function openKeeper(name = 'laydown'): Keeper {
  // A browser that denies storage may throw at once: that is told like any other refusal.
  const opening: Promise<IDBPDatabase<Rooms>> = openPatiently(() =>
    openDB<Rooms>(name, 1, {
      upgrade(db) {
        db.createObjectStore('bench');
        db.createObjectStore('versions', { keyPath: 'id', autoIncrement: true });
        db.createObjectStore('attachments');
      },
    }),
  );
  opening.catch(() => undefined);

  /** All or nothing: attachments and the document that names them go in together. */
  async function put(snapshot: Snapshot, as: VersionName | string): Promise<void> {
    const db = await opening;
    const named = await Promise.all(
      [...snapshot.attachments].map(async ([path, bytes]) => ({ path, bytes, print: await fingerprint(bytes) })),
    );
    const kept: KeptJob = {
      job: snapshot.job,
      attachments: named.map(({ path, print }) => [path, print] as const),
      servedPrint: snapshot.servedPrint,
      changed: snapshot.changed,
      keptAt: Date.now(),
    };
    const tx = db.transaction(['bench', 'versions', 'attachments'], 'readwrite', { durability: 'strict' });
    const store = tx.objectStore('attachments');
    const there = new Set(await store.getAllKeys());
    for (const { bytes, print } of named) if (!there.has(print)) await store.put(bytes, print);
    if (typeof as === 'string') await tx.objectStore('bench').put(kept, as);
    else await tx.objectStore('versions').add({ ...kept, ...as });
    await tx.done;
  }

  async function whole(kept: KeptJob | undefined): Promise<Snapshot | null> {
    if (!kept) return null;
    const db = await opening;
    const attachments = new Map<string, Uint8Array>();
    for (const [path, print] of kept.attachments) {
      const bytes = await db.get('attachments', print);
      if (bytes) attachments.set(path, bytes);
    }
    return { job: kept.job, attachments, servedPrint: kept.servedPrint, changed: kept.changed };
  }

  return {
    keep: (snapshot) => put(snapshot, 'now'),
    kept: async () => whole(await (await opening).get('bench', 'now')),
    keepAside: (tab, snapshot) => put(snapshot, aside + tab),
    dropAside: async (tab) => (await opening).delete('bench', aside + tab),
    tabsAside: async () =>
      (await (await opening).getAllKeys('bench')).filter((key) => key.startsWith(aside)).map((key) => key.slice(aside.length)),
    async keepAsideAsVersion(tab) {
      const tx = (await opening).transaction(['bench', 'versions'], 'readwrite', { durability: 'strict' });
      const kept = await tx.objectStore('bench').get(aside + tab);
      if (kept) await tx.objectStore('versions').add({ ...kept, name: kept.job.title, otherTab: true });
      await tx.objectStore('bench').delete(aside + tab);
      await tx.done;
    },
    keepVersion: (version, snapshot) => put(snapshot, version),
    versions: async () => (await (await opening).getAll('versions')).map((v) => v as KeptVersion).reverse(),
    version: async (id) => whole(await (await opening).get('versions', id)),
  };
}

/** Keeps the job on the bench as a version before another takes its place, if anything was done to it. */
export async function stepAside(keeper: Keeper, kept: Snapshot | null): Promise<void> {
  if (kept?.changed) await keeper.keepVersion({ name: kept.job.title, putAside: true }, kept);
}
