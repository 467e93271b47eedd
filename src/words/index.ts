/** What is said, as data; and the edge where it becomes text. Everyone says (`say.ts`); only page, packet and command tell (`tell.ts`). */
import './all.ts';

export * from './say.ts';
export type * from './text.ts';
export type { LengthUnits } from '../core/units/index.ts';
export {
  english,
  languageOf,
  languages,
  tell,
  tellPlace,
  tellProblem,
  tellValue,
  type Catalogue,
  type Language,
  type Reader,
} from './tell.ts';
