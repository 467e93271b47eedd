import type { Speech } from '../../../packet/index.ts';
import { coreInGerman } from './de/index.ts';
import { phrasebook } from './phrasebook.ts';

const speeches: Readonly<Record<string, Speech>> = { de: { language: 'de', decimal: ',', told: phrasebook(coreInGerman, ',') } };

/** How the packet is said in a language; undefined for English, which it is written in. */
export function speechOf(language: string): Speech | undefined {
  return speeches[language];
}
