import type { Phrases } from '../phrasebook.ts';

/** Auflage: Bogen, Tag, Nummern, Nachweis, Handzettel. */
export const edition: Phrases = {
  'Fresh blade, cap on when it lies down. Cut away from the hand that holds; a steel rule with a raised edge. Old blades into a closed tin.':
    'Frische Klinge; weggelegt kommt die Kappe darauf. Von der haltenden Hand weg schneiden; ein Stahllineal mit erhöhtem Rand. Alte Klingen in eine geschlossene Dose.',
  'Read the label and the safety sheet first; they decide. Water-based ink all the same: off the skin, no eating at the table, nothing in cups one drinks from.':
    'Zuerst Etikett und Sicherheitsdatenblatt lesen; sie entscheiden. Auch bei Farbe auf Wasserbasis: nicht auf die Haut, am Tisch nicht essen, nichts in Becher füllen, aus denen getrunken wird.',
  'Don’t swallow pigments or breathe their dust; stir dry powder only under extraction and with the mask its label asks for. A mark of conformity says that hazards were assessed and labelled, not that there are none.':
    'Pigmente nicht verschlucken, ihren Staub nicht einatmen; trockenes Pulver nur unter einem Abzug und mit der Maske anrühren, die das Etikett verlangt. Ein Prüfzeichen sagt, dass Gefahren beurteilt und angegeben sind, nicht, dass es keine gibt.',
  'Gloves for retarder and glycerin mixes; weigh them, never pour by eye. A spill is slippery: wipe it at once.':
    'Handschuhe für Mischungen mit Verzögerer und Glyzerin; sie wiegen, nie nach Augenmaß gießen. Verschüttetes ist glatt: gleich aufwischen.',
  'Two lift a large frame. Prop the raised screen safely: a falling frame breaks fingers.':
    'Einen großen Rahmen zu zweit heben. Das hochgeklappte Sieb sicher abstützen: ein fallender Rahmen bricht Finger.',
  'Hands out before the screen comes down; nobody reaches over the board while another strokes.':
    'Hände weg, bevor das Sieb herunterkommt; niemand greift über die Platte, während jemand rakelt.',
  'Scrape and wipe the ink off before rinsing; what may go down the drain is for local rules to say. Cleaning agents as their label says, gloves, window open, never two of them mixed.':
    'Die Farbe vor dem Spülen abstreifen und abwischen; was in den Abfluss darf, sagen die örtlichen Vorschriften. Reinigungsmittel nach ihrem Etikett, Handschuhe, Fenster auf, nie zwei davon mischen.',
  'Water first. If a solvent must be used: ventilation, no flame, rags in a closed metal bin.':
    'Zuerst Wasser. Muss es ein Lösemittel sein: lüften, keine Flamme, Lappen in einen geschlossenen Metalleimer.',
  'Light-sensitive emulsion and strippers: gloves and eye protection, as the label says. Ultraviolet lamps: shield eyes and skin.':
    'Lichtempfindliche Emulsion und Entschichter: Handschuhe und Schutzbrille, wie das Etikett sagt. UV-Lampen: Augen und Haut abschirmen.',
  'Talc and paper dust: wipe with a damp cloth instead of blowing. Leave ways out of the room free of drying sheets.':
    'Talkum und Papierstaub: feucht abwischen statt abblasen. Fluchtwege von trocknenden Bogen freihalten.',
  'Every jar closed and labelled with what is in it and when it was mixed; never in food jars that keep their label.':
    'Jedes Glas geschlossen und beschriftet mit Inhalt und Mischtag; nie in Lebensmittelgläsern mit ihrem alten Etikett.',
  'The longest stretch of work is {longest} min, but one piece of work takes {least} min.':
    'Das längste Stück Arbeitszeit hat {longest} min, aber ein Arbeitsgang braucht {least} min.',
  'Make the day longer, or the set-up shorter.': 'Den Tag länger machen oder das Einrichten kürzer.',
  'This work takes more than {most} days.': 'Diese Arbeit braucht mehr als {most} Tage.',
  'Print fewer sheets, pull faster or let the ink dry shorter.':
    'Weniger Bogen drucken, schneller drucken oder die Farbe kürzer trocknen lassen.',
  'Wait.': 'Warten.',
  'Screen not ready yet: cut the next stencil, number the backs.':
    'Das Sieb ist noch nicht bereit: die nächste Schablone schneiden, die Rückseiten nummerieren.',
  'Ink dries: cut the next stencil, read the drawdown, compare sheets.':
    'Farbe trocknet: die nächste Schablone schneiden, den Aufzug messen, Bogen vergleichen.',
  'Too late to pull this run today: cut the next stencil, tidy up.':
    'Zu spät, um diesen Lauf heute zu drucken: die nächste Schablone schneiden, aufräumen.',
  'Too late for the next sheet.': 'Zu spät für den nächsten Bogen.',
  'sheets {sheets}–{sheets2} of {of}': 'die Bogen {sheets}–{sheets2} von {of}',
  'the one sheet': 'den einen Bogen',
  'all {of} sheets': 'alle {of} Bogen',
  '{count} on newsprint, then {which}': '{count} auf Zeitungspapier, dann {which*}',
  ' {minutes} min of it are pauses, with the screen flooded.': ' Davon sind {minutes} min Pausen, mit geflutetem Sieb.',
  'Pull {what}.{pauses}': '{what*} drucken.{pauses*}',
  'Hand sheets in, take them off to the rack, look at every one.': 'Bogen anreichen, ins Gestell abnehmen, jeden ansehen.',
  'The last sheets dry. Hands are free.': 'Die letzten Bogen trocknen. Die Hände sind frei.',
  'Rest.': 'Pause.',
  'Night; sheets go on drying.': 'Nacht; die Bogen trocknen weiter.',
  'Mix and label the ink, pull a drawdown.': 'Farbe mischen und beschriften, einen Aufzug machen.',
  'Stencil, tape, register; a first look on newsprint.': 'Schablone, Klebeband, Passer; ein erster Blick auf Zeitungspapier.',
  'No screen is free for run {index}.': 'Für Lauf {index} ist kein Sieb frei.',
  'Name fewer screens, or let runs take any.': 'Weniger Siebe nennen oder die Läufe jedes nehmen lassen.',
  'Run {index} ({run}) waits for a place on the rack: all {places} are full.':
    'Lauf {index} ({run}) wartet auf einen Platz im Trockengestell: alle {places} sind belegt.',
  'Find more places (a line with pegs does), or print fewer sheets in a row.':
    'Mehr Plätze suchen (eine Leine mit Klammern genügt) oder weniger Bogen hintereinander drucken.',
  'Ink back into the jar, wipe, then wash the screen at once.': 'Farbe zurück ins Glas, abwischen, dann gleich das Sieb waschen.',
  'day, run {index}': 'Tag, Lauf {index}',
  'Run {index} ({run}) is pulled in {sittings} sittings, the screen washed and set up again between them.':
    'Lauf {index} ({run}) wird in {sittings} Teilen gedruckt; dazwischen wird das Sieb gewaschen und neu eingerichtet.',
  'Find {names} places on the rack, or use a film stencil that bears washing.':
    '{names} Plätze im Trockengestell suchen oder eine Schablone aus Folie nehmen, die das Waschen verträgt.',
  'Start earlier, pull faster, or print fewer sheets.': 'Früher beginnen, schneller drucken oder weniger Bogen drucken.',
  'All {places} places of the rack are taken at the fullest moment.':
    'Im vollsten Augenblick sind alle {places} Plätze des Trockengestells belegt.',
  'Keep a line with pegs ready, or take dry sheets off as you go.':
    'Eine Leine mit Klammern bereithalten oder trockene Bogen zwischendurch abnehmen.',
  'screen {i}': 'Sieb {i*}',
  'There is no run to plan a day for.': 'Es gibt keinen Lauf, für den sich ein Tag planen ließe.',
  'Add a layer.': 'Eine Schicht hinzufügen.',
  'The rack has no place: the first sheet has nowhere to dry.':
    'Das Trockengestell hat keinen Platz: schon der erste Bogen kann nirgends trocknen.',
  'Count the places where a wet sheet can lie or hang; a line with pegs counts.':
    'Die Plätze zählen, an denen ein nasser Bogen liegen oder hängen kann; eine Leine mit Klammern zählt mit.',
  'Without a screen nothing is printed.': 'Ohne Sieb wird nichts gedruckt.',
  'Say how many screens you have, at least 1.': 'Sagen, wie viele Siebe da sind, mindestens 1.',
  '{pulls} pulls an hour is no pace.': '{pulls} Drucke je Stunde sind kein Tempo.',
  'Alone 30 to 60 an hour is usual.': 'Allein sind 30 bis 60 je Stunde üblich.',
  '{hands} people cannot print.': '{hands} Personen können nicht drucken.',
  'Say how many are at work, at least 1.': 'Sagen, wie viele mitarbeiten, mindestens 1.',
  'With someone racking 45 to 90 an hour is usual.': 'Mit einer Hilfe am Gestell sind 45 bis 90 je Stunde üblich.',
  'A day from {from} to {to} has no hours.': 'Ein Tag von {from} bis {to} hat keine Stunden.',
  'Let the day end after it starts.': 'Den Tag nach seinem Beginn enden lassen.',
  '{value} minutes cannot be planned with.': 'Mit {value} Minuten lässt sich nicht planen.',
  'Give minutes, nought or more.': 'Minuten angeben, null oder mehr.',
  '{count} sheets cannot go through run {i}.': '{count} Bogen können nicht durch Lauf {i} gehen.',
  'Give a whole number up to 20000.': 'Eine ganze Zahl bis 20000 angeben.',
  'A sheet is named twice in run {i}.': 'Ein Bogen ist in Lauf {i} zweimal genannt.',
  'Name every sheet once.': 'Jeden Bogen nur einmal nennen.',
  'Look first': 'Zuerst schauen',
  'Which colours lie over one another, and which pot holds none of them? Find the overlaps on the chart.':
    'Welche Farben liegen übereinander, und welchen Farbton enthält kein Topf? Die Überdrucke auf der Tafel suchen.',
  'Cut the stencils': 'Die Schablonen schneiden',
  '{layers} stencils from {materials}. A window prints through its opening, a piece prints around itself; one cut gives both.':
    '{layers} Schablonen; Material: {materials*}. Ein Fenster druckt durch seine Öffnung, ein Stück druckt um sich herum; ein Schnitt ergibt beides.',
  'Mix the inks': 'Die Farben mischen',
  '{open}. Weigh, stir, pull a drawdown on the same paper and judge it dry.':
    '{open*}. Wiegen, rühren, auf demselben Papier einen Aufzug machen und ihn trocken beurteilen.',
  'Inks still open': 'Farben noch offen',
  'Set up screen and stops': 'Sieb und Anlagen einrichten',
  'Mesh {mesh}. {more}': 'Gewebe {mesh*}. {more*}',
  'Run {i}: {layer}': 'Lauf {i}: {layer}',
  '{side} in {material}; {ink}; {grams}. {count} on newsprint first, then every sheet in the same order.{more}':
    '{side*}, {material*}; {ink*}; {grams*}. Zuerst {count} auf Zeitungspapier, dann jeden Bogen in derselben Folge.{more*}',
  Window: 'Fenster',
  Piece: 'Stück',
  'ink open: choose': 'Farbe offen: wählen',
  ' Look for: {lookfor}': ' Achten auf: {lookfor}',
  ' Dry for {minutes} min.': ' {minutes} min trocknen lassen.',
  'Clean up': 'Aufräumen',
  'Ink back into labelled jars; wash the screen before anything else is done with it. Film stencils are washed and hung; paper ones are done.':
    'Farbe zurück in beschriftete Gläser; das Sieb waschen, bevor irgendetwas anderes damit geschieht. Schablonen aus Folie werden gewaschen und aufgehängt; die aus Papier haben ausgedient.',
  'Choose and sign': 'Auswählen und signieren',
  'Lay all sheets out, compare each with the one chosen as the measure (B.A.T.), number the good ones in pencil. The order of numbers means nothing.':
    'Alle Bogen auslegen, jeden mit dem vergleichen, der als Maß gewählt wurde (B.A.T.), die guten mit Bleistift nummerieren. Die Folge der Nummern bedeutet nichts.',
  'A print in {layers} runs, {image} on sheets of {sheet}.': 'Ein Druck in {layers} Läufen, {image} auf Bogen von {sheet*}.',
  ', after a job by {maker}': ', nach einer Arbeit von {maker}',
  '{sheets} sheets: {paper}': '{sheets} Bogen: {paper}',
  '{layers} sheets of newsprint, to set up with': '{layers} Bogen Zeitungspapier zum Einrichten',
  'ink: {ink}': 'Farbe: {ink}',
  'stencil material: {material}': 'Schablonenmaterial: {material*}',
  'transparent base, scales, jars with lids, labels': 'Transparentbase, Waage, Gläser mit Deckel, Etiketten',
  'knife with fresh blades, steel rule, cutting mat': 'Messer mit frischen Klingen, Stahllineal, Schneidematte',
  'screen, squeegee, tape, stops, risers': 'Sieb, Rakel, Klebeband, Anlagen, Unterlagen',
  'pencil, apron, gloves, rags': 'Bleistift, Schürze, Handschuhe, Lappen',
  'My print': 'Mein Druck',
  Title: 'Titel',
  Name: 'Name',
  'Size of the image': 'Größe des Bildes',
  'Paper and number of sheets': 'Papier und Zahl der Bogen',
  Mesh: 'Gewebe',
  Gap: 'Absprung',
  Date: 'Datum',
  Run: 'Lauf',
  'Stencil: window or piece': 'Schablone: Fenster oder Stück',
  'Ink and base, parts': 'Farbe und Base, Teile',
  Grams: 'Gramm',
  'Sheets in': 'Bogen hinein',
  'Sheets good': 'Bogen gut',
  'What I saw': 'Was mir auffiel',
  'A sheet is in the list twice.': 'Ein Bogen steht zweimal in der Liste.',
  'Give every sheet a name of its own, in pencil on its back.': 'Jedem Bogen einen eigenen Namen geben, mit Bleistift auf der Rückseite.',
  'Not one sheet went through every run without a fault that rejects it.':
    'Kein einziger Bogen ging ohne ausschließenden Fehler durch alle Läufe.',
  'Look the sheets through again, or print more.': 'Die Bogen noch einmal durchsehen oder mehr drucken.',
  '{spare} good {are} left over.': '{spare} {are*} übrig.',
  'sheet is': 'guter Bogen ist',
  'sheets are': 'gute Bogen sind',
  'Before signing: declare the edition larger, or destroy them. After signing the number stands.':
    'Vor dem Signieren: die Auflage größer angeben oder sie vernichten. Nach dem Signieren steht die Zahl fest.',
  'Only {numbered} of {target} sheets can be numbered.': 'Nur {numbered} von {target} Bogen lassen sich nummerieren.',
  'Write the smaller number under all of them.': 'Unter alle die kleinere Zahl schreiben.',
  'Cancellation proof': 'Annullierungsdruck',
  'State {step}': 'Zustand {step}',
  'Colour trial': 'Farbprobe',
  'Air cannot have {percent} % humidity.': 'Luft kann nicht {percent} % Feuchte haben.',
  'Read a hygrometer in the room, or write 50.': 'Ein Hygrometer im Raum ablesen oder 50 eintragen.',
  'At no pull an hour nothing gets printed.': 'Bei keinem Druck je Stunde wird nichts gedruckt.',
  'In air of {percent} % the ink can set in the mesh after {open} min; strokes with one mishap take {needed} min. Even {most} % of retarder may not do.':
    'In Luft von {percent} % kann die Farbe nach {open} min im Gewebe antrocknen; Rakelzüge mit einem Missgeschick brauchen {needed} min. Selbst {most} % Verzögerer genügen vielleicht nicht.',
  'Dampen the room, pull faster, flood the screen after every stroke, or have someone hand you the sheets. More retarder than this may never dry.':
    'Den Raum befeuchten, schneller drucken, das Sieb nach jedem Zug fluten oder sich die Bogen anreichen lassen. Mehr Verzögerer als so viel trocknet vielleicht nie.',
  'This pace asks for {share} % of retarder, more than the usual 2 to 5 %.':
    'Dieses Tempo verlangt {share} % Verzögerer, mehr als die üblichen 2 bis 5 %.',
  'It dries more slowly; print a trial first, or dampen the room.':
    'Sie trocknet langsamer; zuerst eine Probe drucken oder den Raum befeuchten.',
  'Ink stays open {open} min, a stroke and a mishap take {needed}: no retarder needed.':
    'Farbe bleibt {open*} min offen, ein Zug und ein Missgeschick brauchen {needed}: kein Verzögerer nötig.',
  'Ink stays open {open} min, a stroke and a mishap take {needed}: {share} % of retarder, by weight of the pot; never more than {most} %.':
    'Farbe bleibt {open*} min offen, ein Zug und ein Missgeschick brauchen {needed}: {share} % Verzögerer, nach Gewicht des Topfs; nie mehr als {most} %.',
  Artist: 'Künstlerin, Künstler',
  Signed: 'Signiert',
  'in pencil by the artist, on each sheet': 'mit Bleistift, eigenhändig, auf jedem Bogen',
  Medium: 'Technik',
  'screenprint from cut stencils, {runs}': 'Siebdruck von geschnittenen Schablonen, {runs*}',
  run: 'Lauf',
  runs: 'Läufe',
  'Year of printing': 'Druckjahr',
  Edition: 'Auflage',
  Stencils: 'Schablonen',
  '{master} after printing': 'nach dem Druck {master*}',
  'Other editions': 'Andere Auflagen',
  'Made in the artist’s lifetime': 'Zu Lebzeiten gedruckt',
  Workshop: 'Werkstatt',
  'Printed by': 'Gedruckt von',
  Image: 'Bild',
  Papers: 'Papiere',
  Printed: 'Gedruckt',
  '{a#} to {b#}': '{a} bis {b}',
  Note: 'Notiz',
  'The record doesn’t say: {material}.': 'Der Nachweis sagt nichts zu: {material*}.',
  'Fill it in, by pencil or in the job.': 'Eintragen, mit Bleistift oder in der Arbeit.',
  'There is a cancellation proof, but the stencils are said to be kept.':
    'Es gibt einen Annullierungsdruck, aber die Schablonen gelten als aufbewahrt.',
  'Say that they are cancelled.': 'Sagen, dass sie annulliert sind.',
  '{sheets} sheets were printed in all; {rejected} rejected{number}. Whether a law asks for more is for local advice to say.':
    'Insgesamt wurden {sheets} Bogen gedruckt; {rejected} ausgeschlossen{number*}. Ob ein Gesetz mehr verlangt, sagt örtliche Beratung.',
  ', {spare} good {ones} without a number': ', {spare} gute ohne Nummer',
  one: 'ein',
  ones: 'gute',
  'all papers (varied)': 'alle Papiere (variiert)',
  'state proof': 'Zustandsdruck',
  'colour trial': 'Farbprobe',
  '{edition} numbered': '{edition} nummeriert',
  ', by {artist}': ', von {artist}',
  'Screenprint in {runs} from cut stencils, with transparent water-based inks, on {papers}. Image {image}.':
    'Siebdruck, {runs*}, von geschnittenen Schablonen, mit transparenten Farben auf Wasserbasis, auf {papers}. Bild {image}.',
  'Printed by {printer} at {workshop}.': 'Gedruckt von {printer} in der Werkstatt {workshop}.',
  'Printed by {printer}.': 'Gedruckt von {printer}.',
  'Printed at {workshop}.': 'Gedruckt in der Werkstatt {workshop}.',
  'The edition is {rows}.': 'Die Auflage: {rows*}.',
  'The stencils were cancelled after printing.': 'Die Schablonen wurden nach dem Druck annulliert.',
  'The stencils were destroyed after printing.': 'Die Schablonen wurden nach dem Druck vernichtet.',
  'Cut or punch a clear mark through every stencil, across the image, not at its edge.':
    'Durch jede Schablone ein deutliches Zeichen schneiden oder stanzen, quer durchs Bild, nicht am Rand.',
  'Pull one proof from each cancelled stencil, write “Cancellation proof” and keep it with the record.':
    'Von jeder annullierten Schablone einen Druck machen, „Annullierungsdruck“ darauf schreiben und beim Nachweis aufbewahren.',
  'Write the date and “cancelled” in the record; bin or keep the pieces.':
    'Datum und „annulliert“ in den Nachweis schreiben; die Teile wegwerfen oder aufbewahren.',
  'Stencils that wore out or tore: say so instead, with the sheet at which they did.':
    'Schablonen, die sich verbraucht haben oder gerissen sind: stattdessen das sagen, mit dem Bogen, bei dem es geschah.',
  '{a} and {b}': '{a*} und {b*}',
  'No sheet of {name} is at hand yet.': 'Von {name} ist noch kein Bogen da.',
  'Get {toStart} sheets: so many meet the edition with the certainty asked for.':
    '{toStart} Bogen besorgen: so viele erreichen die Auflage mit der gewünschten Sicherheit.',
  'An edition of {target} sheets cannot be planned.': 'Eine Auflage von {target} Bogen lässt sich nicht planen.',
  'Say how many good sheets you want, at least 1.': 'Sagen, wie viele gute Bogen es werden sollen, mindestens 1.',
  'A certainty of {certainty} cannot be reached.': 'Eine Sicherheit von {certainty} ist nicht zu erreichen.',
  'Choose a share between 0 and 1, such as 0.9.': 'Einen Anteil zwischen 0 und 1 wählen, etwa 0,9.',
  'At this spoilage only {survive} % of the sheets come through: no stack is large enough.':
    'Bei dieser Makulatur kommen nur {survive} % der Bogen durch: kein Stapel ist groß genug.',
  'Print fewer layers, or practise on newsprint until fewer sheets are lost.':
    'Weniger Schichten drucken oder auf Zeitungspapier üben, bis weniger Bogen verloren gehen.',
  'No stack is large enough for this certainty.': 'Für diese Sicherheit ist kein Stapel groß genug.',
  'Ask for less certainty, or lose fewer sheets.': 'Weniger Sicherheit verlangen oder weniger Bogen verlieren.',
  'A spoilage of {spoilage} leaves no sheet to count.': 'Eine Makulatur von {spoilage} lässt keinen Bogen übrig, der zählt.',
  'Give a share below 1: 0.05 is five sheets in a hundred.': 'Einen Anteil unter 1 angeben: 0,05 sind fünf Bogen von hundert.',
  '{proofs} cannot be held back.': '{proofs*} lassen sich nicht zurücklegen.',
  proof: 'Probedruck',
  proofs: 'Probedrucke',
  'Give nought or more.': 'Null oder mehr angeben.',
  'No paper is named, so no sheet can be planned.': 'Es ist kein Papier genannt, also lässt sich kein Bogen planen.',
  'Add a paper with its size and how many sheets you have.': 'Ein Papier hinzufügen, mit seiner Größe und der Zahl der Bogen.',
  '{count} sheets cannot be set up with.': 'Mit {count} Bogen lässt sich nicht einrichten.',
  'Give a whole number, nought or more.': 'Eine ganze Zahl angeben, null oder mehr.',
  'An edition of 0 sheets cannot be planned.': 'Eine Auflage von 0 Bogen lässt sich nicht planen.',
  'No sheet to set up with: the first good sheet is at risk in every run.':
    'Kein Bogen zum Einrichten: der erste gute Bogen ist in jedem Lauf gefährdet.',
  '{newsprint} of newsprint, then 1 offcut of the good paper, for each run.':
    '{newsprint} aus Zeitungspapier, dann 1 Abschnitt des guten Papiers, für jeden Lauf.',
  '{proofs} to be held back from {sheets} of {paper}.': '{proofs*} von {sheets*} {paper} zurückzulegen.',
  'proof is': 'Probedruck ist',
  'proofs are': 'Probedrucke sind',
  sheet: 'Bogen',
  sheets: 'Bogen',
  'Hold back fewer proofs, or start with {start} sheets.': 'Weniger Probedrucke zurücklegen oder mit {start} Bogen beginnen.',
  '{wanted} good sheets are wanted from {start} of {paper}.': '{wanted} gute Bogen werden aus {start} von {paper} gewünscht.',
  'Start with {start} sheets, or make the edition smaller.': 'Mit {start} Bogen beginnen oder die Auflage kleiner machen.',
  '{start} sheets of {paper} give the {wanted} good ones wanted in {reached} of 100 cases, not in {certainty}.':
    '{start} Bogen {paper} ergeben die {wanted} gewünschten guten in {reached} von 100 Fällen, nicht in {certainty}.',
  'Start with {start}, or make the edition smaller.': 'Mit {start} beginnen oder die Auflage kleiner machen.',
  'Screenprint, {image}, on {paper}': 'Siebdruck, {image}, auf {paper}',
  'state proofs': 'Zustandsdrucke',
  'colour trials': 'Farbproben',
};
