import type { en } from '../../en/index.ts';
import type { Same } from '../../say.ts';

/** Sieb, Absprung, Passer, Anlagen, Abkleben. */
export const press: Same<typeof en.press> = {
  tensionImpossible: ({ tension }) => `Ein Gewebe kann keine Spannung von ${tension} N/cm haben.`,
  leaveTensionOut: 'Die Spannung weglassen, wenn sie nicht bekannt ist.',
  tightMeshGap: ({ tension, most }) => `Ein Gewebe von ${tension} N/cm braucht höchstens ${most}.`,
  slackMeshGap: ({ size, tension }) =>
    `Ein Druck bis ${size} auf schlaffem Gewebe (${tension} N/cm): um die Hälfte mehr als üblich. Neues Gewebe hielte besser Passer.`,
  gapByHand: ({ size }) => `Ein Druck bis ${size} von Hand. Genug, wenn das Gewebe hinter der Rakel hochschnellt.`,
  gapTensionUnknown: ({ size }) =>
    `Ein Druck bis ${size} von Hand, Spannung nicht bekannt. Genug, wenn das Gewebe hinter der Rakel hochschnellt.`,
  gapImpossible: ({ gap }) => `${gap} sind kein Absprung, den ein Sieb hat.`,
  giveGap: ({ usual }) => `Den Absprung zwischen Gewebe und Papier angeben, meist ${usual}.`,
  noMeshAround: ({ frame, image }) => `Das Innere des Rahmens (${frame}) lässt rings um das Bild (${image}) kein Gewebe.`,
  largerFrame: 'Einen größeren Rahmen oder ein kleineres Bild nehmen.',
  gapTears: ({ gap, strain }) =>
    `${gap} Absprung dehnen das Gewebe um ${strain}, so nah am Rahmen: es kann reißen oder sich vom Rahmen lösen.`,
  gapStretches: ({ gap, strain }) =>
    `${gap} Absprung dehnen das Gewebe um ${strain}: die Ränder des Bildes wandern nach außen, und das Gewebe wird mit der Zeit schlaff.`,
  lowerGap: ({ safe }) => `Den Absprung auf etwa ${safe} senken oder mehr Platz zwischen Bild und Rahmen lassen.`,
};
