import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Was alle Seiten der Druckmappe teilen, Deckblatt, was vorher zu wissen ist, und die Dateien. */
export const packet: Same<typeof en.packet> = {
  // Kopf und Fuß.
  continued: 'Fortsetzung',
  pageOfJob: ({ mark, page, pages }) => `Arbeit ${mark} · ${page} von ${pages}`,
  pageOf: ({ page, pages }) => `${page} von ${pages}`,

  // Farben, Schablonen, Anzahl.
  open: 'offen',
  inkOpen: 'Farbe noch offen',
  inkAt: ({ ink, strength }) => `${ink} zu ${strength}`,
  window: 'Fenster',
  film: 'Film',
  piece: 'Stück',
  none: 'keine',
  times: ({ n }) => (n === 1 ? 'einmal' : n === 2 ? 'zweimal' : `${n}-mal`),
  sheets: ({ n }) => many(n, 'Bogen', 'Bogen'),
  lab: ({ lab }) => `Lab ${lab}`,
  labRicher: ({ lab }) => `Lab ${lab}; satter als gezeigt`,
  sheetOfStock: ({ material, number }) => `${material}, Bogen ${number}`,

  // Zeichnungen in wahrer Größe.
  titled: ({ title, drawing }) => `${title}: ${drawing}`,
  onRuler: ({ line }) => `${line} am Lineal? Wenn nicht, mit 100 % neu drucken.`,
  onRulerInches: ({ millimetres, line }) => `${millimetres} mm = ${line} am Lineal? Wenn nicht, mit 100 % neu drucken.`,
  lensBoard: 'Brett für das Objektiv einer Kamera',
  lensMeasure: ({ line, square }) =>
    `Mit 100 % drucken. Die Linie messen: ${line}; dann ist ein Quadrat ${square} breit. Sonst die wahre Breite der Quadrate angeben.`,
  lensHow:
    'Den Bogen auf etwas Flaches kleben. Fünfmal oder öfter fotografieren, mit dem Zoom, der benutzt wird: von vorn, nach jeder Seite geneigt und einmal in jede Ecke des Bildes. Jedes Foto zeigt das ganze Brett, scharf und gleichmäßig beleuchtet.',
  facesMesh: 'Die sichtbare Seite liegt am Gewebe.',
  printedSideToMesh: 'Die bedruckte Seite liegt am Gewebe.',

  // Deckblatt.
  foreseenOn: ({ paper }) => `vorhergesehen auf ${paper}`,
  onPaper: ({ paper }) => `Papier: ${paper}`,
  workInOrder: 'In der Folge der Arbeit',
  judgeByDrawdowns:
    'Kein Bildschirm und kein Bürodrucker zeigt diese Farbtöne richtig: nach Aufzügen urteilen. Mit 100 % drucken, nie „an Seite anpassen“.',
  image: 'Bild',
  runs: 'Läufe',
  runsOpen: ({ runs, open }) => `${runs} (${open} offen)`,
  sheetsToStart: 'Bogen zu Beginn',
  wanted: 'Gewünscht',
  wantedWithProofs: ({ n }) => `${n} und Probedrucke`,
  toCut: 'Zu schneiden',
  lengthAndTime: ({ length, time }) => `${length}, ${time}`,
  inkToMix: 'Farbe zu mischen',
  thingsFirst: ({ n }) => `${many(n, 'Punkt', 'Punkte')} zu beheben oder abzuwägen: Seite 2`,

  // Schritte der Arbeit, und was jeder ist.
  mix: 'Mischen',
  mixIs: 'für jeden Topf eine Karte und ein Etikett',
  cut: 'Schneiden',
  cutIs: 'Schablonen in wahrer Größe, mit der Gewebeseite',
  setUp: 'Einrichten',
  setUpIs: 'Absprung, Unterlagen, Klebeband, Anlagen, Passer',
  print: 'Drucken',
  printIs: 'der Tag und für jeden Lauf eine Karte',
  number: 'Nummern',
  numberIs: 'Leben und Nummer jedes Bogens, wohin er ging',
  keep: 'Aufbewahren',
  keepIs: 'was dieser Druck ist, für alle, denen er später gehört',
  buy: 'Kaufen',
  buyIs: 'Papiere, Farben, Vorrat, Klebeband: alles, was verbraucht wird',
  lookUp: 'Nachschlagen',
  lookUpIs: 'jeder Überdruck auf jedem Papier',
  teach: 'Unterrichten',
  teachIs: 'Handzettel mit den Schritten dieses Drucks und ein leerer',

  // Bevor es losgeht.
  beforeYouStart: 'Bevor es losgeht',
  note: 'zur Kenntnis',
  warning: 'Warnung',
  error: 'Fehler',
  kindAt: ({ kind, place }) => `${kind}: ${place}`,
  lettersMissing: 'Einige Buchstaben in den Namen dieser Arbeit fehlen den Schriften dieser Seiten; für jeden steht ein ?.',
  writeThemIn: 'Sie von Hand eintragen oder einen zweiten Namen in lateinischen Buchstaben geben.',

  // Dateien: wozu jede da ist.
  handOutToPrint: ({ pages }) => `ein Arbeitsblatt für die Klasse, ${many(pages, 'Seite', 'Seiten')}`,
  lightAndGroundsToPrint: ({ pages }) => `was bedruckte Bogen und andere Lampen aus dem Druck machen, ${many(pages, 'Seite', 'Seiten')}`,
  proofStripToPrint: ({ pages }) => `die Überdrucke, die zu messen am meisten lohnt, ${many(pages, 'Seite', 'Seiten')}`,
  registerTestToPrint: ({ pages }) => `die Passerprobe, ${many(pages, 'Seite', 'Seiten')}`,
  tableToPrint: ({ pages }) => `für den Tisch: kaufen, mischen, schneiden, ${many(pages, 'Seite', 'Seiten')}`,
  pressToPrint: ({ pages }) => `für die Presse: einrichten, drucken, zählen, ${many(pages, 'Seite', 'Seiten')}`,
  partsToPrint: ({ pages }) => `die verlangten Teile, ${many(pages, 'Seite', 'Seiten')}`,
  madeFromFile: 'aus welchem Stand der Arbeit dies gemacht ist',
  noSuchPart: ({ part }) => `Die Mappe hat keinen Teil „${part}“.`,
  partsAre: ({ all }) => `Ihre Teile: ${all}.`,
  parts: 'die Teile der Mappe',
  everythingToPrint: ({ pages }) => `alles zum Drucken, ${many(pages, 'Seite', 'Seiten')}`,
  showFile: 'der Druck und seine Läufe als eine Seite, zum Zeigen oder Schicken',
  showOn: ({ paper }) => `Der Druck auf ${paper}`,
  showAfter: ({ run, layer }) => `Der Bogen nach Lauf ${run}, ${layer}`,
  showRuns: 'Lauf für Lauf',
  showLight: 'In anderem Licht',
  showLit: ({ paper, lamp }) => `Der Druck auf ${paper}. ${lamp}`,
  showForeseen: 'Aus Messwerten vorhergesagt, nicht fotografiert. Bildschirme zeigen diese Farben nicht genau.',
  proof: ({ paper }) => `der Druck auf ${paper}, in wahrer Größe`,
  proofAfter: ({ paper, run }) => `${paper} nach Lauf ${run}`,
  proofAfterHalf: ({ paper, run }) => `${paper} nach Lauf ${run}, mit halber Dichte`,
  stencilOfRun: ({ run }) => `Schablone für Lauf ${run}, in wahrer Größe`,
  sameForMachine: 'dasselbe für eine Schneidmaschine, in mm',
  stencilsOnStock: ({ n, material }) => `${n === 1 ? 'eine Schablone' : `${n} Schablonen`} auf einem Bogen ${material}`,
  stencilsOnStockTimes: ({ n, material, times }) =>
    `${n === 1 ? 'eine Schablone' : `${n} Schablonen`} auf einem Bogen ${material}; ${times} schneiden`,
  sameInParts: 'dasselbe in Teilen, für diesen Drucker, mit Marken zum Zusammensetzen',
  testFirst: 'Passertest, Schablone für seinen ersten Lauf',
  testSecond: 'Passertest, Schablone für seinen zweiten Lauf',
  overlapsTable: 'jeder Überdruck auf jedem Papier, für eine Tabellenkalkulation',
  recordTable: 'der Auflagennachweis, eine Zeile je Bogen',
  registerTable: 'jeder Bogen mit seinem Leben und seiner Nummer',
  colophonText: 'das Kolophon, zum Setzen oder Einkleben',
  planFile: 'der Plan: alle Zahlen der Druckmappe',

  // In den Schneiddateien.
  cutFileTitle: ({ title, layer, side, run }) => `${title}: ${layer}, ${side}, Lauf ${run}`,
  inMillimetres: 'Millimeter.',
  kerfAllowed: ({ kerf }) => `Schnittbreite ${kerf}: die Linien laufen um die Hälfte davon innerhalb dessen, was herausfällt.`,
  cutMoreLikeIt: ({ n }) => `${n} Bogen wie diesen schneiden.`,
  numbersDrawn: 'Nummern sind gezeichnet, nicht geschnitten.',
  numbered: ({ number, layer }) => `${number}: ${layer}`,
  firstRun: 'erster Lauf',
  secondRun: 'zweiter Lauf',

  // Was abgelehnt wird.
  stockNotWritten: 'Diese Schablone hält nicht zusammen, also wird der Bogen nicht geschrieben, auf dem sie liegt.',
  mendMarked: 'Zuerst die an der Schablone markierten Stellen ausbessern.',
  printerMargin: 'der Druckerrand',
  marginNoRoom: ({ margin }) => `Ein Rand von ${margin} lässt den Seiten keinen Platz.`,
  giveMargin: ({ range }) => `Den Rand des Druckers angeben, ${range}.`,
  page: ({ n }) => `Seite ${n}`,
  overMargin: ({ over }) => `Sie ginge ${over} über den Druckerrand.`,
  smallerMargin: 'Einen kleineren Druckerrand einstellen; und es melden, denn keine Seite sollte das tun.',
};
