import { existsSync, writeFileSync } from 'node:fs';
import { fail } from '../core/problem.ts';
import { sayDiskError } from './folder.ts';

/** Fails before any work where a file of that name is there already. */
export function mustBeNew(out: string, replace: boolean): void {
  if (existsSync(out) && !replace) fail('file-exists', out, 'There is such a file already.', 'Choose another name, or say --replace.');
}

/** Writes a cut sheet; what is there already is only replaced when that was said. */
export function writeNew(out: string, replace: boolean, make: () => string | Uint8Array): void {
  mustBeNew(out, replace);
  const bytes = make();
  try {
    writeFileSync(out, bytes);
  } catch (error) {
    fail('cannot-write', out, `The cut sheet could not be written: ${sayDiskError(error)}`, 'Choose another place.');
  }
}
