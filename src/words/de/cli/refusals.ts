import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Was Befehle so nicht können, und was stattdessen zu schreiben ist. */
export const refusals: Same<typeof en.refusals> = {
  // Folgen
  noSuchWish: ({ wish }) => `„${wish}“ ist kein Wunsch.`,
  notTwoLayers: ({ text }) => `„${text}“ nennt nicht zwei Schichten.`,
  writeBefore: '--before sky,water schreiben.',

  // Rezepte, Töpfe, Chargen
  wantedColour: 'der gewünschte Farbton',
  whichColour: 'Welcher Farbton ist gewünscht?',
  noSuchComplaint: ({ text }) => `„${text}“ gehört nicht zu den Worten, die verstanden werden.`,
  whatInPot: 'Was ist im Topf?',
  writeHolds: '--holds rockpool=70,clear-base=30 schreiben.',
  roundsDiffer: ({ reads, added }) => `Aufzüge (${reads}) und Zugaben (${added}) passen nicht zusammen.`,
  oneReadsMore: 'Ein --reads für den Topf, wie zuerst gemischt, und eines mehr nach jedem --added angeben.',
  lotWithoutReading: ({ text }) => `„${text}“ sagt nicht, was die neue Charge misst.`,
  noSuchInk: ({ ink }) => `Die Arbeit hat keine Farbe „${ink}“.`,
  writeLot: ({ all }) => `--lot FARBE="L a b" schreiben. Die Farben dieses Topfs: ${all}.`,
  whichNewLot: 'Welche Farbe hat eine neue Charge?',
  writeLotOrShelf: ({ all }) => `Die Farben dieses Topfs: ${all}. --lot FARBE="L a b" schreiben oder mit --shelf ein Regal nennen.`,

  // Messwerte, Fotos, Aufzugbogen, Regale
  whichReadings: 'Welche Messdatei?',
  nameReadings: 'Eine CGATS-, CxF- oder CSV-Datei nennen.',
  whichInk: 'Welche Farbe wurde aufgezogen?',
  writeInk: '--ink "Tanggrün" schreiben.',
  whichFile: 'Welche Datei soll geschrieben werden?',
  writeOut: '--out aufzug.pdf schreiben.',
  whichColourOrPhoto: 'Welcher Farbton, welches Foto, welche Arbeit?',
  nameColourOrPhoto: 'Einen Farbton schreiben („#c0392b“), ein Foto mit --at nennen oder eine Arbeit.',
  notAPlace: ({ text }) => `„${text}“ ist keine Stelle auf einem Foto.`,
  writePlace: 'Zwei Zahlen von 0 bis 100 schreiben: --at 50,40.',
  notChoices: ({ text }) => `„${text}“ ist keine Auswahl.`,
  writeChoices: 'Die Nummern der gewählten Felder schreiben, 0 bis 6, mit Kommas dazwischen.',
  noSuchLamp: ({ lamp }) => `Eine Lampe „${lamp}“ gibt es nicht.`,
  whichShelf: 'Welches Regal?',
  nameShelf: 'Eine Regaldatei nennen oder mit --from eine Arbeit.',

  // Formen
  whichForm: 'Welche Form soll entstehen?',
  sayMake: ({ kinds }) => `Eine Zeichnung nennen oder mit --make eines davon: ${kinds}.`,
  sayRead: 'silhouette, white, dark oder Farben wie #d04020 schreiben.',
  figuresOf: ({ all }) => `Ihre Maße sind: ${all}.`,
  notALens: 'Diese Datei enthält kein Objektiv.',
  keepLens: 'Eine mit --keep-lens aus dem Foto eines Schachbretts schreiben.',
  noOpenings: 'Das Ding hat keine Öffnungen.',
  leaveOpenings: '--openings weglassen.',
  noLine: 'Die Datei enthält keine Linie, die etwas umschließt.',
  writeLine: 'Je Zeile einen Punkt schreiben: x,y in mm.',
  formAsSvg: 'Eine Form wird als SVG geschrieben oder in eine Arbeit.',
  endInSvgOrWith: 'Den Namen auf .svg enden lassen oder die Arbeit mit --with nennen.',
  sayEachColour: ({ all }) => `${all} schreiben.`,
  layersNeedJob: 'Schichten brauchen eine Arbeit, zu der sie kommen.',
  writeWithAndOut: '--with ARBEIT --out ORDNER schreiben.',
  writeFormOut: '--out form.svg schreiben.',

  // Passer, Auflage
  noTestSheets: 'Noch wurden keine Testbogen abgelesen.',
  nameTable: 'Eine Tabelle mit Ablesungen nennen; „laydown register ARBEIT --form“ gibt eine leere aus.',
  nothingCounted: 'Noch ist nichts gezählt.',
  countFirst: 'Zuerst an der Presse zählen.',

  // Schneiden
  partsOnlyOfStock: 'Nur ein Materialbogen wird hier in Teilen geschrieben.',
  sayStock: 'Mit --stock sagen, welcher; eine einzelne Schablone in Teilen liegt in der Druckmappe.',
  cutAsSvgOrDxf: 'Eine Schneiddatei ist SVG oder DXF.',
  endInSvgOrDxf: 'Den Dateinamen auf .svg oder .dxf enden lassen; die geteilte PDF-Datei liegt in der Druckmappe.',
  noWayOut: 'Diese Schablone braucht keinen Ausweg, oder es fand sich keiner.',
  seeWeakPlaces: 'Nachsehen, was „laydown cut“ von ihr sagt, und ihre schwachen Stellen bei den Schablonen.',
  noStencil: 'Sie hat keine Schablone: ihr Schnitt ist leer oder war nicht zu lesen.',
  runCheck: 'Nachsehen, was „laydown check“ sagt.',
  notProven: 'Die Schablone würde auseinanderfallen, darum wird keine Schneiddatei geschrieben.',
  weakPlaces: ({ all }) => `Zuerst hier ausbessern: ${all}.`,
  faultAt: ({ fault, width, at }) => `${fault}, ${width} breit, bei ${at}`,
  neck: 'eine zu dünne Engstelle',
  thinPiece: 'ein überall zu dünnes Teil',
  tongue: 'eine lange dünne Spitze',
  opening: 'eine zu enge Öffnung',
  apart: 'ein Teil, den nichts hält',
  partsForPaper: 'Teile gibt es für A4 oder Letter.',
  sayA4OrLetter: '--paper a4 oder --paper letter schreiben.',
  partsAsPdf: 'Teile zum Aneinandersetzen werden als PDF geschrieben.',
  endInPdf: 'Den Dateinamen auf .pdf enden lassen.',
  stockAsSvgDxfPdf: 'Ein Materialbogen wird als SVG, DXF oder PDF geschrieben.',
  endInSvgDxfPdf: 'Den Dateinamen auf .svg, .dxf oder .pdf enden lassen.',
  partsNeedFile: 'Teile zum Aneinandersetzen brauchen eine Datei.',
  sayOutPdf: '--out NAME.pdf schreiben.',
  noStock: 'Sie nennt keine Bogen, auf denen Schablonen nebeneinander liegen könnten.',
  giveStock: 'Einem Material das Maß der Bogen geben, in denen es gekauft wird („stock“).',
  noSuchStock: ({ n, all }) =>
    n === 1 ? `Diesen Bogen gibt es nicht; es gibt Bogen ${all}.` : `Diesen Bogen gibt es nicht; es gibt die Bogen ${all}.`,
  giveItsNumber: 'Seine Nummer angeben.',

  // Nachzeichnen
  whichSheet: 'Auf welchem Papier liegt es?',
  writeSheet: '--sheet a4, --sheet letter oder das Maß in mm schreiben: --sheet 300x400.',
  noSuchSheet: ({ text }) => `„${text}“ ist kein Papierformat.`,
  saySheet: 'a4, letter oder Breite x Höhe in mm schreiben.',
  fourCorners: 'Es braucht vier Ecken, jede als x,y in Pixeln.',
  writeCorners: '--corners "120,80 2900,95 2950,3800 90,3790" schreiben.',

  // Eine Vorlage
  whoseInks: 'Wessen Farben sollen genommen werden?',
  nameWith: 'Mit --with eine Arbeit nennen: ihre Farben, Papiere und Materialien sind das Regal.',
  whichPicture: 'Welche Vorlage?',
  namePictureOrJob: 'Eine JPEG-, PNG-, WebP- oder TIFF-Datei nennen oder mit --with eine Arbeit, die eine aufbewahrt.',
  pictureGone: 'Die Vorlage ist nicht mehr im Ordner der Arbeit.',
  putBack: 'Die Datei wieder dorthin legen oder die Vorlage nennen.',
  sheetIsPrinted: 'Der Bogen ist schon bedruckt, darum behält das Bild seine Größe.',
  leaveSizeOut: '--width und --height weglassen.',
  metresSetPrice: 'Eine Grenze in Metern setzt den Preis selbst.',
  metresOrPrice: '--metres oder --price angeben, nicht beide.',
  notAboutLayer: ({ text }) => `„${text}“ sagt nichts über eine Schicht.`,
  writeLayer:
    'Ihren Platz und ihre Farbe schreiben, und die Stärke, wenn auch sie entschieden ist: 2=brick oder 2=brick@40%. 1 wird zuerst gedruckt.',
  noLayerOfNumber: ({ text, n }) =>
    n === 1 ? `Eine Schicht ${text} gibt es nicht: verlangt ist 1.` : `Eine Schicht ${text} gibt es nicht: verlangt sind ${n}.`,
  layerFromTo: ({ n }) => `Eine Zahl von 1 bis ${n} angeben; 1 wird zuerst gedruckt.`,
  noSuchPot: ({ text }) => `Die Arbeit hat keinen Topf „${text}“.`,
  nothingCutFrom: ({ text }) => `Aus „${text}“ wird in dieser Arbeit nichts geschnitten.`,
  chooseAmong: ({ all }) => `Unter diesen wählen: ${all}.`,
  noSuchReach: ({ text }) => `„${text}“ gehört nicht zu den Möglichkeiten.`,
  useReach: 'lightness, chroma, contrast oder nearest schreiben.',

  // Stellen auf einer Vorlage
  notABox: ({ text }) => `„${text}“ ist kein Teil einer Vorlage.`,
  writeBox: 'Vier Zahlen angeben, alle in Prozent der Vorlage: von links, von oben, Breite, Höhe; etwa 10,5,80,60.',
  boxOff: ({ text }) => `„${text}“ reicht über den Rand der Vorlage hinaus.`,
  boxWithin: 'Von links und Breite sind zusammen höchstens 100 Prozent, ebenso von oben und Höhe.',
  cropTooSmall: ({ text }) => `„${text}“ ist weniger als ein Zwanzigstel der Vorlage breit oder hoch.`,
  cropPerCent: 'Die Zahlen sind Prozent der Vorlage: 50 für ihre Hälfte schreiben.',
  notAMark: ({ text }) => `„${text}“ ist nicht als Markierung zu lesen.`,
  notAStroke: ({ text }) => `„${text}“ ist nicht als Pinselstrich auf der Vorlage zu lesen.`,
  writeMark:
    '"more box 20,30,25,40" schreiben (von links, von oben, Breite, Höhe) oder "less brush 5 10,20 40,25" (Breite des Pinsels, dann Stellen), alles in Prozent der Vorlage; das erste Wort ist more (mehr), less (weniger) oder none (nichts).',
  strokeTooLong: ({ n, most }) => `Der Strich hat ${n} Stellen; eine Arbeit behält ${most}.`,
  makeTwoStrokes: 'Zwei Striche daraus machen.',
  noMarks: 'In dieser Datei steht keine Markierung.',
  tooManyMarks: ({ n }) => `${n} Markierungen sind mehr, als eine Arbeit behält.`,
  fewerMarks: ({ most }) => `Mit ${most} auskommen: ein Pinselstrich reicht weit.`,

  // Die Werkbank
  notBuilt: 'Sie ist noch nicht gebaut.',
  runStart: 'npm start aufrufen, das sie baut.',
  notAPort: ({ text }) => `„${text}“ ist kein Port.`,
};
