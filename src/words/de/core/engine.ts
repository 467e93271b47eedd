import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Was bei langer Arbeit gerade geschieht, und was der rechnende Teil der Werkbank selbst sagt. */
export const engine: Same<typeof en.engine> = {
  // Lange Arbeit
  drawingProofs: 'die Proofs zeichnen',

  // Noch nicht da
  notPlanned: 'Die Arbeit ist noch nicht geplant.',
  stencilNotPlanned: 'Diese Schablone ist noch nicht geplant.',
  stockNotPlanned: 'Dieser Bogen aus dem Vorrat ist noch nicht geplant.',
  waitAndTry: 'Einen Augenblick warten und es noch einmal versuchen.',
  noJob: 'Auf der Werkbank liegt keine Arbeit.',
  openOne: 'Zuerst eine öffnen.',
  sheetNotDrawn: ({ sheet }) => `Unter den ausgelosten Bogen ist kein Bogen ${sheet}.`,
  chooseSheet: ({ last }) => `Einen von 0 bis ${last} wählen.`,

  // Schablonen
  noOpening: 'An dieser Stelle ist keine Öffnung zu überbrücken.',
  pointIntoOpening: 'In eine Öffnung zeigen, zwischen zwei Teile des Papiers.',
  doesNotHold: ({ at }) =>
    `Diese Schablone hält nicht zusammen, also wird ihr Schneidbogen nicht geschrieben. Die erste Stelle zum Ausbessern ist bei ${at}.`,
  mendPlaces: 'Zuerst die an der Schablone markierten Stellen ausbessern.',

  // Bilder
  pictureUnread: 'Dieser Browser kann das Bild nicht lesen.',
  saveAsPicture: 'Als JPEG oder PNG sichern und neu wählen.',
  pictureTooLarge: ({ megapixels }) => `Das Bild hat ${megapixels} Megapixel.`,
  saveSmaller: 'Kleiner sichern; 12 Megapixel sind reichlich.',
  noRoom: 'Dieser Browser hat keinen Platz für das Bild.',
  saveSmallerAgain: 'Kleiner sichern und neu wählen.',
  photographGone: 'Das Foto ist nicht mehr zur Hand.',
  chooseAgain: 'Es neu wählen.',

  // Wenn etwas misslingt
  partMissing: ({ part }) => `Ein Teil von Laydown fehlt (${part}).`,
  loadAgain: 'Die Seite neu laden.',
  workerLost: 'Der rechnende Teil von Laydown blieb stehen und wurde neu gestartet.',
  pictureWorkerLost: 'Der Teil von Laydown, der Bilder bearbeitet, blieb stehen und wurde neu gestartet.',
  tookTooLong: 'Das hat länger gedauert, als eine Datei es darf; es wurde abgebrochen.',
  planStopped: 'Das Rechnen ist abgebrochen: Bilder und Zahlen sind alt oder fehlen.',
  planGoOn: 'Weiterrechnen, oder die Änderung zurücknehmen.',
  tryAgain: 'Es noch einmal versuchen. Bleibt er wieder stehen: die Arbeit sichern und die Seite neu laden.',
  wentWrong: 'Etwas ist schiefgegangen, womit Laydown nicht gerechnet hat.',
  saveAndReload: ({ trace }) => `Die Arbeit sichern und die Seite neu laden. Zur Fehlersuche: ${trace}`,
};
