import type { Phrases } from '../phrasebook.ts';

/** Farben: Messungen, Rezepte, Töpfe, Folgen. */
export const ink: Phrases = {
  '{samples} seeded samples of readings, deposit and strength. {note}':
    '{samples} ausgeloste Proben aus Messungen, Farbfilm und Stärke. {note*}',
  'almost surely': 'so gut wie sicher',
  'as likely as not': 'so wahrscheinlich wie nicht',
  'The drawdown is lighter than its ground by up to {lighter} % of white in part of the spectrum.':
    'Der Aufzug ist in einem Teil des Spektrums um bis zu {lighter} % von Weiß heller als sein Untergrund.',
  'A transparent ink only takes light away: the ink scatters, or the two readings are swapped or of different sheets. Read it over white and over black.':
    'Eine transparente Farbe nimmt nur Licht weg: die Farbe streut, oder die beiden Messungen sind vertauscht oder von verschiedenen Bogen. Sie auf Weiß und auf Schwarz messen.',
  'Part of the drawdown reads as dark as the gloss that was taken off.':
    'Ein Teil des Aufzugs misst so dunkel wie der Glanz, der abgezogen wurde.',
  'Lower the gloss of this surface, or read a thinner drawdown.':
    'Den Glanz dieser Oberfläche niedriger ansetzen oder einen dünneren Aufzug messen.',
  'The white and the black ground are too much alike to tell covering from tinting.':
    'Der weiße und der schwarze Untergrund sind sich zu ähnlich, um Decken und Tönen zu trennen.',
  'Use a drawdown card with a bright white and a deep black, or swap the two if they were mixed up.':
    'Eine Aufzugkarte mit hellem Weiß und tiefem Schwarz nehmen, oder die beiden tauschen, falls sie verwechselt wurden.',
  'The drawdown is darker over white than over black in {crossed} of {bands} bands, which no film can be.':
    'Der Aufzug ist auf Weiß dunkler als auf Schwarz, in {crossed} von {bands} Bändern; das kann kein Film sein.',
  'The two readings are probably swapped, or the film is not equally thick on both.':
    'Die beiden Messungen sind wohl vertauscht, oder der Film ist nicht auf beiden gleich dick.',
  'The two readings contradict each other; see the problems.': 'Die beiden Messungen widersprechen einander; siehe die Probleme.',
  'Hides its ground: the colour is sure, but how it thins out is a guess. A drawdown let down with base tells more.':
    'Verdeckt ihren Untergrund: der Farbton ist sicher, aber wie er verdünnt aussieht, ist geraten. Ein mit Base verschnittener Aufzug sagt mehr.',
  'Read over white and over black: tinting and covering are told apart, and overlaps with dark layers can be foreseen.':
    'Auf Weiß und auf Schwarz gemessen: Tönen und Decken sind getrennt, und Überdrucke mit dunklen Schichten lassen sich vorhersehen.',
  'The file ends in the middle of its readings.': 'Die Datei endet mitten in ihren Messungen.',
  'What is there was read; export it again to have the rest.': 'Was da ist, wurde gelesen; für den Rest neu ausgeben.',
  'The last row has {words} values where the table has {fields}.': 'Die letzte Zeile hat {words} Werte, die Tabelle hat {fields}.',
  'It is left out.': 'Sie wird weggelassen.',
  'The table promises {promised} patches and holds {found}.': 'Die Tabelle verspricht {promised} Messfelder und enthält {found}.',
  'Check that the file is whole.': 'Prüfen, ob die Datei ganz ist.',
  'The readings begin before the file says what its columns are.': 'Die Messungen beginnen, bevor die Datei ihre Spalten nennt.',
  'Export the file again with its BEGIN_DATA_FORMAT part.': 'Die Datei neu ausgeben, mit ihrem Teil BEGIN_DATA_FORMAT.',
  'The file has more than {most} patches.': 'Die Datei hat mehr als {most} Messfelder.',
  'Export only the drawdowns that are needed.': 'Nur die Aufzüge ausgeben, die gebraucht werden.',
  'The file has more than 2000 columns.': 'Die Datei hat mehr als 2000 Spalten.',
  'This is no file of readings.': 'Das ist keine Messdatei.',
  'There is no table of readings in this file.': 'In dieser Datei ist keine Tabelle mit Messungen.',
  'A CGATS file has its readings between BEGIN_DATA and END_DATA; export it again.':
    'Eine CGATS-Datei hat ihre Messungen zwischen BEGIN_DATA und END_DATA; neu ausgeben.',
  'The file is empty.': 'Die Datei ist leer.',
  'Export the readings again.': 'Die Messungen neu ausgeben.',
  'The file has more than {most} rows.': 'Die Datei hat mehr als {most} Zeilen.',
  'Keep only the drawdowns that are needed.': 'Nur die Aufzüge behalten, die gebraucht werden.',
  'No column of this table is a colour.': 'Keine Spalte dieser Tabelle ist ein Farbton.',
  'Give the first row headings: name, L, a, b — or X, Y, Z — or the wavelengths 380 to 730.':
    'Der ersten Zeile Überschriften geben: name, L, a, b — oder X, Y, Z — oder die Wellenlängen 380 bis 730.',
  'The table has no headings; its three numbers are taken as L, a and b.':
    'Die Tabelle hat keine Überschriften; ihre drei Zahlen gelten als L, a und b.',
  'Add a first row with the headings if they are something else.':
    'Eine erste Zeile mit Überschriften hinzufügen, falls sie etwas anderes sind.',
  '{file} row {i}': '{file} Zeile {i}',
  'The file declares a document type, through which other files could be drawn in.':
    'Die Datei gibt einen Dokumenttyp an, über den andere Dateien hereingezogen werden könnten.',
  'Export it again without; it was not read.': 'Ohne ihn neu ausgeben; sie wurde nicht gelesen.',
  'The file is no whole XML from here on.': 'Ab hier ist die Datei kein ganzes XML.',
  'Export it again; it may have been cut short on its way.': 'Neu ausgeben; sie wurde vielleicht unterwegs abgeschnitten.',
  'The file is nested too deep for a file of readings.': 'Die Datei ist für eine Messdatei zu tief verschachtelt.',
  'Export it again from the measuring program.': 'Aus dem Messprogramm neu ausgeben.',
  'There is no reflectance, XYZ or Lab in this file.': 'In dieser Datei ist weder Reflexion noch XYZ noch Lab.',
  'Export the measured colours, not only the wanted ones of a screen.':
    'Die gemessenen Farbtöne ausgeben, nicht nur die gewünschten eines Bildschirms.',
  'The file has {bytes} MB; no file of readings is so large.': 'Die Datei hat {bytes} MB; so groß ist keine Messdatei.',
  'Check that it is the right file.': 'Prüfen, ob es die richtige Datei ist.',
  'This is a picture, not a file of readings.': 'Das ist ein Bild, keine Messdatei.',
  'Open it as a photograph of drawdowns.': 'Als Foto von Aufzügen öffnen.',
  'This is a spreadsheet or another packed file.': 'Das ist eine Tabellenkalkulation oder eine andere gepackte Datei.',
  'Save the table as CSV first.': 'Die Tabelle zuerst als CSV sichern.',
  'This file is no text.': 'Diese Datei ist kein Text.',
  'Export the readings as CGATS, CxF or CSV.': 'Die Messungen als CGATS, CxF oder CSV ausgeben.',
  'The patch {name} has neither a usable spectrum nor XYZ nor Lab.':
    'Das Messfeld {name} hat weder ein brauchbares Spektrum noch XYZ noch Lab.',
  'It is left out; read it again.': 'Es wird weggelassen; neu messen.',
  'The patch is left out. {advice}': 'Das Messfeld wird weggelassen. {advice*}',
  'The spectra do not reach from 380 to 730 nm.': 'Die Spektren reichen nicht von 380 bis 730 nm.',
  'The outermost values are carried on to the ends; the eye sees little there.':
    'Die äußersten Werte werden bis an die Enden fortgeführt; das Auge sieht dort wenig.',
  'The file says its colours are for another light than D50.': 'Die Datei sagt, ihre Farbtöne gelten für ein anderes Licht als D50.',
  'Export spectra, or colours for D50.': 'Spektren ausgeben oder Farbtöne für D50.',
  'The file says its colours are for the 10° observer.': 'Die Datei sagt, ihre Farbtöne gelten für den 10°-Beobachter.',
  'Export spectra, or colours for the 2° observer.': 'Spektren ausgeben oder Farbtöne für den 2°-Beobachter.',
  '“{text}” is no colour that can be read.': '„{text}“ ist kein Farbton, der sich lesen lässt.',
  'Type three numbers L a b, or XYZ and three numbers, or the 36 values of a spectrum.':
    'Drei Zahlen L a b eintippen, oder XYZ und drei Zahlen, oder die 36 Werte eines Spektrums.',
  'The ladder has no step with ink in it.': 'Die Stärkenreihe hat keine Stufe mit Farbe.',
  'Give at least one step with a share between 0 and 1.': 'Mindestens eine Stufe mit einem Anteil zwischen 0 und 1 angeben.',
  'The step of {share} reads weaker than the one of {share2}.': 'Die Stufe von {share} misst schwächer als die von {share2}.',
  'Two drawdowns are probably swapped, or one film is much thinner.': 'Zwei Aufzüge sind wohl vertauscht, oder ein Film ist viel dünner.',
  'The steps of the ladder contradict each other; see the problems.': 'Die Stufen der Reihe widersprechen einander; siehe die Probleme.',
  'One step only: strength is taken as straight.': 'Nur eine Stufe: die Stärke gilt als gerade.',
  'Strength goes straight with the share of ink (within {most}).': 'Die Stärke wächst gerade mit dem Anteil Farbe (auf {most} genau).',
  'Strength goes with the share to the power of {gamma}; steps depart from that by up to {most}.':
    'Die Stärke wächst mit dem Anteil hoch {gamma}; die Stufen weichen davon um bis zu {most} ab.',
  ' The readings contradict each other; nothing was changed.': ' Die Messungen widersprechen einander; es wurde nichts geändert.',
  'This reading is off by ΔE00 {i} from what all the others together say.':
    'Diese Messung liegt um ΔE00 {i} neben dem, was alle anderen zusammen sagen.',
  'Check which layers lie there, and read it again; it moved little.':
    'Prüfen, welche Schichten dort liegen, und neu messen; sie hat wenig bewegt.',
  '{id} lies {lighter} than planned by {factor} %': '{id} liegt um {factor} % {lighter*} als geplant',
  heavier: 'schwerer',
  lighter: 'leichter',
  "A part of {share} can't be mixed.": 'Ein Teil von {share} lässt sich nicht mischen.',
  'Give each part a number of 0 or more.': 'Jedem Teil eine Zahl von 0 oder mehr geben.',
  'The parts add up to {whole} % of the pot.': 'Die Teile ergeben {whole} % des Topfs.',
  'Divide each by their sum.': 'Jeden durch ihre Summe teilen.',
  'A mix needs at least one part, and none below 0.': 'Eine Mischung braucht mindestens einen Teil und keinen unter 0.',
  'Type the parts again.': 'Die Teile neu eintippen.',
  'spectra read by an instrument': 'mit einem Messgerät gelesene Spektren',
  'colours without spectra': 'Farbtöne ohne Spektrum',
  'From readings that are {from}; the band is what such forecasts were off in trials on published overprints, not a measurement of this studio.':
    'Aus Messungen: {from*}. Um so viel lagen solche Vorhersagen in Versuchen an veröffentlichten Überdrucken daneben; es ist keine Messung dieser Werkstatt.',
  '{n} layers make too many orders to try.': '{n} Schichten ergeben zu viele Folgen, um sie zu probieren.',
  'Fix the place of some, or try at most 8.': 'Einigen ihren Platz geben oder höchstens 8 probieren.',
  'Every stack once': 'Jeder Stapel einmal',
  'No order obeys all the rules of what must come before what.': 'Keine Folge hält alle Regeln ein, was vor was kommen muss.',
  'Take one of the rules away.': 'Eine der Regeln wegnehmen.',
  'By their readings these inks are clear through and through, so the order changes no colour.':
    'Nach ihren Messungen sind diese Farben durch und durch klar; die Folge ändert also keinen Farbton.',
  'Choose the order for drying and register; read the inks over black as well to see what they cover.':
    'Die Folge nach Trocknen und Passer wählen; die Farben auch auf Schwarz messen, um zu sehen, was sie decken.',
  'Every order': 'Jede Folge',
  'wanted overlaps are {by} ΔE00 further off than in the order that meets them best':
    'gewünschte Überdrucke liegen um {by} ΔE00 weiter daneben als in der Folge, die sie am besten trifft',
  '{count} fewer overlaps look different from one another': '{count} Überdrucke weniger sehen verschieden aus',
  'lightness spans {by} less': 'die Helligkeit spannt sich um {by} weniger',
  'overlaps are duller, by {clean} of chroma on average': 'Überdrucke sind stumpfer, im Mittel um {clean} Buntheit',
  'colours move more when a film comes out heavier, by {steady} ΔE00':
    'Farbtöne schwanken mehr, wenn ein Film schwerer ausfällt, um {steady} ΔE00',
  '{films} layers make more overlaps than can be told apart.': '{films} Schichten ergeben mehr Überdrucke, als sich unterscheiden lassen.',
  'Print at most {most} layers on one sheet.': 'Höchstens {most} Schichten auf einen Bogen drucken.',
  'The photograph is too small or cut short.': 'Das Foto ist zu klein oder abgeschnitten.',
  'Take it again, filling the frame.': 'Neu aufnehmen, formatfüllend.',
  'Bare paper is marked in {paper} places; three are needed.': 'Blankes Papier ist an {paper} Stellen markiert; drei sind nötig.',
  'Mark paper on all sides of the drawdowns.': 'Papier auf allen Seiten der Aufzüge markieren.',
  'The paper is burnt out: the photograph holds no more light there.': 'Das Papier ist ausgebrannt: das Foto enthält dort kein Licht mehr.',
  'Expose less, so that the paper is light grey in the picture.': 'Knapper belichten, sodass das Papier im Bild hellgrau ist.',
  'The paper is burnt out in {burnt} of {paper} places.': 'Das Papier ist an {burnt} von {paper} Stellen ausgebrannt.',
  'Expose less and light it more evenly.': 'Knapper belichten und gleichmäßiger beleuchten.',
  'The light on the sheet is uneven by a factor of {unevenness}.': 'Das Licht auf dem Bogen ist ungleich, um das {unevenness}-Fache.',
  'It was evened out, but open shade or two lamps would do better.':
    'Es wurde ausgeglichen, aber offener Schatten oder zwei Lampen wären besser.',
  'After evening out, the paper still differs by {off} %: a shadow or a reflection lies on it.':
    'Auch ausgeglichen weicht das Papier noch um {off} % ab: ein Schatten oder eine Spiegelung liegt darauf.',
  'Take it again without shadows.': 'Ohne Schatten neu aufnehmen.',
  "The chart's own colours come back off by ΔE00 {deltaE}.": 'Die eigenen Farbtöne der Tafel kommen um ΔE00 {deltaE} daneben zurück.',
  'Check that its patches are marked in the right order and lie in the same light.':
    'Prüfen, ob ihre Felder in der richtigen Folge markiert sind und im selben Licht liegen.',
  'Only {chart} patches of the chart can be used; six are needed.': 'Nur {chart} Felder der Tafel sind brauchbar; sechs sind nötig.',
  'The picture was balanced by grey card or paper instead.': 'Das Bild wurde stattdessen nach Graukarte oder Papier abgeglichen.',
  'Neither a grey card nor the paper’s colour is known; the paper is taken as usual white.':
    'Weder eine Graukarte noch der Farbton des Papiers ist bekannt; das Papier gilt als gewöhnliches Weiß.',
  'Lay a grey card beside the drawdowns.': 'Eine Graukarte neben die Aufzüge legen.',
  'Part of this patch is burnt out.': 'Ein Teil dieses Felds ist ausgebrannt.',
  'Expose less; its colour is not to be trusted.': 'Knapper belichten; seinem Farbton ist nicht zu trauen.',
  'This colour lies outside what the photograph can hold: one of its channels is empty.':
    'Dieser Farbton liegt außerhalb dessen, was das Foto fassen kann: einer seiner Kanäle ist leer.',
  'It will read duller than it is.': 'Er wird stumpfer gelesen, als er ist.',
  'It will read duller than it is. Save the photograph in a wider colour space.':
    'Er wird stumpfer gelesen, als er ist. Das Foto in einem weiteren Farbraum sichern.',
  'This patch is uneven: dust, glare, or the mark overlaps its edge.':
    'Dieses Feld ist uneben: Staub, Spiegelung, oder die Marke ragt über seinen Rand.',
  'Mark an even part of the drawdown.': 'Eine gleichmäßige Stelle des Aufzugs markieren.',
  'The colour profile inside the photograph can’t be used.': 'Das Farbprofil im Foto ist nicht brauchbar.',
  'Save it with an ordinary RGB profile, or read it as sRGB.': 'Mit einem gewöhnlichen RGB-Profil sichern oder als sRGB lesen.',
  'The old recipe still holds: ΔE00 {deltaE} with the new lots.': 'Das alte Rezept gilt noch: ΔE00 {deltaE} mit den neuen Chargen.',
  'Unchanged, the old recipe would be off by ΔE00 {deltaE}; corrected it is off by {corrected}.':
    'Unverändert läge das alte Rezept um ΔE00 {deltaE} daneben; berichtigt liegt es daneben um {corrected*}.',
  ', and by {a} in lamp light': ', und bei Lampenlicht um {a}',
  'There is no drawdown of this pot to judge it by.': 'Es gibt keinen Aufzug dieses Topfs, nach dem er sich beurteilen ließe.',
  'Pull one, let it dry and read it; or say what is wrong with the colour.':
    'Einen machen, trocknen lassen und messen; oder sagen, was am Farbton nicht stimmt.',
  '{id} is in the pot but not on the shelf.': '{id} ist im Topf, aber nicht im Regal.',
  'Add its reading to the shelf.': 'Ihre Messung ins Regal stellen.',
  'The pot is empty.': 'Der Topf ist leer.',
  'Say what was weighed into it.': 'Sagen, was hineingewogen wurde.',
  'This pot works {weaker} than its recipe says, by {works} %.': 'Dieser Topf wirkt {weaker*}, als sein Rezept sagt, um {works} %.',
  stronger: 'stärker',
  weaker: 'schwächer',
  'The drawdown may be thicker or thinner than usual, or something was weighed wrongly. Additions are counted accordingly.':
    'Der Aufzug ist vielleicht dicker oder dünner als sonst, oder etwas wurde falsch gewogen. Zugaben sind entsprechend gerechnet.',
  'No addition from the shelf brings this pot nearer than ΔE00 {deltaE}; mix a fresh one.':
    'Keine Zugabe aus dem Regal bringt diesen Topf näher als ΔE00 {deltaE}; einen frischen mischen.',
  'The pot would grow to {grams} g where {need} g are needed: a fresh pot takes less ink than the correction ({added} g).':
    'Der Topf würde auf {grams} g wachsen, wo {need} g gebraucht werden: ein frischer Topf nimmt weniger Farbe als die Korrektur ({added} g).',
  'stays clear': 'bleibt sie klar',
  'veils a little (L {lightness})': 'schleiert sie ein wenig (L {lightness})',
  'covers (L {lightness})': 'deckt sie (L {lightness})',
  'One of the three numbers is missing or is no number.': 'Eine der drei Zahlen fehlt oder ist keine Zahl.',
  'Read the patch again or type all three.': 'Das Feld neu messen oder alle drei eintippen.',
  'X is {a}, and lies between 0 and 120': 'X ist {a} und liegt zwischen 0 und 120',
  'Y is {b}, and lies between 0 and 120': 'Y ist {b} und liegt zwischen 0 und 120',
  'Z is {c}, and lies between 0 and 120': 'Z ist {c} und liegt zwischen 0 und 120',
  'Check the scale: the perfect white has Y = 100.': 'Den Maßstab prüfen: vollkommenes Weiß hat Y = 100.',
  'L is {a}, and lies between 0 (no light at all, which no surface has) and 105':
    'L ist {a} und liegt zwischen 0 (gar kein Licht, was keine Oberfläche hat) und 105',
  'a is {b}, and lies between −130 and 130': 'a ist {b} und liegt zwischen −130 und 130',
  'b is {c}, and lies between −150 and 150': 'b ist {c} und liegt zwischen −150 und 150',
  'Check that the three numbers are L, a and b in that order.': 'Prüfen, ob die drei Zahlen L, a und b sind, in dieser Folge.',
  'The spectrum has {values} values where {bands} are needed.': 'Das Spektrum hat {values} Werte, wo {bands} gebraucht werden.',
  'Give the reflectance from 380 to 730 nm in steps of 10 nm.': 'Die Reflexion von 380 bis 730 nm in Schritten von 10 nm angeben.',
  'Some value of the spectrum is missing or is no number.': 'Ein Wert des Spektrums fehlt oder ist keine Zahl.',
  'Read the patch again.': 'Das Feld neu messen.',
  'The spectrum goes up to {high}, where 1 is the perfect white.': 'Das Spektrum reicht bis {high} hinauf, wo 1 vollkommenes Weiß ist.',
  'These look like percent: divide by 100.': 'Das sieht nach Prozent aus: durch 100 teilen.',
  'Calibrate the instrument on its white tile and read again.': 'Das Messgerät auf seiner weißen Kachel kalibrieren und neu messen.',
  'The spectrum goes down to {low}; no surface reflects less than nothing.':
    'Das Spektrum reicht bis {low} hinunter; keine Oberfläche wirft weniger als nichts zurück.',
  'Calibrate the instrument on its dark trap and read again.': 'Das Messgerät auf seiner Schwarzfalle kalibrieren und neu messen.',
  'The strength {share} is no share of a pot.': 'Die Stärke {share} ist kein Anteil eines Topfs.',
  'Give a number between 0 (only base) and 1 (only ink).': 'Eine Zahl zwischen 0 (nur Base) und 1 (nur Farbe) angeben.',
  'The shares add up to {whole} % of the pot.': 'Die Anteile ergeben {whole} % des Topfs.',
  'Add base until they make 100 %.': 'Base zugeben, bis sie 100 % ergeben.',
  'A batch needs an amount above 0 grams.': 'Eine Mischung braucht eine Menge über 0 Gramm.',
  'Say how much to mix.': 'Sagen, wie viel zu mischen ist.',
  'Every part needs a density above 0 and a share of 0 or more.': 'Jeder Teil braucht eine Dichte über 0 und einen Anteil von 0 oder mehr.',
  'Water weighs 1 g/mL, most water-based inks 1.05 to 1.15.': 'Wasser wiegt 1 g/mL, die meisten Farben auf Wasserbasis 1,05 bis 1,15.',
  'Rounding to {step} g costs ΔE00 {off}.': 'Auf {step} g zu runden kostet ΔE00 {off}.',
  'Mix more at once, use a finer scale, or let the strongest ink down with base first and weigh that.':
    'Mehr auf einmal mischen, eine feinere Waage nehmen oder die stärkste Farbe erst mit Base verschneiden und das wiegen.',
  "One part is lighter than the scale's step of {step} g.": 'Ein Teil ist leichter als der Schritt der Waage von {step} g.',
  'Let it down with base first and weigh that.': 'Ihn erst mit Base verschneiden und das wiegen.',
  "Strength {to} can't be reached from {from} with an addition of {addition}.":
    'Stärke {to} ist von {from} aus mit einer Zugabe von {addition} nicht zu erreichen.',
  'The addition must be stronger than the strength wanted.': 'Die Zugabe muss stärker sein als die gewünschte Stärke.',
  "Base can't bring strength {from} to {to}.": 'Base kann Stärke {from} nicht auf {to} bringen.',
  'Base only weakens, and never to nothing.': 'Base schwächt nur, und nie bis auf nichts.',
  '{share} of retarder is above the ceiling of {ceiling}; such ink may never dry.':
    '{share} Verzögerer liegen über der Grenze von {ceiling}; solche Farbe trocknet vielleicht nie.',
  'Stay at 2 to 5 %, and follow what the label says.': 'Bei 2 bis 5 % bleiben und dem Etikett folgen.',
  '{share} of retarder is more than the usual 2 to 5 %.': '{share} Verzögerer sind mehr als die üblichen 2 bis 5 %.',
  'Expect slow drying; only in very dry air. The label decides. Wear gloves with retarder.':
    'Mit langsamem Trocknen rechnen; nur in sehr trockener Luft. Das Etikett entscheidet. Mit Verzögerer Handschuhe tragen.',
  'Additions make up {share} of the pot.': 'Zusätze machen {share} des Topfs aus.',
  'Binder is getting thin: the film may rub off (common practice).':
    'Das Bindemittel wird knapp: der Film reibt sich vielleicht ab (übliche Praxis).',
  'There is no pot to mix from.': 'Es gibt keinen Topf, aus dem zu mischen wäre.',
  'Add the inks at hand.': 'Die vorhandenen Farben hinzufügen.',
  'What lies there already is darker (L {bare}) than the colour wanted (L {wanted}); a clear ink only darkens. Print it before the dark layers, or use an ink that covers.':
    'Was dort schon liegt, ist dunkler (L {bare}) als der gewünschte Farbton (L {wanted}); eine klare Farbe macht nur dunkler. Sie vor den dunklen Schichten drucken oder eine Farbe nehmen, die deckt.',
  'Every recipe of that hue comes out darker by L {l}: what lies below shows through.':
    'Jedes Rezept dieses Tons fällt um L {l} dunkler aus: was darunter liegt, scheint durch.',
  'Even without any base the ink is too weak by L {l}: print it twice, or through a coarser mesh.':
    'Selbst ohne jede Base ist die Farbe um L {l} zu schwach: zweimal drucken oder durch ein gröberes Gewebe.',
  'The pots at hand are duller in that hue by a chroma of {c}; a cleaner ink of hue {wanted}° would be needed.':
    'Die vorhandenen Töpfe sind in diesem Ton um {c} Buntheit stumpfer; eine reinere Farbe vom Ton {wanted}° wäre nötig.',
  'The result stays more colourful than wanted by a chroma of {c}: what lies below, or the only fitting pot, brings it in.':
    'Das Ergebnis bleibt um {c} Buntheit bunter als gewünscht: was darunter liegt oder der einzige passende Topf bringt sie mit.',
  '{part} is at its limit of {limit} %.': '{part} ist an der Grenze von {limit} %.',
  'The hue lies between the pots at hand; the nearest is off by {wanted}° of hue.':
    'Der Ton liegt zwischen den vorhandenen Töpfen; der nächste liegt um {wanted}° daneben.',
  'A sheet takes 1 to {most} strengths between 0 and 1.': 'Ein Bogen fasst 1 bis {most} Stärken zwischen 0 und 1.',
  'Use a second sheet for more.': 'Für mehr einen zweiten Bogen nehmen.',
  '{name} over white': '{name} auf Weiß',
  '{name} over black': '{name} auf Schwarz',
  'This line is 100 mm long when printed at true size.': 'Diese Linie ist 100 mm lang, wenn in wahrer Größe gedruckt wird.',
  'Lay the grey card here. Photograph in open shade, all four corner marks in the picture, no flash.':
    'Die Graukarte hierher legen. In offenem Schatten fotografieren, alle vier Eckmarken im Bild, ohne Blitz.',
  'The four corner marks of the sheet are not all in the picture, or not sharp.':
    'Die vier Eckmarken des Bogens sind nicht alle im Bild oder nicht scharf.',
  'Take it again from above with the whole sheet in view; or mark the patches by hand.':
    'Neu von oben aufnehmen, mit dem ganzen Bogen im Blick; oder die Felder von Hand markieren.',
  'bare black': 'blankes Schwarz',
  'needs a short name of small letters, digits, - or _': 'braucht einen kurzen Namen aus Kleinbuchstaben, Ziffern, - oder _',
  'ink shelf': 'Farbenregal',
  'The file is too large for an ink shelf.': 'Die Datei ist für ein Farbenregal zu groß.',
  'The file is cut short or no ink shelf.': 'Die Datei ist abgeschnitten oder kein Farbenregal.',
  'Take an earlier copy; this one was left as it is.': 'Eine frühere Kopie nehmen; diese blieb, wie sie war.',
  'The shelf was written by a newer Laydown (version {version}; this one reads {ours}).':
    'Das Regal wurde von einem neueren Laydown geschrieben (Fassung {version}; dieses hier liest {ours}).',
  'Update Laydown; the file was left as it is.': 'Laydown erneuern; die Datei blieb, wie sie war.',
  'Correct this field, or take an earlier copy.': 'Dieses Feld berichtigen oder eine frühere Kopie nehmen.',
  '{id} stands there twice.': '{id} steht zweimal darin.',
  'Rename one of them.': 'Eines davon umbenennen.',
  '{file}: pots[{i}]': '{file}: pots[{i}]',
  'The pot {name} holds {ink}, which is not on the shelf.': 'Der Topf {name} enthält {ink}, was nicht im Regal steht.',
  'Add the ink, or take it out of the record.': 'Die Farbe hinzufügen oder aus dem Protokoll nehmen.',
  'ink shelf: {id}': 'Farbenregal: {id}',
  'Both shelves have a {id}, and they are different things; the added one is now {now}.':
    'Beide Regale haben {id}, und es sind verschiedene Dinge; das dazugenommene heißt jetzt {now}.',
  'Join them by hand if they are the same.': 'Von Hand zusammenlegen, falls sie dasselbe sind.',
  'Read over one ground, yet lighter than that ground in places: this ink covers as well as tints, and only a drawdown over white and black tells how much.':
    'Auf einem Untergrund gemessen und doch stellenweise heller als er: diese Farbe deckt und tönt, und nur ein Aufzug auf Weiß und Schwarz sagt, wie sehr.',
  'Read over one ground and taken as fully transparent. Good for clear inks; over dark layers a milky ink will look lighter than foreseen.':
    'Auf einem Untergrund gemessen und als ganz transparent genommen. Gut für klare Farben; über dunklen Schichten sieht eine milchige Farbe heller aus als vorhergesehen.',
  'Clear base: nothing is absorbed or scattered.': 'Klare Base: nichts wird geschluckt oder gestreut.',
  '{count} readings: off by ΔE00 {before} on average before, {after} after.{more}':
    '{count} Messungen: vorher im Mittel um ΔE00 {before} daneben, jetzt um {after}.{more*}',
  'ΔE00 {deltaE} from the colour wanted; over black it {what}.': 'ΔE00 {deltaE} neben dem gewünschten Farbton; auf Schwarz {what*}.',
  'This patch comes out lighter than any paper can be: the marks for paper lie on something darker.':
    'Dieses Feld fällt heller aus, als ein Papier sein kann: die Marken für Papier liegen auf etwas Dunklerem.',
  'Move the paper marks onto the bare sheet, and read again.': 'Die Papiermarken auf den blanken Bogen schieben und neu lesen.',
};
