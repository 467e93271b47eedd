/** Film positives: a run of tone as black and bare, with what stands beside it. */
export { filmFile, type FilmFormat, type MakePress } from './files.ts';
export { filmLayout, wedgeCovers, type FilmAsk, type FilmLayout, type ToneRun } from './layout.ts';
export { filmOf, type Film } from './rows.ts';
export { exposureFilm, testedRuns, wedgeFilm } from './test-films.ts';
