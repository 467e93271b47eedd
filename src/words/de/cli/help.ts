import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { capital } from '../grammar.ts';

/** Was die Befehlszeile über sich selbst sagt: wie jeder Befehl gerufen wird, was er tut, seine Optionen. Namen von Befehlen und Optionen werden getippt: sie bleiben. */
export const help: Same<typeof en.help> = {
  // Alle Befehle.
  intro: 'Laydown plant Schablonendrucke in Schichten, von der ersten Form bis zur signierten Auflage.',
  call: 'laydown BEFEHL …',
  jobIs: 'ARBEIT ist ein Ordner mit job.json darin oder eine .laydown-Datei.',
  more: 'laydown BEFEHL --help sagt mehr über einen Befehl.',
  callOf: ({ usage }) => `laydown ${usage}`,
  sentence: ({ text }) => `${capital(text)}.`,
  moreOf: ({ command }) => `laydown ${command} --help sagt mehr.`,
  lang: ({ languages }) => `die Sprache: ${languages}; ohne Angabe die des Systems`,
  langPrinted: ({ languages }) => `die Sprache: ${languages}; ohne Angabe folgt das Gedruckte der Arbeit, das Terminal dem System`,

  // Was für etwas steht, das getippt wird.
  language: 'SPRACHE',
  lamp: 'LAMPE',
  job: 'ARBEIT',
  job2: 'ARBEIT2',
  layer: 'SCHICHT',
  layers: 'SCHICHT,…',
  file: 'DATEI',
  csvFile: 'DATEI.csv',
  folder: 'ORDNER',
  paper: 'PAPIER',
  inks: 'FARBE,…',
  name: 'NAME',
  step: 'SCHRITT',
  percent: 'PROZENT',
  grams: 'GRAMM',
  amounts: 'FARBE=GRAMM,…',
  reading: 'MESSWERT',
  lot: 'FARBE=MESSWERT',
  words: 'WORTE',
  wishes: 'WÜNSCHE',
  photo: 'FOTO',
  picture: 'VORLAGE',
  parts: 'LISTE',
  size: 'FORMAT',
  mark: 'MARKIERUNG',
  layerInk: 'N=FARBE@S',
  material: 'MATERIAL',
  way: 'WIE',

  // Mehreren gemeinsam.
  asJson: 'als JSON',
  replaceFile: 'ersetzt eine Datei dieses Namens',
  layerIs: 'ihr Kürzel, ihr Name oder ihr Lauf (1 wird zuerst gedruckt)',
  onFirst: 'auf diesem Papier; ohne Angabe auf dem ersten',

  checkUsage: 'check ARBEIT [--strict] [--packet ORDNER]',
  checkStrict: 'lehnt unbekannte Felder ab',
  checkPacket: 'sagt auch, ob die Mappe in diesem Ordner noch zur Arbeit passt; ohne Angabe die neben der Arbeit',
  checkSummary: 'zählt auf, was an einer Arbeit falsch oder zweifelhaft ist',
  checkText: 'Zu jedem Problem steht, wo es ist und was zu tun ist. Endet mit Code 1, wenn eines davon die Druckmappe verhindert.',

  doneUsage: 'done ARBEIT SCHICHT --cut|--mixed|--pulled [--undo]',
  doneSummary: 'vermerkt eine Schablone als geschnitten, einen Topf als gemischt, einen Lauf als gedruckt',
  doneCut: 'ihre Schablone ist geschnitten: die Stege bleiben',
  doneMixed: 'ihr Topf ist gemischt',
  donePulled: 'ihr Lauf ist gedruckt',
  doneUndo: 'nimmt den Vermerk weg',

  newUsage: 'new ORDNER [--inks LISTE]',
  newSummary: 'schreibt die kleinste Arbeit, die sich planen lässt',
  newInks: 'nur diese Farben für den Anfang; die ersten beiden werden gedruckt: yellow,cyan',
  newText: 'Eine Form, zwei Läufe aus einem Schnitt, das Regal für den Anfang, ein Papier. Ändern, was gefällt, dann „laydown check“.',

  explainUsage: 'explain FELD [--json]',
  explainSummary: 'sagt, was ein Feld der Arbeit bedeutet',
  explainText: 'FELD ist ein Name (strength) oder ein Weg (layers.strength). Ohne: alle Felder der Arbeit.',

  forecastUsage: 'forecast ARBEIT [--worth] [--wanted] [--lamp LAMPE] [--coverages DATEI.csv [--paper PAPIER]] [--json]',
  forecastWanted: 'wie nahe jeder gewünschte Farbton der Arbeit kommt und wie wahrscheinlich ein Druck ihn trifft',
  forecastLamp: ({ lamps }) =>
    `wie Augen, die an diese Lampe gewöhnt sind, den Druck sehen: ${lamps} (Tageslichter, Glühlampe, LEDs von warm bis kalt nach CIE; ohne Angabe D50)`,
  forecastWorth: 'nennt die Überdrucke, deren Messung die Vorhersage am meisten einengt, wo sie liegen und was sie bringen',
  forecastCoverages:
    'für Läufe mit Tönen: der Farbton jeder Zeile einer Tabelle mit einer Spalte je Schicht (nach ihrem Kurznamen) und dem, was ihr Film deckt, 0 bis 1',
  forecastPaper: 'mit --coverages: auf welchem Papier; ohne Angabe auf dem ersten',
  forecastSummary: 'sagt den Farbton jedes Überdrucks auf jedem Papier vorher',
  forecastText:
    'Zeigt jeden Überdruck, der Fläche bedeckt: seinen Farbton am Bildschirm, sein Lab (D50, 2°), das ΔE00, in dem neun von zehn Drucken bleiben (±), seine Fläche und seine Schichten, die unterste zuerst.',

  packetUsage: 'packet ARBEIT [--out ORDNER] [--replace] [--paper FORMAT] [--only LISTE] [--black] [--large] [--split] [--strict] [--json]',
  packetSummary: 'macht die Druckmappe: Proofs, Schneidbogen, Karten, Nachweis',
  packetOut: 'wohin sie kommt; ohne Angabe ein Ordner neben der Arbeit, nach ihr benannt, mit -packet',
  packetReplace: 'tritt an die Stelle einer früheren Mappe',
  packetPaper: 'das Papier im Drucker: a4 (ohne Angabe), letter, a3 oder tabloid',
  packetOnly: ({ all }) => `nur diese Teile, durch Kommas getrennt: ${all}`,
  packetBlack: 'nur mit schwarzer Farbe',
  packetLarge: 'größere Schrift',
  packetSplit: 'eine Datei für den Tisch und eine für die Presse',
  packetJson: 'gibt stattdessen plan.json aus und schreibt nichts',

  cutUsage: 'cut ARBEIT SCHICHT|--stock N [--out DATEI] [--paper a4|letter] [--replace] [--take N] [--json]',
  cutSummary: 'zeigt eine Schablone oder einen Materialbogen mit mehreren und schreibt die Schneiddatei in wahrer Größe',
  cutStock: 'statt einer Schablone der Materialbogen N mit allen, die auf ihm liegen',
  cutOut:
    'die Schneiddatei, .svg oder .dxf; ein Materialbogen auch als .pdf. Eine Schablone wird nur geschrieben, wenn sie nachweislich hält',
  cutPaper: 'mit --stock und einer .pdf: in Teilen auf a4 oder letter, mit Ansetzmarken',
  cutTake: 'für eine Schablone, die nicht hält: den Ausweg N der gezeigten wählen und in die Arbeit (einen Ordner) schreiben',
  cutJson: 'Inseln, Stege mit dem, was jeder im Druck kostet, Nachweis und Messerarbeit als JSON',

  orderUsage: 'order ARBEIT [--for WÜNSCHE] [--on PAPIER] [--keep N] [--before A,B …] [--json]',
  orderSummary: 'reiht alle Folgen der Schichten danach, was von ihnen gewünscht ist',
  orderFor: 'was zählt, durch Kommas getrennt; alles gleich viel, wenn nicht gewichtet (clean=2):',
  orderWanted: 'möglichst nah an den gewünschten Farbtönen der Arbeit',
  orderColours: 'möglichst viele verschiedene Farbtöne',
  orderRange: 'möglichst weit von hell bis dunkel',
  orderClean: 'möglichst bunte Farbtöne',
  orderSteady: 'möglichst beständig bei schwerer oder leichter Hand',
  orderKeep: 'wie viele zu zeigen sind (ohne Angabe 5)',
  orderBefore: 'A muss vor B gedruckt werden; beliebig oft',

  recipeUsage:
    'recipe ARBEIT "L a b" [--on PAPIER] [--ground N] [--layer SCHICHT] [--over SCHICHT,…|below] [--pots FARBE,…] [--most N] [--retarder PROZENT] [--leftovers] [--left MENGEN] [--shelf DATEI] [--grams N] [--within N] [--json]',
  recipeSummary: 'findet, was für einen gewünschten Farbton zu mischen ist, mit möglichst wenigen Töpfen',
  recipeColour: 'der gewünschte Farbton: Lab, D50, 2°',
  recipeOver: 'über diesen Schichten, schon gedruckt; below: über dem, was unter dem Lauf aus --layer liegt, wo er am meisten deckt',
  recipeLayer: 'der Lauf, der ihn druckt, mit Kurzname, Name oder Nummer: so dick, wie dieser Lauf die Farbe legt',
  recipeGround: 'auf diesem Grund eines schon bedruckten Bogens, gezählt wie in forecast',
  recipeShelf: 'auch die Gläser dieses Farbregals zählen, so weit sie reichen (bei Resten)',
  recipePots: 'nur aus diesen Töpfen; ohne Angabe aus allen Farben der Arbeit',
  recipeMost: 'höchstens so viele Töpfe (ohne Angabe 3)',
  recipeLeftovers: 'der Topf aus dem, was in Gläsern übrig ist (leftGrams der Farben), mit der wenigsten neuen Farbe',
  recipeLeft: 'dasselbe mit dem, was in den genannten Gläsern übrig ist: rest-von-wasser=80,farbe=20',
  recipeGrams: 'wie viel gebraucht wird (ohne Angabe 100); Anteile, die zu klein zum Wiegen sind, fallen weg',
  recipeWithin: 'bei Resten: welches ΔE00 nahe genug ist (ohne Angabe 2)',
  recipeRetarder: 'wie viel vom Topf für Verzögerer frei bleibt',

  mixUsage: 'mix ARBEIT SCHICHT [--grams N] [--scale SCHRITT] [--json]',
  mixSummary: 'wiegt den Topf einer Schicht ein',
  mixGrams: 'so viel im Ganzen; ohne Angabe, was der Lauf braucht, samt dem, was in Sieb und Topf bleibt',
  mixScale: 'kleinster Schritt der Waage in Gramm (ohne Angabe 1)',

  potUsage:
    'pot ARBEIT SCHICHT --holds FARBE=GRAMM,… --reads MESSWERT [--added FARBE=GRAMM,… --reads MESSWERT …] [--within ΔE] [--need GRAMM] [--on PAPIER] | --looks "too weak"',
  potSummary: 'rettet einen Topf, dessen Aufzug danebenliegt',
  potHolds: 'was hineingewogen wurde: rockpool=70,clear-base=30',
  potReads: 'der trockene Aufzug: Lab in Anführungszeichen oder eine Messdatei; noch einmal nach jedem --added',
  potAdded: 'was seitdem zugegeben wurde, Runde für Runde; jede Runde braucht ihr eigenes --reads',
  potLooks:
    'ohne Messgerät: "too weak" (zu schwach), "too strong" (zu kräftig), "too warm" (zu warm), "too cool" (zu kühl), "too dull" (zu stumpf) oder "too clean" (zu rein). Zeigt Farbtöne zum Danebenhalten und den Messwert, für den jeder steht',
  potWithin: 'wie nah nah genug ist (ohne Angabe ΔE00 2)',
  potNeed: 'was der Lauf noch braucht',

  pressUsage: 'press ARBEIT [--json]',
  pressSummary: 'Sieb, Farbfilm, Absprung und Unterlagen, Passer',
  pressText:
    'Passt das Bild ins Sieb, wie dick ist der Farbfilm, wie hoch sind Absprung und Unterlagen, wie weit wächst das Bild, und wie viel verzeiht die Zeichnung?',
  pressJson: 'alles als JSON',

  registerUsage: 'register ARBEIT [DATEI.csv] [--form] [--out ARBEIT2] [--json]',
  registerSummary: 'liest Passertestbogen: wie weit Schichten in dieser Werkstatt danebenliegen',
  registerText:
    'Der Passertestbogen liegt in der Druckmappe. Auf zehn Bogen zweimal drucken, ablesen, welche Striche der Skalen treffen, und in eine Tabelle schreiben.',
  registerFile:
    'eine Zeile für jede Stelle jedes Bogens: Bogen, Stelle, quer, abwärts. Ein Strich der Skala, oder was ein Lineal misst ("2,4 mm"). Ohne Angabe die Ablesungen in der Arbeit',
  registerForm: 'gibt eine leere Tabelle zum Ausfüllen aus: laydown register ARBEIT --form > messung.csv',
  registerOut: 'schreibt die Arbeit mit diesen Ablesungen, geplant mit dem, was sie sagen: ein Ordner oder eine .laydown-Datei',

  dayUsage: 'day ARBEIT [--hands N] [--json]',
  daySummary: 'der Tag nach der Uhr: Einrichten, Drucken, Waschen, und was zu tun ist, während Farbe trocknet',
  dayText: 'Aus dem, was die Arbeit über den Tag sagt: Drucke je Stunde, Einrichten, Waschen, Trocknen, Regal, Siebe, Luftfeuchte, Leute.',
  dayHands: 'als wären so viele bei der Arbeit: jemand druckt, die anderen legen ins Regal, waschen, mischen und richten ein',

  editionUsage: 'edition ARBEIT [--csv] [--json]',
  editionSummary: 'mit wie vielen Bogen beginnen, welche Probedrucke zurückhalten, Nummern für den Bleistift, Nachweis',
  editionText:
    'Vor dem Druck: mit wie vielen Bogen zu beginnen ist. Sind sie an der Presse gezählt (press-count.log in der Arbeit): jeder Bogen mit seiner Bezeichnung.',
  editionCsv: 'das Bogenverzeichnis als CSV',

  againUsage: 'again ARBEIT SCHICHT --lot FARBE=MESSWERT … [--shelf DATEI] [--was MESSWERT] [--on PAPIER] [--json]',
  againSummary: 'trifft einen früheren Farbton mit neuen Chargen der Farben',
  againText: 'Die Arbeit ist der Nachweis dessen, was damals gedruckt wurde.',
  againLot:
    'die neue Charge, auf dem Papier aufgezogen: Lab in Anführungszeichen oder eine Messdatei; einmal für jede Farbe mit neuer Charge',
  againShelf: 'die Chargen, die auf diesem Regal in Gebrauch sind, sind die neuen, für alle Farben ohne --lot',
  againWas: 'was am Druck von damals jetzt zu messen ist, wenn er zu messen ist',
  againOn: 'das Papier, auf dem die neuen Chargen aufgezogen sind und gedruckt wird; ohne Angabe das erste',

  readingsUsage: 'readings DATEI [--json]',
  readingsSummary: 'liest gemessene Farbtöne: CGATS.17, CxF3 oder eine Tabelle (CSV)',
  readingsText: 'Zählt alle Messfelder mit ihrem Lab auf (D50, 2°).',
  readingsJson: 'jedes Messfeld als Messwert, wie job.json ihn nimmt',

  photoUsage:
    'photo FOTO --ink NAME [--parts 1:0,1:1,1:2] [--paper "L a b"] [--grey "L a b"] [--json] | photo FOTO --print ARBEIT [--on PAPIER] …',
  photoSummary: 'liest das Foto eines Aufzugbogens oder des Drucks',
  photoText: 'Der Bogen wird an seinen vier Eckmarken gefunden, ungleiches Licht am blanken Papier ausgeglichen.',
  photoInk: 'was aufgezogen wurde',
  photoParts: 'die Stärken des Bogens, wie er gedruckt wurde (ohne Angabe 1:0,1:1,1:2,1:4,1:8,1:16)',
  photoPaper: 'der Farbton des Bogens selbst, falls er je gemessen wurde',
  photoGrey: 'der Farbton der Graukarte auf dem Bogen; sie legt den Maßstab besser fest als Papier',
  photoJson: 'die Farbe, wie job.json sie nimmt; vom Druck jeden gelesenen Überdruck',
  photoOfPrint: 'Ein Foto des Drucks',
  photoPrintText:
    'Der Bogen auf dunklerem Grund, in gleichmäßigem Licht: Er wird entzerrt, jeder breite Überdruck gelesen und mit dem vorhergesehenen verglichen.',
  photoPrint: 'die Arbeit, die gedruckt wurde',
  photoCorners: 'wo seine vier Ecken liegen, in Pixeln, im Uhrzeigersinn ab oben links; ohne Angabe werden sie gesucht',
  photoImage: 'die Ecken gehören dem gedruckten Bild, nicht dem Bogen',
  photoOut: 'der Druck entzerrt, als PNG',
  photoKeep: 'nimmt die Messungen mit ihrem Zweifel in die Arbeit auf',

  spreadUsage: 'spread ARBEIT [--on PAPIER] [--hand N] [--json]',
  spreadSummary: 'zeigt, wie verschieden Bogen einer Auflage allein durch die Hand werden, und was es mindert',
  spreadText:
    'Zehn Bogen jedes Überdrucks, die am meisten schwanken zuerst: das ΔE00, in dem neun von zehn Bogen bleiben (±), und ihre Farbtöne. Dann Folgen und Stärken, die es mindern würden, und wie weit sie die Farbtöne verschieben.',
  spreadHand: 'um wie viel Prozent Filme von Zug zu Zug schwanken (Standardabweichung; ohne Angabe 15, von Hand 10 bis 20)',

  eyeUsage: 'eye FARBTON|FOTO|ARBEIT [--chose N,N,…] [--at RECHTS,UNTEN] [--paper "L a b"] [--ink NAME] [--json]',
  eyeSummary: 'eine Farbe ohne Messgerät: ein Farbton nach Augenmaß, mit seinem Zweifel',
  eyeText:
    'FARBTON steht da, wie ein Bildprogramm ihn schreibt: "#c0392b". Von einem FOTO wird der Farbton einer Stelle genommen. Von einer ARBEIT wird jede Schätzung neben dem aufgezählt, was später gemessen wurde.',
  eyeChose:
    'vergleicht einen Aufzug Schritt für Schritt mit sieben Feldern am Bildschirm: welches ihm jedes Mal am ähnlichsten sah (0..6); mit --chose "" beginnen und die eigene Wahl anhängen, bis es fertig ist',
  eyeAt: 'die Stelle auf dem Foto, in Prozent von links und von oben',
  eyePaper: 'das Papier, auf dem der Aufzug liegt (ohne Angabe 95 0 2)',
  eyeInk: 'wie die Farbe heißt',
  eyeJson: 'die Farbe, wie job.json sie nimmt; von einer ARBEIT die Schätzungen',

  drawdownsUsage: 'drawdowns [ARBEIT] [--ink NAME …] [--parts 1:0,1:1,1:2] --out DATEI.pdf [--replace]',
  drawdownsSummary: 'druckt die Bogen, auf denen Farben aufgezogen und fotografiert werden',
  drawdownsText:
    'Eine Seite je Farbe, mit einem Feld für jede Stärke, über Weiß und über einem schwarzen Balken, und mit Marken, an denen ein Foto gefunden wird.',
  drawdownsJob: 'eine Seite für jede Farbe der Arbeit',
  drawdownsInk: 'eine Seite für diese Farbe; beliebig oft',
  drawdownsParts: 'Farbe zu Base nach Volumen, bis zu sieben Stärken (ohne Angabe 1:0,1:1,1:2,1:4,1:8,1:16)',
  drawdownsOut: 'die PDF-Datei',

  shelfUsage: 'shelf [DATEI …] [--starter] [--from ARBEIT] [--out DATEI] [--replace] [--json]',
  shelfSummary: 'zeigt das Farbregal der Werkstatt, legt Regale zusammen, stellt die Farben einer Arbeit hinein',
  shelfText:
    'Zählt Farben, Chargen, Papiere und Töpfe einer Regaldatei auf. Mehrere Dateien werden zusammengelegt: dieselbe Farbe bekommt die Chargen aller.',
  shelfFrom: 'stellt Farben und Papiere einer Arbeit ins Regal (DATEI muss es noch nicht geben)',
  shelfStarter: 'mit den Farben für den Anfang: nach veröffentlichten Werten, nicht die eigenen',
  shelfOut: 'schreibt das Regal, das daraus wird',

  formUsage:
    'form [ZEICHNUNG] [--read WIE] [--threshold PROZENT] [--each-colour WIE] [--make NAME [--set LISTE] [--text WORTE]] [--line DATEI.csv] [--width MM] [--with ARBEIT] [--out DATEI.svg|ORDNER] [--json] [--replace]',
  formSummary: 'zeigt, wie eine Zeichnung zu lesen ist; macht Formen aus Zeichnungen oder aus nichts',
  formText:
    'Mit einer Zeichnung allein zeigt es die Farben, von hinten nach vorn, und was zweifelhaft ist. Als DATEI.svg ist es eine Form; als ORDNER die mit --with genannte Arbeit samt der Form.',
  formRead: 'silhouette (alles außer Weiß), white (auch Weiß), dark (was dunkel ist) oder Farben der Zeichnung: #d04020,#203040',
  formThreshold: 'wie dunkel etwas sein muss oder wie viel davon zu sehen, wo es ausläuft (ohne Angabe 50)',
  formEachColour:
    'je Farbe ein Schnitt und eine Schicht. Wo zwei sich treffen, wird die hintere überfüllt (spread), durchgezogen (under) oder endet (meet)',
  formMake: ({ kinds }) => `eine Form, die keine Zeichnung braucht: ${kinds}`,
  formSet: 'ihre Maße in mm: acrossMm=80,bandMm=10',
  formLetters: 'was die Buchstaben sagen; \\n beginnt eine Zeile',
  formLine: 'eine von Hand gezogene geschlossene Linie: je Zeile der Datei ein Punkt (x,y in mm)',
  formWidth: 'wahre Breite der Form',
  formWith: 'die Arbeit, zu der die Form kommt',
  formOut: 'was geschrieben wird: DATEI.svg oder der ORDNER einer Arbeit',
  lensUsage: 'lens --board a4|letter --out DATEI.pdf, oder lens FOTO… [--with ARBEIT] --out DATEI.json|ORDNER [--replace]',
  lensSummary: 'druckt ein Schachbrett und liest aus Fotos davon das Objektiv einer Kamera',
  lensText:
    'Einmal für eine Kamera: das Brett drucken, flach hinlegen, fünfmal oder öfter fotografieren (von vorn, von jeder Seite und bis in die Ecken des Bildes), mit dem Zoom, der benutzt wird. Die Arbeit merkt das Objektiv dann mit dem Atelier, und trace --with erkennt die Kamera wieder; oder die Datei bei trace mit --lens angeben.',
  lensPhotos: 'Fotos des Bretts, alle von einer Kamera',
  lensBoard: 'schreibt das Brett selbst, für Papier dieser Größe: a4 oder letter',
  lensWith: 'die Arbeit, zu der die Kamera kommt; --out ist dann der ORDNER der neuen Arbeit',
  lensOut: 'das Brett als PDF oder das gelesene Objektiv',

  traceUsage:
    'trace FOTO --sheet FORMAT | --board MM | --scan PPI | --mask MM | --keep-lens DATEI [--out DATEI.svg] [--smooth MM] [--corners "x,y x,y x,y x,y"] [--with ARBEIT] [--lens DATEI] [--apart MM] [--openings] [--replace]',
  traceSummary: 'zeichnet den Umriss eines wirklichen Dings, auf einem Bogen Papier fotografiert, in wahrer Größe',
  traceSheet:
    'das Papier, auf dem es liegt: a4, letter oder Breite x Höhe in mm (300x400). Die Ecken werden gefunden, die Perspektive wird entzerrt',
  traceCorners: 'die Ecken des Bogens in Pixeln, im Uhrzeigersinn von oben links, falls sie nicht richtig gefunden wurden',
  traceScan: 'ein flacher Scan mit so vielen Pixeln je Zoll',
  traceMask: 'ein Schwarz-Weiß-Bild, so viele mm breit: Schwarz ist die Form',
  traceBoard:
    'es liegt auf einem gedruckten Brett aus schwarzen und weißen Quadraten, je so viele mm breit: Maßstab, Perspektive und Objektiv kommen daher',
  traceLens: 'das Objektiv der Kamera, früher gemerkt',
  traceWith: 'die Arbeit, deren Atelier die Kamera kennt: Ihr Objektiv wird herausgerechnet',
  traceKeepLens: 'findet ein Schachbrett im Foto, merkt das Objektiv der Kamera in dieser Datei und zeichnet nichts nach',
  traceApart: 'was sich um weniger als das berührt, bleibt getrennt',
  traceOpenings: 'die Öffnungen einer Platte statt der Platte',
  traceSmooth: 'wie weit das Glätten den Umriss verschieben darf (ohne Angabe 0,2)',
  traceOut: 'die Zeichnung; ohne Angabe der Name des Fotos mit .svg',

  linesUsage: 'lines BILD --with ARBEIT [--way ART] [--pitch MM] [--out ORDNER] [--replace] …',
  linesSummary: 'macht aus einem Bild Linien oder Löcher, die ein Messer schneiden kann: eine neue Arbeit',
  linesWay:
    'parallel (ohne Angabe), hatch (Schraffur in zwei Richtungen, wie geflochten), flow (den Kanten des Bildes nach), rings (Ringe), spiral (Spirale) oder holes (Löcher)',
  linesPitch: 'von Linie zu Linie; ohne Angabe gut doppelt so viel, wie das Material braucht',
  linesAngle: 'parallele Linien so weit gedreht, in Grad',
  linesCentre: 'die Mitte von Ringen oder Spirale, in mm von links oben',
  linesInk: 'die Farbe, in der gedruckt wird; ohne Angabe offen',
  linesAfter: 'als ein Lauf mehr nach denen der Arbeit',
  wedgeUsage: 'wedge ARBEIT [SCHICHT] [--out DATEI] [--strip] [--dpi N] … | wedge ARBEIT SCHICHT --read DATEI|TEXT [--on PAPIER] [--keep]',
  wedgeSummary: 'druckt Keil und Belichtungsstreifen eines Laufs mit Tönen und liest sie',
  wedgeText:
    'Sonst steht da die Tonkurve des Laufs. Stufen in Prozent des Films, 0 das Papier: „0: 0,05; … 100: 1,42“ (Dichten), „50: 61,2 -20 -31“ (Lab).',
  wedgeFile:
    'Datei: je Stufe eine Zeile; oder Tabelle (CSV) mit Köpfen Stufe, Dichte oder Stufe, L, a, b; oder Messungen eines Geräts, nach Stufen benannt.',
  wedgeLayer: 'der Lauf mit Tönen; ohne Angabe der erste',
  wedgeOut: 'der Film: PDF, PNG oder TIFF, nach seiner Endung',
  wedgeStrip: 'der Belichtungsstreifen statt des Keils',
  wedgeRead: 'was vom gedruckten Keil gemessen ist: ein Foto, eine Datei mit Messungen oder die Stufen selbst',
  wedgeOn: 'das Papier, auf dem er gedruckt ist; ohne Angabe das erste',
  wedgeExposed: 'was jede Reihe eines ausgewaschenen Streifens hielt: 10-90,5-95,3-97,-',
  wedgeFirst: 'Sekunden Licht der ersten Reihe (ohne Angabe 60)',
  wedgeKeep: 'nimmt das Gemessene in die Arbeit auf',
  positiveUsage: 'positive ARBEIT [SCHICHT …] [--dpi N] [--format png|tiff|pdf] [--mirrored] [--out ORDNER] [--replace]',
  positiveSummary: 'schreibt die Filmpositive der Läufe mit Tönen',
  positiveDpi: 'die wahre Auflösung des Druckers (ohne Angabe 1200)',
  positiveFormat: 'png, tiff oder pdf (ohne Angabe png)',
  positiveMirrored: 'für einen Film, dessen bedruckte Seite von der Schicht wegsieht',
  positiveOut: 'wohin die Filme kommen; ohne Angabe films',
  splitUsage: 'split BILD --with ARBEIT --inks FARBE,FARBE,… [--out ORDNER] [--replace] …',
  splitSummary: 'zieht ein Bild in Läufe mit Tönen aus, in Farben des Regals: eine neue Arbeit',
  splitPicture: 'JPEG, PNG, WebP oder TIFF',
  splitInks: 'eine bis sechs Farben nach ihren Kurznamen, jede bei Bedarf mit Stärke: blau,rosa@60%,schwarz',
  splitLimit: 'wie viel alle Filme zusammen höchstens decken, in Prozent (ohne Angabe 300)',
  splitGrey: 'wie viel vom Grau die dunkelste graue Farbe übernimmt, in Prozent (ohne Angabe 50)',
  splitBy: 'dots (Punkte) oder grain (Korn)',
  splitShape: 'round (rund), ellipse oder line (Linie)',
  splitRuling: 'Punktreihen je cm; ohne Angabe, was das Gewebe hält',
  splitWays: 'auch sagen, wie viele Minuten jeder Lauf über einen Film, als Schnittlinien und in flächigen Stärken braucht',
  splitMaterial: 'woraus Schnittlinien und flächige Stärken geschnitten werden',
  splitAs: 'Läufe anders drucken: schiefer=2 (zwei flächige Stärken), sand=3, rosa=lines, oder least: ohne Film, was am schnellsten geht',
  separateUsage: 'separate [VORLAGE] --with ARBEIT [--layers N] [--out ORDNER] [--replace] …',
  separateSummary: 'macht aus einer Vorlage Schablonen, Farben und eine Folge: eine neue Arbeit',
  separatePicture:
    'JPEG, PNG, WebP oder TIFF. Ohne Angabe: die Vorlage, die ARBEIT aufbewahrt, mit allem, was dort von ihr verlangt ist (auch an der Werkbank gemalten Markierungen), und darüber, was hier gesagt wird',
  separateLayers: 'wie viele Schablonen (1 bis 8; ohne Angabe 4)',
  separateWith: 'die Arbeit, deren Farben, Papiere, Materialien und Passer genommen werden',
  separateOut: 'wohin die neue Arbeit kommt; ohne Angabe der Name der Vorlage. Die Arbeit behält die Vorlage und was verlangt war',
  separateReplace: 'setzt die neue Arbeit an die Stelle einer, die dieser Befehl früher gemacht hat',
  thePicture: 'Die Vorlage',
  separateCrop: 'der Ausschnitt, der gedruckt wird, in Prozent der Vorlage: von links, von oben, Breite, Höhe',
  separateWidth: 'Breite des Bildes',
  separateHeight:
    'Höhe des Bildes. Aus einer folgt die andere nach dem Ausschnitt. Mit beiden, oder mit keiner (dem Bild der Arbeit), wird das größte Stück des Ausschnitts mit diesen Seitenverhältnissen gedruckt, um seine Mitte',
  separateMark:
    'wo ein falscher Farbton mehr zählt (more, vierfach), weniger (less, ein Viertel) oder gar nicht (none), in Prozent der Vorlage: "more box 20,30,25,40" wie bei --crop, oder "less brush 5 10,20 40,25", ein Pinsel von 5 Breite, von Stelle zu Stelle geführt. Beliebig oft; spätere Markierungen liegen über früheren',
  separateMarks: 'dasselbe aus einer Textdatei, eine Markierung je Zeile',
  separateVeil:
    'wie weit Linien, Gesichter und Auffälliges mehr zählen als der Rest, in Prozent: 0 alles gleich; 100 bei einer neuen Vorlage',
  layersAndInks: 'Schichten und Farben',
  separatePots: 'Farben zur Wahl; ohne Angabe alle, die gemessen sind',
  separateMostInPot: 'höchstens so viele Farben in einem Topf (1 bis 3; ohne Angabe 2)',
  separateLayer: 'Schicht N (1 wird zuerst gedruckt) ist aus dieser Farbe: 2=brick, oder in einer Stärke, 2=brick@40%. Beliebig oft',
  separateInPlace: 'Schichten, die ihren Platz in der Druckfolge behalten',
  separateWay:
    'nahe an der Vorlage (near; ohne Angabe), großflächig (bold) oder nach Licht und Schatten (light): Töne ineinander, hell zu dunkel',
  separateTakenAs:
    'drawing: das Papier bleibt frei, was auch für ein Schatten darauf liegt, Farben bleiben flach, dünne Linien werden schneidbar breit; photograph: ein Foto; oder looks: wonach sie aussieht (ohne Angabe)',
  separateKey:
    'die letzte Schicht trägt die Zeichnung: Dunkles und Linien der Vorlage, im dunkelsten Topf, wenn --layer keinen anderen nennt',
  separateWays:
    'zeichnet alle drei Arten klein neben die Vorlage in eine PNG-Datei, sagt, was jede vom Messer verlangt, und macht keine Arbeit',
  separatePairs: 'Fenster und Stück eines Schnitts als zwei Schichten: halb so viel Schnitt',
  separateOver: 'die Schichten der Arbeit sind schon gedruckt: von dort aus weitergehen',
  separateOn: 'das Papier, für das geplant wird; ohne Angabe das erste',
  knifeAndRegister: 'Messer und Passer',
  separateMetres: 'höchstens so viele Meter Schnitt, alle Schablonen zusammen',
  separateMinutes: 'höchstens so viele Minuten mit dem Messer',
  separatePieces: 'höchstens so viele Teile auszuheben',
  separateLeast: 'schmalste Linie, schmalster Streifen; ohne Angabe, was das Material erlaubt',
  separatePrice:
    'anstelle von Metern: was ein mm Umriss ersparen muss, ΔE·mm² (ohne Angabe 2; bold 8, light 3), wie die Liste „mehr Messer, weniger Fehler“ es nennt',
  separateMaterial: 'was geschnitten wird; ohne Angabe das erste Material der Arbeit',
  separateSigma: 'mit welchem Passerfehler geplant wird; ohne Angabe mit dem der Arbeit',
  theSearch: 'Die Suche',
  separateReach:
    'was unerreichbare Farbtöne tun: Helligkeit (lightness), Farbkraft (chroma) oder Kontrast (contrast) behalten, oder (ohne Angabe) zum nächsten werden (nearest)',
  separateEffort: 'wie lange gesucht wird: 0.3 für einen kurzen Blick, 3 für eine lange Suche',
  separateSeed: 'die Zahl, von der der Zufall ausgeht: gleiche Zahl, gleiches Ergebnis',
  separateStop: 'Strg-C hält die Suche an und nimmt das Beste bisher.',

  serveUsage: 'serve [ARBEIT] [--port N] [--share]',
  serveSummary: 'öffnet die Werkbank im Browser, nur auf diesem Rechner',
  serveText:
    'Stellt die Werkbank unter 127.0.0.1 bereit, mit ARBEIT darauf, wenn eine genannt ist. Nichts verlässt den Rechner. Strg-C beendet es.',
  serveShare:
    'lässt ein Telefon oder Tablet im selben Netz an der Presse mitzählen: mit einem einmaligen Code; es sieht die Läufe und die Zählung, sonst nichts',
  serveShareOn: 'dasselbe auf dieser Adresse, wo das Gerät mehrere hat',
  servePort: 'welcher Port (ohne Angabe 4180, oder ein freier, wenn er belegt ist)',
};
