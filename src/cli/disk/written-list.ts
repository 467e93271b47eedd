import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a folder is that Laydown writes. */
export type FolderKind = 'packet' | 'job';

/** A packet's list lies open among its files; a job's is hidden, so that it is not taken for one of the job's own. */
const nameOf: Readonly<Record<FolderKind, string>> = { packet: 'packet-files.txt', job: '.laydown-files' };
const heads: Readonly<Record<FolderKind, string>> = { packet: '# Laydown packet', job: '# Laydown job' };

interface Written {
  readonly kind: FolderKind | null;
  /** Fingerprint by path; null in lists of earlier Laydowns, which kept none. */
  readonly prints: ReadonlyMap<string, string | null>;
}

const printOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The list of a folder's files: its kind, then fingerprint (SHA-256) and path of each, as checking programs read it. */
export function listOfWritten(
  kind: FolderKind,
  files: readonly { readonly path: string; readonly bytes: Uint8Array }[],
): { path: string; bytes: Uint8Array } {
  const lines = files.map(({ path, bytes }) => `${printOf(bytes)}  ${path}`);
  return { path: nameOf[kind], bytes: new TextEncoder().encode(`${[heads[kind], ...lines].join('\n')}\n`) };
}

function readList(folder: string): Written | null {
  for (const name of Object.values(nameOf)) {
    let text: string;
    try {
      text = readFileSync(join(folder, name), 'utf8');
    } catch {
      continue;
    }
    const lines = text.split('\n').filter((line) => line !== '');
    const kind = (Object.keys(heads) as FolderKind[]).find((one) => heads[one] === lines[0]) ?? null;
    const pairs = (kind ? lines.slice(1) : lines).map((line): [string, string | null] => {
      const [, print, path] = (kind && /^([0-9a-f]{64}) {2}(.*)$/.exec(line)) || [null, null, line];
      return [path as string, print];
    });
    return { kind, prints: new Map<string, string | null>([...pairs, [name, null]]) };
  }
  return null;
}

/** What stands in a folder and Laydown did not write as it is now: files of others, files that were changed, empty folders. */
export function notAsWritten(folder: string): { readonly kind: FolderKind | null; readonly foreign: string[]; readonly changed: string[] } {
  const list = readList(folder);
  const foreign: string[] = [],
    changed: string[] = [];
  const walk = (below: string): void => {
    const entries = readdirSync(join(folder, below), { withFileTypes: true });
    if (entries.length === 0 && below !== '') foreign.push(`${below}/`);
    for (const entry of entries) {
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isDirectory()) {
        walk(path);
        continue;
      }
      const print = list?.prints.get(path);
      if (print === undefined || !entry.isFile()) foreign.push(path);
      else if (print !== null && printOf(readFileSync(join(folder, path))) !== print) changed.push(path);
    }
  };
  walk('');
  return { kind: list?.kind ?? null, foreign, changed };
}
