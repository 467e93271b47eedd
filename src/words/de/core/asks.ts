import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Fragen, die in der Werkstatt gestellt werden. */
export const asks: Same<typeof en.asks> = {
  // Welches Papier, welche Schicht
  noPaperRead: 'Die Arbeit hat kein Papier, das gemessen wurde.',
  noSuchPaper: ({ paper }) => `Die Arbeit hat kein Papier „${paper}“, das gemessen wurde.`,
  noSuchGround: ({ n, paper }) => `„${paper}“ hat keinen Grund ${n}.`,
  groundsAre: ({ n }) => many(n, 'Es gibt einen: 1.', `Es gibt ${n}, gezählt ab 1, der größte zuerst.`),
  paperNotPrinted: 'Gründe sind die Farbtöne eines Bogens, der einen früheren Druck trägt, mit dessen Bild.',
  belowWhat: 'Gefragt ist, was darunter liegt, aber kein Lauf ist genannt.',
  nameTheRun: 'Den Lauf nennen, der den Farbton druckt.',
  readPaper: 'Zuerst ein Papier messen.',
  noSuchLayer: ({ layer }) => `Die Arbeit hat keine Schicht „${layer}“.`,
  addLayer: 'Zuerst eine Schicht hinzufügen.',
  useOneOf: ({ all }) => `Eines davon nehmen: ${all}.`,

  // Eine offene Schicht
  openNoColour: 'Ihre Farbe ist noch nicht entschieden, also wird von ihrem Topf kein Farbton verlangt.',
  openNothingInPot: 'Ihre Farbe ist noch nicht entschieden, also enthält ihr Topf nichts.',
  openNothingToMix: 'Ihre Farbe ist noch nicht entschieden, also ist nichts zu mischen.',
  chooseInk: 'Zuerst eine Farbe wählen.',
  nothingToOrder: 'Eine Folge braucht mindestens zwei Schichten, deren Farbe entschieden ist.',
  chooseInks: 'Zuerst Farben für die Schichten wählen.',

  // Wo
  theRecipe: 'das Rezept',
  drawdownNo: ({ n }) => `Aufzug ${n}`,
  earlierPrint: 'der Druck von damals',

  // Das Regal der Werkstatt
  noSuchLot: ({ lot }) => `Das Regal hat von dieser Farbe keine Charge „${lot}“.`,
  noSuchInk: ({ ink }) => `Die Arbeit hat keine Farbe „${ink}“.`,
  giveInkId: 'Den Kurznamen einer ihrer Farben schreiben.',
  noJars: 'In keinem Glas ist etwas übrig.',
  sayWhatIsLeft: 'Bei einer Mischung oder Farbe angeben, wie viel Gramm im Glas übrig sind.',
  noSuchStarter: ({ ink }) => `Das Regal für den Anfang hat keine Farbe „${ink}“.`,
  mixStays: 'Eine Mischung ist keine eigene Charge; sie bleibt in der Arbeit.',
  partsOnShelf: 'Die Farben, aus denen sie gemischt ist, stehen im Regal.',

  // Ein Foto des Drucks
  printNotFound: 'Im Foto ist kein Bogen zu finden.',
  layPrintCorners: 'Auf jede Ecke des Drucks eine Ecke legen, im Uhrzeigersinn, oben links beginnend.',
  printCornersCrossed: 'Die vier Ecken spannen keinen Bogen auf.',
  printOnPrinted: 'Auf einem schon bedruckten Bogen ändern sich die Farbtöne von Ort zu Ort; aus dem Foto wird keiner gelesen.',
  lookOnly: 'Das Foto neben dem Proof ansehen.',

  // Ein Aufzugbogen
  nothingDrawnDown: 'Jedes Feld des Bogens sieht noch wie blankes Papier aus.',
  drawDown: 'Die Farbe in den Feldern aufziehen, trocknen lassen und neu fotografieren.',
};
