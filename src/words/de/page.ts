import type { en } from '../en/index.ts';
import type { Same } from '../text.ts';

/** Was auf der Seite selbst misslingt, ehe der Kern gefragt wird. */
export const page: Same<typeof en.page> = {
  // Aufbewahren
  notKept: 'Was auf der Werkbank liegt, ist noch nirgends aufbewahrt, und eine andere Arbeit zu öffnen nimmt es weg.',
  saveOrOpenAgain: 'Zuerst als Datei sichern; oder die andere Arbeit noch einmal öffnen und diese aufgeben.',
  versionNotKept: 'Diese Fassung konnte nicht aufbewahrt werden: der Browser gibt Laydown keinen Platz.',
  saveAsFile: 'Die Arbeit stattdessen als Datei sichern.',

  // Dateien
  farTooLarge: 'Das ist weit mehr, als zu einer Arbeit gehört.',
  chooseJob: 'Eine .laydown-Datei wählen oder den Ordner einer einzigen Arbeit.',
  notADrawing: 'Das ist weder eine SVG- noch eine DXF-Zeichnung.',
  saveAsDrawing: 'Als SVG oder DXF sichern; Fotos kommen über „Foto nachzeichnen“ herein.',
  largerThan: ({ megabytes }) => `Die Datei ist größer als ${megabytes} MB.`,
  cutLess: 'Weglassen, was nicht geschnitten wird, und noch einmal sichern.',
  smallerPhotograph: 'Kleiner sichern; 12 Megapixel sind reichlich.',
  smallerPicture: 'Kleiner sichern; das Messer folgt einem Viertelmillimeter.',

  // Die Vorlage
  noPicture: 'Es ist keine Vorlage da, aus der Schablonen werden könnten.',
  choosePicture: 'Zuerst eine wählen.',
  nothingSeparated: 'Noch sind keine Schablonen daraus gemacht.',
  makeFirst: 'Sie zuerst machen.',
};
