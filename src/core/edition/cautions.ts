import { say, type Saying } from '../../words/say.ts';

export type CautionPlace = 'cut' | 'mix' | 'press' | 'clean' | 'stencil-chemicals' | 'rack' | 'store';

export interface Caution {
  readonly id: string;
  /** Where the risk is: shown there, not in a list at the back. */
  readonly where: CautionPlace;
  readonly text: Saying;
}

/** Short; the label, the local rules and licensed practice decide. common practice throughout. */
export const cautions: readonly Caution[] = [
  { id: 'blades', where: 'cut', text: say('edition.cautionBlades') },
  { id: 'ink-label', where: 'mix', text: say('edition.cautionInkLabel') },
  { id: 'pigment', where: 'mix', text: say('edition.cautionPigment') },
  { id: 'retarder', where: 'mix', text: say('edition.cautionRetarder') },
  { id: 'lift', where: 'press', text: say('edition.cautionLift') },
  { id: 'hinge', where: 'press', text: say('edition.cautionHinge') },
  { id: 'clean', where: 'clean', text: say('edition.cautionClean') },
  { id: 'spray', where: 'clean', text: say('edition.cautionSpray') },
  { id: 'solvent', where: 'clean', text: say('edition.cautionSolvent') },
  { id: 'emulsion', where: 'stencil-chemicals', text: say('edition.cautionEmulsion') },
  { id: 'fans', where: 'rack', text: say('edition.cautionFans') },
  { id: 'dust', where: 'rack', text: say('edition.cautionDust') },
  { id: 'store', where: 'store', text: say('edition.cautionStore') },
];

export function cautionsFor(...places: readonly CautionPlace[]): readonly Caution[] {
  return cautions.filter((caution) => places.includes(caution.where));
}
