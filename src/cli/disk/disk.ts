import { readFileSync } from 'node:fs';
import { fail } from '../../core/problem.ts';
import { name as asName, say, type Saying } from '../../words/index.ts';

/** A file by the name it was typed with, as the place of a problem. */
export function fileAt(path: string): Saying {
  return say('where.file', { file: asName(path) });
}

export function folderAt(path: string): Saying {
  return say('where.folder', { folder: asName(path) });
}

export function readFileBytes(path: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    const gone = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return fail(
      'cannot-read',
      fileAt(path),
      gone ? say('cli.noSuchFile') : say('cli.cannotRead', { why: diskError(error) }),
      say('cli.checkName'),
    );
  }
}

/** What keeps a file from being read or written: a piece of a sentence. */
export function diskError(error: unknown): Saying {
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return say('cli.diskFull');
    case 'EROFS':
      return say('cli.diskReadOnly');
    case 'EACCES':
    case 'EPERM':
      return say('cli.forbidden');
    case 'ENOTDIR':
    case 'EEXIST':
      return say('cli.fileInTheWay');
    case 'EISDIR':
      return say('cli.folderInTheWay');
    case 'ENOENT':
      return say('cli.noFolder');
    default:
      return say('cli.diskFails', { what: asName(code ?? (error instanceof Error ? error.message : String(error))) });
  }
}
