import { readShelf, spectrumFromReading } from '../core/ink/index.ts';
import type { JobInk } from '../core/job/index.ts';
import { askAgain, inkBench, inkFromShelf, jobReading, layerOf, paperOf, partsOfLayer } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf } from './load.ts';
import { tellHere } from './reader.ts';
import { readFileBytes, readingOf, textOf } from './words.ts';

export const again: Command = {
  name: 'again',
  usage: 'again JOB LAYER --lot INK="L a b" [--lot INK=FILE …] [--shelf FILE] [--was READING] [--on PAPER] [--json]',
  summary: 'the same colour again with new lots of ink',
  help: [
    'LAYER is its id, its name, or its run. The job is the record of then.',
    '--lot INK=READING   the new lot drawn down on the paper: Lab, or a file of readings; several times for several inks',
    '--shelf FILE        new lots are the ones in use on this shelf, for all inks that have no --lot',
    '--was READING       what the print of then reads now, if it can be read',
    '--on PAPER          the paper the new lots were drawn down on, and that is printed on (default: the first)',
    '--json              as JSON',
  ].join('\n'),
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
    const layer = layerOf(
      bench,
      call.words[1] ??
        fail('no-layer-named', 'the command', 'The colour of which layer?', `Name one of: ${job.layers.map((l) => l.id).join(', ')}.`),
    );
    const { paper } = paperOf(bench, textOf(call.options['on']));
    const parts = partsOfLayer(job, layer.id);
    const lots = ((call.options['lot'] ?? []) as string[]).map((text): { id: string; ink: JobInk } => {
      const at = text.indexOf('=');
      const id = text.slice(0, at).trim();
      const old = job.inks.find((k) => k.id === id);
      if (at < 1 || !old)
        fail(
          'no-such-ink',
          '--lot',
          at < 1 ? `“${text}” says no reading.` : `The job has no ink “${id}”.`,
          `Write --lot INK="L a b"; inks of this pot: ${parts.map((p) => p.inkId).join(', ')}.`,
        );
      const over = readingOf(text.slice(at + 1), `--lot ${id}`);
      spectrumFromReading(over, `--lot ${id}`);
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
    if (lots.length === 0)
      fail(
        'no-lot',
        '--lot',
        'Which ink has a new lot?',
        `Inks of this pot: ${parts.map((p) => p.inkId).join(', ')}. Write --lot INK="L a b", or name a --shelf.`,
      );
    const was = textOf(call.options['was']);
    const answer = askAgain(
      job,
      { layer: layer.id, lots, paperId: paper.id, ...(was === undefined ? {} : { recorded: readingOf(was, '--was') }) },
      parts,
    );
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          answer,
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    console.log(tellHere(answer.words, job.units));
    for (const lot of answer.lots)
      if (lots.some((l) => l.id === lot.id)) console.log(`  ${lot.id}: the new lot is ${lot.strength.toFixed(2)} times as strong`);
    for (const part of answer.corrected.parts)
      console.log(
        `  ${(part.share * 100).toFixed(1).padStart(5)} % ${part.name}   (was ${((parts.find((p) => p.inkId === part.id)?.share ?? 0) * 100).toFixed(1)} %)`,
      );
    console.log(`  ${(answer.corrected.restShare * 100).toFixed(1).padStart(5)} % clear base`);
    console.log(`  in daylight off by ΔE00 ${answer.otherLight.D65.toFixed(1)}, in lamp light by ${answer.otherLight.A.toFixed(1)}`);
    return 0;
  },
};
