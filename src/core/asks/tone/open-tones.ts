import { labFromXyz, xyzAt, xyzFromLab, type Xyz } from '../../colour/index.ts';
import { leastSpanL, openTones, type OpenTones } from '../../halftone/index.ts';
import { filmOf, overlapSpectra } from '../../ink/index.ts';
import type { Job } from '../../job/index.ts';
import { potOfLayer, thicker } from '../../plan/index.ts';
import { fail } from '../../problem.ts';
import { name as asName, say } from '../../../words/say.ts';
import { inkBench } from '../bench.ts';

/** A printing black where no ink is decided or read yet, L* beside white paper (common practice). */
const usualBlackL = 18;

export interface OpenAsk {
  readonly job: Job;
  readonly inkId: string | null;
  readonly strength?: number;
  readonly paperId?: string;
  /** Largest share that can be open. */
  readonly most: number;
  /** How much thicker the film lies along the edges of fine openings. */
  readonly filmTimes?: number;
}

/** How light openings print in an ink of the job on one of its papers, by the ink's own spectrum. */
export function openTonesOf(ask: OpenAsk): OpenTones {
  const { job, inkId, most } = ask;
  const [paper, solid] = endsOf(ask);
  const [bareL, solidL] = [labFromXyz(paper)[0], labFromXyz(solid)[0]];
  if (inkId !== null && Math.abs(bareL - solidL) < leastSpanL) {
    const name = asName(job.inks.find((k) => k.id === inkId)?.name ?? inkId);
    fail('ink-too-pale', `inks[#${inkId}]`, say('halftone.inkTooPale', { ink: name }), say('halftone.strongerInk'));
  }
  return openTones(paper, solid, most);
}

function endsOf({ job, inkId, strength = 1, paperId, filmTimes = 1 }: OpenAsk): readonly [Xyz, Xyz] {
  const { found } = inkBench(job);
  const read = job.papers.filter((p) => found.papers.has(p.id));
  const paper = read.find((p) => p.id === paperId) ?? read[0];
  const ground = paper && found.papers.get(paper.id);
  if (!ground) return [xyzFromLab([95, 0, 0]), xyzFromLab([usualBlackL, 0, 0])];
  const bare = xyzAt(ground, 0);
  const pot = inkId === null ? null : potOfLayer({ ink: inkId, strength }, found);
  if (!pot) return [bare, xyzFromLab([usualBlackL, 0, 0])];
  const rows = overlapSpectra(ground, [filmOf(thicker(pot, filmTimes))], found.surface);
  return [xyzAt(rows, 0), xyzAt(rows, rows.length / 2)];
}
