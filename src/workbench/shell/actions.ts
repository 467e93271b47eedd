import { zipSync } from 'fflate';
import { Cancelled } from '../../core/task.ts';
import { ProblemError, problem } from '../../core/problem.ts';
import { say } from '../../words/one-language.ts';
import { signal, type Signal } from '@preact/signals';
import type { Bench } from '../store/bench.ts';
import { exampleFiles } from '../store/example.ts';
import { fileStem, fingerprintOf } from '../../core/job/index.ts';
import { download, openFile, openFiles, openFolder, saveJob } from '../store/keep/files.ts';
import type { Keeping } from '../store/keep/keeping.ts';
import { putOn } from '../store/start.ts';
import { takeInPrints } from './prints/many.ts';
import { keepThumb } from './prints/thumbs.ts';
import { faultsOf } from '../engine/faults.ts';
import { language, words } from '../store/words.ts';
import type { MadeFile, MadePacket, OpenedJob, PacketAsk } from '../engine/protocol.ts';

/** Does something that can go wrong; what went wrong is shown in the printmaker's words, and nothing else changes. */
export async function attempt(bench: Bench, work: () => Promise<void>): Promise<void> {
  bench.refuse(null);
  try {
    await work();
  } catch (error) {
    if (error instanceof Cancelled) return bench.announce(words().shell.stoppedPrinting);
    bench.refuse(faultsOf(error));
  }
}

export type Source = { readonly file: File } | 'folder' | 'example';

/** The job whose loss was spoken of; asked again, it goes. */
let warnedOf: unknown = null;

/** Puts another job on the bench; the one there goes back to one's prints. A file with many prints hangs them all on the wall. */
export function openJob(bench: Bench, keeping: Keeping, source: Source): Promise<void> {
  return attempt(bench, async () => {
    if (typeof source === 'object' && (await takeInPrints(bench, keeping, source.file))) return;
    const opened: OpenedJob | null =
      source === 'folder'
        ? await openFolder(bench)
        : source === 'example'
          ? await openFiles(bench, await exampleFiles())
          : await openFile(bench, source.file);
    if (!opened) return;
    await makeRoom(bench, keeping);
    putOn(bench, keeping, opened, null, { own: source !== 'example' });
    bench.announce(opened.job.title);
  });
}

/** Puts a job that was just begun on the bench, at the first station. */
export function startJob(bench: Bench, keeping: Keeping, jobText: string): Promise<void> {
  return attempt(bench, async () => {
    const opened = await bench.ask('openJob', { files: new Map([['job.json', new TextEncoder().encode(jobText)]]) });
    await makeRoom(bench, keeping);
    location.hash = 'forms';
    putOn(bench, keeping, opened, null, { own: true });
  });
}

/** Keeps what lies on the bench; where that can't be, says so once before it goes. */
export async function makeRoom(bench: Bench, keeping: Keeping): Promise<void> {
  const leaving = bench.job.peek();
  keepThumb(bench, keeping);
  await keeping.flush();
  const warned = warnedOf === leaving;
  warnedOf = leaving;
  const notKept = problem('warning', 'not-kept', say('where.workbench'), say('page.notKept'), say('page.saveOrOpenAgain'));
  if (!keeping.isSafe() && !warned) throw new ProblemError([notKept]);
  await keeping.makeWay().catch(() => {
    if (!warned && !keeping.isUntouched()) throw new ProblemError([notKept]);
  });
  warnedOf = null;
}

export function saveNow(bench: Bench, keeping: Keeping): Promise<void> {
  return attempt(bench, async () => {
    const name = await saveJob(bench);
    if (!name) return;
    keeping.savedAsFile();
    bench.announce(words().shell.saved(name));
  });
}

export interface Printing {
  /** 0..1 while under way, null otherwise. */
  readonly share: Signal<number | null>;
  readonly made: Signal<MadePacket | null>;
  /** The packet made last fits the job as it is now. */
  fits(bench: Bench): boolean;
  start(bench: Bench, wishes: Omit<PacketAsk, 'language'>): Promise<void>;
  stop(): void;
}

export function createPrinting(): Printing {
  const share = signal<number | null>(null);
  const made = signal<MadePacket | null>(null);
  let stopper: AbortController | null = null;
  /** What the packet was made of: mostly the very same objects. */
  let of: { readonly job: unknown; readonly attachments: unknown } | null = null;
  return {
    share,
    made,
    fits(bench) {
      const packet = made.value;
      const job = bench.job.value,
        attachments = bench.attachments.value;
      if (!packet || !job) return false;
      if (of?.job === job && of.attachments === attachments) return true;
      if (fingerprintOf({ job, attachments }) !== packet.mark) return false;
      of = { job, attachments };
      return true;
    },
    start: (bench, wishes) =>
      attempt(bench, async () => {
        made.value = null;
        share.value = 0;
        stopper = new AbortController();
        try {
          // Pots being tried are not part of the job, so they are not printed.
          for (const id of bench.trials.value.keys()) bench.tryInk(id, null);
          await bench.upToDate();
          made.value = await bench.ask(
            'packet',
            { ...wishes, language: language.value },
            {
              signal: stopper.signal,
              onProgress: (s) => {
                share.value = s;
              },
            },
          );
          bench.announce(words().shell.packetReady(made.value.files.length));
        } finally {
          share.value = null;
        }
      }),
    stop: () => stopper?.abort(),
  };
}

/** One of the files to print: `packet.pdf`, or one that stands apart. */
export function takePdf(bench: Bench, file: MadeFile): void {
  download(file.bytes, `${fileStem(bench.job.value?.title ?? '')}-${file.path}`, 'application/pdf');
}

/** The page to show, one file. */
export function takeShow(bench: Bench, file: MadeFile): void {
  download(file.bytes, `${fileStem(bench.job.value?.title ?? '')}.html`, 'text/html');
}

export function takePacketAll(bench: Bench, files: readonly MadeFile[]): void {
  const zip = zipSync(
    Object.fromEntries(files.map((f) => [f.path, [f.bytes, { level: 0, mtime: '1980-01-01T00:00:00' }] as const])) as Parameters<
      typeof zipSync
    >[0],
  );
  download(zip, `${fileStem(bench.job.value?.title ?? '')}-packet.zip`, 'application/zip');
}
