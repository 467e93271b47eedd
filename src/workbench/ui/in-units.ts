import { textInInches } from '../../core/units/index.ts';
import { inLanguage, told } from '../words/index.ts';
import type { LengthUnits } from './units.ts';

/** Text of core, which speaks English and in mm, in the language in use and with its lengths in the job's units: `3.7 to 2.3 mm` → `0.146 to 0.091 in`. */
export function inUnits(text: string, units: LengthUnits): string {
  const said = told(text);
  return units === 'mm' ? said : textInInches(said, { decimal: inLanguage('0.1').charAt(1) });
}
