import type { Words } from '../../en/bench/index.ts';
import { many } from './say.ts';

export const overlaps: Words['overlaps'] = {
  title: 'Überdrucke',
  knows: (n) => many(n, 'Farbton', 'Farbtöne'),
  needsPrint: 'Braucht Läufe mit Farbe',
  chart: 'Alle Überdrucke im Druck',
  chartOn: (paper, n) => `${many(n, 'Überdruck', 'Überdrucke')} auf ${paper}`,
  chartWhy: (runs, note) =>
    `${many(runs, 'Lauf', 'Läufe')} mit Farbe können ${2 ** runs} Überdrucke ergeben; hier stehen die, die in diesem Druck Fläche bedecken, und das blanke Papier. ${note}`,
  sortBy: 'Geordnet nach',
  byFilms: 'Zahl der Schichten',
  byArea: 'Fläche',
  byLightness: 'Helligkeit',
  byHue: 'Buntton',
  barePaper: 'Blankes Papier',
  films: (names) => names.join(' + '),
  lab: 'Lab',
  band: 'Sicherheit',
  bandValue: (deltaE) => `± ${deltaE} ΔE00`,
  bandWords: (deltaE) =>
    deltaE <= 1
      ? 'für das Auge kaum ein Unterschied'
      : deltaE <= 2.5
        ? 'ein kleiner Unterschied, nebeneinander gesehen'
        : deltaE <= 5
          ? 'ein sichtbarer Unterschied'
          : 'ein anderer Ton ist möglich',
  apartWords: (deltaE) =>
    deltaE <= 1 ? 'kaum zu sehen' : deltaE <= 2.5 ? 'nebeneinander zu sehen' : deltaE <= 5 ? 'deutlich zu sehen' : 'ein anderer Ton',
  possible: 'Kann so ausfallen',
  possibleWhy: 'Neun von zehn Drucken liegen zwischen den beiden Enden; in der Mitte steht der gezeigte Farbton.',
  lamp: 'In welchem Licht',
  lampWhy:
    'Farbtöne, wie Augen sie sehen, die an diese Lampe gewöhnt sind, aus Spektren berechnet (Lichtarten der CIE 015, Anpassung nach Bradford). Wo eine Farbe nur als Farbton gemessen ist, ist ihr Spektrum geraten, und damit auch, wie sie sich unter einer Lampe ändert. Ein früherer Druck ist nur aus einem Bild bekannt; auch wie er sich ändert, ist geschätzt, und Paare werden nur genannt, wo sie auf einem Grund liegen.',
  lampMoves: (what, deltaE) => `${what} ändert sich am meisten: um ${deltaE} ΔE00.`,
  parting: 'Unter einer Lampe gleich, unter einer anderen nicht',
  grounds: 'Auf dem, was der Bogen schon trägt',
  groundsWhy:
    'Der frühere Druck wird in eine Handvoll Farbtöne zerlegt: solche, die um mehr als 5 ΔE00 verschieden sind und mehr als ein Hundertstel bedecken. Jeder steht für das glatteste Spektrum seines Farbtons; ein Bild liegt um etwa 6 ΔE00 daneben (10, wo es den Farbton nicht fassen konnte), und das wird durch die Filme verfolgt. In neun veröffentlichten Datensätzen lagen 86 % der gemessenen Überdrucke über einem nur im Bild bekannten Grund innerhalb solcher Bänder.',
  ground: (n, share) => `Grund ${n}: ${share} des Bildes`,
  groundNo: (n) => `auf Grund ${n}`,
  onGround: (what, n) => `${what} auf Grund ${n},`,
  spread: 'Zehn Bogen der Auflage',
  spreadHand: 'Filme schwanken von Zug zu Zug um',
  spreadWhy:
    'Was eine ungleiche Hand allein bewirkt: jeder Film jedes Bogens um so viel schwerer oder leichter (Standardabweichung; von Hand 10 bis 20 %), alles andere wie vorhergesehen. Bänder aus 200 Bogen; die ersten zehn sind gezeigt. Folgen und Stärken werden danach verglichen, was ein um so viel schwererer Film verschiebt.',
  spreadMean: (deltaE) => `Neun von zehn Bogen bleiben im Mittel innerhalb von ± ${deltaE} ΔE00. Am meisten schwanken:`,
  spreadSheet: (n) => `Bogen ${n} von zehn`,
  spreadLess: 'Was es mindern würde',
  spreadNoWay: 'Keine Folge und keine Stärke mindert es, ohne einen anderen Druck daraus zu machen.',
  spreadOrder: (layers, deltaE, moved) => `${layers.join(' → ')}: ± ${deltaE}; die Farbtöne ändern sich um ${moved} ΔE00.`,
  spreadStrength: (layer, percent, deltaE, moved) => `${layer} zu ${percent} %: ± ${deltaE}; die Farbtöne ändern sich um ${moved} ΔE00.`,
  spreadTake: 'So drucken',
  spreadTaken: 'So ist es jetzt geplant.',
  worth: 'Zuerst zu messen',
  worthWhy:
    'Diese Überdrucke am ersten Probedruck zu messen engt alle vorhergesehenen Farbtöne am meisten ein. Die Druckmappe hat einen Streifen, der nur sie druckt.',
  worthNow: (band) => `Im Mittel ist das Band jetzt ± ${band}.`,
  worthThen: (band) => `dann ± ${band}`,
  showWorth: (what) => `${what} auf dem Proof zeigen`,
  photo: 'Foto des Drucks',
  photoTitle: 'Der gedruckte Bogen neben dem Proof',
  photoHow: 'Flach hinlegen, in gleichmäßigem Tageslicht ohne Glanz, mit blankem Papier ringsum, und senkrecht von oben fotografieren.',
  photoAnother: 'Anderes Foto',
  photoClose: 'Foto schließen',
  photoReading: 'Das Foto wird gelesen …',
  photoCornersOf: 'Die Ecken gehören',
  photoOf: { sheet: 'dem ganzen Bogen', image: 'dem gedruckten Bild' },
  photoTurn: 'Um ein Viertel drehen',
  photoMoveCorners: 'Die vier Ecken auf die des Drucks schieben. Pfeiltasten verschieben die Ecke, die man in der Hand hat.',
  photoCorner: (n) => `Ecke ${n} von 4. Pfeiltasten verschieben sie um einen Pixel, mit Umschalt um zehn.`,
  photoSquared: (paper) => `Das Foto, entzerrt, auf ${paper}`,
  photoProof: (paper) => `Der Proof auf ${paper}`,
  photoSides: 'Links: vorhergesehen. Rechts: wie fotografiert, das Licht am blanken Papier ausgeglichen.',
  photoSeen: (n) => many(n, 'Überdruck gelesen', 'Überdrucke gelesen'),
  photoWhy:
    'Gelesen, wo jeder am breitesten liegt, am blanken Papier abgeglichen. Ein Foto ist viel unsicherer als ein Messgerät: Es lehrt ein wenig und ersetzt keines.',
  photoBeyond: (n, names) =>
    n === 1
      ? `${names} weicht weiter ab, als Foto und Vorhersage danebenliegen können: Topf und Film ansehen.`
      : `${names} weichen weiter ab, als Foto und Vorhersage danebenliegen können: Töpfe und Filme ansehen.`,
  photoSuspect: (run) => `Alle Überdrucke mit ${run} weichen ab, die anderen nicht: Topf und Film von ${run} ansehen.`,
  photoWithin: 'Jeder Überdruck liegt in dem, was Foto und Vorhersage danebenliegen können.',
  photoNarrow: (n) =>
    n === 1
      ? '1 Überdruck ist nirgends breit genug, um gelesen zu werden.'
      : `${n} Überdrucke sind nirgends breit genug, um gelesen zu werden.`,
  photoApart: (deltaE, doubt) => `ΔE00 ${deltaE}, das Foto ±\u00a0${doubt}`,
  photoIsBeyond: 'mehr als der Zweifel',
  photoByInstrument: 'mit dem Messgerät gemessen',
  photoTake: 'Als Messung nehmen',
  photoTakeOf: (what) => `: ${what}`,
  photoTaken: 'Übernommen',
  photoTakeAll: (n) => (n === 1 ? '1 Messung nehmen' : `Alle ${n} Messungen nehmen`),
  photoTook: (n) => many(n, 'Messung in die Arbeit übernommen.', 'Messungen in die Arbeit übernommen.'),
  foreseen: 'vorhergesehen',
  measured: 'am Probedruck gemessen',
  area: 'Fläche',
  screen: 'Bildschirm',
  outOfGamut: 'Im Druck leuchtender, als dieser Bildschirm zeigen kann',
  inGamut: 'Dieser Bildschirm kann ihn zeigen',
  point: 'Auf den Proof zeigen oder auf ein Farbfeld.',
  letGo: 'Loslassen',
  proofOnly: (what, share) => `Proof, nur ${what} in Farbe, ${share} vom Bild`,
  ramp: (layer) => `${layer} von blank bis voll; Werte für den Vollton`,
  swatch: (what) => `${what},`,
  tiny: '<\u00a00,1\u00a0%',
};
