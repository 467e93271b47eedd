import type { Words } from '../../en/bench/index.ts';

type Entry = Words['glossary']['terms']['form'];
const entry = (names: string, says: string): Entry => ({ names, says });

export const glossary: Words['glossary'] = {
  title: 'Wörter des Handwerks',
  open: 'Wörter',
  all: 'Alle Wörter',
  choose: 'Ein Wort wählen.',
  here: 'Wörter in diesem Text:',
  seeStation: (station) => `Zur Station ${station}`,
  licences: 'Woraus diese Seite besteht, und die Lizenzen',
  terms: {
    form: entry('Form, Formen', 'Eine Figur zum Ausschneiden, mit Zeichnung und wahrer Größe.'),
    cut: entry('Schnitt, Schnitte', 'Ein Weg des Messers auf einem Blatt. Er gibt zwei Schablonen auf einmal: Fenster und Stück.'),
    stencil: entry(
      'Schablone, Schablonen',
      'Ein geschnittenes Blatt für eine Schicht. Es liegt unter dem Gewebe und hält die Farbe zurück, wo es ist.',
    ),
    window: entry('Fenster, Fenstern', 'Das Blatt mit dem Loch: Farbe geht durch die Öffnung.'),
    piece: entry('Stück, Stücke, Stücken', 'Was aus dem Fenster herausfällt. Unter das Gewebe gelegt, druckt alles ringsum.'),
    pair: entry('Schnittpaar, Paar, Paare', 'Fenster und Stück eines Schnitts, als zwei Läufe gedruckt, die genau ineinanderpassen.'),
    island: entry(
      'Insel, Inseln',
      'Ein Teil der Schablone, den nichts hält: die Mitte eines Rings. Er braucht einen Steg oder wird lose aufgelegt.',
    ),
    bridge: entry(
      'Steg, Stege, Stegen',
      'Ein schmaler Streifen, der stehen bleibt und eine Insel hält. Er ist als Lücke in der Farbe zu sehen und liegt deshalb dort, wo er am wenigsten auffällt.',
    ),
    loose: entry(
      'loses Stück, lose Stücke, loses',
      'Ein Teil, der vor dem ersten Abzug von Hand aufgelegt wird; danach hält ihn die Farbe am Gewebe.',
    ),
    layer: entry('Schicht, Schichten', 'Eine Schablone in einer Farbe.'),
    run: entry('Lauf, Läufe, Läufen, Laufs', 'Eine Schicht auf den ganzen Stapel drucken.'),
    pull: entry('Abzug, Abzüge, Abzügen', 'Ein Zug der Rakel für einen Bogen.'),
    laydown: entry(
      'Druckfolge',
      'Die Folge, in der die Farben aufs Papier kommen. Durchsichtige Farben mischen sich dort; was oben liegt, spricht am meisten mit.',
    ),
    overlap: entry(
      'Überdruck, Überdrucke, Überdrucken, Überdrucks',
      'Eine Zusammenstellung von Schichten auf einem Papier. Sechs Läufe können 64 ergeben, jeden mit eigenem Farbton.',
    ),
    proof: entry('Proof, Proofs', 'Der vorhergesagte Druck. Der Proof nach jedem Lauf zeigt den Bogen, wie er dann im Regal liegt.'),
    strength: entry('Stärke', 'Wie viel im Topf Farbe ist; der Rest ist Base. 100 % ist reine Farbe.'),
    base: entry(
      'Base, Transparentbase, Verschnittbase',
      'Farbe ohne Farbmittel. Sie macht eine Schicht durchsichtiger, ohne sie dünner zu machen.',
    ),
    retarder: entry(
      'Verzögerer',
      'Was das Trocknen im Gewebe verlangsamt, Glycerin und Ähnliches. Zu viel davon, und der Druck trocknet nie: Angaben auf dem Etikett beachten.',
    ),
    drawdown: entry(
      'Aufzug, Aufzüge, Aufzügen',
      'Ein dünner Farbfilm, mit einer Rakel auf das Papier des Drucks gezogen. Erst ganz trocken beurteilen und messen: Farben trocknen dunkler auf.',
    ),
    ladder: entry('Stärkenreihe', 'Eine Farbe in mehreren Stärken aufgezogen, um zu lernen, wie sie mit Base heller wird.'),
    reach: entry('Reichweite', 'Alles, was ein Lauf werden kann: jede Farbe in jeder Stärke, mit allen Überdrucken, die daraus folgen.'),
    reading: entry(
      'Messwert, Messwerte, Messwerten',
      'Ein gemessener Farbton: vom Messgerät, aus einer Tabelle oder aus einem Foto mit Graukarte.',
    ),
    lab: entry('Lab', 'Ein Farbton als drei Zahlen (CIELAB): Helligkeit 0 bis 100, Grün bis Rot, Blau bis Gelb. Hier bei Tageslicht D50.'),
    sigma: entry('σ, Standardabweichung', 'Wie weit etwas streut: zwei von drei liegen darin, neunzehn von zwanzig im Doppelten.'),
    delta: entry('ΔE00, ΔE', 'Wie verschieden zwei Farbtöne aussehen (CIEDE2000). Etwa 1 ist nebeneinander gerade zu sehen, 5 sehen alle.'),
    mesh: entry('Gewebe, Gewebes', 'Der Stoff des Siebs, in Fäden je Zentimeter oder Zoll. Feineres Gewebe legt weniger Farbe.'),
    deposit: entry('Auftrag, Auftrags', 'Wie dick der nasse Farbfilm ist, den Gewebe, Rakel und Hand legen, in Mikrometern.'),
    gap: entry(
      'Absprung, Absprungs',
      'Der Abstand zwischen Gewebe und Papier. Das Gewebe berührt nur unter der Rakel und hebt dahinter ab, damit der Bogen nicht klebt.',
    ),
    riser: entry('Unterlage, Unterlagen', 'Was den Absprung hält: Pappe unter der Vorderseite des Rahmens und unter dem Scharnier.'),
    squeegee: entry('Rakel', 'Die Klinge, die die Farbe durch das Gewebe drückt.'),
    register: entry(
      'Passer, Passers',
      'Wie genau die Schichten aufeinanderfallen. Das ist auf jedem Bogen anders; von Hand ist ein halber Millimeter gut.',
    ),
    stop: entry('Anlage, Anlagen', 'Ein Streifen, an den der Bogen geschoben wird: zwei an der langen Seite, einer an der kurzen.'),
    hinged: entry(
      'klare Folie, Folie am Scharnier',
      'Eine Folie am Scharnier: zuerst wird auf sie gedruckt, dann das Papier darunter an seinen Platz geschoben.',
    ),
    pins: entry('Stifte, Stiften', 'Stifte, auf denen der gelochte Bogen hängt: von Hand das Sicherste.'),
    spread: entry(
      'Überfüllung, überfüllt, Überfüllen',
      'Eine Schicht, etwas größer geschnitten, damit kein Weiß blitzt, wo sie daneben sitzt.',
    ),
    spoilage: entry(
      'Makulatur',
      'Bogen, die in einem Lauf misslingen. Bei vielen Läufen braucht der Anfang mehr Bogen, als signiert werden sollen.',
    ),
    makeready: entry('Einrichten', 'Die ersten Bogen eines Laufs, bis er druckt, wie er soll.'),
    edition: entry('Auflage, Auflagen', 'Die nummerierten Drucke, die einander gleichen, auf einem Papier.'),
    bat: entry('B.A.T.', 'Gut zum Druck: der Bogen, mit dem alle anderen verglichen werden.'),
    ap: entry('A/P', 'Künstlerabzug (épreuve d’artiste): außerhalb der Nummern, gewöhnlich höchstens ein Zehntel der Auflage.'),
    pp: entry('P/P', 'Druckerabzug: ein guter Druck für den, der gedruckt hat, außerhalb der Nummern.'),
    hc: entry('H.C.', 'Hors commerce, nicht im Handel: zum Zeigen, außerhalb der Nummern.'),
    ks: entry(
      'K/S, schluckt (K), wirft zurück (S)',
      'Was ein Farbfilm mit Licht jeder Farbe tut: K ist, wie viel er schluckt, S, wie viel er zurückwirft (Kubelka und Munk). Viel K, wenig S: klar und dunkel. Viel S: er deckt.',
    ),
    ground: entry(
      'auf nur einem Grund, auf einem Papier',
      'Auf einem Papier allein aufgezogen: Wie die Farbe dort aussieht, ist bekannt, wie sehr sie deckt, nicht. Das sagt ein zweiter Streifen über Schwarz.',
    ),
    worst: entry(
      'schlechteste 5 %, schlechtesten 5 %',
      'Von hundert Bogen die fünf, die am weitesten aus dem Passer liegen: So sieht der Druck aus, wenn es schlecht läuft.',
    ),
    state: entry('Zustandsdruck, Probedruck', 'Ein Bogen von unterwegs: nach einigen Läufen, oder in anderen Farben.'),
    varied: entry('E.V.', 'Eine variierte Auflage: Bogen, die sich mit Absicht unterscheiden, in Papier oder Farbe.'),
    openTime: entry(
      'offene Zeit',
      'Wie lange die Farbe im Gewebe stehen darf, ehe sie dort trocknet. Eine längere Pause setzt das Sieb zu.',
    ),
  },
};
