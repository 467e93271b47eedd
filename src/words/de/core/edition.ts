import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** Bogen, Nummern für den Bleistift, Fehler eines Bogens, Vorsicht. */
export const edition: Same<typeof en.edition> = {
  // Bogen.
  sizeImpossible: ({ target }) => `Eine Auflage von ${target} Bogen lässt sich nicht planen.`,
  sayHowManyGood: 'Sagen, wie viele gute Bogen es werden sollen, mindestens 1.',
  certaintyImpossible: ({ certainty }) => `Eine Sicherheit von ${certainty} ist nicht zu haben.`,
  giveCertainty: ({ usual }) => `Eine zwischen 0 und 100 % wählen, etwa ${usual}.`,
  spoilageTooHigh: ({ survive }) => `Bei dieser Makulatur kommen nur ${survive} der Bogen durch: kein Stapel ist groß genug.`,
  fewerLayersOrPractise: 'Weniger Schichten drucken oder auf Zeitungspapier üben, bis weniger Bogen verloren gehen.',
  noStackThisSure: 'Für diese Sicherheit ist kein Stapel groß genug.',
  lessCertainty: 'Weniger Sicherheit verlangen oder weniger Bogen verlieren.',
  spoilageImpossible: ({ spoilage }) => `Mit einer Makulatur von ${spoilage} lässt sich nicht planen.`,
  giveSpoilage: ({ usual }) => `Weniger als 100 % angeben: ${usual} sind fünf Bogen von hundert.`,
  proofsImpossible: ({ proofs }) => `${proofs} Probedrucke lassen sich nicht zurücklegen.`,
  artistsShareImpossible: ({ share }) => `A/P können nicht ${share} der Auflage sein.`,
  noughtOrMore: 'Null oder mehr angeben.',
  noPaper: 'Es ist kein Papier genannt, also lassen sich keine Bogen planen.',
  addPaper: 'Ein Papier hinzufügen, mit seiner Größe und der Zahl der Bogen.',
  setUpImpossible: ({ sheets }) => `Mit ${sheets} Bogen lässt sich nicht einrichten.`,
  wholeNumber: 'Eine ganze Zahl angeben, null oder mehr.',
  noneAtHand: ({ paper }) => `Von ${paper} ist noch kein Bogen da.`,
  getSheets: ({ n }) => `${n} Bogen besorgen: genug für die Auflage, mit der gewünschten Sicherheit.`,
  moreProofsThanSheets: ({ proofs, sheets, paper }) =>
    `${many(proofs, 'Probedruck ist', 'Probedrucke sind')} zurückzulegen, aber von ${paper} ${which(sheets, 'ist', 'sind')} nur ${sheets} Bogen da.`,
  fewerProofsOr: ({ start }) => `Weniger Probedrucke zurücklegen oder mit ${start} Bogen beginnen.`,
  morePrintsThanSheets: ({ wanted, sheets, paper }) =>
    `${many(wanted, 'guter Bogen soll', 'gute Bogen sollen')} aus ${sheets} von ${paper} werden.`,
  sheetsShort: ({ sheets, paper, wanted, reached, asked }) =>
    `${sheets} Bogen ${paper} ergeben die ${wanted} gewünschten guten in ${reached} von 100 Fällen, nicht in ${asked}.`,
  startWithOrSmaller: ({ start }) => `Mit ${start} Bogen beginnen oder die Auflage kleiner machen.`,
  noSetUpSheet: 'Kein Bogen zum Einrichten: in jedem Lauf ist der erste gute Bogen gefährdet.',
  setUpOffcut: '1 Abschnitt des guten Papiers für jeden Lauf.',
  setUpSheets: ({ newsprint }) => `${newsprint} aus Zeitungspapier, dann 1 Abschnitt des guten Papiers, für jeden Lauf.`,

  // Nummern für den Bleistift.
  sheetTwice: 'Ein Bogen steht zweimal in der Liste.',
  nameSheets: 'Jedem Bogen einen eigenen Namen geben, mit Bleistift auf der Rückseite.',
  noGoodSheet: 'Kein einziger Bogen kam ohne ausschließenden Fehler durch alle Läufe.',
  lookAgain: 'Die Bogen noch einmal durchsehen oder mehr drucken.',
  spareSheets: ({ n }) => `${many(n, 'guter Bogen ist', 'gute Bogen sind')} übrig.`,
  largerOrDestroy: 'Vor dem Signieren: die Auflage größer angeben oder sie vernichten. Nach dem Signieren steht die Zahl fest.',
  fewerThanWanted: ({ numbered, target }) => `Nur ${numbered} von ${target} Bogen lassen sich nummerieren.`,
  writeSmaller: 'Unter alle die kleinere Zahl schreiben.',

  // Was der Bleistift schreibt.
  markEdition: ({ number, of }) => `${number}/${of}`,
  markVaried: ({ number, of }) => `E.V. ${number}/${of}`,
  markArtists: 'A/P',
  markBat: 'B.A.T.',
  markPrinters: 'P/P',
  markHorsCommerce: 'H.C.',
  markTrial: 'Farbprobe',
  markCancellation: 'Annullierungsdruck',
  markOneOf: ({ mark, number, of }) => `${mark} ${number}/${of}`,
  markState: ({ step }) => `Zustand ${step}`,
  markStateOneOf: ({ step, number, of }) => `Zustand ${step}, ${number}/${of}`,

  // Was mit einem Bogen war.
  offRegister: 'Passer stimmt nicht',
  smeared: 'verschmiert',
  blot: 'Klecks',
  thinInk: 'zu wenig Farbe',
  creased: 'geknickt',
  fingerprint: 'Fingerabdruck',
  spoiled: 'Makulatur',

  // Vorsicht, wo die Gefahr ist.
  cautionBlades:
    'Frische Klinge; weggelegt kommt die Kappe darauf. Von der haltenden Hand weg schneiden; ein Stahllineal mit erhöhtem Rand. Alte Klingen in eine geschlossene Dose. Bei einem Schnitt etwas Sauberes aufdrücken; ist er tief oder taub, zum Arzt. Kinder und Jugendliche schneiden nur, soweit Alter und örtliche Vorschriften es erlauben, und nie allein.',
  cautionInkLabel:
    'Zuerst Etikett und Sicherheitsdatenblatt lesen; sie entscheiden. Konservierungsmittel in Farbe auf Wasserbasis können die Haut reizen: Handschuhe tragen, Spritzer abwaschen. Am Tisch nicht essen, nichts in Becher füllen, aus denen getrunken wird.',
  cautionPigment:
    'Pigmente nicht verschlucken, ihren Staub nicht einatmen; trockenes Pulver nur unter einem Abzug und mit der Maske anrühren, die das Etikett verlangt. Ein Prüfzeichen sagt, dass Gefahren beurteilt und angegeben sind, nicht, dass es keine gibt.',
  cautionRetarder:
    'Handschuhe für Mischungen mit Verzögerer und Glyzerin; sie wiegen, nie nach Augenmaß gießen. Verschüttetes ist glatt: gleich aufwischen.',
  cautionLift: 'Einen großen Rahmen zu zweit heben. Das hochgeklappte Sieb sicher abstützen: ein fallender Rahmen bricht Finger.',
  cautionHinge: 'Hände weg, bevor das Sieb herunterkommt; niemand greift über die Platte, während jemand rakelt.',
  cautionClean:
    'Die Farbe vor dem Spülen abstreifen und abwischen; was in den Abfluss darf, sagen die örtlichen Vorschriften. Reinigungsmittel nach ihrem Etikett: Handschuhe an, Fenster auf, nie zwei davon mischen.',
  cautionSpray:
    'Beim Ausspritzen des Siebs Schutzbrille auf: Farbe und Reiniger spritzen zurück. Im Auge: sofort mit viel Wasser spülen, dann tun, was das Etikett sagt.',
  cautionFans:
    'Ventilatoren, Lampen und ihre Kabel bleiben trocken: weg von Becken und Schlauch, nie mit nassen Händen anfassen, und so verlegt, dass niemand stolpert. Es gelten die örtlichen Vorschriften für Nassräume.',
  cautionSolvent: 'Zuerst Wasser. Muss es ein Lösemittel sein: lüften, keine Flamme, Lappen in einen geschlossenen Metalleimer.',
  cautionEmulsion:
    'Lichtempfindliche Emulsion und Entschichter: Handschuhe und Schutzbrille, wie das Etikett sagt. UV-Lampen: Augen und Haut abschirmen.',
  cautionDust: 'Talkum und Papierstaub: feucht abwischen statt abblasen. Fluchtwege von trocknenden Bogen freihalten.',
  cautionStore: 'Jedes Glas geschlossen und beschriftet mit Inhalt und Mischtag; nie in Lebensmittelgläsern, die noch ihr Etikett tragen.',
};
