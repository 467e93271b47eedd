import type { Phrases } from '../phrasebook.ts';

/** Formen: Zeichnungen lesen, Fotos nachzeichnen. */
export const form: Phrases = {
  'The file is too large.': 'Die Datei ist zu groß.',
  'Leave out what is not to be cut.': 'Weglassen, was nicht geschnitten werden soll.',
  'This DXF file is in its binary form.': 'Diese DXF-Datei liegt in binärer Form vor.',
  'Save it as a text (ASCII) DXF.': 'Als DXF in Textform (ASCII) sichern.',
  'The file says no unit of length; millimetres were taken.': 'Die Datei nennt keine Längeneinheit; Millimeter wurden angenommen.',
  'Give the form its true size in the job.': 'Der Form in der Arbeit ihre wahre Größe geben.',
  '{do} not close; {were} left out.': '{do*} nicht; {were*} weggelassen.',
  'One line does': 'Eine Linie schließt sich',
  '{open} lines do': '{open} Linien schließen sich',
  'it was': 'sie wurde',
  'they were': 'sie wurden',
  'Close the outlines in the drawing.': 'Die Umrisse in der Zeichnung schließen.',
  'No closed outline was found.': 'Es wurde kein geschlossener Umriss gefunden.',
  'Close the outlines in the drawing and save it again as DXF.': 'Die Umrisse in der Zeichnung schließen und neu als DXF sichern.',
  '{place} line {i}': '{place} Zeile {i}',
  'This is not a DXF file, or it is damaged here.': 'Das ist keine DXF-Datei, oder sie ist hier beschädigt.',
  'Save the drawing again as DXF.': 'Die Zeichnung neu als DXF sichern.',
  'This is not a DXF file.': 'Das ist keine DXF-Datei.',
  'The file holds text; it was left out.': 'Die Datei enthält Text; er wurde weggelassen.',
  'Turn the text into outlines if it is to be cut.': 'Den Text in Umrisse umwandeln, falls er geschnitten werden soll.',
  'The file holds fillings or solids; only plain outlines were read.':
    'Die Datei enthält Füllungen oder Körper; nur einfache Umrisse wurden gelesen.',
  'Explode them into lines and save it again.': 'Sie in Linien auflösen und neu sichern.',
  'A curve is given only by points that it passes; straight lines were taken between them.':
    'Eine Kurve ist nur durch Punkte gegeben, durch die sie geht; dazwischen wurden gerade Linien genommen.',
  'Turn curves into polylines in the program it came from, then save it again.':
    'Kurven in dem Programm, aus dem sie kommt, in Linienzüge umwandeln und neu sichern.',
  'Written out, the drawing’s blocks make too many lines.': 'Ausgeschrieben ergeben die Blöcke der Zeichnung zu viele Linien.',
  'Only {placements} of {count} copies fit with {least} mm between them.':
    'Nur {placements} von {count} Wiederholungen passen mit {least} mm Abstand.',
  'Ask for fewer copies or a smaller distance.': 'Weniger Wiederholungen oder einen kleineren Abstand nehmen.',
  'The drawing has {e} million characters; {e2} million is the most.':
    'Die Zeichnung hat {e} Millionen Zeichen; {e2} Millionen sind das Höchste.',
  'Simplify it in the program it came from.': 'Sie in dem Programm vereinfachen, aus dem sie kommt.',
  'A style in the drawing moves or sizes shapes in a way that was not followed.':
    'Ein Stil in der Zeichnung verschiebt oder ändert Formen auf eine Weise, der hier nicht gefolgt wurde.',
  'Save it as plain SVG, with attributes in place of styles.': 'Als einfaches SVG sichern, mit Attributen statt Stilen.',
  'The drawing uses blur, shadow or another effect; a knife cuts the plain outline.':
    'Die Zeichnung verwendet Unschärfe, Schatten oder einen anderen Effekt; ein Messer schneidet den bloßen Umriss.',
  'Nothing to do if the shapes look right.': 'Nichts zu tun, wenn die Formen richtig aussehen.',
  'The file breaks off or is not a drawing in SVG ({d}).': 'Die Datei bricht ab oder ist keine Zeichnung in SVG ({d}).',
  'Save it again as plain SVG.': 'Neu als einfaches SVG sichern.',
  'The drawing refers to other files; they were not opened.': 'Die Zeichnung verweist auf andere Dateien; sie wurden nicht geöffnet.',
  'Put everything into the drawing itself.': 'Alles in die Zeichnung selbst legen.',
  'Groups lie more than {most} deep inside one another.': 'Gruppen liegen mehr als {most}-fach ineinander.',
  'Ungroup the drawing and save it again.': 'Die Gruppen der Zeichnung auflösen und neu sichern.',
  'The file begins with “{tag}”, not with a drawing in SVG.': 'Die Datei beginnt mit „{tag}“, nicht mit einer Zeichnung in SVG.',
  'Save the drawing as plain SVG.': 'Die Zeichnung als einfaches SVG sichern.',
  'The drawing holds a script or part of a web page; it was left out.':
    'Die Zeichnung enthält ein Skript oder ein Stück Webseite; es wurde weggelassen.',
  'The drawing moves; its resting state was taken.': 'Die Zeichnung bewegt sich; ihr Ruhezustand wurde genommen.',
  'Some lines keep their width when scaled, or have their dashes counted along the whole line; they were taken as plain lines.':
    'Manche Linien behalten beim Skalieren ihre Breite oder zählen ihre Striche über die ganze Linie; sie wurden als einfache Linien genommen.',
  'Turn these lines into filled shapes in the program they came from, if they look different.':
    'Diese Linien in ihrem Programm in gefüllte Formen umwandeln, falls sie anders aussehen.',
  'The drawing holds a picture made of pixels; a knife needs outlines.':
    'Die Zeichnung enthält ein Bild aus Pixeln; ein Messer braucht Umrisse.',
  'Trace the picture as a photograph of its own, or take it out of the drawing.':
    'Das Bild für sich als Foto nachzeichnen lassen oder aus der Zeichnung nehmen.',
  'The drawing has more than {most} elements.': 'Die Zeichnung hat mehr als {most} Elemente.',
  'The drawing holds text (“{content}”); a knife needs outlines.': 'Die Zeichnung enthält Text („{content}“); ein Messer braucht Umrisse.',
  'Turn the text into outlines in the program it came from, then save it again.':
    'Den Text in seinem Programm in Umrisse umwandeln, dann neu sichern.',
  'There is no drawing in this file.': 'In dieser Datei ist keine Zeichnung.',
  "Written out, the drawing's repeats make more than {most} elements.":
    'Ausgeschrieben ergeben die Wiederholungen der Zeichnung mehr als {most} Elemente.',
  'Use fewer repeats in the drawing, or repeat the form in the job.':
    'In der Zeichnung weniger wiederholen oder die Form in der Arbeit wiederholen.',
  'The file hides its contents behind abbreviations that lead to one another.':
    'Die Datei versteckt ihren Inhalt hinter Abkürzungen, die aufeinander verweisen.',
  'All shapes lie outside the drawing’s page.': 'Alle Formen liegen außerhalb der Seite der Zeichnung.',
  'Nothing visible is drawn.': 'Nichts Sichtbares ist gezeichnet.',
  'Fill the shapes that are to be cut, and fit the page to them.':
    'Die Formen füllen, die geschnitten werden sollen, und die Seite daran anpassen.',
  'Shapes reach over the edge of the drawing’s page; they were cut off there, as every viewer shows them.':
    'Formen ragen über den Rand der Seite; sie wurden dort abgeschnitten, wie jede Anzeige sie zeigt.',
  'Make the page larger if they should be whole.': 'Die Seite größer machen, falls sie ganz bleiben sollen.',
  'The drawing’s page has no width or no height.': 'Die Seite der Zeichnung hat keine Breite oder keine Höhe.',
  'Give it a page size (width, height or viewBox) and save it again.':
    'Ihr eine Seitengröße geben (width, height oder viewBox) und neu sichern.',
  'The drawing could not be understood ({why}).': 'Die Zeichnung war nicht zu verstehen ({why}).',
  'Save it again as plain SVG, without effects.': 'Neu als einfaches SVG sichern, ohne Effekte.',
  'White shapes count as shapes too.': 'Auch weiße Formen zählen als Formen.',
  'Take them out of the drawing, or cut them out of the form, if they stand for bare paper.':
    'Sie aus der Zeichnung nehmen oder aus der Form herausschneiden, falls sie blankes Papier meinen.',
  'A shape is filled with a pattern; its whole area was taken.':
    'Eine Form ist mit einem Muster gefüllt; ihre ganze Fläche wurde genommen.',
  'Turn the pattern into shapes if they are to be cut.': 'Das Muster in Formen umwandeln, falls es geschnitten werden soll.',
  'Shapes lie so far from the drawing’s origin, or are so huge, that their outlines come out coarse.':
    'Formen liegen so weit vom Nullpunkt der Zeichnung oder sind so riesig, dass ihre Umrisse grob werden.',
  'Move everything near the origin in the program it came from, then save it again.':
    'In ihrem Programm alles nahe an den Nullpunkt schieben, dann neu sichern.',
  'A mask in the drawing fades out; a knife cannot.': 'Eine Maske in der Zeichnung läuft sanft aus; ein Messer kann das nicht.',
  'Use a clip path or a mask of plain black and white.': 'Einen Beschnittpfad oder eine Maske nur aus Schwarz und Weiß verwenden.',
  'No bright sheet with four corners was found in the photograph.': 'Im Foto wurde kein heller Bogen mit vier Ecken gefunden.',
  'Lay the thing on white paper on a darker table, all four corners in the picture, or set the corners by hand.':
    'Den Gegenstand auf weißem Papier auf einen dunkleren Tisch legen, alle vier Ecken im Bild, oder die Ecken von Hand setzen.',
  'The sheet has no size.': 'Der Bogen hat keine Größe.',
  'Say which paper the thing lies on.': 'Sagen, auf welchem Papier der Gegenstand liegt.',
  'The photograph has only {pixels} pixels for a millimetre.': 'Das Foto hat nur {pixels} Pixel je Millimeter.',
  'Go nearer or use a sharper camera for fine outlines.': 'Für feine Umrisse näher herangehen oder eine schärfere Kamera nehmen.',
  'The resolution of the scan is not known or makes no sense.': 'Die Auflösung des Scans ist nicht bekannt oder ergibt keinen Sinn.',
  'Give the pixels per inch that the scanner was set to.': 'Die Pixel je Zoll angeben, auf die der Scanner gestellt war.',
  'The picture has no true size.': 'Das Bild hat keine wahre Größe.',
  'Give its width in millimetres.': 'Seine Breite in Millimetern angeben.',
  "A picture of {width} × {height} pixels can't be traced.": 'Ein Bild von {width} × {height} Pixeln lässt sich nicht nachzeichnen.',
  'Use one of at least 16 pixels and at most 120 million.': 'Eines von mindestens 16 Pixeln und höchstens 120 Millionen nehmen.',
  'Nothing that stands out from the paper was found.': 'Es wurde nichts gefunden, was sich vom Papier abhebt.',
  'Use more even light, or say how dark or colourful the thing is.':
    'Gleichmäßigeres Licht nehmen oder sagen, wie dunkel oder farbig der Gegenstand ist.',
  'The drawing has too many lines that cross or crowd one another.': 'Die Zeichnung hat zu viele Linien, die sich kreuzen oder drängen.',
  'Simplify it in the program it came from; a knife needs plain outlines.':
    'Sie in dem Programm vereinfachen, aus dem sie kommt; ein Messer braucht einfache Umrisse.',
};
