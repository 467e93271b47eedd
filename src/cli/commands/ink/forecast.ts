import { askWanted, lampName, sayParting, underLamp, wantedName } from '../../../core/asks/index.ts';
import { lamps, type Illuminant } from '../../../core/colour/index.ts';
import { fail } from '../../../core/problem.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { area, asWritten, deltaE, labColour, lengths, list, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { forecastChart } from './forecast-chart.ts';
import { json, option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, showHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { labCells, labColumns, textOf } from '../../say/words.ts';

function lampOf(text: string | undefined): Illuminant {
  const lamp = lamps.find((one) => one.toLowerCase() === (text ?? 'D50').toLowerCase());
  return (
    lamp ??
    fail(
      'no-such-lamp',
      placeOf('--lamp'),
      say('refusals.noSuchLamp', { lamp: asName(text ?? '') }),
      say('cli.useOneOf', { all: list(lamps.map(asName), 'or') }),
    )
  );
}

export const forecast: Command = {
  name: 'forecast',
  usage: say('help.forecastUsage'),
  summary: say('help.forecastSummary'),
  help: [
    say('help.forecastText'),
    option('--worth', say('help.forecastWorth')),
    option('--wanted', say('help.forecastWanted')),
    option('--coverages', say('help.forecastCoverages'), 'csvFile'),
    option('--paper', say('help.forecastPaper'), 'paper'),
    option('--lamp', say('help.forecastLamp', { lamps: list(lamps.map(asName), 'comma') }), 'lamp'),
    json,
  ],
  options: {
    json: { type: 'boolean' },
    worth: { type: 'boolean' },
    wanted: { type: 'boolean' },
    lamp: { type: 'string' },
    coverages: { type: 'string' },
    paper: { type: 'string' },
  },
  async run(call) {
    const lamp = lampOf(textOf(call.options['lamp']));
    const planned = await planOf(jobOf(call));
    const chart = textOf(call.options['coverages']);
    if (chart !== undefined) return forecastChart(planned, chart, textOf(call.options['paper']), call.options['json'] === true);
    const plan = { ...planned, papers: planned.papers.map((paper) => underLamp(paper, lamp)) };
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
        lamp,
        grounds:
          paper.grounds?.colours.map(({ srgb, lab, areaMm2, overlaps }) => ({
            srgb,
            lab,
            areaMm2: Number(areaMm2.toFixed(2)),
            overlaps: overlaps.map(({ code, ...one }) => ({ layers: paper.overlaps.find((o) => o.code === code)?.layers ?? [], ...one })),
          })) ?? null,
        parting: paper.parting.map(({ codes, ...pair }) => ({
          ...pair,
          layers: codes.map((code) => paper.overlaps.find((o) => o.code === code)?.layers ?? []),
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
      printJson({ papers, ...(call.options['wanted'] ? { wanted: askWanted(plan) } : {}) });
      return 0;
    }
    printProblems(plan.problems);
    for (const paper of plan.papers) {
      console.log(`\n${lamp === 'D50' ? paper.name : sayHere('answers.underLamp', { paper: asName(paper.name), lamp: lampName(lamp) })}`);
      if (lamp !== 'D50' && paper.grounds) console.log(`  ${sayHere('answers.lampOverPicture')}`);
      const rows = paper.overlaps.map(({ srgb, inGamut, lab, band, areaMm2, layers }) => [
        `${srgb}${inGamut ? ' ' : '*'}`,
        ...labCells(lab),
        sayHere('answers.within', { band: deltaE(band) }),
        showHere(area(areaMm2)),
        layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ') || sayHere('answers.barePaper'),
      ]);
      for (const line of columns(rows, { indent: '  ', right: [...labColumns(1), 7, 8] })) console.log(line);
      console.log(`  ${sayHere('answers.bandIs', { why: paper.bandNote })}`);
      paper.grounds?.colours.forEach((ground, i) => {
        console.log(`  ${ground.srgb}  ${sayHere('answers.onGround', { n: i + 1, area: area(ground.areaMm2) })}`);
        const on = ground.overlaps
          .filter((o) => o.code !== 0)
          .map(({ srgb, inGamut, lab, band, areaMm2, code }) => [
            `${srgb}${inGamut ? ' ' : '*'}`,
            ...labCells(lab),
            sayHere('answers.within', { band: deltaE(band) }),
            showHere(area(areaMm2)),
            (paper.overlaps.find((o) => o.code === code)?.layers ?? [])
              .map((id) => plan.layers.find((l) => l.id === id)?.name ?? id)
              .join(' + '),
          ]);
        for (const line of columns(on, { indent: '    ', right: [...labColumns(1), 7, 8] })) console.log(line);
      });
      if (paper.parting.length > 0) console.log(`  ${sayHere('answers.parting')}`);
      for (const pair of paper.parting) console.log(`    ${tellHere(sayParting(plan, paper.overlaps, pair))}`);
      if (call.options['worth']) printWorth(plan, paper);
    }
    if (call.options['wanted']) printWanted(plan);
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

/** How near each wanted colour comes, with its band. */
function printWanted(plan: Plan): void {
  console.log(`\n${sayHere(plan.job.wanted.length === 0 ? 'answers.noneWanted' : 'answers.wantedHead')}`);
  for (const { at, wanted, now } of askWanted(plan)) {
    const names = asWritten(wantedName(plan.job.wanted[at], plan.layers));
    const values = { layers: names, wanted: labColour(wanted) };
    console.log(
      `  ${
        now
          ? sayHere('answers.wantedNow', {
              ...values,
              deltaE: deltaE(now.deltaE),
              band: deltaE(now.band),
              within: deltaE(now.within, 0),
              words: now.words,
              chance: share(now.chance, 0),
            })
          : sayHere('answers.wantedOpen', values)
      }`,
    );
  }
}
