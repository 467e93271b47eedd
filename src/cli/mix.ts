import { askBatch } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { numberOf } from './words.ts';

export const mix: Command = {
  name: 'mix',
  usage: 'mix JOB LAYER [--grams N] [--scale STEP] [--json]',
  summary: 'weighs out the pot of a layer',
  help: 'LAYER is its id, its name, or its run (1 is printed first).\n--grams N      so much in all (default: what the run needs, with what stays in screen and pot)\n--scale STEP   smallest step of the scale in grams (default 1)\n--json         as JSON',
  options: { grams: { type: 'string' }, scale: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const layer =
      call.words[1] ?? fail('no-layer-named', 'the command', 'Which layer?', `Name one of: ${plan.layers.map((l) => l.id).join(', ')}.`);
    const grams = call.options['grams'] === undefined ? undefined : numberOf(call.options['grams'], '--grams', 100, 0.1, 100000);
    const batch = askBatch(plan, { layer, totalGrams: grams, scaleStepGrams: numberOf(call.options['scale'], '--scale', 1, 0, 100) });
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          batch,
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    const planned = plan.layers.find((l) => l.id === batch.layerId);
    console.log(`${batch.layerName}, ${batch.totalGrams.toFixed(1)} g`);
    for (const part of batch.parts)
      console.log(
        `  ${tellHere(part.name).padEnd(26)} ${part.grams.toFixed(2).padStart(9)} g   ${(part.share * 100).toFixed(1).padStart(5)} % by volume   ${part.millilitres.toFixed(1)} mL`,
      );
    console.log(`  rounding to the scale moves the colour by ΔE00 ${batch.roundingDeltaE.toFixed(2)}`);
    if (planned?.mix) {
      if (planned.mix.retarderShare > 0)
        console.log(
          `  retarder: ${(planned.mix.retarderShare * 100).toFixed(0)} % (${(batch.totalGrams * planned.mix.retarderShare).toFixed(1)} g) for this pace and air; wear gloves, the label decides`,
        );
      console.log(`  ${tellHere(planned.mix.note)}`);
    }
    printProblems(batch.problems, console.log);
    return 0;
  },
};
