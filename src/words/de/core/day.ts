import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';
import { capital } from '../grammar.ts';

/** Der Tag nach Stunden, und wie lange die Farbe offen bleibt. */
export const day: Same<typeof en.day> = {
  // Was die Hände tun.
  mix: 'Farbe mischen und beschriften, einen Aufzug machen.',
  cut: 'Schablonen schneiden; ab und zu eine frische Klinge.',
  setUp: 'Schablone, Klebeband, Passer; ein erster Blick auf Zeitungspapier.',
  pull: ({ which }) => `${capital(which)} drucken.`,
  pullAfterNewsprint: ({ newsprint, which }) => `${newsprint} zum Einrichten, dann ${which} drucken.`,
  sheetsFromTo: ({ from, to, of }) => (from === to ? `Bogen ${from} von ${of}` : `die Bogen ${from}–${to} von ${of}`),
  allSheets: ({ n }) => (n === 1 ? 'den einen Bogen' : `alle ${n} Bogen`),
  pauses: ({ pauses }) => `Davon sind ${pauses} Pausen, mit geflutetem Sieb.`,
  rack: 'Bogen anreichen, ins Gestell abnehmen, jeden ansehen.',
  clean: 'Farbe zurück ins Glas, abwischen, dann gleich das Sieb waschen.',
  wait: 'Warten.',
  waitForScreen: 'Das Sieb trocknet: Rückseiten nummerieren, die Bogen durchsehen.',
  waitForInk: 'Die Farbe trocknet: den Aufzug ansehen, Bogen vergleichen.',
  tooLateForRun: 'Zu spät für diesen Lauf heute: aufräumen.',
  afterTheMeal: 'Vor der Mahlzeit reicht die Zeit für diesen Lauf nicht mehr.',
  changeAfter: ({ sheet }) => `Nach ${sheet} die nächste Schablone.`,
  changeFirst: 'Vor dem ersten Bogen die nächste Schablone.',
  tooLateForSheet: 'Zu spät für den nächsten Bogen.',
  lastDry: 'Die letzten Bogen trocknen. Die Hände sind frei.',
  rest: 'Mahlzeit.',
  night: 'Nacht. Die Bogen trocknen weiter.',

  // Wo.
  atTable: 'Tisch',
  atPress: 'Presse',
  atRack: 'Trockengestell',
  away: 'nicht da',
  screenOfMesh: ({ mesh }) => `Sieb ${mesh}`,
  screen: ({ n }) => `Sieb ${n}`,

  // Was im Weg ist.
  noRuns: 'Es gibt keinen Lauf, für den sich ein Tag planen ließe.',
  addLayer: 'Eine Schicht hinzufügen.',
  rackNone: 'Das Trockengestell hat keinen Platz: schon der erste Bogen kann nirgends trocknen.',
  countPlaces: 'Die Plätze zählen, an denen ein nasser Bogen liegen oder hängen kann; eine Leine mit Klammern zählt mit.',
  noScreen: 'Ohne Sieb wird nichts gedruckt.',
  sayScreens: 'Sagen, wie viele Siebe da sind, mindestens 1.',
  noScreenFree: ({ run }) => `Für Lauf ${run} ist kein Sieb frei.`,
  fewerScreenNames: 'Weniger Siebe nennen oder die Läufe jedes nehmen lassen.',
  paceImpossible: ({ pulls }) => `${pulls} Drucke je Stunde sind kein Tempo.`,
  usualAlone: 'Allein sind 30 bis 60 je Stunde üblich.',
  usualHelped: 'Mit einer Hilfe am Gestell sind 45 bis 90 je Stunde üblich.',
  handsImpossible: ({ hands }) => `${hands} Personen können sich die Arbeit nicht teilen.`,
  sayHands: 'Sagen, wie viele mitarbeiten, von 1 bis 20.',
  hoursImpossible: ({ from, to }) => `Ein Tag von ${from} bis ${to} hat keine Stunden.`,
  laterEnd: 'Den Tag nach seinem Beginn enden lassen.',
  minutesImpossible: ({ minutes }) => `Mit ${minutes} Minuten lässt sich kein Tag planen.`,
  giveMinutes: 'Minuten angeben, null oder mehr.',
  sheetsImpossible: ({ sheets, run }) => `${sheets} Bogen können nicht durch Lauf ${run} gehen.`,
  wholeNumberTo: ({ most }) => `Eine ganze Zahl bis ${most} angeben.`,
  sheetTwice: ({ run }) => `Ein Bogen ist in Lauf ${run} zweimal genannt.`,
  nameOnce: 'Jeden Bogen nur einmal nennen.',
  tooShort: ({ longest, least }) => `Das längste Stück Arbeitszeit hat ${longest}, aber ein Arbeitsgang braucht ${least}.`,
  longerDay: 'Den Tag länger machen oder das Einrichten kürzer.',
  endless: ({ most }) => `Diese Arbeit braucht mehr als ${most} Tage.`,
  fewerOrFaster: 'Weniger Bogen drucken, schneller drucken oder die Farbe kürzer trocknen lassen.',

  // Worauf zu achten ist.
  waitsForRack: ({ n, run, places }) =>
    `Lauf ${n} (${run}) wartet auf einen Platz im Trockengestell: ${places === 1 ? 'der einzige ist' : `alle ${places} sind`} belegt.`,
  morePlaces: 'Mehr Plätze suchen (eine Leine mit Klammern genügt) oder weniger Bogen hintereinander drucken.',
  rackFull: ({ places }) =>
    places === 1
      ? 'Der einzige Platz des Trockengestells ist belegt.'
      : `Im vollsten Augenblick sind alle ${places} Plätze des Trockengestells belegt.`,
  lineWithPegs: 'Eine Leine mit Klammern bereithalten oder trockene Bogen zwischendurch abnehmen.',
  split: ({ n, run, sittings }) =>
    `Lauf ${n} (${run}) wird in ${sittings} Teilen gedruckt; dazwischen wird das Sieb gewaschen und neu eingerichtet.`,
  placesOrFilm: ({ places }) =>
    `${places === 1 ? 'Einen Platz' : `${places} Plätze`} im Trockengestell suchen oder eine Schablone aus Folie nehmen, die das Waschen verträgt.`,
  sittingsShift: ({ off }) =>
    `Bogen der einen Sitzung können in neunzehn von zwanzig Fällen bis zu ${off} neben denen der anderen liegen: vor der zweiten die Marken prüfen.`,
  findPlaces: ({ places }) => `${many(places, 'Platz', 'Plätze')} im Trockengestell suchen.`,
  earlierOrFaster: 'Früher beginnen, schneller drucken oder weniger Bogen drucken.',

  // Offene Zeit.
  humidityImpossible: ({ humidity }) => `Luft kann nicht ${humidity} Feuchte haben.`,
  readHygrometer: 'Ein Hygrometer im Raum ablesen oder 50 eintragen.',
  driesInMesh: ({ humidity, open, needed, most }) =>
    `Bei ${humidity} Feuchte kann die Farbe nach ${open} min im Gewebe antrocknen; ein Zug und ein Missgeschick brauchen ${needed} min. Selbst ${most} Verzögerer genügen vielleicht nicht.`,
  dampenOrFaster:
    'Den Raum befeuchten, schneller drucken, das Sieb nach jedem Zug fluten oder sich die Bogen anreichen lassen. Mit noch mehr Verzögerer trocknet die Farbe vielleicht nie.',
  retarderHigh: ({ retarder, low, high }) => `Dieses Tempo verlangt ${retarder} Verzögerer, mehr als die üblichen ${low} bis ${high}.`,
  trialFirst: 'Die Farbe trocknet langsamer; zuerst eine Probe drucken oder den Raum befeuchten.',
  noRetarder: ({ low, high, needed }) =>
    `Die Farbe bleibt ${low} bis ${high} min offen, ein Zug und ein Missgeschick brauchen ${needed}: kein Verzögerer nötig.`,
  takeRetarder: ({ low, high, needed, retarder, most }) =>
    `Die Farbe bleibt ${low} bis ${high} min offen, ein Zug und ein Missgeschick brauchen ${needed}: ${retarder} Verzögerer, nach Gewicht des Topfs; nie mehr als ${most}.`,
};
