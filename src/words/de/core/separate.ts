import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Ein Bild in Schablonen und Farben. */
export const separate: Same<typeof en.separate> = {
  // Was gerade geschieht.
  lookingAtPicture: 'das Bild ansehen',
  lookingForInks: 'Farben und ihre Folge suchen',
  choosingInks: 'Farben und ihre Folge wählen',
  cutting: 'Schablonen schneiden und Stege suchen',
  comparing: 'mit flachen Farben vergleichen',

  // Wo es ist.
  printedLayer: ({ n }) => `schon gedruckte Schicht ${n}`,

  // Was ein Lauf druckt: sein Name in der Arbeit.
  keyRun: 'Zeichnung',
  lightGround: 'Heller Grund',
  middleGround: 'Grund',
  darkGround: 'Dunkler Grund',
  lightBackground: 'Hintergrund, hell',
  middleBackground: 'Hintergrund, Mitteltöne',
  darkBackground: 'Hintergrund, dunkel',
  highlights: 'Aufgesetzte Lichter',
  paleTones: 'Zarte Töne',
  lightTones: 'Helle Töne',
  middleTones: 'Mitteltöne',
  darkTones: 'Dunkle Töne',
  shadows: 'Tiefen',
  toneAt: ({ tone, place }) => `${tone}, ${place}`,
  top: 'oben',
  bottom: 'unten',
  left: 'links',
  right: 'rechts',
  centre: 'Mitte',

  // Wie viele Schichten.
  noLayers: ({ layers }) => `${layers} Schichten ergeben keinen Druck.`,
  askForLayers: ({ most }) => `1 bis ${most} verlangen.`,
  tooManyLayers: ({ layers }) => `${layers} Schichten sind mehr, als Laydown auf einem Bogen planen kann.`,
  tooManyLayersOver: ({ layers, printed }) =>
    `${layers} Schichten, davon ${printed} schon gedruckt, sind mehr, als Laydown auf einem Bogen planen kann.`,
  askForFewerOver: ({ most }) => `Weniger verlangen: höchstens ${most}, die schon gedruckten mitgezählt.`,
  oddPairs: ({ layers }) =>
    `${many(layers, 'Schicht ergibt', 'Schichten ergeben')} keine Paare: jeder Schnitt gibt ein Fenster und ein Stück.`,
  askForEven: ({ more, fewer }) => `${fewer} oder ${more} Schichten verlangen oder einzelne Schnitte.`,
  askForTwo: '2 Schichten verlangen oder einzelne Schnitte.',
  tonesNotPaired: 'Töne, die ineinander liegen, können nicht Fenster und Stück eines Schnitts sein.',
  keyNotPaired: 'Eine Zeichnungsplatte kann nicht die Hälfte eines Schnittpaars sein.',
  singleCuts: 'Einzelne Schnitte verlangen oder die Vorlage anders umsetzen.',
  keyAlone: 'Bei einer einzigen Schicht liegt nichts unter der Zeichnungsplatte.',
  moreForKey: 'Zwei oder mehr Schichten verlangen oder auf die Zeichnungsplatte verzichten.',
  moreWishesThanLayers: ({ wishes, layers }) =>
    `${many(wishes, 'Schicht ist', 'Schichten sind')} beschrieben, aber nur ${layers} verlangt.`,
  moreLayersOrFewerWishes: 'Mehr Schichten verlangen oder einige der beschriebenen weglassen.',

  // Größe, Bild, Papier, Passer.
  sizeImpossible: ({ size }) => `Ein Bild von ${size} lässt sich nicht planen.`,
  giveSize: ({ between }) => `Breite und Höhe angeben: ${between}.`,
  pictureTooSmall: ({ width, height }) => `Das Bild hat ${width} × ${height} Pixel: es ist nichts darin, was sich separieren ließe.`,
  giveLargerPicture: 'Ein Bild von einigen hundert Pixeln Breite geben.',
  paperUnread: 'Der Farbton des Papiers ist nicht bekannt.',
  readPaper: 'Das blanke Papier messen oder seinen Farbton eintippen.',
  registerImpossible: ({ off }) => `Mit einem Passerfehler von ${off} lässt sich nicht planen.`,
  giveRegister: ({ between, usual }) => `${between} angeben; von Hand sind es ${usual}.`,
  importanceSize: 'Was als wichtig markiert ist, passt nicht zum Bild.',
  markAgain: 'Es neu markieren.',

  // Das Messer.
  budgetImpossible: ({ budget, value }) => `${budget}: ${value} lässt nichts zu schneiden.`,
  metres: 'Meter Schnitt',
  pieces: 'Teile zum Ausschneiden',
  minutes: 'Minuten Schneiden',
  leastWidth: 'Kleinste Breite',
  aboveNought: 'Eine Zahl über 0 angeben oder weglassen.',
  budgetExceeded: ({ over, parts, time }) =>
    `Diese Schichten verlangen dem Messer ${over} mehr ab als erlaubt: ${many(parts, 'Teil', 'Teile')} zum Ausschneiden, ${time} im Ganzen.`,
  allowMore: 'Mehr erlauben, weniger Schichten verlangen oder ein Bild mit größeren Formen geben.',
  drawingLost: ({ x, y }) => `Was ${x} von links und ${y} von oben gezeichnet ist, geht in dieser Größe verloren.`,
  eyeLost: 'Ein Auge geht in dieser Größe verloren.',
  eyesLost: 'Die Augen gehen in dieser Größe verloren.',
  mouthLost: 'Der Mund geht in dieser Größe verloren.',
  dotLost: ({ x, y }) => `Der Punkt ${x} von links und ${y} von oben, vielleicht ein Auge, geht in dieser Größe verloren.`,
  dotsLost: ({ x, y }) => `Punkte, vielleicht Augen, gehen in dieser Größe verloren, der größte ${x} von links und ${y} von oben.`,
  cropEnlargeOrAdd: ({ width }) => `Enger ausschneiden, das Bild ${width} breit machen oder einen Lauf mehr drucken.`,
  layerNotNeeded: 'Für diesen Lauf bleibt nichts zu drucken: Bild, Messer und diese Farben kommen ohne ihn aus.',
  oneLayerLess: 'Eine Schicht weniger verlangen.',

  // Farben.
  shelfEmpty: 'Es gibt keine Farbe zur Auswahl.',
  readDrawdown: 'Zuerst mindestens einen Aufzug messen.',
  tooManyInks: ({ n }) => `${n} Farben sind zu viele zur Auswahl.`,
  chooseInks: ({ most }) => `Höchstens ${most} davon auswählen.`,
  inkTwice: 'Zwei Farben tragen denselben Namen.',
  renameOne: 'Eine davon umbenennen.',
  inkNotOnShelf: ({ ink }) => `Die Farbe „${ink}“ steht nicht zur Auswahl.`,
  chooseShelfInk: 'Eine aus der Auswahl nehmen oder die Farbe frei lassen.',
  strengthImpossible: ({ strength }) => `Die Stärke ${strength} ist kein Anteil eines Topfs.`,
  giveShare: 'Eine Zahl über 0 angeben, bis 1.',
  strengthWithoutInk: 'Eine Stärke ist angegeben, aber nicht, von welcher Farbe.',
  nameInk: 'Die Farbe nennen oder auch die Stärke frei lassen.',
  printedInkNotOnShelf: ({ ink }) => `Von der Farbe „${ink}“, mit der sie gedruckt wurde, gibt es keine Messung.`,
  addReading: 'Ihre Messung hinzufügen.',
  inksClear: 'Keine der Farben ändert das Papier: alle sind klar.',
  readColoured: 'Aufzüge bunter Farben messen.',
  inksAlike: 'Alle Farben sind gleich: der Druck wird in Tönen einer Farbe.',
  addColours: 'Farben anderer Töne hinzufügen, falls das Bild sie braucht.',
};
