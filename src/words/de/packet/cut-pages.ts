import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Schablonen in wahrer Größe, woraus jede besteht, und wie sie auf dem Vorrat liegen. */
export const cutPages: Same<typeof en.cutPages> = {
  // Die Zeichnung.
  drawing: ({ layer, run, side }) => `${layer} — Lauf ${run}, ${side}`,
  greyDropsOut: 'Die bedruckte Seite liegt am Gewebe. Grau fällt heraus, Weiß bleibt.',
  island: 'Insel',
  topToMesh: 'oben — diese Seite ans Gewebe',
  topHinge: 'oben — diese Seite ans Gewebe — Scharnier auf dieser Seite',
  topHingeBottom: 'oben — diese Seite ans Gewebe — Scharnier unten',
  topHingeLeft: 'oben — diese Seite ans Gewebe — Scharnier links',
  topHingeRight: 'oben — diese Seite ans Gewebe — Scharnier rechts',

  // Was zu wissen ist.
  cutCards: 'Schneiden',
  oneCardAStencil: 'eine Karte je Schablone',
  sideOfThick: ({ side, material, thickness }) => `${side}, ${material}, ${thickness}`,
  bridgesAre: ({ what }) => `Stege: ${what}.`,
  droppedAre: ({ what }) => `Weggelassene Inseln: ${what}.`,
  drawnOnPage: ({ page }) => `In wahrer Größe: Seite ${page}.`,
  drawnOnPages: ({ first, last }) => `In wahrer Größe: Seiten ${first} bis ${last}.`,
  material: 'Material',
  materialThick: ({ material, thickness }) => `${material}, ${thickness}`,
  yourChoice: 'nach Wahl',
  sheetToBegin: 'Bogen für den Anfang',
  knifeAndLift: ({ n }) => `Messer; ${many(n, 'Teil', 'Teile')} auszuheben`,
  knifeWork: ({ length, corners }) => `${length}, ${many(corners, 'Ecke', 'Ecken')}`,
  timeAt: ({ pace }) => `Zeit, bei ${pace} je Minute`,
  timeAndHow: ({ time, how }) => `${time}, ${how}`,
  easy: 'leicht',
  steady: 'ruhige Hand',
  fine: 'fein',
  trying: 'mühsam',
  hopeless: 'von Hand aussichtslos',
  bridgesKept: 'Stege, sie bleiben',
  islandsIfDropped: ({ n }) => (n === 1 ? 'Insel, falls weggelassen' : 'Inseln, falls weggelassen'),
  islandsDropped: 'Weggelassene Inseln',
  loosePieces: 'Lose Teile',
  numberEach: ({ n }) => `${n}: jedes nummerieren`,
  shows: ({ n, area, deltaE }) => `${n} (${area}, ΔE00 ${deltaE})`,
  keptFree: ({ what, largest }) =>
    `Gezeichnet, aber frei von Farbe, damit es hält (weiß, punktiert): ${what}, das Größte bei ${largest}. Vor dem Schneiden ansehen.`,
  printsMore: ({ what, largest }) =>
    `Nicht gezeichnet, druckt aber, damit es schneidbar ist (dunkel): ${what}, das Größte bei ${largest}. Vor dem Schneiden ansehen.`,
  cutThisTimes: ({ times }) => `Diese ${times} schneiden.`,
  proven: 'Erwiesen: der Bogen hält zusammen, und nichts ist zu eng für das Messer.',
  provenWidths: ({ strip, opening }) => `Erwiesen: der Bogen hält zusammen; kein Streifen unter ${strip}, keine Öffnung unter ${opening}.`,
  notProven: ({ n }) => `Nicht erwiesen: ${many(n, 'schwache Stelle', 'schwache Stellen')}, im Bild umringt.`,

  // Wozu jeder Bogen da ist.
  use: ({ run, side, sheets }) => `Lauf ${run}: ${side} von ${sheets}.`,
  useSpent: ({ run, side, sheets }) => `Lauf ${run}: ${side} von ${sheets}, dann verbraucht.`,
  useWashed: ({ run, side, sheets, again }) => `Lauf ${run}: ${side} von ${sheets}; dann waschen und für Lauf ${again} aufheben.`,
  keepPiece: ({ run }) => `Das herausfallende Stück für Lauf ${run} flach aufheben.`,
  keepSurround: ({ run }) => `Den Bogen ringsum für Lauf ${run} flach aufheben.`,
  noBorder: 'Es hat keinen eigenen Rand: das Gewebe wird an der Bildkante abgeklebt.',
  oneSheet: ({ n }) => `Bogen ${n}`,
  twoSheets: ({ first, last }) => `Bogen ${first} und ${last}`,
  manySheets: ({ first, last }) => `Bogen ${first} bis ${last}, einem nach dem anderen`,

  // Schritte.
  layOnMaterial: 'Die Bogen in wahrer Größe auf das Material legen, bedruckte Seite oben. Durch beide schneiden.',
  innerFirst: 'Innere Formen zuerst, den längsten Umriss zuletzt. Den Bogen drehen, nicht das Handgelenk.',
  stopAtRings: 'Umringte Ecken: genau dort anhalten, sonst reißt das Papier weiter.',
  stopAtBridges: 'An jedem Steg anhalten (gestrichelt, mit Nummer): er bleibt.',
  greyOutWhiteStays: 'Grau fällt heraus. Weiß bleibt.',
  keepWhatDrops: ({ run }) => `Was herausfällt, aufheben: Lauf ${run} druckt damit.`,
  keepSheet: ({ run }) => `Den Bogen aufheben: Lauf ${run} druckt damit.`,
  numberPieces: 'Die losen Teile nummerieren und flach aufheben, der Reihe nach.',
  punch: ({ n, across }) => `${many(n, 'Kreis', 'Kreise')} von ${across} stanzen (kleine Kreuze), vor dem Schneiden.`,
  writeRun: 'Lauf und „Gewebeseite“ auf den oberen Rand schreiben.',

  // Teile zusammensetzen.
  sheetsToJoin: ({ n }) => `${many(n, 'Bogen', 'Bogen')} aneinanderzusetzen.`,
  howToJoin:
    'Wo eine Zeichnung mehrere braucht: an der gestrichelten Linie einen von zwei Nachbarn schneiden, Ring auf Ring legen, kleben.',
  rowsFirst: 'Zuerst die Reihen aneinandersetzen.',
  edgeNotDrawn: 'Der äußere Rand ist nicht gezeichnet: ihn mit dem Lineal ziehen, das Bild in der Mitte.',

  // Von der Seite.
  fromTheSide: 'Von der Seite gesehen',
  mesh: 'Gewebe',
  stencil: 'Schablone',
  sheetToPrint: 'Bogen zum Drucken',
  readsAsItPrints: 'Die lesbare Seite liegt am Gewebe. Von oben liest sie sich, wie sie druckt; am hochgeklappten Sieb spiegelverkehrt.',

  // Auf dem Vorrat.
  stockSheets: 'Vorrat',
  labelled: ({ label, value }) => `${label}: ${value}`,
  leftOverIs: ({ share }) => `Übrig: ${share}`,
  stock: ({ material }) => `Vorrat: ${material}`,
  sheet: 'Bogen',
  cutLikeThis: 'So schneiden',
  leftOver: 'Übrig',
  grain: 'Laufrichtung',
  allOneWay: 'alle gleich',
  anyWay: 'gleichgültig',
  machineTakes: 'Die Maschine nimmt weg',
  thickBar:
    'Dicker Balken: oben an der Schablone. Grau fällt heraus. Formen zuerst, die Linien zwischen den Schablonen zuletzt. Eine gestrichene oder gewachste Seite liegt oben: sie sieht zum Gewebe und trifft auf die Farbe.',
  moreAsDrawn: ({ n }) => `und ${n} weitere, wie gezeichnet`,
  placedRun: ({ layer, run }) => `${layer}: Lauf ${run}`,
  placedRuns: ({ layer, runs }) => `${layer}: Läufe ${runs}`,
  upright: 'aufrecht',
  turned: 'um ein Viertel gedreht, oben nach rechts',
  keepPieces: ({ way, n }) => `${way}; ${n === 1 ? 'das Stück aufheben, das herausfällt' : `die ${n} Stücke aufheben, die herausfallen`}`,

  // Der Vorrat in Teilen.
  pagesToJoin: ({ n }) =>
    `${n} Seiten aneinanderzusetzen. Einen von zwei Nachbarn an der gestrichelten Linie schneiden, Ring auf Ring legen, kleben.`,
  oneHoldsAll: 'Alles passt auf eine Seite.',
  stockEdge:
    'Gepunktet: der Rand des Bogens. Die zusammengesetzte Zeichnung in seine Ecke oben links legen und durch beide schneiden, zuerst die Formen, zuletzt die Linien zwischen den Schablonen.',
};
