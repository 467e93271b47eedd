import { area, deltaE, say } from '../words/index.ts';
import type { Command } from './command.ts';
import { json } from './help.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { printJson, sayHere, showHere } from './reader.ts';
import { columns } from './table.ts';
import { labCells, labColumns } from './words.ts';

export const forecast: Command = {
  name: 'forecast',
  usage: say('help.forecastUsage'),
  summary: say('help.forecastSummary'),
  help: [say('help.forecastText'), json],
  options: { json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    if (call.options['json']) {
      const papers = plan.papers.map((paper) => ({
        id: paper.id,
        overlaps: paper.overlaps.map(({ layers, lab, srgb, inGamut, band, areaMm2 }) => ({
          layers,
          lab: lab.map((v) => Number(v.toFixed(3))),
          srgb,
          inGamut,
          band,
          areaMm2: Number(areaMm2.toFixed(2)),
        })),
      }));
      printJson({ papers });
      return 0;
    }
    printProblems(plan.problems);
    for (const paper of plan.papers) {
      console.log(`\n${paper.name}`);
      const rows = paper.overlaps.map(({ srgb, inGamut, lab, band, areaMm2, layers }) => [
        `${srgb}${inGamut ? ' ' : '*'}`,
        ...labCells(lab),
        sayHere('answers.within', { band: deltaE(band) }),
        showHere(area(areaMm2)),
        layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ') || sayHere('answers.barePaper'),
      ]);
      for (const line of columns(rows, { indent: '  ', right: [...labColumns(1), 7, 8] })) console.log(line);
      console.log(`  ${sayHere('answers.bandIs', { why: paper.bandNote })}`);
    }
    if (plan.papers.some((paper) => paper.overlaps.some((o) => !o.inGamut))) console.log(`\n${sayHere('answers.outsideScreen')}`);
    return 0;
  },
};
