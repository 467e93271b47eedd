import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Was Befehle über Farben, Messwerte, Vorlagen und Nachgezeichnetes antworten. */
export const inkAnswers: Same<typeof en.inkAnswers> = {
  // order
  orders: ({ n, paper, now }) => `${many(n, 'Folge', 'Folgen')} auf ${paper}; jetzt: ${now}`,
  orderNo: ({ n, layers }) => `${n}. ${layers}`,
  wantedWithin: ({ deltaE }) => `gewünschte Farbtöne auf ${deltaE} ΔE00`,
  coloursDiffer: ({ n }) => `${many(n, 'verschiedener Farbton', 'verschiedene Farbtöne')}`,
  lightnessRange: ({ range }) => `Helligkeit über ${range}`,
  meanChroma: ({ chroma }) => `mittlere Buntheit ${chroma}`,
  movedBy: ({ deltaE, films }) => `schwankt um ${deltaE} ΔE00, wenn Filme um ${films} schwanken`,
  noDifference:
    'Die Folge macht für diese Farbtöne keinen Unterschied. Die jetzige behalten oder nach dem Trocknen ordnen und nach dem, was folgt.',
  orderWarns: ({ ridges, register }) =>
    `check würde warnen: ${many(ridges, 'Wulst', 'Wülste')}, ${many(register, 'Stelle, an der Schichten auseinanderfallen können', 'Stellen, an denen Schichten auseinanderfallen können')}`,
  alikeOrders: ({ n }) => (n === 1 ? '1 weitere Folge ergibt dasselbe' : `${n} weitere Folgen ergeben dasselbe`),
  givesUp: ({ what }) => `gibt auf: ${what}`,

  // recipe
  printedBy: ({ layer, under }) => `Gedruckt von ${layer}, darunter: ${under}.`,
  printedOver: ({ under }) => `Über ${under}.`,
  onTheSheet: 'nur der Bogen',
  recipe: ({ parts, deltaE, lab }) => `${parts}, Rest Base: um ΔE00 ${deltaE} daneben (Lab ${lab})`,
  part: ({ share, ink }) => `${share} ${ink}`,

  leftovers: ({ n, deltaE, lab }) => `Aus ${many(n, 'Glas', 'Gläsern')}, um ΔE00 ${deltaE} daneben (Lab ${lab}):`,
  leftoversFar: ({ deltaE, lab }) => `Nahe genug kommt nichts. Am nächsten, um ΔE00 ${deltaE} daneben (Lab ${lab}):`,
  leftoversNoHelp: ({ deltaE, lab }) =>
    `Was in Gläsern übrig ist, hilft hier nicht. Aus neuer Farbe, um ΔE00 ${deltaE} daneben (Lab ${lab}):`,
  fromJar: ({ mass, ink }) => `${mass} ${ink}, aus dem Glas`,
  newInk: ({ mass, ink }) => `${mass} ${ink}, neu`,
  ofBase: ({ mass, ink }) => `${mass} ${ink}`,
  newAgainst: ({ mass, fresh }) => `${mass} neue Farbe; ohne die Gläser wären es ${fresh}.`,
  newInAll: ({ mass }) => `${mass} neue Farbe.`,
  // spread
  spreadHead: ({ hand, deltaE }) =>
    `Filme schwanken von Zug zu Zug um ${hand}: neun von zehn Bogen bleiben im Mittel innerhalb von ± ${deltaE} ΔE00.`,
  spreadNoWay: 'Keine Folge und keine Stärke mindert es, ohne einen anderen Druck daraus zu machen.',
  spreadOrder: ({ layers, deltaE, moved }) => `${layers}: ± ${deltaE}; die Farbtöne ändern sich um ${moved} ΔE00`,
  spreadStrength: ({ layer, strength, deltaE, moved }) => `${layer} zu ${strength}: ± ${deltaE}; die Farbtöne ändern sich um ${moved} ΔE00`,

  // mix
  potHolds: ({ layer, mass }) => `${layer}, ${mass}`,
  byVolume: ({ share }) => `${share} des Volumens`,
  rounding: ({ deltaE }) => `auf die Waage gerundet rückt der Farbton um ΔE00 ${deltaE}`,
  retarder: ({ share, mass }) =>
    `und Verzögerer, ${share} (${mass}), für dieses Tempo und diese Luft; Handschuhe tragen, das Etikett entscheidet`,

  // pot
  potOff: ({ deltaE, mass }) => `Der Topf liegt um ΔE00 ${deltaE} daneben (${mass}).`,
  nearEnough: 'Nah genug: so lassen.',
  add: ({ mass, ink }) => `${mass} ${ink} zugeben`,
  afterAdding: ({ deltaE, mass, times }) => `Dann um ΔE00 ${deltaE} daneben; der Topf wächst auf ${mass} (× ${times}).`,
  aLittle: 'ein wenig',
  clearly: 'deutlich',
  very: 'sehr',

  // again
  newLot: ({ ink, times }) => `${ink}: die neue Charge ist ${times}-mal so kräftig`,
  shareWas: ({ share }) => `(war ${share})`,
  clearBase: 'klare Base',
  otherLight: ({ daylight, lamp }) => `um ΔE00 ${daylight} daneben bei Tageslicht, um ${lamp} bei Lampenlicht`,

  // readings, photo
  spectrum: 'Spektrum',
  xyz: 'XYZ',
  lab: 'Lab',
  photo: 'Foto',
  patches: ({ n }) => many(n, 'Messfeld', 'Messfelder'),
  sheetPaper: 'Papier',
  blackBar: 'schwarzer Balken',
  doubt: ({ sigma }) => `± ${sigma} ΔE00`,
  lightEven: ({ times }) => `Das Licht war um den Faktor ${times} ungleich; das ist ausgeglichen.`,
  takenAsLadder: ({ n }) => `Genommen als Stärkenreihe mit ${n} Stärken.`,
  takenAsTwo: 'Genommen als Messung über Weiß und über Schwarz.',

  seenApart: ({ how, deltaE }) => `${how} (ΔE00 ${deltaE})`,
  hardlySeen: 'kaum zu sehen',
  besideSeen: 'nebeneinander zu sehen',
  plainlySeen: 'deutlich zu sehen',
  anotherShade: 'ein anderer Ton',
  beyondDoubt: 'weiter, als Foto und Vorhersage danebenliegen können',
  readByInstrument: 'mit dem Messgerät gemessen',
  suspectRun: ({ layer }) => `Alle Überdrucke mit ${layer} weichen ab, die anderen nicht: Topf und Film von ${layer} ansehen.`,
  tooNarrow: ({ n }) =>
    n === 1
      ? '1 Überdruck ist nirgends breit genug, um gelesen zu werden.'
      : `${n} Überdrucke sind nirgends breit genug, um gelesen zu werden.`,
  squaredWritten: ({ file }) => `${file}: der Druck, entzerrt`,
  seenKept: ({ n }) => `${many(n, 'Messung', 'Messungen')} in die Arbeit übernommen.`,
  seenNotKept: 'Nichts wurde geändert; --keep nimmt diese Messungen in die Arbeit auf.',

  // eye
  byEye: ({ lab, sigma }) => `Nach Augenmaß: Lab ${lab}, ± ${sigma} ΔE00`,
  patchNo: ({ n, what }) => `${n}  ${what}`,
  patchMiddle: 'wie geschätzt',
  patchLighter: 'heller',
  patchDarker: 'dunkler',
  patchStronger: 'kräftiger',
  patchDuller: 'stumpfer',
  patchTurned: 'zur einen Seite gedreht',
  patchTurnedBack: 'zur anderen gedreht',
  nextChoice: 'Welches sieht dem Aufzug am ähnlichsten? Seine Nummer an --chose anhängen.',
  choicesDone: 'Fertig: weitere Vergleiche würden kaum noch etwas bringen.',
  guessed: ({ ink, lab }) => `${ink}: geschätzt auf Lab ${lab}`,
  notReadYet: 'Noch nicht gemessen.',
  noGuesses: 'Keine Farbe dieser Arbeit ist oder war geschätzt.',

  // drawdowns
  sheetsMade: ({ file, n }) =>
    `${file}: ${many(n, 'Bogen', 'Bogen')}. In wahrer Größe drucken (100 %), auf dem Papier des Drucks, wenn der Drucker es nimmt.`,

  // shelf
  inkOnShelf: ({ ink, density }) => `${ink}, ${density} g/mL`,
  baseOnShelf: ({ ink, role, density }) => `${ink} (${role}), ${density} g/mL`,
  transparentBase: 'Transparentbase',
  extenderBase: 'Verschnittbase',
  retarderRole: 'Verzögerer',
  lotNo: ({ lot }) => `Charge ${lot}`,
  oneGround: 'ein Untergrund',
  twoGrounds: 'Weiß und Schwarz',
  ladder: 'Stärkenreihe',
  clear: 'klar',
  paperOnShelf: ({ paper }) => `${paper} (Papier)`,
  potOnShelf: ({ pot, n }) => `${pot} (Topf, ${many(n, 'Aufzug', 'Aufzüge')})`,
  shelfHas: ({ inks, papers, pots }) =>
    `${many(inks, 'Farbe', 'Farben')}, ${many(papers, 'Papier', 'Papiere')}, ${many(pots, 'Topf', 'Töpfe')}`,

  // trace
  boardMade: ({ file }) => `${file}: das Brett, mit 100 % zu drucken`,
  lensRead: ({ file, n, off }) => `${file}: das Objektiv, aus ${many(n, 'Foto', 'Fotos')}, auf ${off} Pixel getroffen`,
  cameraIs: ({ camera }) => `Kamera: ${camera}`,
  cameraZoomed: ({ camera, focal }) => `Kamera: ${camera}, Brennweite ${focal}`,
  cameraUnknown:
    'Die Fotos sagen nicht, welche Kamera es war: Das Objektiv gilt für andere, die nichts sagen und dasselbe Seitenverhältnis haben.',
  noCameraKept: 'Von der Kamera dieses Fotos ist kein Objektiv gemerkt: Der Bogen selbst zeigt die Verzeichnung.',
  fewBoards: ({ n }) =>
    `Nur aus ${many(n, 'Foto', 'Fotos')} gelesen: Drei und mehr, mit dem Brett in allen Ecken des Bildes, zeigen das Objektiv besser.`,
  lensKept: ({ file, columns, rows, off }) =>
    `${file}: das Objektiv, von einem Brett mit ${columns} × ${rows} Quadraten zwischen seinen Ecken, auf ${off} Pixel getroffen`,
  drawingIs: ({ file, size, n }) => `${file}: ${size}, ${many(n, 'Umriss', 'Umrisse')}. Die Farben, von hinten nach vorn:`,
  layersMade: ({ file, n }) => `${file}: ${many(n, 'Schicht', 'Schichten')} mehr, ihre Farben noch offen`,
  traced: ({ file, size, n }) => `${file}: ${size}, ${many(n, 'Umriss', 'Umrisse')}`,

  // separate
  wholePicture: ({ size, pixels }) => `${size}: die ganze Vorlage, ${pixels}`,
  partOfPicture: ({ size, width, height, x, y, pixels }) =>
    `${size}: von der Vorlage ${width} der Breite und ${height} der Höhe, ab ${x} von links und ${y} von oben, ${pixels}`,
  pixelsPerMm: ({ px }) => `${px} ihrer Pixel auf jeden mm`,
  pixelsPerInch: ({ px }) => `${px} ihrer Pixel auf jeden Zoll`,
  tooCoarse: 'Das ist gröber, als ein Messer schneidet: Ränder werden weich geraten.',
  separated: ({ folder, runs }) =>
    `${folder}: eine Arbeit mit ${many(runs, 'Lauf', 'Läufen')}. In compare/ liegen Vorlage, Druck und flache Farben in gleicher Größe, und der Druck schraffiert, wo Farbtöne unerreichbar sind und wo Feines verloren ging.`,
  runAs: ({ run }) => `Lauf ${run}`,
  newRunAs: ({ run }) => `neuer Lauf ${run}`,
  potIs: ({ parts, along, pieces, bridges }) => `${parts}: ${along}, ${many(pieces, 'Teil', 'Teile')}, ${many(bridges, 'Steg', 'Stege')}`,
  toPicture: 'ΔE00 zur Vorlage',
  mean: 'Mittel',
  median: 'Median',
  within95: '95 % unter',
  inRegister: 'im Passer',
  offBy: ({ sigma }) => `Schichten daneben um σ ${sigma}`,
  flatInks: 'ebenso viele flache deckende Farben, gleiches Messer',
  flatInksOff: 'diese ebenso weit daneben',
  ofFlatInks: ({ times }) => `Das Mittel ist das ${times}-Fache von dem der flachen Farben.`,
  drawing: ({ kept, invented, flatKept, flatInvented }) =>
    `Von den Kanten der Vorlage behält der Druck ${kept}; ${invented} seiner eigenen sind nicht in der Vorlage (flache Farben: ${flatKept}, ${flatInvented}).`,
  knifeAsked: ({ along, pieces, bridges, time }) =>
    `${along} zu schneiden, ${many(pieces, 'Teil', 'Teile')}, ${many(bridges, 'Steg', 'Stege')}, etwa ${time} mit dem Messer`,
  waysDrawn: ({ file, ways }) => `${file}: von links die Vorlage, dann ${ways}.`,
  takenAsDrawing:
    'Als Zeichnung genommen: das Papier bleibt frei, die Farben sind flach, dünne Linien so breit, dass sie sich schneiden lassen. Wenn es keine ist: --taken-as photograph.',
  wayNear: 'nahe an der Vorlage',
  wayBold: 'großflächig',
  wayLight: 'nach Licht und Schatten',
  wayAsks: ({ time, along, kept, invented, deltaE }) =>
    `etwa ${time} mit dem Messer, ${along}; ${kept} der Kanten behalten, ${invented} hinzugekommen; ΔE00 ${deltaE}`,
  outOfReach: ({ share, lost }) => `${share} der Vorlage erreichen diese Farben nicht; Schneiden und Stege kosten ΔE00 ${lost}`,
  moreKnife: ({ all }) => `mehr Messer, weniger Fehler: ${all}`,
  onCurve: ({ along, deltaE, price }) => `${along} → ${deltaE} (--price ${price})`,
  stoppedEarly: 'Früh angehalten: das ist das Beste bisher.',
  progress: ({ share, note }) => `${share}  ${note}`,

  // serve
  open: ({ address }) => `Die Werkbank ist offen unter ${address}  (Strg-C beendet sie)`,
};
