import type { Phrases } from '../phrasebook.ts';

/** Der Plan. */
export const plan: Phrases = {
  'The job has no paper that was read.': 'Die Arbeit hat kein Papier, das gemessen wurde.',
  'The job has no paper “{id}” that was read.': 'Die Arbeit hat kein Papier „{id}“, das gemessen wurde.',
  'none yet': 'noch keines',
  'The job has no layer “{n}”.': 'Die Arbeit hat keine Schicht „{n}“.',
  'An order needs at least two layers whose ink is decided.': 'Eine Folge braucht mindestens zwei Schichten, deren Farbe entschieden ist.',
  'Choose inks for the layers first.': 'Zuerst Farben für die Schichten wählen.',
  'layer “{layer}”': 'Schicht „{layer}“',
  'Its ink is not decided yet, so no colour is wanted of its pot.':
    'Ihre Farbe ist noch nicht entschieden, also wird von ihrem Topf kein Farbton verlangt.',
  'Choose an ink first.': 'Zuerst eine Farbe wählen.',
  'round {i}': 'Aufzug {i}',
  'Its ink is not decided yet, so its pot holds nothing.': 'Ihre Farbe ist noch nicht entschieden, also enthält ihr Topf nichts.',
  'the print of then': 'der Druck von damals',
  'the recipe': 'das Rezept',
  'Its ink is not decided yet, so there is nothing to mix.': 'Ihre Farbe ist noch nicht entschieden, also ist nichts zu mischen.',
  'The shelf has no lot “{lot}” of it.': 'Das Regal hat davon keine Charge „{lot}“.',
  'A mix is no lot of its own; it stays in the job.': 'Eine Mischung ist keine eigene Charge; sie bleibt in der Arbeit.',
  'The inks it is mixed of are on the shelf.': 'Die Farben, aus denen sie gemischt ist, stehen im Regal.',
  'Every box of the sheet still looks like bare paper.': 'Jedes Feld des Bogens sieht noch wie blankes Papier aus.',
  'Draw the ink down in the boxes, let it dry, and photograph it again.':
    'Die Farbe in den Feldern aufziehen, trocknen lassen und neu fotografieren.',
  'Islands given up: {count}. Ink prints over {area} mm² more than drawn, seen as ΔE00 {deltaE}.':
    'Weggelassene Inseln: {count}. Farbe druckt über {area} mm² mehr als gezeichnet, zu sehen als ΔE00 {deltaE}.',
  'Bridge them, or lay them as loose pieces, if that shows too much.': 'Sie mit Stegen halten oder lose legen, falls das zu sehr auffällt.',
  'Without its islands it would show less (ΔE00 {deltaE} over {area} mm²) than with its bridges (ΔE00 {deltaE2} over {area2} mm²).':
    'Ohne ihre Inseln fiele es weniger auf (ΔE00 {deltaE} auf {area} mm²) als mit ihren Stegen (ΔE00 {deltaE2} auf {area2} mm²).',
  'Drop the islands if the drawing can do without them.': 'Die Inseln weglassen, wenn die Zeichnung ohne sie auskommt.',
  'For run {run} ({name}) make the gap {gap}.': 'Für Lauf {run} ({name}) den Absprung auf {gap} stellen.',
  'Gap between mesh and paper {gap}.': 'Absprung zwischen Gewebe und Papier {gap}.',
  'amount on the mixing card': 'Menge auf der Mischkarte',
  '{side} in {l}': '{side*}, {l*}',
  '{perCm} threads a cm, {thread} µm': '{perCm} Fäden je cm, {thread} µm',
  'layer {id}, offContactMm': 'Schicht {id}, offContactMm',
  'Run {run} ({layer}): {message}': 'Lauf {run} ({layer}): {message*}',
  'the {has} mm that the drawing forgives': 'den {has} mm, die die Zeichnung verzeiht',
  'the ± {mm} mm that one layer may be off': 'den ± {mm} mm, um die eine Schicht danebenliegen darf',
  'Run {run} ({n}) prints with a gap of {gap} mm, the others with {gap2} mm: its image is {larger} by {across} mm across the stroke and {along} mm along it, so its edges lie {edge} mm off. That is {share} % of {budget}.':
    'Lauf {run} ({n}) druckt mit {gap} mm Absprung, die anderen mit {gap2} mm: sein Bild ist {larger*}, um {across} mm quer zum Rakelzug und {along} mm längs, seine Ränder liegen also {edge} mm daneben. Das sind {share} % von {budget*}.',
  'Print all runs with one gap, or take {best} mm here: then it costs a quarter of the register at most.':
    'Alle Läufe mit demselben Absprung drucken oder hier {best} mm nehmen: dann kostet es höchstens ein Viertel des Passers.',
  'Keep it in mind where this run must meet another.': 'Daran denken, wo dieser Lauf einen anderen treffen muss.',
  'Worked out from the inks it is mixed of.': 'Aus den Farben berechnet, aus denen sie gemischt ist.',
  'Transparent base': 'Transparentbase',
  ' Over the earlier print the ground itself is known from a picture only: ΔE00 5 more.':
    ' Über dem früheren Druck ist der Grund selbst nur aus einem Bild bekannt: ΔE00 5 mehr.',
  'No screen is chosen yet: films and grams are for a usual mesh ({perCm} threads a cm).':
    'Noch ist kein Sieb gewählt: Filme und Gramm gelten für ein übliches Gewebe ({perCm} Fäden je cm).',
  'Enter frame and mesh to plan the press.': 'Rahmen und Gewebe eintragen, um die Presse zu planen.',
  'form “{form}”': 'Form „{form}“',
  'There is no shape in it.': 'Es ist keine Form darin.',
  'Choose a drawing with a filled or stroked shape.': 'Eine Zeichnung mit einer gefüllten Form oder einer Linie wählen.',
  'cut “{cut}”, part {i}': 'Schnitt „{cut}“, Teil {i}',
  'cut “{cut}”': 'Schnitt „{cut}“',
  'There is nothing to cut.': 'Es gibt nichts zu schneiden.',
  'All of it lies outside the image.': 'Alles davon liegt außerhalb des Bildes.',
  'Put a form on it, inside the image.': 'Eine Form darauf setzen, innerhalb des Bildes.',
  'material “{material}”': 'Material „{material}“',
  'The stencil “{layer}” ({width} × {height} mm) is larger than the stock ({width2} × {height2} mm).':
    'Die Schablone „{layer}“ ({width} × {height} mm) ist größer als der Vorrat ({width2} × {height2} mm).',
  'Use larger stock, leave less around the image, or tape two sheets together outside the image.':
    'Größeres Material nehmen, weniger Rand um das Bild lassen oder zwei Bogen außerhalb des Bildes zusammenkleben.',
  'Some stencils must be cut more than {most} times; only the first {most2} are laid on stock.':
    'Einige Schablonen müssen mehr als {most}-mal geschnitten werden; nur die ersten {most2} sind auf den Vorrat gelegt.',
  'Choose a material that lasts longer.': 'Ein Material wählen, das länger hält.',
  'A layer that is spread needs a cut of its own.': 'Eine überfüllte Schicht braucht einen eigenen Schnitt.',
  '{material} lasts about {lasts} pulls; this side prints {pieces}.': '{material*} hält etwa {lasts} Drucke; diese Seite druckt {pieces}.',
  'One cut serves both: keep the piece that drops out.': 'Ein Schnitt dient beiden: das Stück aufheben, das herausfällt.',
  'One cut is enough.': 'Ein Schnitt genügt.',
  'Taken as perfectly clear.': 'Als vollkommen klar genommen.',
  'These layers want different bridges, so each is cut on its own.':
    'Diese Schichten wollen verschiedene Stege, also wird jede für sich geschnitten.',
  'Bridges stay across what would drop out, so the piece is cut on its own.':
    'Stege bleiben in dem, was herausfallen würde, also wird das Stück für sich geschnitten.',
  'The piece hangs on bridges, so it is cut on its own.': 'Das Stück hängt an Stegen, also wird es für sich geschnitten.',
  'The machine takes a little off what drops out, so the piece is cut on its own.':
    'Die Maschine nimmt dem, was herausfällt, ein wenig weg, also wird das Stück für sich geschnitten.',
  '{material} can’t be washed: it is spent after a run, and {count} runs need the same side.':
    '{material*} lässt sich nicht waschen: nach einem Lauf ist es verbraucht, und {count} Läufe brauchen dieselbe Seite.',
};
