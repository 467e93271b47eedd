import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Anlegen, Passer, Testbogen, Anlagen. */
export const register: Same<typeof en.register> = {
  stopsTorn: 'Drei Anlagen, gerissener oder Büttenrand',
  stopsCut: 'Drei Anlagen, geschnittener Rand',
  hingedSheet: 'Klare Folie am Scharnier',
  pins: 'Gelocht auf Stifte',
  byEye: 'Marken nach Augenmaß',
  measuredHere: ({ sigma }) => `Hier gemessen: σ ${sigma}.`,
  usualTolerance: ({ method, tolerance }) =>
    `${method}: ± ${tolerance}, übliche Praxis. Einen Testbogen drucken, um den eigenen Wert zu kennen.`,
  sigmaTooLarge: ({ most }) => `Die Streuung des Passers muss zwischen null und ${most} liegen.`,
  sigmaNegative: 'Die Streuung des Passers muss null oder mehr sein.',
  measureSigma: 'Sie mit einem Testbogen messen oder weglassen.',

  nothingToDo: 'Nichts zu tun.',
  lookAtEverySheet: 'Hält neunzehnmal von zwanzig; jeden Bogen ansehen.',
  letOverlap: ({ by }) => `Wo die beiden sich treffen sollen, sie um ${by} überlappen lassen.`,
  spreadUnder: ({ first, second, by }) => `${first} unter ${second} um ${by} überfüllen, wo sie sich treffen.`,
  spreadOver: ({ first, second, by }) => `${second} über ${first} um ${by} überfüllen, wo sie sich treffen.`,
  orFinerMethod: 'Oder die Bogen mit einem feineren Verfahren anlegen.',
  orSteadierAir: 'Oder die Luftfeuchte des Raums gleichmäßiger halten (35 bis 50 %) und das Papier einen Tag darin ruhen lassen.',
  orSameGap: 'Oder beide mit demselben Sieb, derselben Lage und demselben Absprung drucken.',
  orMoveStops: 'Oder die Anlagen um die stetige Verschiebung versetzen.',
  howToSpread:
    'Die hellere von beiden überfüllen oder ein Fenster ringsum unterfüllen. Bei transparenten Farben zeigt sich die Überlappung als dritter Farbton.',
  pairOpens: ({ first, second, off, overlap }) =>
    `${second} kann ${off} neben ${first} fallen, aber sie überlappen nur um ${overlap}: blankes Papier kann blitzen.`,
  pairTouches: ({ first, second, off }) =>
    `${second} kann ${off} neben ${first} fallen, aber sie berühren sich nur: blankes Papier kann blitzen.`,
  lineShows: ({ first, second, off }) =>
    `${second} kann ${off} neben ${first} fallen: dazwischen kann eine Linie der Farbe darunter blitzen, kein blankes Papier.`,
  otherEdge: ({ papers, tolerance, pairs }) =>
    `Gerissene Ränder halten eine Schicht nur auf ± ${tolerance}: auf ${papers} kann auch dies blitzen: ${pairs}.`,
  otherEdgeCut: ({ papers, tolerance }) => `${papers}: eine Schicht fällt innerhalb von ± ${tolerance}.`,
  pairOf: ({ first, second, off }) => `${first} und ${second} (${off})`,

  humidityImpossible: ({ humidity }) => `Luft kann keine ${humidity} Feuchte haben.`,
  readHygrometer: 'Vor jedem Lauf ein Hygrometer im Raum ablesen.',
  growth: 'das Wachsen des Papiers',
  growthNeedsSpan: 'Zum Wachsen des Papiers gehört die Spanne der Feuchte, über die es gemessen wurde.',
  giveSpan: 'Die Spanne in Prozentpunkten Feuchte angeben, etwa 33.',

  drawnSheets: 'die ausgelosten Bogen',
  tooManyShifts: 'Verschiebungen lassen sich für 1 bis 100000 Bogen mit 1 bis 64 Schichten auslosen.',
  askForFewer: 'Weniger verlangen.',

  testSheet: 'der Testbogen für den Passer',
  topLeft: 'oben links',
  topRight: 'oben rechts',
  bottomLeft: 'unten links',
  bottomRight: 'unten rechts',
  scaleTooDense: 'Die Linien der Skala würden ineinanderlaufen.',
  widerPitch: 'Einen größeren Abstand oder dünnere Linien nehmen.',
  testSheetSmall: ({ least }) => `Ein Testbogen braucht mindestens ${least} in jeder Richtung.`,
  printTestLarger: 'Größer drucken oder weniger Stufen nehmen.',
  printTestTwice:
    'Den ersten Lauf auf zehn Bogen oder mehr drucken, trocknen lassen, dann den zweiten Lauf drucken; die Rückseiten in der Folge des Drucks nummerieren.',
  findLine: ({ step }) =>
    `Auf jeder Skala das Linienpaar suchen, das sich am besten trifft; seine Nummer mal ${step} ist die Verschiebung (nach rechts und unten positiv).`,
  writeLines: 'Stelle, Bogen, quer und hoch aufschreiben. Mindestens zwei Stellen zeigen die Drehung.',

  fewSheets: ({ n }) => `${many(n, 'Testbogen kann', 'Testbogen können')} Zufall und stetige Verschiebung nicht trennen.`,
  readMoreSheets: 'Mindestens 3 Bogen ablesen, besser 10.',
  noSuchPlace: ({ place }) => `Der Testbogen hat keine Stelle „${place}“.`,
  placesAre: ({ places }) => `Seine Stellen sind: ${places}.`,
  readingMissing: 'Eine Ablesung fehlt.',
  writeBoth: 'Beide schreiben, quer und hoch.',
  noSuchLine: ({ line }) => `Die Skalen haben keine Linie ${line}.`,
  linesRun: ({ most }) =>
    `Die Linien gehen von −${most} bis ${most}, Halbe sind erlaubt. Was weiter danebenliegt, ist keine Ablesung dieser Skala: herausfinden, warum der Bogen verrutscht ist, und ihn weglassen.`,
  readTwice: 'Diese Stelle dieses Bogens wurde zweimal abgelesen.',
  keepOneReading: 'Eine der beiden Ablesungen behalten.',
  spreadRough: ({ n }) => `Aus ${n} Bogen ist die Streuung nur grob bekannt.`,
  tenSheets: 'Zehn Bogen oder mehr sagen es besser.',
  finerThanScale: ({ step }) => `Die Streuung ist feiner, als die Schritte der Skala von ${step} zeigen.`,
  noWorseThan: 'Den Wert als „nicht schlechter als“ nehmen oder den Test mit feinerem Schritt drucken.',
  creepsAcross: ({ by }) => `Der Passer wandert quer um ${by} je Bogen.`,
  creepsDown: ({ by }) => `Der Passer wandert nach unten um ${by} je Bogen.`,
  lookForLoose: 'Nach einer losen Anlage oder einem losen Scharnier sehen oder nach Papier, das beim Drucken trocknet.',

  columnsMissing: ({ n }) => `Sie hat ${n} von 4 Spalten.`,
  notASheet: ({ written }) => `„${written}“ ist keine Bogennummer.`,
  notALine: ({ written }) => `„${written}“ ist keine Linie der Skala.`,
  writeTable: 'Bogen, Stelle, quer, hoch schreiben: 3, top left, -2, 1. laydown register JOB --form druckt eine leere Tabelle.',

  toRight: ({ by }) => `${by} nach rechts`,
  toLeft: ({ by }) => `${by} nach links`,
  downwards: ({ by }) => `${by} nach unten`,
  upwards: ({ by }) => `${by} nach oben`,
  steadyShift: ({ shift }) =>
    `Der zweite Lauf ist auf jedem Bogen ${shift} verschoben. Das ist kein Zufall: Schablone oder Sieb vor einem Lauf um ebenso viel zurücksetzen.`,
  turnedClockwise: ({ degrees }) =>
    `Der zweite Lauf ist auf jedem Bogen um ${degrees}° im Uhrzeigersinn gedreht: die Schablone gerade in den Rahmen setzen oder eine der beiden Anlagen versetzen.`,
  turnedAnticlockwise: ({ degrees }) =>
    `Der zweite Lauf ist auf jedem Bogen um ${degrees}° gegen den Uhrzeigersinn gedreht: die Schablone gerade in den Rahmen setzen oder eine der beiden Anlagen versetzen.`,
  printsLarger: ({ by }) =>
    `Der zweite Lauf ist um ${by} größer: ein anderer Absprung, oder Papier, das sich zwischen den Läufen mit der Feuchte bewegt hat.`,
  printsSmaller: ({ by }) =>
    `Der zweite Lauf ist um ${by} kleiner: ein anderer Absprung, oder Papier, das sich zwischen den Läufen mit der Feuchte bewegt hat.`,

  imageOffSheet: 'Das Bild reicht über den Rand des Bogens.',
  moveImage: 'Es verschieben, kleiner machen oder einen größeren Bogen nehmen.',
  tornEdge: 'Ein gerissener Rand liegt nie zweimal gleich an.',
  cardStrip:
    'Auf die Rückseite jedes Bogens einen Streifen geschnittenen Kartons kleben und den an die Anlagen schieben, oder Stifte nehmen.',
  settingOf: ({ n, papers, from }) => `${n}: ${papers}, Bild ${from} von der Ecke (quer × hoch)`,
  severalSettings: ({ n, settings }) =>
    `Die Papiere verlangen ${n} Einstellungen der Anlagen, weil ihr Bild an verschiedenen Stellen liegt: ${settings}.`,
  oneSetting:
    'In jedem Lauf alle Bogen der Einstellung 1 drucken, Anlagen oder Sieb versetzen, Marken prüfen, dann die nächsten drucken. Besser: das Bild nur auf einem Papier festlegen, die anderen folgen ihm.',
  tapeDrawing: 'Diese Zeichnung unter dem Sieb auf die Platte kleben, sodass ihr Bild unter dem der Schablone liegt.',
  glueStops: ({ thickness }) => `Die drei Anlagen an ihre Plätze kleben: ${thickness} dick, mit geraden Kanten.`,
  pushSheets: 'Jeden Bogen zuerst an 1 und 2 schieben, dann entlang bis 3, immer mit derselben Hand.',
  leaveStops: 'Die Anlagen stehen ein für alle Mal, für jeden Bogen, der daran liegt: bis nach dem letzten Lauf nicht anrühren.',
};
