import { deltaE, list, longLength, say, share, time, type Saying } from '../../../words/say.ts';
import { minutesOf, type ToneWay, type ToneWayName } from './ways.ts';

/** A way of printing a run's tone, with its work and what it changes. */
export function sayToneWay(way: ToneWay): Saying {
  const work = time(toFive(minutesOf(way))),
    make = time(toFive(way.makeMinutes));
  if (way.kind === 'film') return say('halftone.wayFilm', { work, make });
  const cut = { work, make, metres: longLength(way.metres * 1000, 1), off: deltaE(way.off) };
  if (way.kind === 'lines') return say('halftone.wayLines', cut);
  const strengths = list(
    way.runs.map((run) => share(run.strength ?? 1, 0)),
    'and',
  );
  return say('halftone.waySteps', { ...cut, strengths });
}

/** No estimate of hands is finer than five minutes. */
const toFive = (minutes: number): number => Math.max(5, Math.round(minutes / 5) * 5);

export function inWay(kind: ToneWayName): Saying {
  switch (kind) {
    case 'film':
      return say('halftone.inFilm');
    case 'lines':
      return say('halftone.inLines');
    case 'two':
      return say('halftone.inTwo');
    case 'three':
      return say('halftone.inThree');
  }
}
