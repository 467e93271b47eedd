import { mmPerInch, sayLength, type LengthUnits } from '../../core/units/index.ts';

const lengths = /(\d+(?:\.\d+)?(?:(?: to | × |–| and | or )\d+(?:\.\d+)?)*)[ \u00a0]mm\b/g;

/** Text of the plan, which speaks in mm, with its lengths in the job's units: `3.7 to 2.3 mm` → `0.146 to 0.091 in`. */
export function inUnits(text: string, units: LengthUnits): string {
  if (units === 'mm') return text;
  return text.replace(lengths, (_, numbers: string) => `${numbers.replace(/\d+(?:\.\d+)?/g, (n) => sayLength(Number(n), 'in', Number(n) >= 10 * mmPerInch ? 1 : 3).replace(/\u00a0.*$/, ''))}\u00a0in`);
}
