import type { Phrases } from '../phrasebook.ts';

/** Was die Rechenseite der Werkbank selbst sagt. */
export const worker: Phrases = {
  'This stencil is not planned yet.': 'Diese Schablone ist noch nicht geplant.',
  'Wait a moment and try again.': 'Einen Augenblick warten und es noch einmal versuchen.',
  'There is no opening to bridge at this place.': 'An dieser Stelle ist keine Öffnung zu überbrücken.',
  'Point into an opening, between two parts of the paper.': 'In eine Öffnung zeigen, zwischen zwei Teile des Papiers.',
  'This stencil does not hold together, so its cut sheet is not written; the first place is at {x}, {y} mm.':
    'Diese Schablone hält nicht zusammen, also wird ihr Schneidbogen nicht geschrieben; die erste Stelle ist bei {x}, {y} mm.',
  'Nothing is planned yet.': 'Noch ist nichts geplant.',
  'the bench': 'die Werkbank',
  'The job is not planned yet.': 'Die Arbeit ist noch nicht geplant.',
  'the packet': 'die Druckmappe',
  'There is no job on the bench.': 'Auf der Werkbank liegt keine Arbeit.',
  'Open one first.': 'Zuerst eine öffnen.',
  'This browser cannot read the picture.': 'Dieser Browser kann das Bild nicht lesen.',
  'Save it as JPEG or PNG and choose it again.': 'Als JPEG oder PNG sichern und neu wählen.',
  'The picture has {count} megapixels.': 'Das Bild hat {count} Megapixel.',
  'Save it smaller; 12 megapixels are plenty.': 'Kleiner sichern; 12 Megapixel sind reichlich.',
  'This browser has no room for the picture.': 'Dieser Browser hat keinen Platz für das Bild.',
  'Save it smaller and choose it again.': 'Kleiner sichern und neu wählen.',
  'A part of Laydown is missing ({name}). Load the page again.': 'Ein Teil von Laydown fehlt ({name}). Die Seite neu laden.',
  'Sheet {n} was not drawn.': 'Bogen {n} wurde nicht ausgelost.',
  'Choose one of 0 to {most}.': 'Einen von 0 bis {most} wählen.',
  'This sheet of stock is not planned yet.': 'Dieser Bogen aus dem Vorrat ist noch nicht geplant.',
  'The photograph is no longer at hand.': 'Das Foto ist nicht mehr zur Hand.',
  'Choose it again.': 'Es neu wählen.',
  'The part of Laydown that works things out stopped and was started again.':
    'Der rechnende Teil von Laydown blieb stehen und wurde neu gestartet.',
};
