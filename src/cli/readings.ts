import { labFromSpectrum } from '../core/colour/index.ts';
import { readReadings, spectrumFromReading } from '../core/ink/index.ts';
import { fail } from '../core/problem.ts';
import type { Command } from './command.ts';
import { printProblems } from './load.ts';
import { readFileBytes } from './words.ts';

export const readings: Command = {
  name: 'readings',
  usage: 'readings FILE [--json]',
  summary: 'reads measured colours: CGATS.17 text, CxF3, or a table (CSV)',
  help: 'Lists every patch with its Lab (D50, 2°). --json writes each as a reading that job.json takes.',
  options: { json: { type: 'boolean' } },
  run(call) {
    const path = call.words[0] ?? fail('no-file', 'the command', 'Which file of readings?', 'Name a CGATS, CxF or CSV file.');
    const read = readReadings(readFileBytes(path), path);
    if (call.options['json']) {
      console.log(JSON.stringify(read.patches, null, 2));
      return 0;
    }
    printProblems(read.problems);
    for (const patch of read.patches) {
      const lab =
        patch.reading.kind === 'lab' || patch.reading.kind === 'photo'
          ? patch.reading.lab
          : labFromSpectrum(spectrumFromReading(patch.reading, patch.name));
      console.log(
        `  ${patch.name.padEnd(24)} L ${lab[0].toFixed(2).padStart(6)}  a ${lab[1].toFixed(2).padStart(7)}  b ${lab[2].toFixed(2).padStart(7)}   ${patch.reading.kind}`,
      );
    }
    console.log(`${read.patches.length} patches`);
    return 0;
  },
};
