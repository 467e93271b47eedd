import { name as asName, say, type Saying } from '../../words/say.ts';

/** Where a problem of a drawing or a photograph is: in its file, in one of its lines. */
export function fileAt(file: string, line?: number): Saying {
  return line === undefined ? say('where.file', { file: asName(file) }) : say('where.fileLine', { file: asName(file), line });
}
