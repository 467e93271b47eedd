import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

/** Sieb, Gewebe und Film, Rahmen, Abkleben, Absprung und Unterlagen, Farbe für einen Lauf. */
export const press: Same<typeof en.press> = {
  frameSize: ({ size }) => `Das Innenmaß des Rahmens kann nicht ${size} sein.`,
  imageSize: ({ size }) => `Das Bild kann nicht ${size} groß sein.`,
  sheetSize: ({ size }) => `Der Bogen kann nicht ${size} groß sein.`,
  giveSize: ({ most }) => `Breite und Höhe angeben, beide über null und höchstens ${most}.`,

  noScreen: ({ threads }) => `Noch ist kein Sieb gewählt: Filme und Gramm gelten für ein übliches Gewebe (${threads} Fäden je cm).`,
  enterScreen: 'Rahmen und Gewebe eintragen, um die Presse zu planen.',
  meshFigure: ({ value }) => `Ein Gewebe kann hier nicht ${value} haben.`,
  copyMeshFigure: 'Den Wert vom Gewebe ablesen oder weglassen.',
  meshClosed: ({ threads, pitch, thread }) =>
    `${threads} Fäden je cm lassen jedem ${pitch}, und der Faden ist ${thread} dick: nichts bleibt offen.`,
  countPerCm: 'Prüfen, ob die Zahl je cm gilt und nicht je Zoll (Fäden je Zoll durch 2,54 teilen).',
  meshAllOpen: ({ open }) => `${open} offen lassen keinen Faden übrig.`,
  copyOpenArea: 'Die offene Fläche vom Gewebe ablesen oder weglassen.',

  noLeastDetail: 'Die Zeichnung hat keine feinste Einzelheit.',
  giveNarrowestLine: 'Die Breite ihrer schmalsten Linie angeben.',
  fineLinesSaw: ({ under }) => `Linien unter ${under} bekommen Sägezähne.`,
  grainsBlock: ({ grain, opening }) => `Körner von ${grain} verstopfen Maschen von ${opening}.`,
  rulingNeeds: ({ lines, threads }) => `${lines} Linien je cm brauchen mindestens ${threads} Fäden je cm.`,
  otherFilm: ({ film, wanted }) => `Es legt etwa ${film} auf statt ${wanted}.`,

  sharesReversed: ({ low, high }) => `Die Spanne ${low} bis ${high} läuft nicht von einem kleineren zu einem größeren Anteil.`,
  giveShares: ({ most }) => `Zwei Anteile angeben, den kleineren zuerst, über 0 und höchstens ${most}.`,
  solids: 'der Festkörpergehalt der Farbe',
  weighing: 'die Wägung',
  nothingGained: 'Der gewogene Bogen muss auf einer gedruckten Fläche etwas zugenommen haben.',
  weighTen: 'Zehn Bogen zusammen vor und gleich nach dem Druck wiegen und durch zehn teilen.',
  noWeighing: 'Es gibt keine brauchbare Wägung.',
  weighOne: 'Mindestens einen Bogen vor und nach dem Druck wiegen.',
  stencilThickness: ({ thickness }) => `Eine ${thickness} dicke Schablone lässt sich nicht drucken.`,
  giveThickness: ({ newsprint, film }) => `Die Dicke des Bogens angeben: Zeitungspapier etwa ${newsprint}, Folie ${film}.`,
  edgeEven: 'Der Rand druckt etwa so dick wie die Mitte.',
  edgeRidge: ({ within, times }) =>
    `Innerhalb von ${within} am Rand kann der Film bis zu ${times}-mal so dick sein: dunklere Säume, langsameres Trocknen. Eine dünnere Schablone oder ein zweiter, leichterer Zug gleicht es aus.`,

  inkAmounts: 'Fläche, Film, Drucke und Verbleibendes müssen null oder mehr sein, die Dichte über null.',
  checkInkFigures: 'Gewebe, Dichte der Farbe und Zahl der Bogen prüfen.',
  rangeReversed: 'Eine Spanne läuft von ihrem größeren zum kleineren Ende.',
  smallerFirst: 'Die kleinere Zahl zuerst schreiben.',
  tapeOnEdge: ({ n }) =>
    `${n === 1 ? 'Dieses Stück hat' : `Diese ${n} Stücke haben`} keinen Rand: das Gewebe auf der Papierseite genau an der Bildkante abkleben und ${n === 1 ? 'das Stück' : 'die Stücke'} nach der Schneidezeichnung legen.`,
  changeAfter: ({ sheet, n, stencil, of }) =>
    `Nach Bogen ${sheet}: Schablone ${stencil} von ${of}${n > 0 ? `, den Passer auf ${many(n, 'Abschnitt', 'Abschnitten')} prüfen` : ''}.`,
  changeBeforeFirst: ({ n, stencil, of }) =>
    `Nach den Einrichtebogen: Schablone ${stencil} von ${of}${n > 0 ? `, den Passer auf ${many(n, 'Abschnitt', 'Abschnitten')} prüfen` : ''}.`,
  changeOften: ({ sheets, n, of }) =>
    `Die nächste von ${of} Schablonen nach jedem der Bogen ${sheets}${n > 0 ? `; den Passer jedes Mal auf ${many(n, 'Abschnitt', 'Abschnitten')} prüfen` : ''}.`,
  fineShapes: ({ share, times, counted }) =>
    `Feine Formen: ${share} des Drucks liegen im Wulst an den Rändern. Der Film ist bis zu ${times}-mal so dick: dunkler (die Vorschau rechnet mit dem ${counted}-Fachen), trocknet langsamer.`,
  changeScreen: ({ mesh }) => `Das Sieb wechseln: Gewebe ${mesh}.`,
  runNamed: ({ run, layer, share }) => `Lauf ${run} (${layer}, ${share} des Bildes)`,
  cockles: ({ paper, runs }) => `„${paper}“ wellt sich, wo viel nasse Farbe liegt: ${runs}.`,
  pressFlat:
    'Sobald die Bogen berührtrocken sind, vor dem nächsten Lauf unter Brettern glätten; wellige Bogen liegen schlecht an den Marken.',
  noSheetThrough: 'Durch diesen Lauf geht kein Bogen.',
  mostStays: ({ printed, share }) =>
    `Die Bogen nehmen ${printed}; das meiste im Topf (${share}) behalten Sieb und Spachtel. In ein beschriftetes Glas zurückstreichen.`,
  someStays: ({ printed, staying }) => `Die Bogen nehmen ${printed}, Sieb und Spachtel behalten etwa ${staying}.`,

  atTop: 'oben',
  atBottom: 'unten',
  atLeft: 'links',
  atRight: 'rechts',
  imageOverSheet: ({ image, sheet }) => `Das Bild (${image}) ist größer als der Bogen (${sheet}).`,
  smallerImage: 'Das Bild kleiner machen oder einen größeren Bogen nehmen.',
  imagePastFrame: ({ past, sides }) => `Das Bild reicht ${sides} ${past} über die Innenkante des Rahmens hinaus.`,
  wellTooSmall: ({ room, sides, missing }) =>
    `Zwischen Bild und Rahmen sind ${sides} nur ${room}: dem Platz für die Farbe fehlen mindestens ${missing}.`,
  wellTight: ({ room, sides, missing }) =>
    `Zwischen Bild und Rahmen sind ${sides} nur ${room}: dem Platz für die Farbe fehlen ${missing}, um bequem zu drucken.`,
  bladeEndTooSmall: ({ room, sides, missing }) =>
    `Zwischen Bild und Rahmen sind ${sides} nur ${room}: dem Platz neben der Rakel fehlen mindestens ${missing}.`,
  bladeEndTight: ({ room, sides, missing }) =>
    `Zwischen Bild und Rahmen sind ${sides} nur ${room}: dem Platz neben der Rakel fehlen ${missing}, um bequem zu drucken.`,
  squeegeeShort: ({ own, image, missing }) => `Die Rakel hat ${own}, das Bild ${image} quer zum Rakelzug; ${missing} fehlen.`,
  takeSqueegeeOrHinge: ({ suits }) => `Eine von ${suits} nehmen oder den Rahmen an einer anderen Seite anschlagen.`,
  squeegeeLong: ({ own, room }) =>
    `Die Rakel (${own}) lässt weniger als ${room} zum Rahmen an jedem Ende; das Gewebe kann nicht nachgeben.`,
  takeShorterSqueegee: ({ most }) => `Eine von höchstens ${most} nehmen.`,

  centreImage: 'Das Bild in die Mitte des Rahmens setzen.',
  turnImage: 'Das Bild auf dem Sieb um ein Viertel drehen.',
  hingeLeftOrRight: 'Das Scharnier an die linke oder rechte Seite setzen.',
  hingeTopOrBottom: 'Das Scharnier an die obere oder untere Seite setzen.',
  thenFits: 'Dann passt es.',
  thenLess: ({ then, now }) => `Dann fehlen ${then} statt ${now}.`,
  frameThatFits: ({ size }) => `Ein Rahmen von ${size} innen fasst dieses Bild bequem.`,
  imageThatFits: ({ size }) => `Ein Bild von ${size} passt in diesen Rahmen.`,
  imageThatFitsTightly: ({ size }) => `Ein Bild von ${size} passt mit Vorsicht in diesen Rahmen.`,

  noRoomForStencil: ({ within }) => `Um dieses Bild herum hält kein Schablonenbogen: es kommt dem Rahmen näher als ${within}.`,
  layDrawing: 'Diese Zeichnung unter das trockene Sieb legen, das Innere des Rahmens auf die äußere Linie.',
  tapeRest: ({ n, tape }) =>
    n === 0
      ? 'Das Sieb umdrehen: alles Klebeband kommt auf die Papierseite.'
      : `Das Sieb umdrehen und das übrige Gewebe auf der Papierseite abkleben: ${many(n, 'Streifen', 'Streifen')}, ${tape}. Sie bleiben bis zum letzten Lauf.`,
  bladeSideFree: 'Auf die Rakelseite kein Klebeband: die Rakel darf nie darauf laufen.',
  layStencil: 'Die Schablone auf die Papierseite legen, gerade zum Rahmen.',
  tapeStencil: ({ n, tape, on }) =>
    `Ihre Kanten festkleben, ${on} auf der Schablone: ${many(n, 'Streifen', 'Streifen')}, ${tape}, für jede Schablone neu.`,
  mayLeak: ({ sides }) =>
    `Farbe kommt ${sides} über die Kante der Schablone und liefe dort aus: das Band fest andrücken und nach den ersten Bogen unter das Sieb sehen.`,
  marginHoldsInk: 'Der Rand der Schablone ist breiter als Rakel und Zug: an ihre Kante kommt keine Farbe.',
  holdToLight: 'Das Sieb gegen das Licht halten: jeder helle Spalt außerhalb des Bilds würde drucken.',

  tensionImpossible: ({ tension }) => `Ein Gewebe kann keine Spannung von ${tension} N/cm haben.`,
  leaveTensionOut: 'Die Spannung weglassen, wenn sie nicht bekannt ist.',
  tightMeshGap: ({ tension, most }) => `Ein Gewebe von ${tension} N/cm braucht höchstens ${most}.`,
  slackMeshGap: ({ size, tension }) =>
    `Ein Druck bis ${size} auf schlaffem Gewebe (${tension} N/cm): um die Hälfte mehr als üblich. Neues Gewebe hielte besser Passer.`,
  gapByHand: ({ size }) => `Ein Druck bis ${size} von Hand. Genug, wenn das Gewebe hinter der Rakel hochschnellt.`,
  gapTensionUnknown: ({ size }) =>
    `Ein Druck bis ${size} von Hand, Spannung nicht bekannt. Genug, wenn das Gewebe hinter der Rakel hochschnellt.`,
  gapImpossible: ({ gap }) => `${gap} sind kein Absprung, den ein Sieb hat.`,
  giveGap: ({ usual }) => `Den Absprung zwischen Gewebe und Papier angeben, meist ${usual}.`,
  noMeshAround: ({ frame, image }) => `Das Innere des Rahmens (${frame}) lässt rings um das Bild (${image}) kein Gewebe.`,
  largerFrame: 'Einen größeren Rahmen oder ein kleineres Bild nehmen.',
  gapTears: ({ gap, strain }) =>
    `${gap} Absprung dehnen das Gewebe um ${strain}, so nah am Rahmen: es kann reißen oder sich vom Rahmen lösen.`,
  gapStretches: ({ gap, strain }) =>
    `${gap} Absprung dehnen das Gewebe um ${strain}: die Ränder des Bildes wandern nach außen, und das Gewebe wird mit der Zeit schlaff.`,
  lowerGap: ({ safe }) => `Den Absprung auf etwa ${safe} senken oder mehr Platz zwischen Bild und Rahmen lassen.`,

  gapPrintsLarger: ({ run, layer, gap, usual, across, along, edge }) =>
    `Lauf ${run} (${layer}) druckt mit ${gap} Absprung, die anderen mit ${usual}. Sein Bild wird größer, um ${across} quer zum Rakelzug und ${along} längs, seine Ränder liegen also ${edge} daneben.`,
  gapPrintsSmaller: ({ run, layer, gap, usual, across, along, edge }) =>
    `Lauf ${run} (${layer}) druckt mit ${gap} Absprung, die anderen mit ${usual}. Sein Bild wird kleiner, um ${across} quer zum Rakelzug und ${along} längs, seine Ränder liegen also ${edge} daneben.`,
  ofWhatDrawingForgives: ({ share, forgives }) => `Das sind ${share} von den ${forgives}, die die Zeichnung verzeiht.`,
  ofWhatLayerMayBeOff: ({ share, tolerance }) => `Das sind ${share} von den ± ${tolerance}, um die eine Schicht danebenliegen darf.`,
  oneGap: ({ best }) =>
    `Alle Läufe mit demselben Absprung drucken oder hier ${best} nehmen: dann kostet es höchstens ein Viertel des Passers.`,
  mindWhereItMeets: 'Daran denken, wo dieser Lauf einen anderen treffen muss.',
  gapAboveUsual: ({ gap, usual }) => `Der Absprung von ${gap} ist mehr, als Größe und Gewebe sonst verlangen (${usual}).`,
  tryLowerGap: 'Richtig für ein schlaffes Gewebe, das am Bogen klebt. Bei Gewebemuster, dünnen Flächen oder gedehntem Bild: senken.',
  gapBelowUsual: ({ gap, usual }) => `Der Absprung von ${gap} ist weniger, als Größe und Gewebe sonst verlangen (${usual}).`,
  tryHigherGap: 'Bei weichen Rändern oder einem Gewebe, das hinter der Rakel nicht abspringt: anheben.',

  heights: ({ range }) => `Absprung, Papier, Schablone und Scharnier müssen je ${range} hoch sein.`,
  measureClamps: 'Messen, wie hoch die Klemmen das Gewebe über der Platte halten.',
  imageNotInFrame: 'Das Bild muss zwischen dem Scharnier und der Vorderseite des Rahmens liegen.',
  giveFrameLength: 'Die Länge des Rahmens angeben und wo das Bild beginnt und endet, vom Scharnier aus.',
  boardThickness: 'Eine Pappe oder Münze braucht eine Dicke.',
  measureTen: 'Zehn zusammen messen und durch zehn teilen.',
  gapUneven: ({ gaps }) => `Mit Unterlagen nur vorn läuft der Absprung über das Bild von ${gaps}.`,
  packUnderHinge: ({ by }) => `Auch unter die Scharnierklemmen ${by} legen.`,
  boardUnderPaper: ({ by }) => `Auch unter das Papier ${by} Pappe legen.`,
};
