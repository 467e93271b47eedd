import { fail, ProblemError } from '../../problem.ts';
import { name as asName, say } from '../../../words/say.ts';
import { labOfHex, readingByEye } from '../by-eye/guess.ts';
import { readingProblems } from '../reading/reading.ts';
import type { Place, Reading } from '../types.ts';
import { numberOf } from './patch.ts';

/**
 * A colour as the printmaker types it: `52 60 -3`, `L 52 a 60 b −3`, `Lab(52; 60; −3)`, `XYZ 20.1 27.0 52.6`,
 * `#c0392b`, or 36 values of a spectrum (as factors or percent).
 * @throws ProblemError when it is none of these, or out of range
 */
export function readTyped(text: string, place: Place): Reading {
  // As a picture program writes colours: what a screen shows, known by eye.
  if (/^\s*#[0-9a-f]{3,6}\s*$/i.test(text)) return readingByEye(labOfHex(text, place), 'typed');
  const isXyz = /x\s*y\s*z|\bx\b/i.test(text);
  const cells = text
    .trim()
    .replace(/[a-z*()=:]+/gi, ' ')
    .trim()
    .split(/\s*[;\t]\s*|\s+|,\s+/)
    .filter((c) => c !== '');
  const numbers = (cells.length === 1 && text.includes(',') ? cells[0].split(',') : cells).map((c) => numberOf(c.replace(/,$/, '')));
  if (!numbers.every(Number.isFinite) || (numbers.length !== 3 && numbers.length !== 36)) {
    fail('reading-not-understood', place, say('readings.notUnderstood', { text: asName(text.slice(0, 60)) }), say('readings.typeColour'));
  }
  const triple = numbers as unknown as readonly [number, number, number];
  const reading: Reading =
    numbers.length === 36
      ? { kind: 'spectrum', values: Math.max(...numbers) > 2 ? numbers.map((v) => v / 100) : numbers }
      : isXyz
        ? { kind: 'xyz', xyz: triple }
        : { kind: 'lab', lab: triple };
  const wrong = readingProblems(reading, place);
  if (wrong.length > 0) throw new ProblemError(wrong);
  return reading;
}
