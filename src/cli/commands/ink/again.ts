import { readShelf, spectrumFromReading } from '../../../core/ink/index.ts';
import type { JobInk } from '../../../core/job/index.ts';
import { askAgain, inkBench, inkFromShelf, jobReading, layerOf, paperOf, partsOfLayer } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, figure, list, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { json, option, word } from '../../say/help.ts';
import { jobOf } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, showHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { layerNamed, readingOf, textOf, textsOf } from '../../say/words.ts';

export const again: Command = {
  name: 'again',
  usage: say('help.againUsage'),
  summary: say('help.againSummary'),
  help: [
    say('help.againText'),
    word('layer', say('help.layerIs')),
    option('--lot', say('help.againLot'), 'lot'),
    option('--shelf', say('help.againShelf'), 'file'),
    option('--was', say('help.againWas'), 'reading'),
    option('--on', say('help.againOn'), 'paper'),
    json,
  ],
  options: {
    lot: { type: 'string', multiple: true },
    shelf: { type: 'string' },
    was: { type: 'string' },
    on: { type: 'string' },
    json: { type: 'boolean' },
  },
  run(call) {
    const { job } = jobOf(call);
    const bench = inkBench(job);
    const layer = layerOf(bench, layerNamed(call, job));
    const { paper } = paperOf(bench, textOf(call.options['on']));
    const parts = partsOfLayer(job, layer.id);
    const all = list(
      parts.map((p) => asName(p.inkId)),
      'comma',
    );
    const lots = textsOf(call.options['lot']).map((text): { id: string; ink: JobInk } => {
      const at = text.indexOf('=');
      const id = text.slice(0, at).trim();
      const old = job.inks.find((k) => k.id === id);
      if (at < 1 || !old)
        fail(
          'no-such-ink',
          placeOf('--lot'),
          at < 1 ? say('refusals.lotWithoutReading', { text: asName(text) }) : say('refusals.noSuchInk', { ink: asName(id) }),
          say('refusals.writeLot', { all }),
        );
      const over = readingOf(text.slice(at + 1), placeOf('--lot'));
      spectrumFromReading(over, placeOf('--lot'));
      // No film: the new lot is drawn down as the old one was.
      return {
        id,
        ink: {
          id,
          name: old.name,
          role: old.role,
          densityGPerMl: old.densityGPerMl,
          ...(old.drawdownMicrons === undefined ? {} : { drawdownMicrons: old.drawdownMicrons }),
          from: 'one-ground',
          ground: paper.reading,
          over: jobReading(over),
        },
      };
    });
    const shelfFile = textOf(call.options['shelf']);
    if (shelfFile !== undefined) {
      const shelf = readShelf(new TextDecoder().decode(readFileBytes(shelfFile)), shelfFile);
      for (const ink of shelf.inks)
        if (parts.some((p) => p.inkId === ink.id) && !lots.some((l) => l.id === ink.id)) lots.push({ id: ink.id, ink: inkFromShelf(ink) });
    }
    if (lots.length === 0) fail('no-lot', placeOf('--lot'), say('refusals.whichNewLot'), say('refusals.writeLotOrShelf', { all }));
    const was = textOf(call.options['was']);
    const answer = askAgain(
      job,
      { layer: layer.id, lots, paperId: paper.id, ...(was === undefined ? {} : { recorded: readingOf(was, placeOf('--was')) }) },
      parts,
    );
    if (call.options['json']) {
      printJson(answer);
      return 0;
    }
    const inkName = (id: string): ReturnType<typeof asName> => asName(job.inks.find((k) => k.id === id)?.name ?? id);
    console.log(tellHere(answer.words));
    for (const lot of answer.lots)
      if (lots.some((l) => l.id === lot.id))
        console.log(`  ${sayHere('inkAnswers.newLot', { ink: inkName(lot.id), times: figure(lot.strength, 2) })}`);
    const shareOf = (of1: number): string => showHere(share(of1, 1));
    const rows = [
      ...answer.corrected.parts.map((part) => [
        shareOf(part.share),
        part.name,
        sayHere('inkAnswers.shareWas', { share: share(parts.find((p) => p.inkId === part.id)?.share ?? 0, 1) }),
      ]),
      [shareOf(answer.corrected.restShare), sayHere('inkAnswers.clearBase')],
    ];
    for (const line of columns(rows, { indent: '  ', right: [0] })) console.log(line);
    const { D65, A } = answer.otherLight;
    console.log(`  ${sayHere('inkAnswers.otherLight', { daylight: deltaE(D65), lamp: deltaE(A) })}`);
    return 0;
  },
};
