import type { Phrases } from '../phrasebook.ts';

/** Schablonen. */
export const stencil: Phrases = {
  'Outline turned into pixels of {mmPerPx} mm; exact distance transform; discs of {bridge} mm (paper) and {opening} mm (openings) reach everything but points.':
    'Umriss in Pixel von {mmPerPx} mm gewandelt; genaue Abstandskarte; Scheiben von {bridge} mm (Papier) und {opening} mm (Öffnungen) erreichen alles außer Spitzen.',
  'No part of the cut lies inside the image; nothing would print.': 'Kein Teil des Schnitts liegt im Bild; nichts würde drucken.',
  'The piece covers the whole image; nothing would print.': 'Das Stück verdeckt das ganze Bild; nichts würde drucken.',
  'Move the form into the image, or make it another size.': 'Die Form ins Bild schieben oder ihre Größe ändern.',
  '{are} smaller than a bridge; ink will print there.': '{are*} kleiner als ein Steg; dort druckt Farbe.',
  'One island is': 'Eine Insel ist',
  '{count} islands are': '{count} Inseln sind',
  'Make the form larger, or lay the islands as loose pieces.': 'Die Form größer machen oder die Inseln als lose Teile legen.',
  '{places} of paper {were} too thin for {material} and made broader (first at {spot}).':
    '{places*} im Papier {were*} breiter gemacht: zu dünn für {material*} (zuerst bei {spot}).',
  'One place': 'Eine Stelle',
  '{thickened} places': '{thickened} Stellen',
  was: 'wurde',
  were: 'wurden',
  'Look at the proof; choose a firmer material or a larger form to keep the fine parts.':
    'Den Proof ansehen; ein festeres Material oder eine größere Form wählen, um die feinen Teile zu behalten.',
  '{openings} too narrow for the knife {were} made wider (first at {widened}).':
    '{openings*}, zu eng für das Messer, {were*} weiter gemacht (zuerst bei {widened}).',
  'One opening': 'Eine Öffnung',
  '{widened} openings': '{widened} Öffnungen',
  'Look at the proof, or make the form larger.': 'Den Proof ansehen oder die Form größer machen.',
  "This stencil can't be cut as it is: {places} (first at {spot}: {kind}).":
    'Diese Schablone lässt sich so nicht schneiden: {places*} (zuerst bei {spot}: {kind*}).',
  place: 'Stelle',
  places: 'Stellen',
  'Make the form larger, take fine parts away, choose a firmer material, or lay islands as loose pieces.':
    'Die Form größer machen, feine Teile wegnehmen, ein festeres Material wählen oder Inseln als lose Teile legen.',
  'Bridges and mends left no opening.': 'Stege und Ausbesserungen ließen keine Öffnung übrig.',
  'Make the form larger.': 'Die Form größer machen.',
  'a neck too thin': 'eine zu dünne Engstelle',
  'a piece too thin all over': 'ein überall zu dünnes Teil',
  'a long thin point': 'eine lange dünne Spitze',
  'an opening too narrow': 'eine zu enge Öffnung',
  'a part that nothing holds': 'ein Teil, den nichts hält',
  'The sheet leaves less than {least} mm around the image; it was made larger.':
    'Der Bogen lässt weniger als {least} mm um das Bild; er wurde größer gemacht.',
  'Plan a wider margin of stencil around the image.': 'Einen breiteren Rand der Schablone um das Bild planen.',
  'Nothing is cut.': 'Es wird nichts geschnitten.',
  Newsprint: 'Zeitungspapier',
  'Coated paper': 'Gestrichenes Papier',
  'Waxed paper': 'Gewachstes Papier',
  'Polyester film': 'Polyesterfolie',
  'Thin board': 'Dünner Karton',
  'Later runs print over the ridge that {material} ({thickness} mm) leaves along the edges of {layer}: {crossed}.':
    'Spätere Läufe drucken über den Farbwulst, den {material*} ({thickness} mm) an den Rändern von {layer} stehen lässt: {crossed}.',
  'Cut {layer} from thinner material, or print it after them.': '{layer} aus dünnerem Material schneiden oder nach ihnen drucken.',
  '“{id}” ({width} × {height} mm) does not fit on a sheet of {width2} × {height2} mm.':
    '„{id}“ ({width} × {height} mm) passt nicht auf einen Bogen von {width2} × {height2} mm.',
  'Use larger stock, or a smaller margin around the image.': 'Größeres Material nehmen oder einen kleineren Rand um das Bild.',
};
