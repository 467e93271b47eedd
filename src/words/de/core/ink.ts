import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Farben aus Aufzügen, Mischen, Streuung, Lernen, der Aufzugbogen. */
export const ink: Same<typeof en.ink> = {
  // Wie weit einer Farbe zu trauen ist.
  trustCovers:
    'Auf einem Untergrund gemessen und doch stellenweise heller als er: diese Farbe deckt und tönt, und nur ein Aufzug auf Weiß und Schwarz zeigt, wie sehr.',
  trustOneGround:
    'Auf einem Untergrund gemessen und als ganz transparent genommen. Gut für klare Farben; über dunklen Schichten sieht eine milchige Farbe heller aus als vorhergesehen.',
  trustContradicts: 'Die beiden Messungen widersprechen einander; siehe die Probleme.',
  trustHides:
    'Verdeckt ihren Untergrund: der Farbton ist sicher, aber wie er verdünnt aussieht, ist geraten. Ein mit Base verschnittener Aufzug würde mehr zeigen.',
  trustTwoGrounds:
    'Auf Weiß und auf Schwarz gemessen: Tönen und Decken sind getrennt, Überdrucke mit dunklen Schichten lassen sich also vorhersehen.',
  trustLadderContradicts: 'Die Stufen der Reihe widersprechen einander; siehe die Probleme.',
  trustOneStep: 'Nur eine Stufe: die Stärke gilt als gerade mit dem Anteil Farbe wachsend.',
  trustStraight: ({ within }) => `Die Stärke wächst gerade mit dem Anteil Farbe (auf ${within} genau).`,
  trustBent: ({ power, most }) =>
    `Die Stärke wächst mit dem Anteil Farbe hoch ${power}; einzelne Stufen weichen davon um bis zu ${most} ab.`,
  trustClear: 'Als vollkommen klar genommen.',
  trustPublished: 'Nicht die eigene: nach veröffentlichten Werten. Die Bänder sind breit, bis ein eigener Aufzug gemessen ist.',
  trustByEye: 'Nach Augenmaß bestimmt, nicht gemessen: die Bänder sind breit, bis ein Gerät oder ein Foto einen Aufzug gemessen hat.',
  inksPublished: ({ inks, n }) =>
    `${inks} ${n === 1 ? 'ist eine Farbe' : 'sind Farben'} für den Anfang nach veröffentlichten Werten, nicht die eigene.`,
  inksByEye: ({ inks, n }) => `${inks} ${n === 1 ? 'wurde' : 'wurden'} nach Augenmaß bestimmt, nicht gemessen.`,
  readOwn: 'Für den Anfang gut genug; die Farbtöne können deutlich anders ausfallen. Die eigene Farbe aufziehen und messen.',
  guessWithin: ({ off, sigma }) => `Die Schätzung davor lag um ΔE00 ${off} daneben: innerhalb der ± ${sigma}, die ihr gegeben waren.`,
  guessNear: ({ off, sigma }) =>
    `Die Schätzung davor lag um ΔE00 ${off} daneben: mehr als die ± ${sigma}, die ihr gegeben waren, aber nicht mehr als eine von zehn.`,
  guessFar: ({ off, sigma }) =>
    `Die Schätzung davor lag um ΔE00 ${off} daneben, weit mehr als die ± ${sigma}, die ihr gegeben waren: War es dieselbe Farbe, gleich dick, im selben Licht?`,
  guessesKept: ({ within, n }) =>
    `${within} von ${n} Schätzungen lagen innerhalb des Zweifels, der ihnen gegeben war; zwei von drei sollten es.`,
  trustMix: 'Aus den Farben berechnet, aus denen sie gemischt ist.',

  // Aufzüge, die es nicht geben kann.
  lighterThanGround: ({ by }) => `Der Aufzug ist in einem Teil des Spektrums heller als sein Untergrund, um bis zu ${by} von Weiß.`,
  readBothGrounds:
    'Eine transparente Farbe nimmt nur Licht weg. Entweder streut diese Farbe, oder die beiden Messungen sind vertauscht oder von verschiedenen Bogen. Sie auf Weiß und auf Schwarz messen.',
  darkAsGloss: 'Ein Teil des Aufzugs misst so dunkel wie der Glanz, der abgezogen wurde.',
  lowerGloss: 'Den Glanz dieser Oberfläche niedriger ansetzen oder einen dünneren Aufzug messen.',
  groundsAlike: 'Der weiße und der schwarze Untergrund sind sich zu ähnlich, um Decken und Tönen zu trennen.',
  useDrawdownCard: 'Eine Aufzugkarte mit hellem Weiß und tiefem Schwarz nehmen, oder die beiden tauschen, falls sie verwechselt wurden.',
  darkerOverWhite: ({ bands, all }) =>
    `Der Aufzug ist auf Weiß dunkler als auf Schwarz, in ${bands} von ${all} Bändern; so kann kein Film sein.`,
  groundsSwapped: 'Die beiden Messungen sind wohl vertauscht, oder der Film ist nicht auf beiden Untergründen gleich dick.',
  ladderEmpty: 'Keine Stufe der Stärkenreihe enthält Farbe.',
  giveAStep: 'Mindestens eine Stufe mit einem Anteil zwischen 0 und 1 angeben.',
  ladderOutOfOrder: ({ step, below }) => `Die Stufe von ${step} misst schwächer als die von ${below}.`,
  stepsSwapped: 'Zwei Aufzüge sind wohl vertauscht, oder ein Film ist viel dünner.',

  // Mischen und Überdrucke.
  noSuchPart: ({ part }) => `Ein Teil von ${part} lässt sich nicht mischen.`,
  partsFromNought: 'Jedem Teil eine Zahl von 0 oder mehr geben.',
  potOverfull: ({ whole }) => `Die Teile ergeben ${whole} des Topfs.`,
  divideBySum: 'Jeden Teil durch ihre Summe teilen.',
  noParts: 'Eine Mischung braucht mindestens einen Teil und keinen unter 0.',
  enterParts: 'Die Teile neu eingeben.',
  transparentBase: 'Transparentbase',
  tooManyLayers: ({ n }) => `${many(n, 'Schicht ergibt', 'Schichten ergeben')} mehr Überdrucke, als sich unterscheiden lassen.`,
  fewerLayers: ({ most }) => `Höchstens ${most} Schichten auf einen Bogen drucken.`,

  // Ein Topf, mit verschiedenen Basen verschnitten.
  baseStaysClear: ({ off }) => `ΔE00 ${off} neben dem gewünschten Farbton; bleibt auf Schwarz klar.`,
  baseVeils: ({ off, lightness }) => `ΔE00 ${off} neben dem gewünschten Farbton; schleiert auf Schwarz ein wenig (L ${lightness}).`,
  baseCovers: ({ off, lightness }) => `ΔE00 ${off} neben dem gewünschten Farbton; deckt auf Schwarz (L ${lightness}).`,

  // Woher die Streuung kommt.
  bandSamples: ({ n }) =>
    `Aus ${many(n, 'gerechnetem Druck', 'gerechneten Drucken')}, in denen Messungen, Spektren hinter Farbtönen, Filme, Glanz und wie ein Film auf dem anderen liegt innerhalb ihrer Unsicherheit zufällig schwanken.`,
  bandOfSpectra: 'Alle Messungen sind Spektren aus einem Messgerät.',
  bandOfColours: 'Einige Messungen sind Farbtöne ohne Spektrum.',
  bandOfPhotographs: 'Manche Farbtöne stammen aus Fotos, aus veröffentlichten Werten oder vom Auge.',
  bandFromTrials:
    'Neun von zehn Drucken fallen in dieses Band, nach Versuchen an veröffentlichten Überdrucken, nicht nach einer Messung dieses Studios; dazu schwanken die Bogen von Zug zu Zug.',
  bandOverPicture:
    'Farbtöne und Bänder gelten für die unbedruckten Teile des Bogens; über dem früheren Druck sind sie andere und weniger sicher.',
  almostSurely: 'so gut wie sicher',
  likely: 'wahrscheinlich',
  asLikelyAsNot: 'so wahrscheinlich wie nicht',
  unlikely: 'unwahrscheinlich',
  hardly: 'kaum',

  // Was Messungen von Drucken gelehrt haben.
  learnt: ({ n, before, after }) =>
    `${many(n, 'Messung', 'Messungen')}: vorhergesehene Farbtöne lagen im Mittel um ΔE00 ${before} daneben, jetzt um ${after}.`,
  liesHeavier: ({ layer, by }) => `${layer} liegt um ${by} schwerer als geplant.`,
  liesLighter: ({ layer, by }) => `${layer} liegt um ${by} leichter als geplant.`,
  nothingLearnt: 'Die Messungen widersprechen einander; es wurde nichts geändert.',
  unlikeTheOthers: ({ off }) => `Diese Messung liegt um ΔE00 ${off} neben dem, was alle anderen zusammen sagen.`,
  moreUnlike: ({ n }) => `${many(n, 'weitere Messung liegt', 'weitere Messungen liegen')} weit neben dem, was alle anderen zusammen sagen.`,
  readThemAgain:
    'Zuerst die schlimmsten ansehen, sie sind genannt. Liegen die meisten daneben, sind Farben oder Reihenfolge andere, als im Auftrag steht.',
  readItAgain: 'Prüfen, welche Schichten dort liegen, und neu messen. Sie hat wenig gezählt.',

  // Der Aufzugbogen.
  overWhite: ({ strength }) => `${strength} auf Weiß`,
  overBlack: ({ strength }) => `${strength} auf Schwarz`,
  bareBlack: 'blankes Schwarz',
  strengthOf: ({ share }) => share,
  drawdownSheets: 'Aufzugbogen',
  trueSizeLine: ({ long }) => `Diese Linie ist ${long} lang, wenn in wahrer Größe gedruckt wird.`,
  greyCardHere: 'Die Graukarte hierher legen. In offenem Schatten fotografieren, alle vier Eckmarken im Bild, ohne Blitz.',
  sheetStrengths: ({ most }) => `Ein Bogen fasst 1 bis ${most} Stärken zwischen 0 und 1.`,
  secondSheet: 'Für mehr einen zweiten Bogen nehmen.',
};
