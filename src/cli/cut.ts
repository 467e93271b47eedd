import { layerOf, inkBench } from '../core/asks/index.ts';
import { materialsOf, mustHold, sayOffer } from '../core/plan/index.ts';
import { ratesOf } from '../core/plan/parts/stencils.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import { cutFile, sayUses } from '../packet/index.ts';
import type { Command } from './command.ts';
import { sayIslands } from './say-islands.ts';
import { checkStockFile, cutStock } from './cut-stock.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { plural, textOf } from './words.ts';
import { mustBeNew, writeNew } from './write-new.ts';

export const cut: Command = {
  name: 'cut',
  usage: 'cut JOB LAYER|--stock N [--out FILE.svg|FILE.dxf|FILE.pdf] [--paper a4|letter] [--replace] [--json]',
  summary: 'one stencil, or a sheet of stock with several: what it is made of, and its cut sheet at true size',
  help: 'LAYER is its id, its name, or its run (1 is printed first).\n--out FILE   writes the cut sheet, .svg or .dxf; only if the stencil is proven to hold together\n--stock N    instead of a stencil sheet N of the stock, with all that lie on it: .svg, .dxf, or .pdf of its own size\n--paper SIZE with --stock and a .pdf: in parts on a4 or letter, with joining marks\n--json       islands, bridges with what each costs in the print, certificate, knife work',
  options: {
    stock: { type: 'string' },
    paper: { type: 'string' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const stock = call.options['stock'] !== undefined,
      out = textOf(call.options['out']),
      replace = call.options['replace'] === true;
    if (stock) checkStockFile(call);
    else if (call.options['paper'] !== undefined)
      fail(
        'paper-without-stock',
        '--paper',
        'Only a sheet of stock is written in parts here.',
        'Say which with --stock; one stencil in parts is in the packet.',
      );
    else if (out !== undefined) {
      if (!/\.(svg|dxf)$/i.test(out))
        fail(
          'no-such-format',
          out,
          'A cut sheet is written as SVG or DXF.',
          'End the file’s name in .svg or .dxf; the tiled PDF is in the packet.',
        );
      mustBeNew(out, replace);
    }
    const plan = await planOf(jobOf(call));
    if (stock) return cutStock(plan, call);
    const wanted = layerOf(
      inkBench(plan.job),
      call.words[1] ?? fail('no-layer-named', 'the command', 'Which layer?', `Name one of: ${plan.layers.map((l) => l.id).join(', ')}.`),
    );
    const layer =
      plan.layers.find((l) => l.id === wanted.id) ??
      fail('no-stencil', `layer “${wanted.name}”`, 'It has no stencil: its cut is empty or could not be read.', 'Run laydown check.');
    const { stencil } = layer;
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          {
            layer: layer.id,
            side: layer.side,
            islands: stencil.islands.map(({ areaMm2, handled, costDeltaE }) => ({ areaMm2, handled, costDeltaE })),
            bridges: stencil.bridges.map(({ id, from, to, widthMm, areaMm2, costDeltaE, pinned }) => ({
              id,
              from,
              to,
              widthMm,
              areaMm2,
              costDeltaE,
              pinned,
            })),
            loosePieces: stencil.loosePieces.map(({ number, at, areaMm2, costDeltaE }) => ({ number, at, areaMm2, costDeltaE })),
            cut: plan.cuts.find((c) => c.id === layer.cutId)?.uses,
            certificate: stencil.certificate,
            offers: stencil.offers?.map(({ region: _, ...offer }) => offer),
            knife: stencil.knife,
          },
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return stencil.certificate.holds ? 0 : 1;
    }
    printProblems(stencil.problems);
    const { knife, certificate } = stencil;
    console.log(
      `${layer.name}: run ${layer.run}, ${layer.side}; ${certificate.holds ? `proven, no neck under ${certificate.leastNeckMm.toFixed(1)} mm` : `NOT proven: ${certificate.faults.length} faults`}`,
    );
    console.log(
      `  ${knife.metres.toFixed(2)} m, ${plural(knife.corners, 'corner')}, ${plural(knife.pieces, 'piece')}, about ${plural(Math.ceil(knife.minutes), 'minute')}: ${knife.difficulty}`,
    );
    const rates = ratesOf(plan.job);
    console.log(
      `  (${rates.metresPerMinute} m a minute, ${rates.secondsPerCorner} s a corner, ${rates.secondsPerPiece} s a piece: “knife” in the job)`,
    );
    const pair = plan.cuts.find((c) => c.id === layer.cutId);
    if (pair) console.log(`  cut “${pair.name}” ${pair.timesToCut === 1 ? 'once' : `${pair.timesToCut} times`}. ${tellHere(pair.why)}`);
    for (const line of pair ? sayUses(pair) : []) console.log(`    ${tellHere(line)}`);
    for (const b of stencil.bridges)
      console.log(
        `  bridge ${b.id} at ${b.from.map((v) => v.toFixed(0)).join(', ')} mm: ${b.areaMm2.toFixed(1)} mm²${b.costDeltaE === undefined ? '' : `, seen as ΔE00 ${b.costDeltaE.toFixed(1)}`}${b.pinned ? ', pinned' : ''}`,
      );
    for (const line of sayIslands(stencil)) console.log(`  ${line}`);
    for (const offer of stencil.offers ?? []) console.log(`  › ${tellHere(sayOffer(offer, materialsOf(plan.job)))}`);
    if (out === undefined) return certificate.holds ? 0 : 1;
    mustHold(layer);
    writeNew(out, replace, () => cutFile(plan, layer, /\.dxf$/i.test(out) ? 'dxf' : 'svg'));
    console.log(`  ${out}`);
    return 0;
  },
};
