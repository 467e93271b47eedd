import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { constants, deflateRawSync } from 'node:zlib';
import { fail } from '../../../core/problem.ts';
import { figure, list, name as asName, say } from '../../../words/index.ts';
import { filmFile, filmOf, type FilmFormat, type MakePress, type ToneRun } from '../../../packet/index.ts';
import type { Command } from '../../command.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { placeOf } from '../../options.ts';
import { readerOnPaper, sayHere } from '../../reader.ts';
import { option, replaceFile, word } from '../../say/help.ts';
import { idsOf, textOf, wholeOf } from '../../say/words.ts';

const formats = ['png', 'tiff', 'pdf'] as const;

/** Node's own, block by block: each ends on a byte, so that one after the other they are one stream; then a last block of nothing. */
export const quickly: MakePress = () => ({
  push: (bytes) => [deflateRawSync(bytes, { level: 1, finishFlush: constants.Z_SYNC_FLUSH })],
  end: () => [Uint8Array.of(0x03, 0x00)],
});

export const positive: Command = {
  name: 'positive',
  usage: say('help.positiveUsage'),
  summary: say('help.positiveSummary'),
  help: [
    word('layer', say('help.layerIs')),
    option('--dpi N', say('help.positiveDpi')),
    option('--format', say('help.positiveFormat'), 'way'),
    option('--mirrored', say('help.positiveMirrored')),
    option('--out', say('help.positiveOut'), 'folder'),
    replaceFile,
  ],
  prints: true,
  options: {
    dpi: { type: 'string' },
    format: { type: 'string' },
    mirrored: { type: 'boolean' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const dpi = wholeOf(call.options['dpi'], '--dpi', 72, 5080) ?? 1200;
    const format = formatOf(textOf(call.options['format']) ?? 'png');
    const folder = textOf(call.options['out']) ?? 'films';
    const replace = call.options['replace'] === true;
    const bundle = jobOf(call);
    const plan = await planOf(bundle);
    printProblems(plan.problems.filter((p) => /layers\[.*\]\.tone/.test(p.path)));
    const runs = plan.layers.filter((l): l is ToneRun => l.tone !== null);
    if (runs.length === 0) fail('no-tone', 'layers', say('halftone.noToneRun'), say('halftone.giveTone'));
    const named = call.words.slice(1);
    for (const id of named)
      if (!runs.some((l) => l.id === id || l.name === id))
        fail(
          'no-such-layer',
          say('where.commandLine'),
          say('job.noSuchLayer', { layer: asName(id) }),
          say('cli.useOneOf', { all: idsOf(runs, 'or') }),
        );
    const wanted = named.length === 0 ? runs : runs.filter((l) => named.includes(l.id) || named.includes(l.name));
    mkdirSync(folder, { recursive: true });
    const files = wanted.map((layer) => ({ layer, path: join(folder, `${layer.run}-${layer.id}.${format}`) }));
    for (const { path } of files) mustBeNew(path, replace);
    const reader = readerOnPaper(call.language, plan.job);
    for (const { layer, path } of files) {
      const film = filmOf(plan, layer, { dpi, mirrored: call.options['mirrored'] === true, reader });
      writeNew(path, replace, () => filmFile(film, format, quickly));
      const { width, height } = film.layout;
      console.log(
        film.cell
          ? sayHere('halftone.filmWritten', {
              file: asName(path),
              width,
              height,
              ruling: figure(film.cell.rulingPerCm, 2, false),
              angle: figure(film.cell.angleDeg, 2, false),
            })
          : sayHere('halftone.grainWritten', { file: asName(path), width, height }),
      );
    }
    console.log(sayHere('halftone.filmCaution'));
    return 0;
  },
};

function formatOf(text: string): FilmFormat {
  return (
    formats.find((one) => one === text.toLowerCase()) ??
    fail(
      'no-such-format',
      placeOf('--format'),
      say('cli.cannotUse', { text: asName(text) }),
      say('cli.useOneOf', { all: list(formats.map(asName), 'or') }),
    )
  );
}
