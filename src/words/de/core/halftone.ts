import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Läufe mit Tönen: Filme, Punkte, Keile, Auszüge. */
export const halftone: Same<typeof en.halftone> = {
  exposed: 'Über einen Film belichtet: Geschnitten wird nichts, die Schicht hält jeden Punkt.',

  // Eine Tafel von Tönen gegen die Vorhersage.
  chartEmpty: 'In dieser Datei stehen keine Zeilen.',
  writeChart: 'In die Kopfzeile die Kurznamen der Schichten schreiben, darunter je Feld eine Zeile: was jeder Film deckt, 0 bis 1.',
  chartTooLong: ({ most }) => `Diese Datei hat mehr als ${many(most, 'Zeile', 'Zeilen')}.`,
  splitChart: 'Auf mehrere Dateien verteilen.',
  noLayerNamed: 'Keine Spalte heißt wie eine Schicht dieser Arbeit.',
  nameLayers: ({ ids }) => `Die Schichten heißen ${ids}.`,
  columnUnknown: ({ column }) => `Eine Schicht „${column}“ gibt es nicht; ihre Spalte bleibt weg.`,
  notACover: ({ text }) => `„${text}“ kann kein Film decken.`,
  coverFromTo: 'Anteile von 0 (blank) bis 1 (voll) schreiben: ein halber Ton ist 0,5.',
  noTone: 'Kein Lauf dieser Arbeit trägt Töne auf einem Papier, das gemessen ist.',
  giveTone: 'Einer Schicht einen Ton geben: siehe laydown explain layers.tone.',
  isN: ({ n }) => `Licht streut zwischen den Punkten nach Yule und Nielsen mit n = ${n}.`,
  noWedge: ({ layers }) =>
    `Von ${layers} ist kein Keil gemessen: Der Punktzuwachs ist aus dem Gewebe geschätzt. Einen Keil drucken und messen; dann werden die Bänder enger.`,

  byFilm: 'über einen Film belichtet',
  films: 'Filme',
  filmsSide: 'Ein Film je Lauf mit Tönen',
  filmsIntro: 'Die Filme in der eigenen Auflösung des Druckers machen: an der Werkbank neben jedem Film oder mit laydown positive.',
  filmsWedge: 'Neben dem Bild trägt jeder Film einen kleinen Keil: Mit dem Lauf gedruckt, zeigt er, ob die Kurve noch stimmt.',
  filmFacts: ({ ruling, angle, threads, gain }) =>
    `${ruling} Punkte je cm unter ${angle}°: ${threads} Fäden je Punkt (üblich sind 2,5 bis 5); ein halber Ton wird mit ${gain} angenommen`,
  grainFacts: ({ least, gain }) => `Korn von ${least}; ein halber Ton wird mit ${gain} angenommen`,
  filmCovers: ({ film, paper }) => `Deckt ${film} des Bildes auf dem Film, ${paper} auf dem Papier`,
  moireOf: ({ layers, period }) => `Bänder von ${layers}: etwa ${period} breit, schwach`,
  moireStrong: ({ layers, period }) =>
    `Bänder von ${layers}: etwa ${period} breit, deutlich zu sehen. Einen der Filme drehen oder seine Rasterweite ändern.`,
  toneLook: 'Töne, wie sie wirken',
  fromArm: 'Der Druck, wie Augen ihn aus Armlänge sehen, die Punkte nicht mehr unterscheiden.',
  fromArmFile: ({ paper }) => `Der Druck auf ${paper} aus Armlänge`,
  bandsPatch: 'Halbe Töne aller Filme übereinander, in wahrer Größe und durch ihre Gewebe: Bänder zeigen sich hier wie im Druck.',
  toneRegister:
    'Punkte unter verschiedenen Winkeln dürfen sich verschieben und ändern den Farbton kaum; an Linien und an Kanten neben geschnittenen Läufen sieht man es.',
  theMesh: 'dem Gewebe',

  // Linien für das Messer.
  pitchTooSmall: ({ pitch, least }) =>
    `Linien im Abstand von ${pitch} stehen zu eng: Die schmalste Öffnung und der schmalste Steg dieses Materials brauchen ${least}.`,
  widerPitch: 'Sie weiter setzen oder ein anderes Material nehmen.',
  noLines: 'Das Bild ist überall zu hell für eine einzige Öffnung.',
  darkerPicture: 'Ein dunkleres Bild nehmen oder die Linien enger setzen.',
  linesMade: ({ n, pitch, lightest, darkest }) =>
    `${many(n, 'Öffnung', 'Öffnungen')}, ${pitch} von Linie zu Linie: Töne von ${lightest} bis ${darkest}; was heller ist, bleibt blank.`,
  linesReach: ({ bare, darkest }) =>
    `In dieser Farbe gedruckt kommt die dunkelste Stelle des Bildes auf eine Helligkeit L* von ${darkest}; das bloße Papier hat ${bare}.`,
  inkTooPale: ({ ink }) => `„${ink}“ ist kaum dunkler oder heller als das Papier: damit entsteht kein Bild.`,
  strongerInk: 'Eine dunklere Farbe oder ein helleres Papier nehmen.',
  linesWritten: ({ folder, layer }) => `Geschrieben nach ${folder}. Die Schneidedatei: laydown cut ${folder} ${layer} --out linien.svg.`,

  // Auf dem Film selbst.
  filmOf: ({ title, run, layer }) => `${title}: Lauf ${run}, ${layer}`,
  filmDots: ({ ruling, angle, shape, least, dpi }) => `${ruling} je cm, ${angle}°, ${shape}, keine unter ${least}; ${dpi} dpi`,
  filmGrain: ({ least, dpi }) => `Korn von ${least}; ${dpi} dpi`,
  filmStraight: 'Nicht gespiegelt: die bedruckte Seite auf die Schicht legen.',
  filmMirrored: 'Gespiegelt: die unbedruckte Seite auf die Schicht legen.',
  roundDots: 'runde Punkte',
  ellipseDots: 'längliche Punkte',
  lineDots: 'Linien',
  filmWritten: ({ file, width, height, ruling, angle }) =>
    `${file}: ${width} × ${height} Pixel; die Punkte stehen zu ${ruling} je cm unter ${angle}°`,
  grainWritten: ({ file, width, height }) => `${file}: ${width} × ${height} Pixel Korn`,
  noToneRun: 'Kein Lauf dieser Arbeit trägt Töne.',
  filmCaution:
    'Fotoschicht und ihre Reiniger: Handschuhe, Augenschutz und frische Luft, außer Reichweite von Kindern; nie ins Belichtungslicht sehen; das erste Waschwasser auffangen. Etiketten und örtliche Vorschriften entscheiden.',

  // Keilseite und Belichtungsstreifen.
  wedgeFor: ({ title, layers }) => `${title}: Keil, zu drucken in ${layers}`,
  wedgePhoto:
    'Den trockenen Druck messen oder fotografieren: alle vier Ringe im Bild, gleichmäßiges Licht, kein Glanz, nichts ausgefressen.',
  stripFor: ({ title }) => `${title}: Belichtungsstreifen`,
  stripHow: 'Von oben Reihe um Reihe abdecken: Jede bekommt 1,4-mal so viel Licht wie die darüber.',
  stripDots: ({ ruling, angle, dpi }) => `${ruling} je cm, ${angle}°, bis hinab zum Punkt des Druckers; ${dpi} dpi`,
  stepOf: ({ cover }) => `Stufe von ${cover}`,
  wedgePale: 'Der Vollton dieses Keils unterscheidet sich auf dem Foto kaum vom Papier.',
  wedgeByNumbers: 'Die Stufen messen und eintippen, oder einen kräftigeren Topf drucken.',
  wedgeUneven: ({ by }) => `Die zwei Felder einer Stufe liegen ${by} auseinander: Abzug oder Licht war ungleichmäßig.`,
  pullEvenly: 'Ihr Mittel wird genommen. Besser den Keil noch einmal mit einem gleichmäßigen Zug drucken.',
  wedgeUnread: 'Hier sind keine Stufen eines Keils zu finden.',
  typeWedge: 'Je Stufe eine Zeile, in Prozent des Films, dahinter Dichte oder Lab: „50: 0,62“, der Vollton als 100, das Papier als 0.',
  notADensity: ({ density }) => `Eine Dichte von ${density} hat kein Druck.`,
  nameSteps: ({ n }) => `Die Felder nach ihren Stufen benennen (5, 10 … 100) oder alle ${n} Felder der Seite der Reihe nach messen.`,
  wedgeNoSolid: 'Zu Dichten gehört die des Volltons, und sie muss über der des Papiers liegen.',
  wedgeFallsBack: ({ cover }) => `Die Stufe von ${cover} liegt weiter vom Vollton weg als eine hellere.`,
  readStepAgain: 'Beide werden ausgeglichen. Prüfen, ob Stufen vertauscht sind, und noch einmal messen.',
  wedgeShort: 'Es sind wenige Stufen gemessen: Dazwischen ist die Kurve geraten.',
  readMoreSteps: 'Mindestens drei messen, besser alle.',
  wedgeWritten: ({ file, layer }) => `${file}: der Keil von ${layer}, in wahrer Größe zu drucken.`,
  stripWritten: ({ file }) => `${file}: der Belichtungsstreifen, in wahrer Größe zu drucken.`,
  curveOf: ({ layer, paper }) => `${layer} auf ${paper}: was auf dem Film steht, und was auf das Papier kommt`,
  curveRead: ({ half, n, off }) =>
    `Ein halber Ton kommt auf ${half}; Licht streut mit n = ${n}; die Stufen sind im Mittel auf ${off} getroffen.`,
  curveGuessed: ({ half }) => `Kein Keil gemessen: Ein halber Ton wird nach Gewebe und Papier mit ${half} angenommen.`,
  wedgeKept: ({ n }) => `${many(n, 'Stufe steht', 'Stufen stehen')} jetzt in der Arbeit: Plan, Auszug und Filme richten sich danach.`,
  wedgeNotKept: 'Behalten ist nichts: --keep nimmt diese Stufen in die Arbeit auf.',
  filmExposed: ({ time }) => `${time} s belichten, wie der Streifen gezeigt hat`,
  notARow: ({ text }) => `„${text}“ sagt nichts über eine Reihe.`,
  writeRows: 'Je Reihe den hellsten offenen und den dunkelsten stehenden Ton schreiben, „5-95“, oder „-“, wo nichts hielt.',
  rowsWanted: ({ most }) => `Ein Streifen hat eine bis ${many(most, 'Reihe', 'Reihen')}.`,
  stripHeldNothing: 'Keine Reihe dieses Streifens hat einen Ton gehalten.',
  stripAgain: 'Beschichtung und Trocknung prüfen und einen Streifen mit viel längeren Zeiten belichten.',
  rowHad: ({ row, time }) => `Reihe ${row}: insgesamt ${time} s`,
  rowsAre: ({ first, more }) =>
    `Den ganzen Streifen ${first} s belichten, Reihe 1 abdecken, dann noch ${more} s belichten und nach jedem Mal eine Reihe mehr abdecken.`,
  exposeFor: ({ time, row, lightest, darkest }) => `${time} s belichten, wie Reihe ${row}: Sie hält Töne von ${lightest} bis ${darkest}.`,
  stripAtShortest: 'Die erste Reihe gehört zu den besten: Ein Streifen mit kürzeren Zeiten findet vielleicht eine bessere.',
  stripAtLongest: 'Die letzte Reihe gehört zu den besten: Ein Streifen mit längeren Zeiten findet vielleicht eine bessere.',
  leastTaken: ({ least }) => `Die Filme zeichnen keinen Punkt und kein Loch unter ${least}: was Schicht und Gewebe beide halten.`,
  exposureKept: 'In der Arbeit behalten, für jeden Lauf mit diesem Gewebe.',
  wedgeHead: 'Keil und Belichtung',
  wedgeSide: 'Zwei Filme vor den Filmen',
  stripUse:
    'Zuerst der Streifen: ein Sieb wie immer beschichten und trocknen, den Film auflegen und Reihe um Reihe belichten, wie die Tabelle sagt. Auswaschen und je Reihe den hellsten Ton notieren, der offen ist, und den dunkelsten, dessen Schicht noch steht.',
  wedgeUse:
    'Dann der Keil: mit dieser Zeit belichten, mit dem Topf des Laufs auf dessen Papier in einem gleichmäßigen Zug drucken und trocknen lassen. Jede Stufe messen oder den Bogen fotografieren.',
  wedgeFiles: 'Beide liegen in dieser Mappe im Ordner films, mit 600 dpi; laydown wedge macht sie in jeder anderen Auflösung.',
  percentIs: ({ share }) => `${share}`,
  curveHalf: ({ layer, half }) => `${layer}: noch kein Keil; ein halber Ton wird mit ${half} angenommen`,
  curveHalfRead: ({ layer, half, n }) => `${layer}: gemessen; ein halber Ton kommt auf ${half}, n = ${n}`,
  wedgeFile: ({ layers }) => `Film des Keils für ${layers}, 600 dpi`,
  stripFile: 'Film des Belichtungsstreifens, 600 dpi',
  timesFirst: ({ times }) => `× ${times}`,
  wedgeTable: 'Stufe auf dem Film',
  wedgeReading: 'gemessen: Dichte oder Lab',
  stripRow: 'Reihe',
  stripTime: 'Zeit',
  stripOpen: 'offen',
  stripHeld: 'steht',

  // Der Auszug.
  splitInks: ({ least, most }) => `Ein Auszug nimmt ${least} bis ${most} Farben.`,
  nameInks: ({ ids }) => `Farben dieses Regals nennen: ${ids}.`,
  noSuchInk: ({ ink }) => `Eine Farbe „${ink}“ steht nicht in diesem Regal.`,
  splitUnread: 'Nicht jede Farbe oder nicht das Papier ist gemessen.',
  readFirst: 'Erst ihre Aufzüge messen, oder andere Farben nehmen.',
  splitRun: ({ layer, mean, ruling, angle }) => `${layer}: deckt ${mean} des Bildes; ${ruling} Punkte je cm unter ${angle}°`,
  splitGrain: ({ layer, mean }) => `${layer}: deckt ${mean} des Bildes; Korn`,
  splitBack: ({ mean, p95 }) =>
    `Was die Farben erreichen, kommt im Mittel auf ${mean} genau zurück, neunzehn von zwanzig Farbtönen auf ${p95}.`,
  splitOut: ({ share, mean }) => `${share} des Bildes liegen außer ihrer Reichweite, im Mittel ${mean} daneben.`,
  splitWide: ({ share }) =>
    `${share} des Bildes sind farbiger, als sRGB zeigen kann; der Auszug nimmt sie, wie das Profil der Datei sie angibt.`,
  splitMost: ({ most }) => `Die Filme decken zusammen höchstens ${most}.`,
  splitWritten: ({ folder }) => `Geschrieben nach ${folder}. Die Filme: laydown positive ${folder}.`,

  waysOf: ({ layer }) => `${layer} lässt sich drucken:`,
  wayFilm: ({ work, make }) => `über einen Film: ${work}, davon ${make} für Film und Sieb`,
  wayLines: ({ work, make, metres, off }) =>
    `als Schnittlinien: ${work}, davon ${make} am Messer (${metres}); ${off} neben den Tönen des Films`,
  waySteps: ({ strengths, work, make, metres, off }) =>
    `in flächigen Stärken, ${strengths} Farbe: ${work}, davon ${make} am Messer (${metres}); ${off} daneben`,
  wayLeast: ({ layer, way }) => `Ohne Film kostet ${layer} ${way} am wenigsten Zeit.`,
  wayTaken: ({ layer, way }) => `${layer} wird ${way} gedruckt.`,
  inFilm: 'über einen Film',
  inLines: 'als Schnittlinien',
  inTwo: 'in zwei flächigen Stärken',
  inThree: 'in drei flächigen Stärken',
  wayMinutes:
    'Geschätzt, nur Handarbeit, ohne Trocknen. Flächen liegen übereinander, jede eine Stufe dunkler; daneben heißt: ΔE00 im Mittel.',
  notThatWay: ({ layer, way }) => `${layer} lässt sich nicht ${way} drucken: diese Farbe oder dieses Material trägt es nicht.`,
  otherWay: 'Einen anderen Weg wählen: film, lines, 2, 3 oder least.',
  tooManyRuns: ({ layer, n, most }) => `Mit ${layer} in flächigen Stärken hätte die Arbeit ${n} Läufe; ${most} sind das Höchste.`,
  fewerStrengths: 'Zwei Stärken, Schnittlinien oder einen Film für eine der Farben nehmen.',
};
