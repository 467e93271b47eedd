import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Der Plan, wo Räume sich treffen. */
export const plan: Same<typeof en.plan> = {
  // Woran gerade gearbeitet wird.
  makingForms: 'Formen',
  makingStencils: 'Schablonen und Stege',
  makingColours: 'Farben auf jedem Papier',
  makingRegister: 'Passer und Auflage',

  // Formen und Schnitte.
  formEmpty: 'Es ist keine Form darin.',
  chooseShape: 'Eine Zeichnung mit einer gefüllten Form oder einer Linie wählen.',
  lettersMissing: ({ letters }) => `In der Schrift fehlt ${letters}.`,
  otherLetters: 'Weglassen oder anders schreiben.',
  tooManyPoints: ({ most }) => `Alle Kopien zusammen haben mehr als ${most} Millionen Ecken.`,
  simplerForms: 'Einfachere Umrisse nehmen oder weniger davon verlangen.',
  nothingToCut: 'Es gibt nichts zu schneiden.',
  cutOutsideImage: 'Alles davon liegt außerhalb des Bildes.',
  putFormInside: 'Eine Form darauf setzen, innerhalb des Bildes.',

  // Inseln.
  islandsDropped: ({ n, area, shows }) =>
    `${many(n, 'Insel ist', 'Inseln sind')} weggelassen: Farbe druckt über ${area} mehr als gezeichnet, zu sehen als ΔE00 ${shows}.`,
  keepIslands: 'Sie mit Stegen halten oder lose legen, falls das zu sehr auffällt.',
  islandsCheaperDropped: (v) =>
    `Ohne ihre Inseln fiele es weniger auf (ΔE00 ${v.islandsShow} auf ${v.islands}) als mit ihren Stegen (ΔE00 ${v.bridgesShow} auf ${v.bridges}).`,
  dropIslands: 'Die Inseln weglassen, wenn die Zeichnung ohne sie auskommt.',

  // Wie oft ein Schnitt geschnitten werden muss, und warum.
  oneCut: 'Ein Schnitt genügt.',
  oneCutForBoth: 'Ein Schnitt dient beiden: das Stück aufheben, das herausfällt.',
  spreadCutAlone: 'Eine überfüllte Schicht braucht einen eigenen Schnitt.',
  bridgesDiffer: 'Diese Schichten wollen verschiedene Stege, also wird jede für sich geschnitten.',
  bridgesInPiece: 'Stege bleiben in dem, was herausfallen würde, also wird das Stück für sich geschnitten.',
  pieceOnBridges: 'Das Stück hängt an Stegen, also wird es für sich geschnitten.',
  kerfOffPiece: 'Die Maschine nimmt dem, was herausfällt, ein wenig weg, also wird das Stück für sich geschnitten.',
  wornBefore: ({ material, lasts, pulls }) => `${material} hält etwa ${many(lasts, 'Druck', 'Drucke')}; diese Seite druckt ${pulls}.`,
  notWashable: ({ material, runs }) =>
    `${material} lässt sich nicht waschen: nach einem Lauf ist die Schablone verbraucht, und ${many(runs, 'Lauf braucht', 'Läufe brauchen')} dieselbe Seite.`,

  // Vorrat.
  largerThanStock: ({ layer, size, stock }) => `Die Schablone „${layer}“ (${size}) ist größer als der Vorrat (${stock}).`,
  largerStockOrTape: 'Größeres Material nehmen, weniger Rand um das Bild lassen oder zwei Bogen außerhalb des Bildes zusammenkleben.',
  manyCopies: ({ most }) =>
    `Einige Schablonen müssen mehr als ${most}-mal geschnitten werden; nur die ersten ${most} sind auf den Vorrat gelegt.`,
  lastingMaterial: 'Ein Material wählen, das länger hält.',
};
