import { makeDrawdownSheets } from '../../../packet/index.ts';
import { fail } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/index.ts';
import { readFonts } from '../../assets.ts';
import type { Command } from '../../command.ts';
import { option, replaceFile, word } from '../../say/help.ts';
import { takeJob } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { readerOnPaper, sayHere } from '../../reader.ts';
import { numberOf, textOf, textsOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';

export const drawdowns: Command = {
  name: 'drawdowns',
  usage: say('help.drawdownsUsage'),
  summary: say('help.drawdownsSummary'),
  help: [
    say('help.drawdownsText'),
    word('job', say('help.drawdownsJob')),
    option('--ink', say('help.drawdownsInk'), 'name'),
    option('--parts', say('help.drawdownsParts'), 'parts'),
    option('--out', say('help.drawdownsOut'), 'file'),
    replaceFile,
  ],
  prints: true,
  options: { ink: { type: 'string', multiple: true }, parts: { type: 'string' }, out: { type: 'string' }, replace: { type: 'boolean' } },
  async run(call) {
    const out = textOf(call.options['out']) ?? fail('no-file', placeOf('--out'), say('refusals.whichFile'), say('refusals.writeOut')),
      replace = call.options['replace'] === true;
    mustBeNew(out, replace);
    const job = call.words[0] === undefined ? undefined : takeJob(call.words[0]).job;
    const inks = (job?.inks ?? []).filter((k) => k.from !== 'mix' && k.role === 'ink').map((k) => k.name);
    const titles = [...textsOf(call.options['ink']), ...inks];
    const shares = textOf(call.options['parts'])?.split(',').map(shareOf);
    const bytes = await makeDrawdownSheets(titles, readFonts(), shares, readerOnPaper(call.language, job));
    writeNew(out, replace, () => bytes);
    console.log(sayHere('inkAnswers.sheetsMade', { file: asName(out), n: Math.max(1, titles.length) }));
    return 0;
  },
};

/** `1:4` → 0.2: ink to base by volume. */
export function shareOf(text: string): number {
  const [ink, base = '0'] = text.split(':');
  const a = numberOf(ink, '--parts', 1, 0.001, 1000),
    b = numberOf(base, '--parts', 0, 0, 1000);
  return a / (a + b);
}
