import { layerOf, inkBench } from '../../../core/asks/index.ts';
import { linesToCut, materialsOf, sayOffer, takeOffer, type Plan } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/index.ts';
import { cutFile } from '../../../packet/index.ts';
import type { Call, Command } from '../../command.ts';
import { checkStockFile, cutStock } from './cut-stock.ts';
import { fileAt } from '../../disk/disk.ts';
import { jobFileAt, writeInPlace } from '../job/done.ts';
import { option, replaceFile, word } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, readerOnPaper, sayHere, tellHere } from '../../reader.ts';
import { sayStencil } from '../../say/say-stencil.ts';
import { layerNamed, numberOf, textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';

type Layer = Plan['layers'][number];

export const cut: Command = {
  name: 'cut',
  usage: say('help.cutUsage'),
  summary: say('help.cutSummary'),
  help: [
    word('layer', say('help.layerIs')),
    option('--stock N', say('help.cutStock')),
    option('--out', say('help.cutOut'), 'file'),
    option('--paper', say('help.cutPaper'), 'size'),
    replaceFile,
    option('--take N', say('help.cutTake')),
    option('--json', say('help.cutJson')),
  ],
  prints: true,
  options: {
    stock: { type: 'string' },
    paper: { type: 'string' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
    take: { type: 'string' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const stock = call.options['stock'] !== undefined,
      out = textOf(call.options['out']),
      replace = call.options['replace'] === true;
    if (stock) checkStockFile(call);
    else if (call.options['paper'] !== undefined)
      fail('paper-without-stock', placeOf('--paper'), say('refusals.partsOnlyOfStock'), say('refusals.sayStock'));
    else if (out !== undefined) {
      if (!/\.(svg|dxf)$/i.test(out)) fail('no-such-format', fileAt(out), say('refusals.cutAsSvgOrDxf'), say('refusals.endInSvgOrDxf'));
      mustBeNew(out, replace);
    }
    const bundle = jobOf(call);
    if (stock) return cutStock(await planOf(bundle), call);
    const wanted = layerOf(inkBench(bundle.job), layerNamed(call, bundle.job));
    const plan = await planOf(bundle);
    const layer =
      plan.layers.find((l) => l.id === wanted.id) ??
      fail('no-stencil', `layers[#${wanted.id}]`, say('refusals.noStencil'), say('refusals.runCheck'));
    const { stencil } = layer;
    if (call.options['take'] !== undefined) return take(plan, layer, call);
    if (call.options['json']) {
      printJson(facts(plan, layer));
      return stencil.certificate.holds ? 0 : 1;
    }
    printProblems(stencil.problems);
    for (const line of sayStencil(plan, layer)) console.log(line);
    for (const [i, offer] of (stencil.offers ?? []).entries())
      console.log(`  ${i + 1} › ${tellHere(sayOffer(offer, materialsOf(plan.job)))}`);
    const { certificate } = stencil;
    if (out === undefined) return certificate.holds ? 0 : 1;
    linesToCut(layer);
    const { language } = readerOnPaper(call.language, plan.job);
    writeNew(out, replace, () => cutFile(plan, layer, /\.dxf$/i.test(out) ? 'dxf' : 'svg', language));
    console.log(`  ${out}`);
    return 0;
  },
};

/** Way out number so and so, written into the job. */
function take(plan: Plan, { id, name, stencil }: Layer, call: Call): number {
  const offers = stencil.offers ?? [];
  if (offers.length === 0) fail('no-way-out', placeOf('--take'), say('refusals.noWayOut'), say('refusals.seeWeakPlaces'));
  const file = jobFileAt(call.words[0]);
  const offer = offers[Math.round(numberOf(call.options['take'], '--take', 1, 1, offers.length)) - 1];
  writeInPlace(file, takeOffer(plan.job, id, offer));
  console.log(sayHere('begin.wayTaken', { layer: asName(name), way: sayOffer(offer, materialsOf(plan.job)) }));
  return 0;
}

/** All that `--json` tells. */
function facts(plan: Plan, { id, side, cutId, stencil }: Layer): object {
  return {
    layer: id,
    side,
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
    mends: stencil.mends?.map(({ kind, at, areaMm2, costDeltaE }) => ({ kind, at, areaMm2, costDeltaE })),
    cut: plan.cuts.find((c) => c.id === cutId)?.uses,
    certificate: stencil.certificate,
    offers: stencil.offers?.map(({ kind, atMm, areaMm2, costDeltaE, change }) => ({ kind, atMm, areaMm2, costDeltaE, change })),
    knife: stencil.knife,
  };
}
