import { mmPerInch, readNumber, sayLength, type LengthUnits } from './units.ts';
import { told } from '../words/index.ts';

const lengths = /(\d+(?:[.,]\d+)?(?:(?: (?:to|and|or|bis|und|oder) | × |–)\d+(?:[.,]\d+)?)*)[ \u00a0]mm\b/g;

/** Text of core, which speaks English and in mm, in the language in use and with its lengths in the job's units: `3.7 to 2.3 mm` → `0.146 to 0.091 in`. */
export function inUnits(text: string, units: LengthUnits): string {
  const said = told(text);
  if (units === 'mm') return said;
  return said.replace(lengths, (_, numbers: string) => `${numbers.replace(/\d+(?:[.,]\d+)?/g, (n) => sayLength(readNumber(n), 'in', readNumber(n) >= 10 * mmPerInch ? 1 : 3).replace(/\u00a0.*$/, ''))}\u00a0in`);
}
