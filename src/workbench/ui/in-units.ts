import type { Said } from '../../core/problem.ts';
import { textInInches } from '../../core/units/index.ts';
import { inLanguage, told } from '../store/words.ts';
import type { LengthUnits } from './units.ts';

/** What core says, in the language in use and with its lengths in the job's units. Sentences that are not data yet: `3.7 to 2.3 mm` → `0.146 to 0.091 in`. */
export function inUnits(said: Said, units: LengthUnits): string {
  const text = told(said);
  return units === 'mm' || typeof said !== 'string' ? text : textInInches(text, { decimal: inLanguage('0.1').charAt(1) });
}
