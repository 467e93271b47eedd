import { existsSync, writeFileSync } from 'node:fs';
import { fail } from '../core/problem.ts';
import { say } from '../words/index.ts';
import { diskError, fileAt } from './disk.ts';

/** Fails before any work where a file of that name is there already. */
export function mustBeNew(out: string, replace: boolean): void {
  if (existsSync(out) && !replace) fail('file-exists', fileAt(out), say('cli.fileExists'), say('cli.otherNameOrReplace'));
}

/** Writes a file; what is there already is only replaced when that was said. */
export function writeNew(out: string, replace: boolean, make: () => string | Uint8Array): void {
  mustBeNew(out, replace);
  const bytes = make();
  try {
    writeFileSync(out, bytes);
  } catch (error) {
    fail('cannot-write', fileAt(out), say('cli.cannotWrite', { why: diskError(error) }), say('cli.otherPlace'));
  }
}
