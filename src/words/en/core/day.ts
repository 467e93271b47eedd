import type { LengthText, NameText, NumberText, SayingText, ShareText, TimeText } from '../../text.ts';
import { many } from '../grammar.ts';

/** The day by the hour, and how long the ink stays open. */
export const day = {
  // What hands do.
  mix: 'Mix and label the ink, pull a drawdown.',
  cut: 'Cut stencils; a fresh blade now and then.',
  setUp: 'Stencil, tape, register; a first look on newsprint.',
  pull: ({ which }: { which: SayingText }) => `Pull ${which}.`,
  pullAfterNewsprint: ({ newsprint, which }: { newsprint: number; which: SayingText }) => `Pull ${newsprint} to set up, then ${which}.`,
  sheetsFromTo: ({ from, to, of }: { from: number; to: number; of: number }) =>
    from === to ? `sheet ${from} of ${of}` : `sheets ${from}–${to} of ${of}`,
  allSheets: ({ n }: { n: number }) => (n === 1 ? 'the one sheet' : `all ${n} sheets`),
  pauses: ({ pauses }: { pauses: TimeText }) => `${pauses} of that is pauses, with the screen flooded.`,
  rack: 'Hand the sheets in, take them off to the rack, look at every one.',
  clean: 'Ink back into the jar, wipe, then wash the screen at once.',
  wait: 'Wait.',
  waitForScreen: 'The screen dries: number the backs, look through the sheets.',
  waitForInk: 'Ink dries: read the drawdown, compare sheets.',
  tooLateForRun: 'Too late to pull this run today: tidy up.',
  afterTheMeal: 'Too late to finish this run before the meal.',
  changeAfter: ({ sheet }: { sheet: NameText }) => `After ${sheet} the next stencil.`,
  changeFirst: 'The next stencil before the first sheet.',
  tooLateForSheet: 'Too late for the next sheet.',
  lastDry: 'The last sheets dry. Hands are free.',
  rest: 'Meal.',
  night: 'Night. The sheets go on drying.',

  // Where.
  atTable: 'table',
  atPress: 'press',
  atRack: 'rack',
  away: 'away',
  screen: ({ n }: { n: number }) => `screen ${n}`,
  screenOfMesh: ({ mesh }: { mesh: NameText }) => `screen ${mesh}`,

  // What is in the way.
  noRuns: 'There is no run to plan a day for.',
  addLayer: 'Add a layer.',
  rackNone: 'The rack has no place: even the first sheet has nowhere to dry.',
  countPlaces: 'Count the places where a wet sheet can lie or hang; a line with pegs counts too.',
  noScreen: 'Without a screen nothing gets printed.',
  sayScreens: 'Say how many screens you have, at least 1.',
  noScreenFree: ({ run }: { run: number }) => `No screen is free for run ${run}.`,
  fewerScreenNames: 'Name fewer screens, or let runs take any.',
  paceImpossible: ({ pulls }: { pulls: NumberText }) => `Nobody prints at ${pulls} pulls an hour.`,
  usualAlone: 'Working alone, 30 to 60 an hour is usual.',
  usualHelped: 'With someone racking, 45 to 90 an hour is usual.',
  handsImpossible: ({ hands }: { hands: NumberText }) => `${hands} people cannot share the work.`,
  sayHands: 'Say how many are at work, from 1 to 20.',
  hoursImpossible: ({ from, to }: { from: NumberText; to: NumberText }) => `A day from ${from} to ${to} has no hours.`,
  laterEnd: 'Let the day end after it starts.',
  minutesImpossible: ({ minutes }: { minutes: NumberText }) => `A day cannot be planned with ${minutes} minutes.`,
  giveMinutes: 'Give minutes, nought or more.',
  sheetsImpossible: ({ sheets, run }: { sheets: NumberText; run: number }) => `${sheets} sheets cannot go through run ${run}.`,
  wholeNumberTo: ({ most }: { most: number }) => `Give a whole number up to ${most}.`,
  sheetTwice: ({ run }: { run: number }) => `A sheet is named twice in run ${run}.`,
  nameOnce: 'Name every sheet once.',
  tooShort: ({ longest, least }: { longest: TimeText; least: TimeText }) =>
    `The longest stretch at work is ${longest}, but one task takes ${least}.`,
  longerDay: 'Make the day longer, or the set-up shorter.',
  endless: ({ most }: { most: number }) => `This work takes more than ${most} days.`,
  fewerOrFaster: 'Print fewer sheets, pull faster, or give the ink less time to dry.',

  // What to mind.
  waitsForRack: ({ n, run, places }: { n: number; run: NameText; places: number }) =>
    `Run ${n} (${run}) waits for a place on the rack: ${places === 1 ? 'the only one is' : `all ${places} are`} full.`,
  morePlaces: 'Find more places (a line with pegs will do), or print fewer sheets in a row.',
  rackFull: ({ places }: { places: number }) =>
    places === 1 ? 'The only place on the rack is taken.' : `At the fullest moment all ${places} places on the rack are taken.`,
  lineWithPegs: 'Keep a line with pegs ready, or take dry sheets off as you go.',
  split: ({ n, run, sittings }: { n: number; run: NameText; sittings: number }) =>
    `Run ${n} (${run}) takes ${sittings} sittings; between them the screen is washed and set up again.`,
  placesOrFilm: ({ places }: { places: number }) =>
    `Find ${many(places, 'place', 'places')} on the rack, or use a film stencil, which can be washed.`,
  sittingsShift: ({ off }: { off: LengthText }) =>
    `Sheets of one sitting can lie up to ${off} off those of another, nineteen times in twenty: check the marks before the second.`,
  findPlaces: ({ places }: { places: number }) => `Find ${many(places, 'place', 'places')} on the rack.`,
  earlierOrFaster: 'Start earlier, pull faster, or print fewer sheets.',

  // Open time.
  humidityImpossible: ({ humidity }: { humidity: ShareText }) => `Air cannot have a humidity of ${humidity}.`,
  readHygrometer: 'Read a hygrometer in the room, or write 50.',
  driesInMesh: ({ humidity, open, needed, most }: { humidity: ShareText; open: NumberText; needed: NumberText; most: ShareText }) =>
    `At ${humidity} humidity the ink can dry in the mesh after ${open} min; a stroke and one mishap take ${needed} min. Even ${most} of retarder may not be enough.`,
  dampenOrFaster:
    'Dampen the room, pull faster, flood the screen after every stroke, or have someone hand you the sheets. With more retarder than this the ink may never dry.',
  retarderHigh: ({ retarder, low, high }: { retarder: ShareText; low: NumberText; high: ShareText }) =>
    `This pace asks for ${retarder} of retarder, more than the usual ${low} to ${high}.`,
  trialFirst: 'The ink dries more slowly; print a trial first, or dampen the room.',
  noRetarder: ({ low, high, needed }: { low: NumberText; high: NumberText; needed: NumberText }) =>
    `The ink stays open for ${low} to ${high} min; a stroke and a mishap take ${needed}: no retarder needed.`,
  takeRetarder: ({
    low,
    high,
    needed,
    retarder,
    most,
  }: {
    low: NumberText;
    high: NumberText;
    needed: NumberText;
    retarder: ShareText;
    most: ShareText;
  }) =>
    `The ink stays open for ${low} to ${high} min; a stroke and a mishap take ${needed}: ${retarder} of retarder, by weight of the pot; never more than ${most}.`,
};
