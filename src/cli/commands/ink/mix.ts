import { askBatch } from '../../../core/asks/index.ts';
import { deltaE, name as asName, say, share, volume } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { json, option, word } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { printJson, sayHere, showHere, tellHere, weight } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { layerNamed, numberOf } from '../../say/words.ts';

export const mix: Command = {
  name: 'mix',
  usage: say('help.mixUsage'),
  summary: say('help.mixSummary'),
  help: [
    word('layer', say('help.layerIs')),
    option('--grams N', say('help.mixGrams')),
    option('--scale', say('help.mixScale'), 'step'),
    json,
  ],
  options: { grams: { type: 'string' }, scale: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const layer = layerNamed(call, bundle.job);
    const grams = call.options['grams'] === undefined ? undefined : numberOf(call.options['grams'], '--grams', 100, 0.1, 100000);
    const step = numberOf(call.options['scale'], '--scale', 1, 0, 100);
    const plan = await planOf(bundle);
    const batch = askBatch(plan, { layer, totalGrams: grams, scaleStepGrams: step });
    if (call.options['json']) {
      printJson(batch);
      return 0;
    }
    const planned = plan.layers.find((l) => l.id === batch.layerId)?.mix;
    // As fine as the scale shows.
    const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
    console.log(sayHere('inkAnswers.potHolds', { layer: asName(batch.layerName), mass: weight(batch.totalGrams, digits) }));
    const rows = batch.parts.map((part) => [
      tellHere(part.name),
      showHere(weight(part.grams, digits)),
      sayHere('inkAnswers.byVolume', { share: share(part.share, 1) }),
      showHere(volume(part.millilitres)),
    ]);
    for (const line of columns(rows, { indent: '  ', right: [1, 2, 3], between: '   ' })) console.log(line);
    console.log(`  ${sayHere('inkAnswers.rounding', { deltaE: deltaE(batch.roundingDeltaE, 2) })}`);
    if (planned) {
      if (planned.retarderShare > 0)
        console.log(
          `  ${sayHere('inkAnswers.retarder', { share: share(planned.retarderShare), mass: weight(batch.totalGrams * planned.retarderShare, 1) })}`,
        );
      console.log(`  ${tellHere(planned.note)}`);
    }
    printProblems(batch.problems, console.log);
    return 0;
  },
};
