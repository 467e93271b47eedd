export type CautionPlace = 'cut' | 'mix' | 'press' | 'clean' | 'stencil-chemicals' | 'rack' | 'store';

export interface Caution {
  readonly id: string;
  /** Where the risk is: shown there, not in a list at the back. */
  readonly where: CautionPlace;
  readonly text: string;
}

/** Short; the label, the local rules and licensed practice decide. common practice throughout. */
export const cautions: readonly Caution[] = [
  {
    id: 'blades',
    where: 'cut',
    text: 'Fresh blade, cap on when it lies down. Cut away from the hand that holds; a steel rule with a raised edge. Old blades into a closed tin.',
  },
  {
    id: 'ink-label',
    where: 'mix',
    text: 'Read the label and the safety sheet first; they decide. Water-based ink all the same: off the skin, no eating at the table, nothing in cups one drinks from.',
  },
  {
    id: 'pigment',
    where: 'mix',
    text: 'Don’t swallow pigments or breathe their dust; stir dry powder only under extraction and with the mask its label asks for. A mark of conformity says that hazards were assessed and labelled, not that there are none.',
  },
  {
    id: 'retarder',
    where: 'mix',
    text: 'Gloves for retarder and glycerin mixes; weigh them, never pour by eye. A spill is slippery: wipe it at once.',
  },
  { id: 'lift', where: 'press', text: 'Two lift a large frame. Prop the raised screen safely: a falling frame breaks fingers.' },
  { id: 'hinge', where: 'press', text: 'Hands out before the screen comes down; nobody reaches over the board while another strokes.' },
  {
    id: 'clean',
    where: 'clean',
    text: 'Scrape and wipe the ink off before rinsing; what may go down the drain is for local rules to say. Cleaning agents as their label says, gloves, window open, never two of them mixed.',
  },
  { id: 'solvent', where: 'clean', text: 'Water first. If a solvent must be used: ventilation, no flame, rags in a closed metal bin.' },
  {
    id: 'emulsion',
    where: 'stencil-chemicals',
    text: 'Light-sensitive emulsion and strippers: gloves and eye protection, as the label says. Ultraviolet lamps: shield eyes and skin.',
  },
  {
    id: 'dust',
    where: 'rack',
    text: 'Talc and paper dust: wipe with a damp cloth instead of blowing. Leave ways out of the room free of drying sheets.',
  },
  {
    id: 'store',
    where: 'store',
    text: 'Every jar closed and labelled with what is in it and when it was mixed; never in food jars that keep their label.',
  },
];

export function cautionsFor(...places: readonly CautionPlace[]): readonly Caution[] {
  return cautions.filter((caution) => places.includes(caution.where));
}
