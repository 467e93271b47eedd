import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { strFromU8, strToU8 } from 'fflate';

/** Lists the files of a `.laydown` file with their fingerprints. In a folder, where files are changed by hand, it has no place. */
export const manifestName = 'laydown-files.json';

interface Manifest {
  /** SHA-256 (FIPS 180-4) by path. */
  readonly sha256: Readonly<Record<string, string>>;
}

export function manifestOf(files: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const prints = [...files].map(([path, bytes]) => [path, bytesToHex(sha256(bytes))] as const).sort(([a], [b]) => (a < b ? -1 : 1));
  return strToU8(`${JSON.stringify({ sha256: Object.fromEntries(prints) } satisfies Manifest, null, 1)}\n`);
}

/** The first file that is missing or is not the one that was listed; null when all are. Files that nobody listed are no harm. */
export function firstChanged(files: ReadonlyMap<string, Uint8Array>, manifest: Uint8Array): string | null {
  let listed: Partial<Manifest>;
  try {
    listed = JSON.parse(strFromU8(manifest)) as Partial<Manifest>;
  } catch {
    return manifestName;
  }
  if (typeof listed?.sha256 !== 'object' || listed.sha256 === null) return manifestName;
  for (const [path, print] of Object.entries(listed.sha256)) {
    const bytes = files.get(path);
    if (!bytes || bytesToHex(sha256(bytes)) !== print) return path;
  }
  return null;
}
