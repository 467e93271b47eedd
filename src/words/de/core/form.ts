import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Formen: Zeichnungen lesen, Fotos nachzeichnen, setzen und wiederholen. */
export const form: Same<typeof en.form> = {
  // Zu viel davon.
  tooManyCharacters: ({ size, most }) => `Die Zeichnung hat ${size} Millionen Zeichen; Laydown liest bis zu ${most} Millionen.`,
  tooManyElements: ({ most }) => `Die Zeichnung hat mehr als ${most} Elemente.`,
  tooManyElementsRepeated: ({ most }) => `Ausgeschrieben ergeben die Wiederholungen der Zeichnung mehr als ${most} Elemente.`,
  tooManyAttributes: ({ most }) => `Ein Element der Zeichnung hat mehr als ${most} Attribute.`,
  tooManyRules: 'Das Stylesheet der Zeichnung hat zu viele Regeln für so viele Formen.',
  unpacksTooLarge: 'Entpackt ist die Zeichnung zu groß.',
  packedBroken: 'Die Zeichnung ist gepackt und beschädigt.',
  saveUnpacked: 'Neu und ungepackt sichern.',
  tooManyLinesInBlocks: 'Ausgeschrieben ergeben die Blöcke der Zeichnung zu viele Linien.',
  groupsTooDeep: ({ most }) => `Gruppen liegen mehr als ${most}-fach ineinander.`,
  tangled: 'Die Zeichnung hat zu viele Linien, die sich kreuzen oder drängen.',
  leaveOutUncut: 'Weglassen, was nicht geschnitten werden soll.',
  simplify: 'Sie in dem Programm vereinfachen, aus dem sie kommt.',
  simplifyOutlines: 'Sie in dem Programm vereinfachen, aus dem sie kommt; ein Messer braucht einfache Umrisse.',
  fewerRepeats: 'In der Zeichnung weniger wiederholen oder die Form in der Arbeit wiederholen.',
  ungroup: 'Die Gruppen der Zeichnung auflösen und neu sichern.',

  // SVG, das sich nicht lesen lässt.
  svgBroken: 'Die Datei bricht hier ab oder ist keine Zeichnung in SVG.',
  beginsOtherwise: ({ tag }) => `Die Datei beginnt mit „${tag}“, nicht mit einer Zeichnung in SVG.`,
  noDrawing: 'In dieser Datei ist keine Zeichnung.',
  hidesContents: 'Die Datei versteckt ihren Inhalt hinter Abkürzungen, die aufeinander verweisen.',
  notUnderstood: 'Die Zeichnung war nicht zu verstehen.',
  pageWithoutSize: 'Die Seite der Zeichnung hat keine Breite oder keine Höhe.',
  saveSvg: 'Die Zeichnung als einfaches SVG sichern.',
  saveSvgAgain: 'Neu als einfaches SVG sichern.',
  saveWithoutEffects: 'Neu als einfaches SVG sichern, ohne Effekte.',
  givePageSize: 'Ihr eine Seitengröße geben (width, height oder viewBox) und neu sichern.',

  // Was ein Messer nicht schneiden kann.
  text: ({ text }) => `Die Zeichnung enthält Text („${text}“); ein Messer braucht Umrisse.`,
  textInFont: ({ text, font }) =>
    `Die Zeichnung enthält Text („${text}“) in ${font}, einer Schrift, die Laydown nicht mitbringt; ein Messer braucht Umrisse.`,
  textToOutlinesFirst: 'Den Text in seinem Programm in Umrisse umwandeln, dann neu sichern.',
  pixels: 'Die Zeichnung enthält ein Bild aus Pixeln; ein Messer braucht Umrisse.',
  tracePixels: 'Das Bild für sich als Foto nachzeichnen lassen oder aus der Zeichnung nehmen.',
  softMask: 'Eine Maske der Zeichnung läuft aus; geschnitten wird, wo sie halb durchlässt.',
  fades: 'Etwas in der Zeichnung läuft aus; geschnitten wird, wo es halb zu sehen ist.',
  chooseThreshold: 'Nachsehen, ob die Kante stimmt; die Form nimmt auch eine andere Schwelle.',
  offPage: 'Alle Formen liegen außerhalb der Seite der Zeichnung.',
  nothingVisible: 'Nichts Sichtbares ist gezeichnet.',
  fillAndFit: 'Die Formen füllen, die geschnitten werden sollen, und die Seite daran anpassen.',
  farAway: 'Formen liegen so weit vom Nullpunkt der Zeichnung oder sind so riesig, dass ihre Umrisse grob werden.',
  moveToOrigin: 'In ihrem Programm alles nahe an den Nullpunkt schieben, dann neu sichern.',

  // Was weggelassen oder anders genommen wurde, als es gezeichnet ist.
  movedByStyle: 'Ein Stil in der Zeichnung verschiebt oder ändert Formen auf eine Weise, der Laydown nicht folgen kann.',
  attributesForStyles: 'Als einfaches SVG sichern, mit Attributen statt Stilen.',
  effects: 'Die Zeichnung verwendet Unschärfe, Schatten oder einen anderen Effekt; ein Messer schneidet den bloßen Umriss.',
  script: 'Die Zeichnung enthält ein Skript oder ein Stück Webseite; es wurde weggelassen.',
  moves: 'Die Zeichnung bewegt sich; ihr Ruhezustand wurde genommen.',
  fineIfRight: 'Sehen die Formen richtig aus, ist nichts zu tun.',
  elsewhere: 'Die Zeichnung verweist auf andere Dateien; sie wurden nicht geöffnet.',
  allInside: 'Alles in die Zeichnung selbst legen.',
  plainLines:
    'Manche Linien behalten beim Skalieren ihre Breite oder zählen ihre Striche über die ganze Linie; sie wurden als einfache Linien genommen.',
  linesToShapes: 'Diese Linien in ihrem Programm in gefüllte Formen umwandeln, falls sie anders aussehen.',
  whiteIsPaper: 'Weiß, das auf anderen Formen liegt, gilt als blankes Papier.',
  whiteAsShape: 'Soll auch Weiß geschnitten werden: bei der Form angeben, dass Weiß eine Form ist.',
  coloursAllTaken: ({ n }) => `Die Zeichnung zeigt ${n} Farben; alles außer Weiß gilt als eine Form.`,
  coloursDarkTaken: ({ n }) => `Die Zeichnung zeigt ${n} Farben und füllt ihre Seite; genommen wird, was dunkel ist.`,
  readOtherwise: 'Bei der Form angeben, was geschnitten wird: alles, das Dunkle, einige ihrer Farben oder je Farbe ein Schnitt.',
  coloursNotThere: ({ colours }) => `Die Zeichnung zeigt ${colours} nicht; genommen werden die nächstliegenden Farben.`,
  coloursThere: ({ colours }) => `Sie zeigt ${colours}.`,
  nothingLeft: 'So gelesen, bleibt von der Zeichnung nichts übrig.',
  pattern: 'Eine Form ist mit einem Muster gefüllt; ihre ganze Fläche wurde genommen.',
  patternToShapes: 'Das Muster in Formen umwandeln, falls es geschnitten werden soll.',
  beyondPage: 'Formen ragen über den Rand der Seite; sie wurden dort abgeschnitten, wie jede Anzeige sie zeigt.',
  largerPage: 'Die Seite größer machen, falls sie ganz bleiben sollen.',

  // DXF.
  dxfBinary: 'Diese DXF-Datei liegt in binärer Form vor.',
  saveDxfAsText: 'Als DXF in Textform (ASCII) sichern.',
  notDxf: 'Das ist keine DXF-Datei.',
  dxfBreaksOff: 'Die DXF-Datei bricht vor ihrem Ende ab; ein Teil der Zeichnung fehlt.',
  farOut: ({ n }) =>
    `${many(n, 'Umriss liegt', 'Umrisse liegen')} so weit draußen, dass von der Zeichnung daneben nichts zu sehen wäre; weggelassen.`,
  dxfDamaged: 'Das ist keine DXF-Datei, oder sie ist hier beschädigt.',
  saveDxfAgain: 'Die Zeichnung neu als DXF sichern.',
  noUnit: 'Die Datei nennt keine Längeneinheit; Millimeter wurden angenommen.',
  giveTrueSize: 'Der Form in der Arbeit ihre wahre Größe geben.',
  linesOpen: ({ n }) => `${many(n, 'Linie schließt sich nicht und wurde', 'Linien schließen sich nicht und wurden')} weggelassen.`,
  closeOutlines: 'Die Umrisse in der Zeichnung schließen.',
  noOutline: 'Die Zeichnung hat keinen geschlossenen Umriss.',
  closeAndSaveDxf: 'Die Umrisse in der Zeichnung schließen und neu als DXF sichern.',
  curveByPoints: 'Eine Kurve ist nur durch Punkte gegeben, durch die sie geht; dazwischen wurden gerade Linien genommen.',
  curvesToPolylines: 'Kurven in dem Programm, aus dem sie kommen, in Linienzüge umwandeln und neu sichern.',
  textLeftOut: 'Die Datei enthält Text; er wurde weggelassen.',
  textToOutlines: 'Den Text in Umrisse umwandeln, falls er geschnitten werden soll.',
  solidsLeftOut: 'Die Datei enthält Schraffuren oder Körper; nur einfache Umrisse wurden gelesen.',
  explodeSolids: 'Sie in Linien auflösen und neu sichern.',

  // Fotos, Scans und schwarzweiße Bilder von Gegenständen.
  photoSize: ({ width, height }) => `Ein Bild von ${width} × ${height} Pixeln lässt sich nicht nachzeichnen.`,
  photoSizes: ({ least, most }) => `Eines nehmen, das mindestens ${least} Pixel breit und hoch ist und höchstens ${most} Millionen hat.`,
  noBoard: 'Das Foto zeigt kein Schachbrett mit mindestens 16 ganzen Ecken.',
  showBoard: 'Ein Brett aus schwarzen und weißen Quadraten drucken, auf etwas Ebenes kleben und ganz fotografieren.',
  anotherCamera: 'Dieses Foto ist mit einer anderen Kamera oder anderem Zoom aufgenommen als das erste.',
  oneCamera: 'Immer nur eine Kamera lesen: Dieses Foto ist nicht dabei.',
  noSheet: 'Im Foto ist kein heller Bogen mit vier Ecken zu finden.',
  laySheet: 'Den Gegenstand auf weißem Papier auf einen dunkleren Tisch legen, alle vier Ecken im Bild, oder die Ecken von Hand setzen.',
  sheetWithoutSize: 'Der Bogen hat keine Größe.',
  whichPaper: 'Sagen, auf welchem Papier der Gegenstand liegt.',
  photoCoarse: ({ pixel }) => `Das Foto ist grob: jedes Pixel deckt ${pixel} des Bogens.`,
  goNearer: 'Für feine Umrisse näher herangehen oder eine schärfere Kamera nehmen.',
  resolutionUnknown: 'Die Auflösung des Scans fehlt oder ergibt keinen Sinn.',
  giveResolution: 'Die Pixel je Zoll angeben, auf die der Scanner gestellt war.',
  maskWithoutSize: 'Das Bild hat keine wahre Größe.',
  giveTrueWidth: 'Seine wahre Breite angeben.',
  nothingFound: 'Nichts hebt sich vom Papier ab.',
  evenLight: 'Gleichmäßigeres Licht nehmen oder sagen, wie dunkel oder farbig der Gegenstand ist.',

  // Wiederholungen.
  copiesLeftOut: ({ n, asked, least }) =>
    `Nur ${n} von ${asked} Wiederholungen ${which(n, 'passt', 'passen')} mit ${least} Abstand zueinander.`,
  fewerCopies: 'Weniger Wiederholungen oder einen kleineren Abstand nehmen.',
};
