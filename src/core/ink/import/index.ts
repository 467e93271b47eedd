import { fail } from '../../problem.ts';
import { name as asName, say, type Saying } from '../../../words/say.ts';
import { readCgats } from './cgats.ts';
import { readCsv } from './csv.ts';
import { readCxf } from './cxf.ts';
import type { ReadFile } from './patch.ts';

export { readCgats } from './cgats.ts';
export { readCsv } from './csv.ts';
export { readCxf } from './cxf.ts';
export { readTyped } from './typed.ts';
export type { ReadFile, ReadPatch } from './patch.ts';

/** No file of readings is larger (2,000 patches with spectra take less than 2 MB). */
const mostBytes = 32 * 1024 * 1024;

/**
 * Reads a file of readings, telling by what is in it whether it is CxF3, CGATS or a table from a spreadsheet.
 * @throws ProblemError when it is none, too large, broken, or holds no colour
 */
export function readReadings(bytes: Uint8Array, fileName: string): ReadFile {
  const file = say('where.file', { file: asName(fileName) });
  if (bytes.length > mostBytes)
    fail(
      'file-too-large',
      file,
      say('readings.fileTooLarge', { megabytes: Math.round(bytes.length / 1048576) }),
      say('readings.checkFile'),
    );
  const text = textOfReadings(bytes, file);
  const start = text
    .slice(0, 4000)
    .replace(/^\uFEFF/, '')
    .trimStart();
  if (start === '') fail('file-empty', file, say('readings.fileEmpty'), say('readings.exportReadings'));
  if (start.startsWith('<')) return readCxf(text.replace(/^\uFEFF/, '').trimStart(), fileName);
  if (/^BEGIN_DATA(?:_FORMAT)?\b/m.test(text) || /^(?:CGATS|IT8|CTI|ISO28178)/i.test(start)) return readCgats(text, fileName);
  return readCsv(text, fileName);
}

/** The text of a file of readings, whatever alphabet it was saved in. */
export function textOfReadings(bytes: Uint8Array, file: Saying): string {
  const [a, b, c, d] = bytes;
  const picture =
    (a === 0x89 && b === 0x50) ||
    (a === 0xff && b === 0xd8) ||
    (a === 0x49 && b === 0x49 && c === 0x2a) ||
    (a === 0x4d && b === 0x4d && d === 0x2a);
  if (picture) fail('is-a-picture', file, say('readings.isPicture'), say('readings.openAsPhoto'));
  if (a === 0x50 && b === 0x4b) fail('is-a-spreadsheet', file, say('readings.isPacked'), say('readings.saveAsCsv'));
  if (a === 0xff && b === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  if (bytes.subarray(0, 4000).includes(0)) fail('not-text', file, say('readings.notText'), say('readings.exportAsText'));
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
