import { jobFile } from '../../../core/job/index.ts';
import { ProblemError, problem } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/one-language.ts';
import type { Attachments, OpenedJob } from '../../engine/protocol.ts';
import type { Bench } from '../bench.ts';

type WithFolders = typeof globalThis & { showDirectoryPicker?: () => Promise<FileSystemDirectoryHandle> };

export const canOpenFolders = 'showDirectoryPicker' in globalThis;
const mostBytes = 1_000_000_000;
const mostFiles = 5000;

/** A .laydown file chosen or dropped → job. Throws `ProblemError`. */
export async function openFile(bench: Bench, file: File): Promise<OpenedJob> {
  if (file.size > mostBytes) throw tooLarge(file.name);
  return bench.ask('openJob', { file: new Uint8Array(await file.arrayBuffer()), name: file.name });
}

/** Asks for a folder and reads the job in it; null if none was chosen. */
export async function openFolder(bench: Bench): Promise<OpenedJob | null> {
  let folder: FileSystemDirectoryHandle;
  try {
    folder = await (globalThis as WithFolders).showDirectoryPicker!();
  } catch {
    return null;
  }
  const files = new Map<string, Uint8Array>();
  let total = 0;
  const walk = async (at: FileSystemDirectoryHandle, below: string): Promise<void> => {
    const entries = (at as FileSystemDirectoryHandle & { values(): AsyncIterable<FileSystemHandle> }).values();
    for await (const entry of entries) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      if (entry.kind === 'directory') await walk(entry as FileSystemDirectoryHandle, `${below}${entry.name}/`);
      else {
        const file = await (entry as FileSystemFileHandle).getFile();
        total += file.size;
        if (total > mostBytes || files.size >= mostFiles) throw tooLarge(folder.name);
        files.set(below + entry.name, new Uint8Array(await file.arrayBuffer()));
      }
    }
  };
  await walk(folder, '');
  return bench.ask('openJob', { files });
}

export function openFiles(bench: Bench, files: Attachments): Promise<OpenedJob> {
  return bench.ask('openJob', { files });
}

function tooLarge(name: string): ProblemError {
  return new ProblemError([
    problem('error', 'too-large', say('where.file', { file: asName(name) }), say('page.farTooLarge'), say('page.chooseJob')),
  ]);
}

/** Hands bytes to the browser as a download. */
export function download(bytes: Uint8Array, name: string, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Saves what is on the bench as one .laydown file; returns its name. */
export async function saveJob(bench: Bench): Promise<string | null> {
  const job = bench.job.value;
  if (!job) return null;
  const bytes = await bench.ask('saveJob', { job, attachments: bench.attachments.value });
  const name = jobFile(job.title);
  download(bytes, name, 'application/zip');
  return name;
}
