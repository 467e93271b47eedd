import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Schablonen. */
export const stencil: Same<typeof en.stencil> = {
  // Die üblichen Materialien.
  newsprint: 'Zeitungspapier',
  coatedPaper: 'Gestrichenes Papier',
  waxedPaper: 'Gewachstes Papier',
  polyesterFilm: 'Polyesterfolie',
  thinBoard: 'Dünner Karton',

  // Was drucken würde.
  outsideImage: 'Kein Teil des Schnitts liegt im Bild; nichts würde drucken.',
  pieceCoversAll: 'Das Stück verdeckt das ganze Bild; nichts würde drucken.',
  moveOrResize: 'Die Form ins Bild schieben oder ihre Größe ändern.',
  noOpeningLeft: 'Stege und Ausbesserungen ließen keine Öffnung übrig.',
  enlargeForm: 'Die Form größer machen.',
  islandsTooSmall: ({ n }) => `${many(n, 'Insel ist', 'Inseln sind')} kleiner als ein Steg; dort druckt Farbe.`,
  enlargeOrLoose: 'Die Form größer machen oder die Inseln als lose Teile legen.',

  // Was ausgebessert wurde.
  strengthened: ({ n, material, first }) =>
    `Die Schablone war zu dünn für ihr Material (${material}) und wurde an ${many(n, 'Stelle', 'Stellen')} breiter gemacht, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  keepFineParts: 'Den Proof ansehen; ein festeres Material oder eine größere Form wählen, um die feinen Teile zu behalten.',
  widened: ({ n, first }) =>
    `${many(n, 'Öffnung war', 'Öffnungen waren')} zu eng für das Messer und ${which(n, 'wurde', 'wurden')} weiter gemacht, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  closed: ({ n, first }) =>
    `${many(n, 'Öffnung war', 'Öffnungen waren')} zu fein zum Schneiden und ${which(n, 'wurde', 'wurden')} geschlossen, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  dropped: ({ n, first }) =>
    `${many(n, 'haarfeiner Papiersteg', 'haarfeine Papierstege')} würde${n === 1 ? '' : 'n'} nicht halten und ${which(n, 'wurde', 'wurden')} weggelassen, ${which(n, 'bei', 'zuerst bei')} ${first}.`,
  muchLost: ({ lost }) => `Beim Ausbessern gehen ${lost} der Zeichnung verloren: zu fein für dieses Material in dieser Größe.`,
  coarser: ({ n, first, area }) =>
    `An ${many(n, 'Stelle', 'Stellen')}, ${which(n, 'bei', 'zuerst bei')} ${first}, hätte nichts Feineres gehalten oder sich schneiden lassen: Was dort zu fein war, fiel weg, insgesamt ${area}.`,
  linesBroader: ({ n }) =>
    `Diese Zeichnung besteht aus Linien, die für ein Messer zu fein sind: ${many(n, 'Zug', 'Züge')} davon ${which(n, 'wurde', 'wurden')} so breit, wie es schneiden kann.`,
  linesTogether: ({ n, area, part }) =>
    `Diese Zeichnung besteht aus Linien, die für ein Messer zu fein sind. So breit gezeichnet, wie es schneiden kann, laufen sie zusammen: ${many(n, 'Feld', 'Felder')} dazwischen ${which(n, 'druckt', 'drucken')} mit, ${area} oder ${part} von allem, was druckt.`,
  keepHairlines: 'Den Proof ansehen. Sollen sie bleiben, die Form größer machen oder sie breiter zeichnen.',
  lookOrEnlarge: 'Den Proof ansehen oder die Form größer machen.',
  marginTooSmall: ({ least }) => `Der Bogen lässt weniger als ${least} um das Bild; er wurde größer gemacht.`,
  widerMargin: 'Einen breiteren Rand der Schablone um das Bild planen.',

  // Ob sie hält.
  doesNotHold: ({ n, first, fault }) =>
    `Diese Schablone lässt sich so nicht schneiden: ${many(n, 'schwache Stelle', 'schwache Stellen')}, ${which(n, 'bei', 'die erste bei')} ${first} (${fault}).`,
  mendFaults: 'Die Form größer machen, feine Teile wegnehmen, ein festeres Material wählen oder Inseln als lose Teile legen.',
  notCutAsItIs: 'Eine Schablone, die nicht hält, wird nicht als Schneidedatei geschrieben.',
  takeAnOffer: 'Einen der Auswege bei den Schablonen wählen oder die markierten Stellen ausbessern.',
  offerClose: ({ n, first, area }) =>
    `${many(n, 'Öffnung', 'Öffnungen')} schließen, ${which(n, 'bei', 'zuerst bei')} ${first}: ${area} weniger Farbe.`,
  offerCloseSeen: ({ n, first, area, shows }) =>
    `${many(n, 'Öffnung', 'Öffnungen')} schließen, ${which(n, 'bei', 'zuerst bei')} ${first}: ${area} weniger Farbe, zu sehen als ΔE00 ${shows}.`,
  offerCloseAll: ({ area }) => `Alle Öffnungen schließen, die kein Messer schneidet: ${area} weniger Farbe.`,
  offerCloseAllSeen: ({ area, shows }) =>
    `Alle Öffnungen schließen, die kein Messer schneidet: ${area} weniger Farbe, zu sehen als ΔE00 ${shows}.`,
  offerCoarser: ({ more, less }) => `Alles weglassen, was zu fein ist, Papier wie Öffnungen: ${more} mehr Farbe, ${less} weniger.`,
  offerCoarserThere: ({ n, first, more, less }) =>
    `Weglassen, was an ${many(n, 'Stelle', 'Stellen')} zu fein ist, ${which(n, 'bei', 'zuerst bei')} ${first}: ${more} mehr Farbe, ${less} weniger.`,
  offerDropAll: ({ area }) => `Alles Papier weglassen, das zu fein zum Halten ist: ${area} mehr Farbe.`,
  offerDropAllSeen: ({ area, shows }) =>
    `Alles Papier weglassen, das zu fein zum Halten ist: ${area} mehr Farbe, zu sehen als ΔE00 ${shows}.`,
  offerDrop: ({ n, first, area }) =>
    `${many(n, 'Papierteil', 'Papierteile')} weglassen, ${which(n, 'bei', 'zuerst bei')} ${first}: ${area} mehr Farbe.`,
  offerDropSeen: ({ n, first, area, shows }) =>
    `${many(n, 'Papierteil', 'Papierteile')} weglassen, ${which(n, 'bei', 'zuerst bei')} ${first}: ${area} mehr Farbe, zu sehen als ΔE00 ${shows}.`,
  offerFirmer: ({ material, paper, opening }) =>
    `Aus festerem Material schneiden (${material}: Stege von ${paper}, Öffnungen von ${opening}).`,
  offerLarger: ({ by }) => `Die Zeichnung größer machen, auf ${by} ihrer Größe.`,
  offerLargerThanImage: ({ by }) =>
    `Die Zeichnung größer machen, auf ${by} ihrer Größe; sie reicht dann über das Bild hinaus, das mitwachsen muss.`,
  neckTooThin: 'eine zu dünne Engstelle',
  pieceTooThin: 'ein überall zu dünnes Teil',
  pointTooThin: 'eine lange dünne Spitze',
  openingTooNarrow: 'eine zu enge Öffnung',
  partUnheld: 'ein Teil, den nichts hält',
  provenBy: ({ pixel, paper, opening }) =>
    `Um die halbe kleinste Breite verkleinert, muss zusammenhängen, was vom Umriss bleibt. Was Scheiben von ${paper} (Papier) und ${opening} (Öffnungen) nicht erreichen, wird in Pixeln von ${pixel} angesehen: Nur Spitzen, die sich verjüngen, dürfen übrig bleiben.`,
  nothingCut: 'Es wird nichts geschnitten.',

  // Dicke Schablonen.
  ridgeCrossed: ({ layer, material, thickness, crossed }) =>
    `Die Schablone von ${layer} ist dick (${material}, ${thickness}) und lässt an ihren Rändern einen Farbwulst stehen. Spätere Läufe drucken darüber: ${crossed}.`,
  ridgeAlong: ({ layer, along }) => `${layer} auf ${along}`,
  thinnerOrLater: ({ layer }) => `${layer} aus dünnerem Material schneiden oder nach ihnen drucken.`,

  // Vorrat.
  largerThanStock: ({ name, size, stock }) => `„${name}“ (${size}) passt nicht auf einen Bogen von ${stock}.`,
  largerStock: 'Größeres Material nehmen oder einen kleineren Rand um das Bild lassen.',

  weakAsWritten: ({ places }) => `Die Schneiddatei würde nicht zusammenhalten: ${places}.`,
  weakAt: ({ at, width }) => `bei ${at} (${width} breit)`,
  enlargeThere: 'Die Form dort etwas größer machen oder ein festeres Material wählen.',
  kerfTooWide: ({ kerf }) => `Manches, was herausfällt, ist schmaler als die ${kerf}, die die Maschine wegnimmt.`,
  finerTool: 'Ein feineres Werkzeug nehmen, die Form größer machen oder diese von Hand schneiden (ohne Schnittbreite).',
};
