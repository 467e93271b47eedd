import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Schablonen. */
export const stencil: Same<typeof en.stencil> = {
  // Die üblichen Materialien.
  newsprint: 'Zeitungspapier',
  coatedPaper: 'Gestrichenes Papier',
  waxedPaper: 'Gewachstes Papier',
  polyesterFilm: 'Polyesterfolie',
  thinBoard: 'Dünner Karton',

  // Was drucken würde.
  outsideImage: 'Kein Teil des Schnitts liegt im Bild; nichts würde drucken.',
  pieceCoversAll: 'Das Stück verdeckt das ganze Bild; nichts würde drucken.',
  moveOrResize: 'Die Form ins Bild schieben oder ihre Größe ändern.',
  noOpeningLeft: 'Stege und Ausbesserungen ließen keine Öffnung übrig.',
  enlargeForm: 'Die Form größer machen.',
  islandsTooSmall: ({ n }) => `${many(n, 'Insel ist', 'Inseln sind')} kleiner als ein Steg; dort druckt Farbe.`,
  enlargeOrLoose: 'Die Form größer machen oder die Inseln als lose Teile legen.',

  // Was ausgebessert wurde.
  strengthened: ({ n, material, first }) =>
    `Die Schablone war zu dünn für ihr Material (${material}) und wurde an ${many(n, 'Stelle', 'Stellen')} breiter gemacht, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  keepFineParts: 'Den Proof ansehen; ein festeres Material oder eine größere Form wählen, um die feinen Teile zu behalten.',
  widened: ({ n, first }) =>
    `${many(n, 'Öffnung war', 'Öffnungen waren')} zu eng für das Messer und ${which(n, 'wurde', 'wurden')} weiter gemacht, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  lookOrEnlarge: 'Den Proof ansehen oder die Form größer machen.',
  marginTooSmall: ({ least }) => `Der Bogen lässt weniger als ${least} um das Bild; er wurde größer gemacht.`,
  widerMargin: 'Einen breiteren Rand der Schablone um das Bild planen.',

  // Ob sie hält.
  doesNotHold: ({ n, first, fault }) =>
    `Diese Schablone lässt sich so nicht schneiden: ${many(n, 'schwache Stelle', 'schwache Stellen')}, ${which(n, 'bei', 'die erste bei')} ${first} (${fault}).`,
  mendFaults: 'Die Form größer machen, feine Teile wegnehmen, ein festeres Material wählen oder Inseln als lose Teile legen.',
  neckTooThin: 'eine zu dünne Engstelle',
  pieceTooThin: 'ein überall zu dünnes Teil',
  pointTooThin: 'eine lange dünne Spitze',
  openingTooNarrow: 'eine zu enge Öffnung',
  partUnheld: 'ein Teil, den nichts hält',
  provenBy: ({ pixel, paper, opening }) =>
    `Der Umriss wird in Pixel von ${pixel} gewandelt und der Abstand zur nächsten Kante genau berechnet: Scheiben von ${paper} (Papier) und ${opening} (Öffnungen) müssen alles außer Spitzen erreichen.`,
  nothingCut: 'Es wird nichts geschnitten.',

  // Dicke Schablonen.
  ridgeCrossed: ({ layer, material, thickness, crossed }) =>
    `Die Schablone von ${layer} ist dick (${material}, ${thickness}) und lässt an ihren Rändern einen Farbwulst stehen. Spätere Läufe drucken darüber: ${crossed}.`,
  ridgeAlong: ({ layer, along }) => `${layer} auf ${along}`,
  thinnerOrLater: ({ layer }) => `${layer} aus dünnerem Material schneiden oder nach ihnen drucken.`,

  // Vorrat.
  largerThanStock: ({ name, size, stock }) => `„${name}“ (${size}) passt nicht auf einen Bogen von ${stock}.`,
  largerStock: 'Größeres Material nehmen oder einen kleineren Rand um das Bild lassen.',
};
