import type { en } from '../../en/index.ts';
import { grammarOf } from '../../grammar.ts';
import type { Same } from '../../text.ts';

const { which } = grammarOf('de-DE');

/** Rezepte, Töpfe, Folgen, Regale. */
export const recipes: Same<typeof en.recipes> = {
  // Einen Topf wiegen
  sharesNotWhole: ({ whole }) => `Die Anteile ergeben ${whole} des Topfs.`,
  fillWithBase: 'Base zugeben, bis sie 100\u00a0% ergeben.',
  batchWeighsNothing: 'Eine Mischung braucht eine Menge über 0.',
  giveAmount: 'Angeben, wie viel zu mischen ist.',
  partNeedsDensity: 'Jeder Teil braucht eine Dichte über 0 und einen Anteil von 0 oder mehr.',
  usualDensity: 'Wasser wiegt 1\u00a0g/mL, die meisten Farben auf Wasserbasis 1,05 bis 1,15.',
  roundingCosts: ({ step, off }) => `Auf ${step} zu runden kostet ΔE00 ${off}.`,
  finerScale: 'Mehr auf einmal mischen, eine feinere Waage nehmen oder die stärkste Farbe erst mit Base verschneiden und das wiegen.',
  partBelowScale: ({ part, step }) => `${part} wiegt weniger als ein Schritt der Waage (${step}).`,
  letDownFirst: 'Erst mit Base verschneiden und das wiegen.',
  strengthOutOfReach: ({ from, to, addition }) => `Eine Zugabe der Stärke ${addition} bringt einen Topf nicht von ${from} auf ${to}.`,
  strongerAddition: 'Die Zugabe muss stärker sein als die gewünschte Stärke.',
  baseCannot: ({ from, to }) => `Base bringt einen Topf nicht von Stärke ${from} auf ${to}.`,
  baseOnlyWeakens: 'Base schwächt nur, und nie bis auf nichts.',

  // Zusätze
  tooMuchRetarder: ({ share, ceiling }) =>
    `${share} Verzögerer liegen über der Grenze von ${ceiling}; solche Farbe trocknet vielleicht nie.`,
  retarderWithin: ({ from, to }) => `Zwischen ${from} und ${to} bleiben und dem Etikett folgen.`,
  muchRetarder: ({ share, from, to }) => `${share} Verzögerer sind mehr als die üblichen ${from} bis ${to}.`,
  driesSlowly:
    'So viel nur in sehr trockener Luft nehmen und mit langsamem Trocknen rechnen. Das Etikett entscheidet. Mit Verzögerer Handschuhe tragen.',
  manyAdditions: ({ share }) => `Zusätze machen ${share} des Topfs aus.`,
  binderThin: 'Das Bindemittel wird knapp: der Film reibt sich vielleicht ab (übliche Praxis).',

  // Ein Rezept für einen Farbton, und warum es nicht näher kommt
  noPots: 'Es gibt keinen Topf, aus dem zu mischen wäre.',
  addInks: 'Die vorhandenen Farben hinzufügen.',
  groundDarker: ({ ground, wanted }) =>
    `Was dort schon liegt, ist dunkler (L ${ground}) als der gewünschte Farbton (L ${wanted}), und eine klare Farbe macht nur dunkler. Sie vor den dunklen Schichten drucken oder eine Farbe nehmen, die deckt.`,
  showsThrough: ({ by }) => `Jedes Rezept dieses Tons fällt um L ${by} dunkler aus: was darunter liegt, scheint durch.`,
  tooWeak: ({ by }) => `Selbst ohne jede Base ist die Farbe um L ${by} zu schwach: zweimal drucken oder durch ein gröberes Gewebe.`,
  tooDull: ({ by, hue }) =>
    `Die vorhandenen Töpfe sind in diesem Ton um ${by} Buntheit stumpfer; eine reinere Farbe vom Ton ${hue}° wäre nötig.`,
  tooColourful: ({ by }) =>
    `Das Ergebnis bleibt um ${by} Buntheit bunter als gewünscht: was darunter liegt oder der einzige passende Topf bringt sie mit.`,
  atItsLimit: ({ part, limit }) => `${part} ist an der Grenze von ${limit}.`,
  tooLittleToWeigh: 'Es ist zu wenig davon im Topf, um es zu wiegen. Erst etwas davon eins zu zehn verschneiden und das abwiegen.',
  hueBetween: ({ by }) => `Der Ton liegt zwischen den vorhandenen Töpfen; der nächste liegt um ${by}° daneben.`,

  // Derselbe Farbton noch einmal
  recipeHolds: ({ off }) => `Das alte Rezept gilt noch: ΔE00 ${off} mit den neuen Chargen.`,
  recipeCorrected: ({ unchanged, corrected }) =>
    `Unverändert läge das alte Rezept um ΔE00 ${unchanged} daneben; berichtigt liegt es um ${corrected} daneben.`,
  recipeCorrectedLamp: ({ unchanged, corrected, lamp }) =>
    `Unverändert läge das alte Rezept um ΔE00 ${unchanged} daneben; berichtigt liegt es um ${corrected} daneben, bei Lampenlicht um ${lamp}.`,

  // Einen Topf berichtigen
  noDrawdown: 'Es gibt keinen Aufzug dieses Topfs, nach dem er sich beurteilen ließe.',
  pullOne: 'Einen machen, trocknen lassen und messen; oder sagen, was am Farbton nicht stimmt.',
  notOnShelf: ({ ink }) => `„${ink}“ ist im Topf, aber nicht im Regal.`,
  addReading: 'Die Messung dazu ins Regal stellen.',
  potEmpty: 'Der Topf ist leer.',
  listContents: 'Angeben, was hineingewogen wurde.',
  potStronger: ({ by }) => `Dieser Topf wirkt um ${by} stärker, als sein Rezept sagt.`,
  potWeaker: ({ by }) => `Dieser Topf wirkt um ${by} schwächer, als sein Rezept sagt.`,
  drawdownMayDiffer:
    'Der Aufzug ist vielleicht dicker oder dünner als sonst, oder etwas wurde falsch gewogen. In den Zugaben ist das berücksichtigt.',
  nothingReaches: ({ off }) => `Keine Zugabe aus dem Regal bringt diesen Topf näher als ΔE00 ${off}; einen frischen mischen.`,
  potWouldGrow: ({ grown, need, added }) =>
    `Der Topf würde auf ${grown} wachsen, wo ${need} gebraucht werden: ein frischer Topf nimmt weniger Farbe als die Korrektur (${added}).`,

  // Folgen
  tryingStacks: 'jeden Stapel einmal probieren',
  tryingOrders: 'jede Folge probieren',
  tooManyOrders: ({ n }) => `${n} Schichten ergeben zu viele Folgen, um sie zu probieren.`,
  tryFewer: ({ most }) => `Einigen ihren Platz geben oder höchstens ${most} probieren.`,
  noOrder: 'Keine Folge hält alle Regeln ein, was vor was kommen muss.',
  dropRule: 'Eine der Regeln wegnehmen.',
  orderChangesNothing: 'Nach ihren Messungen sind diese Farben durch und durch klar; die Folge ändert also keinen Farbton.',
  orderByDrying: 'Die Folge nach Trocknen und Passer wählen; die Farben auch auf Schwarz messen, um zu sehen, was sie decken.',
  losesWanted: ({ by }) => `die gewünschten Überdrucke liegen um ΔE00 ${by} weiter daneben als in der Folge, die sie am besten trifft`,
  losesColours: ({ n }) => `${n} ${which(n, 'Überdruck weniger lässt', 'Überdrucke weniger lassen')} sich unterscheiden`,
  losesRange: ({ by }) => `die Helligkeit spannt sich um ${by} weniger`,
  losesChroma: ({ by }) => `Überdrucke sind stumpfer, im Mittel um ${by} Buntheit`,
  losesSteadiness: ({ by }) => `Farbtöne schwanken mehr, wenn ein Film schwerer ausfällt, um ΔE00 ${by}`,

  // Das Regal der Werkstatt, als Datei
  shelfTooLarge: 'Die Datei ist für ein Farbenregal zu groß.',
  checkFile: 'Prüfen, ob es die richtige Datei ist.',
  shelfBroken: 'Die Datei ist abgeschnitten oder kein Farbenregal.',
  takeEarlierCopy: 'Eine frühere Kopie nehmen; diese blieb, wie sie war.',
  shelfNewer: ({ version, ours }) =>
    `Das Regal wurde von einem neueren Laydown geschrieben (Fassung ${version}; dieses hier liest ${ours}).`,
  updateLaydown: 'Laydown erneuern; die Datei blieb, wie sie war.',
  twice: ({ id }) => `„${id}“ steht zweimal darin.`,
  renameOne: 'Eines davon umbenennen.',
  potHoldsUnknown: ({ pot, ink }) => `Der Topf ${pot} enthält „${ink}“, was nicht im Regal steht.`,
  addOrTakeOut: 'Die Farbe hinzufügen oder aus dem Protokoll nehmen.',

  // Wo in dieser Datei
  inFile: ({ file, steps }) => `${file}: ${steps}`,
  inkNo: ({ n, name }) => numbered('Farbe', n, name),
  paperNo: ({ n, name }) => numbered('Papier', n, name),
  potNo: ({ n, name }) => numbered('Topf', n, name),
  lotNo: ({ n, name }) => numbered('Charge', n, name),
  stepNo: ({ n }) => `Stufe ${n}`,
  drawdownNo: ({ n }) => `Aufzug ${n}`,
  partNo: ({ n }) => `Teil ${n}`,
  additionNo: ({ n }) => `Zugabe ${n}`,
  field: ({ field }) => `„${field}“`,

  // Was an einem Feld davon nicht stimmt

  // Regale zusammengelegt, und ihre Chargen
  theShelf: ({ id }) => `Farbenregal, „${id}“`,
  renamed: ({ id, now }) => `Beide Regale haben „${id}“, und es sind verschiedene Dinge; das dazugenommene heißt jetzt „${now}“.`,
  joinByHand: 'Von Hand zusammenlegen, falls sie dasselbe sind.',
  clearBase: 'Klare Base: nichts wird geschluckt oder gestreut.',
  lotReading: ({ ink, lot, reading }) => `${ink}, Charge ${lot}, ${reading}`,
  bareGround: 'blanker Untergrund',
  inkOnGround: 'Farbe auf ihrem Untergrund',
  bareWhite: 'blankes Weiß',
  inkOnWhite: 'Farbe auf Weiß',
  bareBlack: 'blankes Schwarz',
  inkOnBlack: 'Farbe auf Schwarz',
};

function numbered(what: string, n: number, name: string | undefined): string {
  return name === undefined ? `${what} ${n}` : `${what} ${n} (${name})`;
}
