import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Die Befehlszeile: wie sie gerufen wird, was getippt wird, Dateien und Ordner. */
export const cli: Same<typeof en.cli> = {
  // Probleme als Zeilen.
  error: ({ problem }) => `Fehler: ${problem}`,
  warning: ({ problem }) => `Warnung: ${problem}`,
  note: ({ problem }) => `Hinweis: ${problem}`,
  unforeseen: 'Etwas ist schiefgegangen, das nicht schiefgehen sollte. Bitte melden, mit dem, was getippt wurde, und dem, was folgt:',

  // Der Aufruf.
  noSuchCommand: ({ command }) => `Laydown hat keinen Befehl „${command}“.`,
  seeCommands: '„laydown --help“ zählt alle auf.',
  noSuchLanguage: ({ language }) => `Laydown spricht kein „${language}“.`,
  chooseLanguage: ({ all }) => `${all} wählen.`,
  noSuchOption: ({ command }) => `„${command}“ hat keine solche Option.`,
  itTakes: ({ all }) => `Es gibt ${all}.`,
  quoteMinus: 'Zahlen, die zusammengehören, in Anführungszeichen setzen: "62 -38,5 12".',
  takesNoValue: 'Sie nimmt keinen Wert.',
  writeAlone: ({ option }) => `Nur ${option} schreiben.`,
  valueMissing: 'Sie braucht einen Wert.',
  writeAs: ({ option }) => `${option} schreiben.`,
  optionAndValue: ({ option }) => `${option} WERT`,
  optionNo: ({ option, n }) => `die Option ${option}, Nummer ${n}`,

  // Welche Arbeit, welche Schicht, welche Datei.
  whatIsDone: 'Was ist getan?',
  onlyFolders: 'Hier lässt sich nur eine Arbeit in einem Ordner vermerken.',
  markAtBench: 'Eine .laydown-Datei an der Werkbank vermerken.',
  whichFolder: 'Welcher Ordner?',
  nameFolder: 'Einen neuen Ordner für die Arbeit nennen.',
  jobExists: 'In diesem Ordner liegt schon eine Arbeit.',
  noSuchField: ({ field }) => `Die Arbeit hat kein Feld „${field}“.`,
  fieldsAre: ({ all }) => `Ihre Felder: ${all}.`,
  whichJob: 'Welche Arbeit?',
  nameJob: 'Einen Ordner mit job.json darin nennen oder eine .laydown-Datei.',
  cannotOpen: 'Die Arbeit lässt sich nicht mehr öffnen.',
  whichLayer: 'Welche Schicht?',
  nameOneOf: ({ all }) => `Eine davon nennen: ${all}.`,
  useOneOf: ({ all }) => `${all} schreiben.`,
  writeCorners: 'Vier Ecken in Pixeln schreiben: "120,80 2900,95 2880,3900 130,3880".',
  whichPhoto: 'Welches Foto?',
  namePicture: 'Eine JPEG-, PNG-, WebP- oder TIFF-Datei nennen.',

  // Zahlen, Farbtöne, Mengen, Messwerte.
  cannotUse: ({ text }) => `„${text}“ geht hier nicht.`,
  numberFromTo: ({ low, high }) => `Eine Zahl von ${low} bis ${high} angeben.`,
  wholeFromTo: ({ low, high }) => `Eine ganze Zahl von ${low} bis ${high} angeben.`,
  notLab: ({ text }) => `„${text}“ ist kein Lab-Farbton.`,
  giveLab: 'Drei Zahlen angeben, L, a und b, in Anführungszeichen: "62 -38,5 12".',
  notAmount: ({ text }) => `„${text}“ ist keine Menge.`,
  writeAmounts: 'Farbe=Gramm schreiben, mehrere mit Kommas: rockpool=70,clear-base=30.',
  noPatch: 'In dieser Datei steht kein Messwert.',
  otherFileOrLab: 'Eine andere wählen oder das Lab eintippen.',

  // Lesen.
  nothingHere: 'Hier ist nichts.',
  noSuchFile: 'Diese Datei gibt es nicht.',
  checkName: 'Den Namen prüfen und es noch einmal versuchen.',
  cannotRead: ({ why }) => `Das ist nicht zu lesen: ${why}.`,
  folderTooLarge: 'Im Ordner liegt weit mehr, als zu einer Arbeit gehört.',
  giveJobFolder: 'Den Ordner einer einzigen Arbeit angeben, nur mit ihren Zeichnungen und Bildern darin.',

  // Schreiben.
  fileExists: 'Eine Datei dieses Namens gibt es schon.',
  otherNameOrReplace: 'Einen anderen Namen wählen oder --replace sagen.',
  folderExists: 'Hier ist schon etwas.',
  otherFolderOrReplace: 'Mit --out einen anderen Ordner wählen oder --replace sagen, um das Neue an seine Stelle zu setzen.',
  foreignFiles: ({ files }) => `Im Ordner liegen Dateien, die nicht von Laydown sind: ${files}.`,
  otherFolder: 'Einen anderen Ordner wählen; nichts wurde angerührt.',
  folderStandsHere: 'Ein Ordner dieses Namens steht schon hier.',
  fileStandsHere: 'Eine Datei dieses Namens steht schon hier.',
  linkStandsHere: 'Das ist eine Verknüpfung zu einem anderen Ort, und beim Schreiben wird keiner Verknüpfung gefolgt.',
  otherName: 'Einen anderen Namen wählen.',
  intoTheJob: 'Das ist der Ordner der Arbeit selbst oder einer darin; was dort liegt, würde Teil der Arbeit.',
  folderHasJob: 'In diesem Ordner liegt eine Arbeit.',
  changedFiles: ({ files }) => `Hier wurde etwas geändert, seit Laydown es geschrieben hat: ${files}.`,
  otherKind: 'Hier hat Laydown etwas anderes geschrieben.',
  clearedLeftOver: ({ file }) => `Ein Laydown, das beendet wurde, hat etwas Halbes zurückgelassen; es ist weggeräumt: ${file}`,
  putBack: ({ folder }) => `Ein Laydown wurde beendet, während es diesen Ordner ersetzt hat; er liegt wieder da wie zuvor: ${folder}`,
  keptDated: ({ folder }) => `Was vorher da war, bleibt bis zum nächsten Mal: ${folder}`,
  cannotWrite: ({ why }) => `Das ließ sich nicht schreiben: ${why}.`,
  otherPlace: 'Einen anderen Ort wählen.',
  nothingHalfWritten: 'Nichts blieb halb geschrieben liegen. Platz schaffen oder mit --out einen anderen Ordner wählen.',
  diskFull: 'der Datenträger ist voll',
  diskReadOnly: 'der Datenträger lässt sich nur lesen',
  forbidden: 'hier fehlt das Recht zu lesen oder zu schreiben',
  fileInTheWay: 'eine Datei steht, wo ein Ordner sein müsste',
  folderInTheWay: 'ein Ordner steht, wo eine Datei sein müsste',
  noFolder: 'diesen Ordner gibt es nicht',
  diskFails: ({ what }) => `das System antwortet „${what}“`,

  // Was geschrieben wurde.
  written: ({ file }) => `Geschrieben: ${file}`,

  // Die Zählung teilen.
  shareCode: ({ address, code }) =>
    `Zum Zählen an der Presse: das Quadrat oben mit dem Telefon lesen oder dort ${address} öffnen und ${code} eintippen. Der Code gilt für ein Gerät; danach kommt der nächste.`,
  shareOpen:
    'Nicht vertraulich: Namen des Drucks, der Läufe und Bögen und die Zählung gehen unverschlüsselt über dieses Netz. Nur im eigenen Netz teilen. Strg-C beendet es.',
};
