import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';

export const forecast: Command = {
  name: 'forecast',
  usage: 'forecast JOB [--json]',
  summary: 'foretells the colour of every overlap on every paper',
  help: 'Prints each overlap that covers area: its layers (first down first), Lab (D50, 2°), sRGB, the band it is likely to fall in (ΔE00) and its area.\n--json  the same as JSON.',
  options: { json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
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
    if (call.options['json']) {
      console.log(JSON.stringify({ papers }, null, 2));
      return 0;
    }
    printProblems(plan.problems);
    for (const paper of papers) {
      console.log(`\n${paper.id}`);
      for (const o of paper.overlaps) {
        console.log(
          `  ${o.srgb}${o.inGamut ? ' ' : '*'} L ${o.lab[0].toFixed(1).padStart(5)} a ${o.lab[1].toFixed(1).padStart(6)} b ${o.lab[2].toFixed(1).padStart(6)}  ±${o.band.toFixed(1)}  ${(o.areaMm2 / 100).toFixed(1).padStart(7)} cm²  ${o.layers.join(' + ') || 'bare paper'}`,
        );
      }
      const planned = plan.papers.find((p) => p.id === paper.id);
      if (planned) console.log(`  ± ${tellHere(planned.bandNote)}`);
    }
    console.log('\n* outside what a screen can show; shown as near as it can.');
    return 0;
  },
};
