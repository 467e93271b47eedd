import {
  askToneWays,
  inWay,
  leastCut,
  minutesOf,
  sayToneWay,
  withToneWay,
  type RunOfTone,
  type SplitAnswer,
  type ToneWay,
  type ToneWayName,
} from '../../../core/asks/index.ts';
import type { Job } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { list, name as asName, say } from '../../../words/index.ts';
import { placeOf } from '../../options.ts';
import { sayHere, tellHere } from '../../reader.ts';

const words = { film: 'film', lines: 'lines', 2: 'two', 3: 'three' } as const;
type Asked = ToneWayName | 'least';

/** One run's ways, and the one that was taken. */
export interface RunWays {
  readonly layer: string;
  readonly name: string;
  readonly ways: readonly ToneWay[];
  readonly taken: ToneWay;
}

export interface WaysTaken {
  readonly job: Job;
  readonly runs: readonly RunWays[];
}

/** `slate=2,sand=lines`, or one way for all: `least`. */
export function waysAsked(text: string): ReadonlyMap<string, Asked> {
  return new Map(
    text
      .split(',')
      .map((part) => part.trim())
      .filter((part) => part !== '')
      .map((part): [string, Asked] => {
        const [layer, way] = part.includes('=') ? part.split('=') : ['', part];
        if (way === 'least') return [layer, 'least'];
        if (!Object.hasOwn(words, way))
          fail('no-such-way', placeOf('--as'), say('cli.cannotUse', { text: asName(part) }), say('halftone.otherWay'));
        return [layer, words[way as unknown as keyof typeof words]];
      }),
  );
}

/** What each run of a split would cost in any way, and the job with those that were asked for. */
export async function takeWays(
  answer: SplitAnswer,
  asked: ReadonlyMap<string, Asked>,
  on: Pick<RunOfTone, 'paperId' | 'materialId'>,
): Promise<WaysTaken> {
  const { width, height, films } = answer;
  let { job } = answer;
  for (const id of asked.keys())
    if (id !== '' && !job.layers.some((l) => l.id === id || l.ink === id)) {
      const ids = list(job.layers.map((l) => asName(l.id)));
      fail('no-such-layer', placeOf('--as'), say('job.noSuchLayer', { layer: asName(id) }), say('cli.useOneOf', { all: ids }));
    }
  const runs: RunWays[] = [];
  for (const { layer: layerId, plane } of films) {
    const layer = answer.job.layers.find((l) => l.id === layerId)!;
    const ways = await askToneWays({ job: answer.job, layerId, plane, width, height, ...on });
    const wanted = asked.get(layerId) ?? asked.get(layer.ink ?? '') ?? asked.get('') ?? 'film';
    const taken = wanted === 'least' ? leastCut(ways) : ways.find((w) => w.kind === wanted);
    if (!taken) {
      const way = wanted === 'least' ? say('halftone.inLines') : inWay(wanted);
      fail('not-that-way', placeOf('--as'), say('halftone.notThatWay', { layer: asName(layer.name), way }), say('halftone.otherWay'));
    }
    job = withToneWay(job, layerId, taken, on.materialId);
    runs.push({ layer: layerId, name: layer.name, ways, taken });
  }
  return { job, runs };
}

export function tellWays(runs: readonly RunWays[]): void {
  for (const { name, ways, taken } of runs) {
    console.log(sayHere('halftone.waysOf', { layer: asName(name) }));
    for (const way of ways) console.log(`  ${tellHere(sayToneWay(way))}`);
    const least = leastCut(ways);
    if (taken.kind !== 'film') console.log(`  ${sayHere('halftone.wayTaken', { layer: asName(name), way: inWay(taken.kind) })}`);
    else if (least) console.log(`  ${sayHere('halftone.wayLeast', { layer: asName(name), way: inWay(least.kind) })}`);
  }
  console.log(sayHere('halftone.wayMinutes'));
}

/** For `--json`. */
export function waysFigures(runs: readonly RunWays[]): Record<string, unknown>[] {
  const round = (v: number): number => Number(v.toFixed(2));
  return runs.map(({ layer, ways, taken }) => ({
    layer,
    taken: taken.kind,
    ways: ways.map((way) => ({
      way: way.kind,
      minutes: Math.round(minutesOf(way)),
      making: Math.round(way.makeMinutes),
      metres: round(way.metres),
      off: round(way.off),
      ...(way.kind === 'two' || way.kind === 'three' ? { strengths: way.runs.map((run) => run.strength) } : {}),
    })),
  }));
}
