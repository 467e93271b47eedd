import type { Plan } from '../core/plan/index.ts';
import { area, asWritten, deltaE, lengths, say } from '../words/index.ts';
import type { Command } from './command.ts';
import { json, option } from './help.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { printJson, sayHere, showHere } from './reader.ts';
import { columns } from './table.ts';
import { labCells, labColumns } from './words.ts';

export const forecast: Command = {
  name: 'forecast',
  usage: say('help.forecastUsage'),
  summary: say('help.forecastSummary'),
  help: [say('help.forecastText'), option('--worth', say('help.forecastWorth')), json],
  options: { json: { type: 'boolean' }, worth: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    if (call.options['json']) {
      const papers = plan.papers.map((paper) => ({
        id: paper.id,
        overlaps: paper.overlaps.map(({ layers, lab, srgb, inGamut, band, possible, areaMm2 }) => ({
          layers,
          lab: lab.map((v) => Number(v.toFixed(3))),
          srgb,
          inGamut,
          band,
          possible,
          areaMm2: Number(areaMm2.toFixed(2)),
        })),
        worthReading: paper.worthReading && {
          meanBand: paper.worthReading.meanBand,
          picks: paper.worthReading.picks.map(({ layers, atMm, meanBand }) => ({
            layers,
            atMm: atMm.map((v) => Number(v.toFixed(1))),
            meanBand,
          })),
        },
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
      if (call.options['worth']) printWorth(plan, paper);
    }
    if (plan.papers.some((paper) => paper.overlaps.some((o) => !o.inGamut))) console.log(`\n${sayHere('answers.outsideScreen')}`);
    return 0;
  },
};

function printWorth(plan: Plan, { worthReading }: Plan['papers'][number]): void {
  if (!worthReading) {
    console.log(`  ${sayHere('answers.nothingWorth')}`);
    return;
  }
  console.log(`  ${sayHere('answers.worthReading', { band: deltaE(worthReading.meanBand) })}`);
  worthReading.picks.forEach(({ layers, atMm, meanBand }, i) => {
    const names = asWritten(layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + '));
    console.log(`  ${i + 1}. ${sayHere('answers.worthOne', { layers: names, at: lengths(atMm, ',', 0), band: deltaE(meanBand) })}`);
  });
}
