import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { stageOf, type PrintStage } from '../../../core/asks/index.ts';
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
  /** Which of one's prints it is; what was kept before there were prints has none. */
  readonly print?: string;
  /** One's own though nothing was done to it here: opened from a file, or begun anew. An example is nobody's until it is changed. */
  readonly own?: boolean;
  readonly stage?: PrintStage;
}
/** A print that is not on the bench. */
export interface KeptPrint extends KeptJob {
  readonly print: string;
  readonly stage: PrintStage;
  /** Put away: out of sight, not thrown away. */
  readonly away?: boolean;
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
  /** `now`: what lies on the bench. Under the name of a tab: what was done there while another tab was the bench. Under the name of a print: that print. */
  bench: { key: string; value: KeptJob | KeptPrint };
  versions: { key: number; value: Omit<KeptVersion, 'id'> & { id?: number } };
  attachments: { key: string; value: Uint8Array };
}

export interface Snapshot {
  readonly job: Job;
  readonly attachments: ReadonlyMap<string, Uint8Array>;
  readonly servedPrint: string | null;
  readonly changed: boolean;
  readonly print?: string;
  readonly own?: boolean;
}

/** The browser's own storage: what is on the bench now, all other prints, and named versions. Every method rejects when storage is denied or full. */
export interface Keeper {
  keep(snapshot: Snapshot): Promise<void>;
  kept(): Promise<Snapshot | null>;
  /** What is done in a tab that is not the bench. */
  keepAside(tab: string, snapshot: Snapshot): Promise<void>;
  dropAside(tab: string): Promise<void>;
  /** Tabs that left something aside. */
  tabsAside(): Promise<readonly string[]>;
  /** Makes a version of what a tab left aside, in one go; a print of its own, if it is another than the one on the bench. */
  keepAsideAsVersion(tab: string): Promise<void>;
  keepVersion(version: VersionName, snapshot: Snapshot): Promise<void>;
  versions(): Promise<readonly KeptVersion[]>;
  version(id: number): Promise<Snapshot | null>;
  /** Puts a print on the wall, in the place of what the wall had of it. */
  keepPrint(snapshot: Snapshot): Promise<void>;
  /** All prints, the one on the bench as it lies there; those kept last first. */
  prints(): Promise<readonly KeptPrint[]>;
  print(id: string): Promise<Snapshot | null>;
  putAway(id: string, away: boolean): Promise<void>;
  /** Throws a print away with its versions, and every file that nothing else needs. */
  dropPrint(id: string): Promise<void>;
}

const aside = 'aside ';
const ofPrint = 'print ';

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
      ...(snapshot.print === undefined ? {} : { print: snapshot.print }),
      ...(snapshot.own ? { own: true } : {}),
      stage: stageOf(snapshot),
    };
    const tx = db.transaction(['bench', 'versions', 'attachments'], 'readwrite', { durability: 'strict' });
    const store = tx.objectStore('attachments');
    const there = new Set(await store.getAllKeys());
    for (const { bytes, print } of named) if (!there.has(print)) await store.put(bytes, print);
    if (typeof as === 'string') await tx.objectStore('bench').put(as.startsWith(ofPrint) ? asPrint(kept) : kept, as);
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
    return { ...kept, attachments };
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
      const now = await tx.objectStore('bench').get('now');
      if (kept?.print !== undefined && now && !isOnePrint(kept, now) && !(await tx.objectStore('bench').getKey(ofPrint + kept.print)))
        await tx.objectStore('bench').put(asPrint(kept), ofPrint + kept.print);
      else if (kept) {
        const print = now && isOnePrint(kept, now) ? now.print : kept.print;
        await tx.objectStore('versions').add({ ...kept, ...(print === undefined ? {} : { print }), name: kept.job.title, otherTab: true });
      }
      await tx.objectStore('bench').delete(aside + tab);
      await tx.done;
    },
    keepVersion: (version, snapshot) => put(snapshot, version),
    versions: async () => (await (await opening).getAll('versions')).map((v) => v as KeptVersion).reverse(),
    version: async (id) => whole(await (await opening).get('versions', id)),
    keepPrint: (snapshot) => {
      const print = snapshot.print ?? crypto.randomUUID();
      return put({ ...snapshot, print }, ofPrint + print);
    },
    async prints() {
      const db = await opening;
      const kept = (await db.getAll('bench', IDBKeyRange.bound(ofPrint, `${ofPrint}\uffff`))) as KeptPrint[];
      const now = await db.get('bench', 'now');
      const isHere = (one: KeptPrint): boolean => now !== undefined && one.print === now.print;
      const here = now?.print !== undefined && (now.own || now.changed || kept.some(isHere)) ? asPrint(now) : null;
      return [...kept.filter((one) => !isHere(one)), ...(here ? [here] : [])].sort((a, b) => b.keptAt - a.keptAt);
    },
    print: async (id) => {
      const db = await opening;
      const now = await db.get('bench', 'now');
      return whole(now?.print === id ? now : await db.get('bench', ofPrint + id));
    },
    async putAway(id, away) {
      const tx = (await opening).transaction('bench', 'readwrite', { durability: 'strict' });
      const kept = await tx.store.get(ofPrint + id);
      if (kept) await tx.store.put({ ...kept, away }, ofPrint + id);
      await tx.done;
    },
    async dropPrint(id) {
      const tx = (await opening).transaction(['bench', 'versions', 'attachments'], 'readwrite', { durability: 'strict' });
      const [bench, versions, files] = [tx.objectStore('bench'), tx.objectStore('versions'), tx.objectStore('attachments')];
      await bench.delete(ofPrint + id);
      const isHere = (await bench.get('now'))?.print === id;
      const needed = new Set<string>();
      const need = (one: KeptJob): void => one.attachments.forEach(([, print]) => needed.add(print));
      for (const one of await bench.getAll()) need(one);
      for (const one of await versions.getAll()) {
        if (one.print === id && !isHere) await versions.delete(one.id!);
        else need(one);
      }
      for (const print of await files.getAllKeys()) if (!needed.has(print)) await files.delete(print);
      await tx.done;
    },
  };
}

const asPrint = (kept: KeptJob): KeptPrint => ({ ...kept, print: kept.print!, stage: kept.stage ?? 'planned' });

/** The same print, or one file that two tabs were given. */
export function isOnePrint(a: Pick<KeptJob, 'print' | 'servedPrint'>, b: Pick<KeptJob, 'print' | 'servedPrint'>): boolean {
  return a.print === b.print || (a.servedPrint !== null && a.servedPrint === b.servedPrint);
}

/** What lies on the bench goes back to one's prints before another takes its place; an example that nothing was done to just goes. */
export async function stepAside(keeper: Keeper, kept: Snapshot | null): Promise<void> {
  if (kept && (kept.changed || kept.own)) await keeper.keepPrint(kept);
}
