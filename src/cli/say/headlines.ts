import type { Plan } from '../../core/plan/index.ts';
import { deltaE, lengths, name as asName } from '../../words/index.ts';
import { knifeLength, sayHere, weight } from '../reader.ts';

/** The few figures a printmaker asks for first. */
export function headlines({ job, cuts, layers, papers: [paper, ...more] }: Plan): string[] {
  const sum = (of: (layer: Plan['layers'][number]) => number): number => layers.reduce((total, layer) => total + of(layer), 0);
  const metres = cuts.reduce((total, cut) => total + cut.knifeMetres, 0);
  return [
    sayHere('answers.jobIs', {
      title: asName(job.title),
      runs: layers.length,
      papers: paper ? 1 + more.length : 0,
      image: lengths([job.image.widthMm, job.image.heightMm]),
    }),
    ...(paper
      ? [
          sayHere('answers.overlapsOn', {
            n: paper.overlaps.length,
            paper: asName(paper.name),
            band: deltaE(Math.max(0, ...paper.overlaps.map((o) => o.band))),
          }),
        ]
      : []),
    sayHere('answers.toCutAndMix', {
      along: knifeLength(metres, 1),
      bridges: sum((l) => l.stencil.bridges.length),
      ink: weight(sum((l) => l.mix?.totalGrams ?? 0)),
    }),
  ];
}
