import type { Phrases } from '../phrasebook.ts';

/** Presse: Gewebe, Rahmen, Absprung, Passer, Anlagen. */
export const press: Phrases = {
  'The image has no size.': 'Das Bild hat keine Größe.',
  'Give width and height in mm.': 'Breite und Höhe in mm angeben.',
  'The spread of register must be between 0 and 50 mm.': 'Die Streuung des Passers muss zwischen 0 und 50 mm liegen.',
  'Measure it with a test sheet, or leave it out.': 'Sie mit einem Testbogen messen oder weglassen.',
  'Nothing to do.': 'Nichts zu tun.',
  'Holds nineteen times in twenty; look at every sheet.': 'Hält neunzehnmal von zwanzig; jeden Bogen ansehen.',
  'Where these two should meet, let them overlap by {wanted} mm.':
    'Wo die beiden sich treffen sollen, sie um {wanted} mm überlappen lassen.',
  'or place the sheets by a finer method': 'oder die Bogen mit einem feineren Verfahren anlegen',
  'or keep the room’s humidity steadier (35 to 50 %) and let the paper rest in it for a day':
    'oder die Luftfeuchte des Raums gleichmäßiger halten (35 bis 50 %) und das Papier einen Tag darin ruhen lassen',
  'or print both with the same screen, place and gap': 'oder beide mit demselben Sieb, derselben Lage und demselben Absprung drucken',
  'or move the stops by the steady shift': 'oder die Anlagen um die stetige Verschiebung versetzen',
  'Spread {first} under {second} by {mm} mm where they meet (spread the lighter one; choke a window that surrounds it), {most}. In transparent inks the overlap shows as a third colour.':
    '{first} unter {second} um {mm} mm überfüllen, wo sie sich treffen (die hellere überfüllen; ein Fenster ringsum unterfüllen), {most*}. Bei transparenten Farben zeigt sich die Überlappung als dritter Farbton.',
  'layers {first}, {second}': 'Schichten {first}, {second}',
  '{second} can fall {off} mm off {first}, but they overlap by {forgives} mm only: bare paper can show.':
    '{second} kann {off} mm neben {first} fallen, aber sie überlappen nur um {forgives} mm: blankes Papier kann blitzen.',
  'Read a hygrometer in the room before each run.': 'Vor jedem Lauf ein Hygrometer im Raum ablesen.',
  'The growth of paper needs the span of humidity that it was measured over.':
    'Zum Wachsen des Papiers gehört die Spanne der Feuchte, über die es gemessen wurde.',
  'Give the span in points of humidity, such as 33.': 'Die Spanne in Prozentpunkten Feuchte angeben, etwa 33.',
  'The weighed sheet must have gained something on a printed area.':
    'Der gewogene Bogen muss auf einer gedruckten Fläche etwas zugenommen haben.',
  'Weigh ten sheets together before and at once after printing, and divide by ten.':
    'Zehn Bogen zusammen vor und gleich nach dem Druck wiegen und durch zehn teilen.',
  'No usable weighing.': 'Keine brauchbare Wägung.',
  'Weigh at least one sheet before and after printing.': 'Mindestens einen Bogen vor und nach dem Druck wiegen.',
  'A stencil {mm} mm thick cannot be printed.': 'Eine {mm} mm dicke Schablone lässt sich nicht drucken.',
  'Give the thickness of the sheet in mm: newsprint about 0.07, film 0.1 to 0.18.':
    'Die Dicke des Bogens in mm angeben: Zeitungspapier etwa 0,07, Folie 0,1 bis 0,18.',
  'The edge prints about as thick as the middle.': 'Der Rand druckt etwa so dick wie die Mitte.',
  'Within {ridge} mm of an edge the film can be up to {times} times as thick: darker rims, slower drying. A thinner stencil or a second, lighter stroke evens it.':
    'Innerhalb von {ridge} mm am Rand kann der Film bis zu {times}-mal so dick sein: dunklere Säume, langsameres Trocknen. Eine dünnere Schablone oder ein zweiter, leichterer Zug gleicht es aus.',
  'The range {low} to {high} does not run from a smaller to a larger share.':
    'Die Spanne {low} bis {high} läuft nicht von einem kleineren zu einem größeren Anteil.',
  'Give two shares, the smaller first, between 0 and {most}.': 'Zwei Anteile angeben, den kleineren zuerst, zwischen 0 und {most}.',
  'inside of the frame': 'Innenmaß des Rahmens',
  'The image ({image}) is larger than the sheet ({sheet}).': 'Das Bild ({image}) ist größer als der Bogen ({sheet}).',
  'Make the image smaller or take a larger sheet.': 'Das Bild kleiner machen oder einen größeren Bogen nehmen.',
  'ink well': 'Platz für die Farbe',
  'blade end': 'Platz neben der Rakel',
  'The image reaches {margin} past the inside of the frame ({sides}).':
    'Das Bild reicht {margin} über die Innenkante des Rahmens hinaus ({sides*}).',
  'Between image and frame there are {margin} ({sides}, {role}); {missing} are missing{ease}.':
    'Zwischen Bild und Rahmen sind {margin} ({sides*}, {role*}); {missing} fehlen{ease*}.',
  ' at least': ' mindestens',
  ' to print at ease': ', um bequem zu drucken',
  'The squeegee is {own}, the image {image} across the stroke; {own2} are missing.':
    'Die Rakel hat {own}, das Bild {image} quer zum Rakelzug; {own2} fehlen.',
  'Take one of {least} to {best}, or hinge the frame on another side.':
    'Eine von {least} bis {best} nehmen oder den Rahmen an einer anderen Seite anschlagen.',
  'The squeegee ({own}) leaves less than {room} to the frame at each end; the mesh cannot give.':
    'Die Rakel ({own}) lässt weniger als {room} zum Rahmen an jedem Ende; das Gewebe kann nicht nachgeben.',
  'Take one of at most {most}.': 'Eine von höchstens {most} nehmen.',
  'Put the image in the middle of the frame.': 'Das Bild in die Mitte des Rahmens setzen.',
  'Turn the image by a quarter on the screen.': 'Das Bild auf dem Sieb um ein Viertel drehen.',
  'Hinge the frame on the {bottom} side.': 'Das Scharnier an die Seite {bottom*} setzen.',
  'left or right': 'links oder rechts',
  'top or bottom': 'oben oder unten',
  '{text} Then it fits.': '{text*} Dann passt es.',
  '{text} Then {then} are missing instead of {now}.': '{text*} Dann fehlen {then} statt {now}.',
  'A frame of {wanted} inside holds this image at ease.': 'Ein Rahmen von {wanted} innen fasst dieses Bild bequem.',
  'An image of {scale} fits this frame{care}.': 'Ein Bild von {scale} passt in diesen Rahmen{care*}.',
  ' with care': ', mit Vorsicht',
  'The {what} cannot be {width} × {height} mm.': '{what*}: {width} × {height} mm sind nicht möglich.',
  'Give width and height in mm, both above nought.': 'Breite und Höhe in mm angeben, beide über null.',
  'Area, film, pulls and what stays must be nought or more, and the density above nought.':
    'Fläche, Film, Drucke und Verbleibendes müssen null oder mehr sein, die Dichte über null.',
  'Check mesh, ink density and number of sheets.': 'Gewebe, Dichte der Farbe und Zahl der Bogen prüfen.',
  'A range runs from its larger to its smaller end.': 'Eine Spanne läuft von ihrem größeren zum kleineren Ende.',
  'Write the smaller figure first.': 'Die kleinere Zahl zuerst schreiben.',
  'No sheet goes through this run.': 'Durch diesen Lauf geht kein Bogen.',
  'The sheets take {grams} g; most of the pot ({share} %) is what screen and knife keep. Scrape it back into a labelled jar.':
    'Die Bogen nehmen {grams} g; das meiste im Topf ({share} %) behalten Sieb und Spachtel. In ein beschriftetes Glas zurückstreichen.',
  'The sheets take {grams} g, screen and knife keep about {staying} g.':
    'Die Bogen nehmen {grams} g, Sieb und Spachtel behalten etwa {staying} g.',
  'The drawing has no least detail.': 'Die Zeichnung hat keine feinste Einzelheit.',
  'Give its narrowest line in mm.': 'Ihre schmalste Linie in mm angeben.',
  'lines under {detail} mm get saw-toothed edges': 'Linien unter {detail} mm bekommen Sägezähne',
  'grains of {grain} µm block openings of {opening} µm': 'Körner von {grain} µm verstopfen Maschen von {opening} µm',
  '{lines} lines a cm need at least {lines2} threads a cm': '{lines} Linien je cm brauchen mindestens {lines2} Fäden je cm',
  'lays down about {wet} µm instead of {wanted}': 'legt etwa {wet} µm auf statt {wanted}',
  'A mesh cannot have {value} here.': 'Ein Gewebe kann hier nicht {value} haben.',
  'Copy the figure from the mesh, or leave it out.': 'Den Wert vom Gewebe ablesen oder weglassen.',
  '{perCm} threads a cm leave {pitch} µm for each, and the thread is {thread} µm: nothing is open.':
    '{perCm} Fäden je cm lassen jedem {pitch} µm, und der Faden hat {thread} µm: nichts ist offen.',
  'Check that the count is per cm and not per inch (divide threads per inch by 2.54).':
    'Prüfen, ob die Zahl je cm gilt und nicht je Zoll (Fäden je Zoll durch 2,54 teilen).',
  '{percent} % open leaves no thread.': '{percent} % offen lassen keinen Faden übrig.',
  'Copy the open area from the mesh, or leave it out.': 'Die offene Fläche vom Gewebe ablesen oder weglassen.',
  'A mesh cannot have a tension of {tension} N/cm.': 'Ein Gewebe kann keine Spannung von {tension} N/cm haben.',
  'Leave the tension out when it is not known.': 'Die Spannung weglassen, wenn sie nicht bekannt ist.',
  'A mesh of {tension} N/cm needs at most 1/16 in (1.6 mm).': 'Ein Gewebe von {tension} N/cm braucht höchstens 1/16 in (1,6 mm).',
  'A print up to {n} on slack mesh ({tension} N/cm): half as much again as usual. New mesh would keep register better.':
    'Ein Druck bis {n} auf schlaffem Gewebe ({tension} N/cm): um die Hälfte mehr als üblich. Neues Gewebe hielte besser Passer.',
  'A print up to {n} by hand{not}. Enough when the mesh snaps up behind the blade.':
    'Ein Druck bis {n} von Hand{not*}. Genug, wenn das Gewebe hinter der Rakel hochschnellt.',
  ', tension not known': ', Spannung nicht bekannt',
  'A gap of {to} mm is no gap that a screen has.': '{to*} mm sind kein Absprung, den ein Sieb hat.',
  'Give the gap between mesh and paper in mm, usually 1.5 to 6.': 'Den Absprung zwischen Gewebe und Papier in mm angeben, meist 1,5 bis 6.',
  'The inside of the frame ({frame} mm) leaves no mesh around the image ({image} mm).':
    'Das Innere des Rahmens ({frame} mm) lässt rings um das Bild ({image} mm) kein Gewebe.',
  'Take a larger frame or a smaller image.': 'Einen größeren Rahmen oder ein kleineres Bild nehmen.',
  'A gap of {gap} mm stretches the mesh by {n} % so near the frame: it can tear or come off the frame.':
    '{gap} mm Absprung dehnen das Gewebe um {n} %, so nah am Rahmen: es kann reißen oder sich vom Rahmen lösen.',
  'Lower the gap to about {safe} mm or leave more room between image and frame.':
    'Den Absprung auf etwa {safe} mm senken oder mehr Platz zwischen Bild und Rahmen lassen.',
  'A gap of {gap} mm stretches the mesh by {n} %: the edges of the image drift outwards and the mesh slackens in time.':
    '{gap} mm Absprung dehnen das Gewebe um {n} %: die Ränder des Bildes wandern nach außen, und das Gewebe wird mit der Zeit schlaff.',
  'Three stops, torn or deckle edge': 'Drei Anlagen, gerissener oder Büttenrand',
  'Three stops, cut edge': 'Drei Anlagen, geschnittener Rand',
  'Hinged clear sheet': 'Klare Folie am Scharnier',
  'Punched pins': 'Gelocht auf Stifte',
  'Marks by eye': 'Marken nach Augenmaß',
  'measured here: σ {sigma} mm': 'hier gemessen: σ {sigma} mm',
  '{name}: ± {mm} to {mm2} mm, common practice; print a test sheet to know your own':
    '{name*}: ± {mm} bis {mm2} mm, übliche Praxis; einen Testbogen drucken, um den eigenen Wert zu kennen',
  'Gap, paper, stencil and hinge must be heights in mm, nought or more.':
    'Absprung, Papier, Schablone und Scharnier müssen Höhen in mm sein, null oder mehr.',
  'Measure how high the clamps hold the mesh above the board.': 'Messen, wie hoch die Klemmen das Gewebe über der Platte halten.',
  'The image must lie between the hinge and the front of the frame.':
    'Das Bild muss zwischen dem Scharnier und der Vorderseite des Rahmens liegen.',
  'Give the frame’s length and where the image begins and ends, from the hinge.':
    'Die Länge des Rahmens angeben und wo das Bild beginnt und endet, vom Scharnier aus.',
  'A board or coin needs a thickness.': 'Eine Pappe oder Münze braucht eine Dicke.',
  'Measure ten of them together and divide by ten.': 'Zehn zusammen messen und durch zehn teilen.',
  'With risers at the front alone the gap runs from {gap} to {gap2} mm over the image.':
    'Mit Unterlagen nur vorn läuft der Absprung über das Bild von {gap} bis {gap2} mm.',
  'Pack {mm} mm under the hinge clamps too.': 'Auch unter die Scharnierklemmen {mm} mm legen.',
  'Lay {mm} mm of board under the paper too.': 'Auch unter das Papier {mm} mm Pappe legen.',
  'Shifts can be drawn for 1 to 100000 sheets of 1 to 64 layers.':
    'Verschiebungen lassen sich für 1 bis 100000 Bogen mit 1 bis 64 Schichten auslosen.',
  'Ask for fewer.': 'Weniger verlangen.',
  'The spread of register must be nought or more.': 'Die Streuung des Passers muss null oder mehr sein.',
  'The image reaches past the edge of the sheet.': 'Das Bild reicht über den Rand des Bogens.',
  'Move it, make it smaller or take a larger sheet.': 'Es verschieben, kleiner machen oder einen größeren Bogen nehmen.',
  'A torn edge never lies twice in the same way.': 'Ein gerissener Rand liegt nie zweimal gleich an.',
  'Tape a strip of cut card to the back of each sheet and push that against the stops, or use pins.':
    'Auf die Rückseite jedes Bogens einen Streifen geschnittenen Kartons kleben und den an die Anlagen schieben, oder Stifte nehmen.',
  'Tape this drawing to the board under the screen so that the image lies under the aperture.':
    'Diese Zeichnung unter dem Sieb auf die Platte kleben, sodass das Bild unter der Öffnung liegt.',
  'Glue the three stops on their places: {thickness} to {thickness2} mm thick, edges straight.':
    'Die drei Anlagen an ihre Plätze kleben: {thickness} bis {thickness2} mm dick, mit geraden Kanten.',
  'Push each sheet against 1 and 2 first, then along to 3, always with the same hand.':
    'Jeden Bogen zuerst an 1 und 2 schieben, dann entlang bis 3, immer mit derselben Hand.',
  'Leave the stops alone until the last run is done.': 'Die Anlagen in Ruhe lassen, bis der letzte Lauf fertig ist.',
  'No stencil sheet can be held around this image: it comes within 10 mm of the frame.':
    'Um dieses Bild herum hält kein Schablonenbogen: es kommt dem Rahmen näher als 10 mm.',
  'Lay this drawing under the dry screen, the frame’s inside on the outer line.':
    'Diese Zeichnung unter das trockene Sieb legen, das Innere des Rahmens auf die äußere Linie.',
  'Lay the stencil on the paper side, or on the stack if the ink is to hold it.':
    'Die Schablone auf die Papierseite legen, oder auf den Stapel, falls die Farbe sie halten soll.',
  'Tape {strips} strips ({metres} m) in the order of their numbers: top, bottom, left, right.':
    '{strips} Streifen ({metres} m) in der Folge ihrer Nummern kleben: oben, unten, links, rechts.',
  'Hold the screen against the light: every bright gap outside the aperture would print.':
    'Das Sieb gegen das Licht halten: jeder helle Spalt außerhalb der Öffnung würde drucken.',
  '{sheets} test sheets cannot tell chance from a steady shift.':
    '{sheets} Testbogen können Zufall und stetige Verschiebung nicht trennen.',
  'Read at least 3, better 10 sheets.': 'Mindestens 3 Bogen ablesen, besser 10.',
  'register, sheet {sheet}': 'Passer, Bogen {sheet}',
  'The test sheet has no place “{place}”.': 'Der Testbogen hat keine Stelle „{place*}“.',
  'Its places are: {id}.': 'Seine Stellen sind: {id}.',
  'register, sheet {sheet}, {place}': 'Passer, Bogen {sheet}, {place*}',
  'A reading is missing.': 'Eine Ablesung fehlt.',
  'Write both, across and down.': 'Beide schreiben, quer und hoch.',
  'From {sheets} sheets the spread is known only roughly.': 'Aus {sheets} Bogen ist die Streuung nur grob bekannt.',
  'Ten sheets or more tell it better.': 'Zehn Bogen oder mehr sagen es besser.',
  "The spread is finer than the scale's steps of {step} mm can tell.":
    'Die Streuung ist feiner, als die Schritte der Skala von {step} mm zeigen.',
  'Take the figure as “no worse than”, or print the test with a finer step.':
    'Den Wert als „nicht schlechter als“ nehmen oder den Test mit feinerem Schritt drucken.',
  'The register creeps {down} by {axis} mm a sheet.': 'Der Passer wandert {down*} um {axis} mm je Bogen.',
  across: 'quer',
  down: 'nach unten',
  'Look for a loose stop or hinge, or paper that dries while you print.':
    'Nach einer losen Anlage oder einem losen Scharnier sehen oder nach Papier, das beim Drucken trocknet.',
  'The lines of the scale would run into one another.': 'Die Linien der Skala würden ineinanderlaufen.',
  'Take a longer pitch or thinner lines.': 'Einen größeren Abstand oder dünnere Linien nehmen.',
  'A test sheet needs at least {across} mm each way.': 'Ein Testbogen braucht mindestens {across} mm in jeder Richtung.',
  'Print it larger, or take fewer steps.': 'Größer drucken oder weniger Stufen nehmen.',
  bottom: 'unten',
  top: 'oben',
  right: 'rechts',
  left: 'links',
  'Print the first run on ten sheets or more, let them dry, then the second run; number the backs in the order of printing.':
    'Den ersten Lauf auf zehn Bogen oder mehr drucken, trocknen lassen, dann den zweiten Lauf; die Rückseiten in der Folge des Drucks nummerieren.',
  'On each scale find the pair of lines that meets best; its number times {step} mm is the shift (to the right and down positive).':
    'Auf jeder Skala das Linienpaar suchen, das sich am besten trifft; seine Nummer mal {step} mm ist die Verschiebung (nach rechts und unten positiv).',
  'Write place, sheet, across and down. At least two places tell the turn.':
    'Stelle, Bogen, quer und hoch aufschreiben. Mindestens zwei Stellen zeigen die Drehung.',
  '{file}, line {row}': '{file}, Zeile {row}',
  'Write sheet, place, across, down: 3, top left, -2, 1. laydown register JOB --form prints an empty table.':
    'Bogen, Stelle, quer, hoch schreiben: 3, top left, -2, 1. laydown register JOB --form druckt eine leere Tabelle.',
  'It has {cells} of 4 columns.': 'Sie hat {cells} von 4 Spalten.',
  '“{cells}” is no number of a sheet.': '„{cells}“ ist keine Bogennummer.',
  '“{cells}” is no line of the scale.': '„{cells}“ ist keine Linie der Skala.',
  'register test, sheet {sheet}, {place}': 'Passertest, Bogen {sheet}, {place*}',
  'The scales have no line {line}.': 'Die Skalen haben keine Linie {line}.',
  'Lines run from −{lines} to {lines2}, halves may be written; what lies farther off is measured with a rule and written in mm.':
    'Die Linien gehen von −{lines} bis {lines2}, Halbe sind erlaubt; was weiter danebenliegt, wird mit dem Lineal gemessen und in mm geschrieben.',
  'This place of this sheet was read twice.': 'Diese Stelle dieses Bogens wurde zweimal abgelesen.',
  'Keep one of the two readings.': 'Eine der beiden Ablesungen behalten.',
  '{x} mm to the {left}': '{x} mm nach {left*}',
  up: 'nach oben',
  'The second run lies {and} on every sheet: lay stencil or screen back by as much before a run; chance is not to blame.':
    'Der zweite Lauf liegt auf jedem Bogen {and*}: Schablone oder Sieb vor einem Lauf um ebenso viel zurücksetzen; Zufall ist nicht schuld.',
  'It is turned by {mean}° {turn} on every sheet: set the stencil straight in the frame, or move one of the two stops.':
    'Er ist auf jedem Bogen um {mean}° {turn*} gedreht: die Schablone gerade in den Rahmen setzen oder eine der beiden Anlagen versetzen.',
  clockwise: 'im Uhrzeigersinn',
  anticlockwise: 'gegen den Uhrzeigersinn',
  'It is {percent} % {smaller}: another gap, or paper that moved with damp between the runs.':
    'Er ist um {percent} % {smaller*}: ein anderer Absprung, oder Papier, das sich zwischen den Läufen mit der Feuchte bewegt hat.',
  larger: 'größer',
  smaller: 'kleiner',
};
