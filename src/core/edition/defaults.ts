/** What a studio may replace by its own figures. A source is named where there is one, all else is common practice. */
export const studioDefaults = {
  /** Sheets lost in a run. Published: print workshop's buying guide, 5 %; for novices 10 %: common practice. */
  spoilagePractised: 0.05,
  spoilageNovice: 0.1,
  certainty: 0.9,
  /** A/P as share of the edition. Published: how fine art is numbered, 5..10 %. */
  artistsProofShare: [0.05, 0.1] as readonly [number, number],
  /** common practice: 30..60 an hour alone; published: a studio's page, 100 an hour or slower. */
  pullsPerHour: 40,
  /** Pace with someone racking against the pace alone. common practice, a guess to be replaced by a count over one run. */
  helpedPace: 1.5,
  /** common practice: 30..45 and 15..20 min. */
  setUpMinutes: 35,
  cleanMinutes: 18,
  /** Coating a screen, laying on the film, exposing, washing out and stripping it after the edition: hands only, drying left out. common practice */
  filmMinutes: 45,
  /** Published: a studio's account, an hour of mixing for three colours. */
  mixMinutesPerRun: 20,
  /** Taking a spent stencil off the mesh and laying the next by its marks, ink left in the screen. common practice */
  changeMinutes: 12,
  /** The longest that anyone cuts or mixes without getting up. common practice */
  sittingMinutes: 90,
  /** Published: article on drying times, 30 min to hours. */
  dryMinutes: 45,
  /** Ink stays open in the mesh so long at `openAtHumidity` %. common practice: 5..15 min at 45..60 %. */
  openMinutes: [5, 15] as readonly [number, number],
  openAtHumidity: 52.5,
  /** The humidity at which the drying time is meant. common practice */
  dryAtHumidity: 50,
  /** Longest mishap during a run that the ink must bear: a dropped sheet, a word with someone. common practice */
  mishapMinutes: 4,
  /** Retarder in the pot. Published: trade blog, 2..5 %; ceiling: common practice, 10 % in a very dry climate. */
  retarderUsual: [0.02, 0.05] as readonly [number, number],
  retarderMost: 0.1,
  /** Open time gained, and drying time gained, for each percent of retarder. common practice, a guess to be replaced by one trial. */
  openGainPerPercent: 0.12,
  dryGainPerPercent: 0.04,
} as const;
