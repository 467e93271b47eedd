import { seeded } from '../../src/core/random.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { damaged, damagedText } from './damage.ts';
import { feedAll } from './feeding.ts';
import { spoiltJob } from './jobs.ts';
import { formats, isText, samples } from './samples.ts';
import { Tally } from './tally.ts';

export interface Wish {
  readonly seed: number;
  readonly times: number;
  /** Milliseconds since 1970. */
  readonly until: number;
}

/** Damaged files of every format that others' work comes in, by turns; one line each. */
export async function attackInputs({ seed, times, until }: Wish): Promise<Tally[]> {
  const sound = await samples();
  const tallies = new Map(formats.map((format) => [format, new Tally(`inputs: ${format}`)]));
  const random = seeded(seed);
  function* files(): Generator<{ kind: (typeof formats)[number]; bytes: Uint8Array; name: string; tally: Tally }> {
    for (let i = 0; i < times; i++) {
      const kind = formats[i % formats.length];
      const bytes = sound[kind][random.below(sound[kind].length)];
      yield {
        kind,
        bytes: isText(kind) ? damagedText(bytes, random) : damaged(bytes, random),
        name: `${kind} ${i}, seed ${seed}`,
        tally: tallies.get(kind)!,
      };
    }
  }
  await feedAll(files(), until);
  return [...tallies.values()];
}

/** Damaged jobs: refused, or planned with sense. */
export async function attackJobs({ seed, times, until }: Wish): Promise<Tally[]> {
  const tally = new Tally('jobs');
  const random = seeded(seed);
  const sound = smallJob().job;
  function* files(): Generator<{ kind: 'job'; bytes: Uint8Array; name: string; tally: Tally }> {
    for (let i = 0; i < times; i++) {
      const text = new TextEncoder().encode(JSON.stringify(spoiltJob(sound, random), null, 1));
      yield { kind: 'job', bytes: random.next() < 0.15 ? damagedText(text, random) : text, name: `job ${i}, seed ${seed}`, tally };
    }
  }
  await feedAll(files(), until);
  return [tally];
}
