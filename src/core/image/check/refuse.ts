import { name as asName, say, type Saying } from '../../../words/say.ts';

/** Where a picture's problems are: in its file. */
export function fileAt(file: string): Saying {
  return say('where.file', { file: asName(file) });
}

export const resave = say('image.resave');
