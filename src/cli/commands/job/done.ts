import { basename, join, resolve } from 'node:path';
import { existsSync, statSync, writeFileSync } from 'node:fs';
import { inkBench, layerOf } from '../../../core/asks/index.ts';
import { doneKinds, jobFileName, markDone, writeJobText, type Job } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { list, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { diskError, fileAt } from '../../disk/disk.ts';
import { option, word } from '../../say/help.ts';
import { jobOf, planOf } from '../../disk/load.ts';
import { sayHere } from '../../reader.ts';
import { layerNamed } from '../../say/words.ts';

/** Marks a stencil as cut, a pot as mixed, a run as pulled: from then on it stays, and a change that would touch it is told. */
export const done: Command = {
  name: 'done',
  usage: say('help.doneUsage'),
  summary: say('help.doneSummary'),
  help: [
    word('layer', say('help.layerIs')),
    option('--cut', say('help.doneCut')),
    option('--mixed', say('help.doneMixed')),
    option('--pulled', say('help.donePulled')),
    option('--undo', say('help.doneUndo')),
  ],
  options: { cut: { type: 'boolean' }, mixed: { type: 'boolean' }, pulled: { type: 'boolean' }, undo: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const file = jobFileAt(call.words[0]);
    const asked = layerNamed(call, bundle.job);
    // One that is left out for now has no run, but may be cut already.
    const layer = bundle.job.layers.find((l) => l.id === asked || l.name === asked) ?? layerOf(inkBench(bundle.job), asked);
    const kinds = doneKinds.filter((kind) => call.options[kind] === true);
    if (kinds.length === 0)
      fail(
        'nothing-marked',
        say('where.commandLine'),
        say('cli.whatIsDone'),
        say('cli.useOneOf', { all: list(['--cut', '--mixed', '--pulled'].map(asName), 'or') }),
      );
    const undo = call.options['undo'] === true;
    const planned = kinds.includes('cut') && !undo ? (await planOf(bundle)).layers.find((l) => l.id === layer.id) : undefined;
    const bridges = (planned?.stencil.bridges ?? []).map(({ from, to, widthMm }) => ({
      fromMm: [from[0], from[1]] as [number, number],
      toMm: [to[0], to[1]] as [number, number],
      widthMm,
    }));
    const job = kinds.reduce((one, kind) => markDone(one, layer.id, kind, { done: !undo, bridges }), bundle.job);
    writeInPlace(file, job);
    console.log(sayHere(undo ? 'begin.unmarked' : 'begin.marked', { layer: asName(layer.name), what: list(kinds.map(asName), 'and') }));
    return 0;
  },
};

/** The job's own file, with what has been decided. */
export function writeInPlace(file: string, job: Job): void {
  try {
    writeFileSync(file, writeJobText(job));
  } catch (error) {
    fail('cannot-write', fileAt(file), say('cli.cannotWrite', { why: diskError(error) }), say('cli.otherPlace'));
  }
}

/** Only a folder is written into: a `.laydown` file is the bench's. */
export function jobFileAt(path: string): string {
  const at = resolve(path);
  if (basename(at) === jobFileName) return at;
  if (existsSync(at) && statSync(at).isDirectory()) return join(at, jobFileName);
  return fail('not-a-folder', fileAt(path), say('cli.onlyFolders'), say('cli.markAtBench'));
}
