import type { Said } from '../../core/problem.ts';
import { tellSaid } from '../../words/index.ts';
import { reader } from '../store/words.ts';
import type { LengthUnits } from './units.ts';

/** What core says, in the language in use and with its lengths in the job's units. */
export function inUnits(said: Said, units: LengthUnits): string {
  return tellSaid(said, reader(units));
}
