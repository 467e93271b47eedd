import { labFromSpectrum } from '../../../core/colour/index.ts';
import { readReadings, spectrumFromReading } from '../../../core/ink/index.ts';
import { fail } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { option } from '../../say/help.ts';
import { printProblems } from '../../disk/load.ts';
import { printJson, sayHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { labCells, labColumns } from '../../say/words.ts';

const kinds = { spectrum: 'inkAnswers.spectrum', xyz: 'inkAnswers.xyz', lab: 'inkAnswers.lab', photo: 'inkAnswers.photo' } as const;

export const readings: Command = {
  name: 'readings',
  usage: say('help.readingsUsage'),
  summary: say('help.readingsSummary'),
  help: [say('help.readingsText'), option('--json', say('help.readingsJson'))],
  options: { json: { type: 'boolean' } },
  run(call) {
    const path = call.words[0] ?? fail('no-file', say('where.commandLine'), say('refusals.whichReadings'), say('refusals.nameReadings'));
    const read = readReadings(readFileBytes(path), path);
    if (call.options['json']) {
      printJson(read.patches);
      return 0;
    }
    printProblems(read.problems);
    const rows = read.patches.map(({ name, reading }) => {
      const place = say('where.patch', { file: asName(path), patch: asName(name) });
      const lab = reading.kind === 'lab' || reading.kind === 'photo' ? reading.lab : labFromSpectrum(spectrumFromReading(reading, place));
      return [name, ...labCells(lab, 2), sayHere(kinds[reading.kind])];
    });
    for (const line of columns(rows, { indent: '  ', right: labColumns(1) })) console.log(line);
    console.log(sayHere('inkAnswers.patches', { n: read.patches.length }));
    return 0;
  },
};
