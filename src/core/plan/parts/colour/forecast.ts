import { deltaE00, type Lab } from '../../../colour/index.ts';
import type { Job } from '../../../job/index.ts';
import type { FoundInks } from './inks.ts';
import { learnOnPaper } from './learning.ts';
import { layTheInks, type RunLayer } from './let-down.ts';
import { bandSamples, coloursOn, foresightOn, settleLab, tenth } from './papers.ts';

/** What is foretold of overlaps on one paper: the same colours, bands and prints that may be so as the Plan shows. */
export interface Forecast {
  /** The colour shown for layers (ids, in any order), and its band; null where one of them has no ink. */
  readonly of: (layerIds: readonly string[]) => { readonly lab: Lab; readonly band: number; readonly measured: boolean } | null;
  /** How likely a print comes within so much of a wanted colour, 0..1. */
  readonly chance: (layerIds: readonly string[], wanted: Lab, within: number) => number;
}

/** For questions that are asked of a job without its Plan; null where the paper was not read. */
export function forecastOn(job: Job, found: FoundInks, layers: readonly RunLayer[], paperId: string): Forecast | null {
  const paper = job.papers.find((p) => p.id === paperId);
  if (!paper) return null;
  const learned = learnOnPaper(job, layers, found, paperId);
  const printed = layTheInks(layers, found);
  const coloured = coloursOn(paper, job, found, printed, learned);
  const foresight = foresightOn(paper, job, found, printed, learned, bandSamples);
  if (!coloured || !foresight) return null;
  const { colours, measured } = coloured;
  const rowOf = (ids: readonly string[]): number | null =>
    ids.every((id) => printed.some((l) => l.id === id))
      ? printed.reduce((row, l, i) => (ids.includes(l.id) ? row | (1 << i) : row), 0)
      : null;
  const labAt = (row: number): Lab => [colours.lab[row * 3], colours.lab[row * 3 + 1], colours.lab[row * 3 + 2]];
  return {
    of: (ids) => {
      const row = rowOf(ids);
      return row === null
        ? null
        : { lab: settleLab(labAt(row)), band: tenth(measured.get(row) ?? foresight.band[row]), measured: measured.has(row) };
    },
    chance: (ids, wanted, within) => {
      const row = rowOf(ids);
      if (row === null) return 0;
      // What was measured varies by its reading's doubt alone: the same prints, drawn in to it.
      const sure = measured.has(row) ? measured.get(row)! / Math.max(0.1, foresight.usual[row]) : 1;
      const lab = labAt(row);
      const { clouds, samples, overlaps } = foresight;
      let met = 0;
      for (let s = 0; s < samples; s++) {
        const at = (s * overlaps + row) * 3;
        const print = [0, 1, 2].map((c) => lab[c] + sure * (clouds[at + c] - foresight.lab[row * 3 + c])) as unknown as Lab;
        if (deltaE00(print, wanted) <= within) met++;
      }
      return met / samples;
    },
  };
}
