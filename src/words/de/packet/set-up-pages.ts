import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Sieb, Klebeband, Anlagen, Passer und der Testbogen dafür. */
export const setUpPages: Same<typeof en.setUpPages> = {
  // Das Sieb.
  setUpScreen: 'Das Sieb einrichten',
  noScreen: 'noch kein Sieb gewählt',
  gapUnderMesh: 'Absprung unter dem Gewebe',
  ownGap: ({ run, layer, gap }) => `Lauf ${run}, ${layer}: ${gap}`,
  ownMesh: ({ run, layer, mesh, film }) => `Lauf ${run}, ${layer}: eigenes Sieb, Gewebe ${mesh}, nasser Film etwa ${film}`,
  ownGapFront: ({ run, layer, gap, risers }) => `Lauf ${run}, ${layer}: ${gap}; ${risers}`,
  frontOf: ({ front }) => `Unterlagen vorn ${front}`,
  underHinge: ({ by }) => `${by} unter dem Scharnier`,
  underPaper: ({ by }) => `${by} Pappe unter dem Papier`,
  frontRisers: 'Unterlagen vorn',
  hingePacking: 'Unterlage unter dem Scharnier',
  boardUnderPaper: 'Pappe unter dem Papier',
  boards: ({ n, one, all, card }) =>
    card === undefined ? `${n} × ${one} ergibt ${all}.` : `${n} × ${one} und ${card} Karton ergeben ${all}.`,
  gapBuilt: ({ gap }) => `Mit diesen Pappen wird der Absprung ${gap}.`,
  squeegee: 'Rakel',
  squeegeeYours: ({ best, own }) => `${best} (vorhanden: ${own})`,
  top: 'oben',
  bottom: 'unten',
  left: 'links',
  right: 'rechts',
  free: ({ side, free }) => `${side}: ${free} frei`,
  tooLittleFree: ({ side, free, missing }) => `${side}: ${free} frei, ${missing} zu wenig`,
  imageGrows: ({ along, across }) =>
    `Das Gewebe dehnt sich: das Bild wächst um ${along} längs des Rakelzugs, ${across} quer dazu. Sieb und Lage für alle Läufe gleich lassen.`,
  nameScreen: 'In der Arbeit Rahmen und Gewebe nennen, dann zeigt diese Seite Ränder, Klebeband und Unterlagen.',

  // Klebeband.
  tape: 'Klebeband, alle Läufe',
  tapeAll: ({ tape, width }) => `${tape}, ${width} breit`,
  image: 'Bild',
  fromSqueegee: 'von der Rakelseite',
  layDrawing: ({ top, left }) =>
    `Von der Innenseite des Rahmens messen: das Bild beginnt ${top} von oben und ${left} von links. So die erste Schablone unter das Sieb legen.`,

  // Anlagen.
  farStop: ({ number, along }) => `Anlage ${number}: an ihrer Kante, ihre Mitte ${along} von dieser Ecke.`,
  stops: 'Anlagen',
  sheet: 'Bogen',
  stopsThick: 'Anlagen, Dicke',
  imageFromCorner: 'Bild von der Ecke der Anlagen',
  acrossUp: ({ across, up }) => `${across} quer, ${up} nach oben`,
  stopsSetting: ({ n, of }) => `Anlagen: Einstellung ${n} von ${of}`,
  stopsForPapers: ({ papers }) => `Anlagen für ${papers}`,
  onTheBoard: 'Bedruckte Seite oben, auf der Platte, unter dem Sieb.',

  // Passer.
  register: 'Passer',
  howFarOff: 'wie weit daneben und was es verzeiht',
  fallsWithin: 'Eine Schicht fällt innerhalb von',
  within: ({ tolerance }) => `± ${tolerance}`,
  notPlannedWith: 'Testbogen wurden abgelesen, aber die Arbeit ist noch nicht damit geplant.',
  likely: 'wahrscheinlich',
  worst: 'schlimmstens',
  overlap: 'Überlappung',
  holds: 'hält',
  tight: 'knapp',
  opens: 'kann blitzen',
  lineShows: 'Linie kann blitzen',
  morePairs: ({ n }) => `und ${n} weitere, die sich treffen; keines schlechter als diese`,
  howToRead:
    'Wahrscheinlich, schlimmstens, Überlappung: ein Paar, längs einer Achse, an der Bildkante, die den Anlagen am fernsten liegt. Wahrscheinlich hält neunzehn von zwanzig Mal; schlimmstens zählt alles zusammen; Überlappung ist, was die Zeichnung hat, wo die beiden sich treffen.',
  measureYours: 'Die eigene Presse mit dem Passer-Testbogen messen; dann werden daraus eigene Werte.',
  gapsDiffer: 'Verschiedene Absprünge: das Bild druckt verschieden groß',
  gap: 'Absprung',
  across: 'quer',
  along: 'längs',
  grows: ({ by }) => `+ ${by}`,
  howSheetsFall: 'Wie die Bogen fallen werden',
  inRegister: 'im Passer',
  halfNoWorse: 'die Hälfte ist nicht schlechter',
  noneMeet: 'Nirgends stoßen zwei Läufe nur aneinander: wo sie sich überdecken, zeigt sich Versatz als veränderter Saum, nicht als Lücke.',
  apartAtCorner: ({ apart }) => `schlimmstes Paar, in der Fläche, an der schlechtesten Ecke: ${apart}`,
  oneInTwenty: 'einer von zwanzig ist schlechter',
  apart: ({ apart }) => `${apart} auseinander`,

  // Testbogen.
  measureRegister: 'Den eigenen Passer messen',
  onceOnAnyPaper: 'einmal, auf irgendeinem Papier',
  reads: 'Liest auf',
  upTo: 'Bis zu',
  eachWay: ({ range }) => `${range} in jeder Richtung`,
  places: 'Stellen',
  cutBoth: 'Beide Zeichnungen als Schablonen schneiden, oder die erste drucken und die zweite schneiden.',
  typeNumbersIn:
    'Die Zahlen an der Station Presse eintippen (Passer, Testbogen) oder als Tabelle für „laydown register“: σ, Drehung und Wandern kommen heraus, und die Werte dieser Werkstatt ersetzen die üblichen.',
  testFirst: 'Passertest, erster Lauf',
  testSecond: 'Passertest, zweiter Lauf',
  testFirstTitle: 'Passertest, erster Lauf',
  testSecondTitle: 'Passertest, zweiter Lauf',
  sheetNumber: 'Bogen',
  down: 'nach unten',
};
