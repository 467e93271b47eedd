import { boardSeen, calibrated, type BoardSeen } from '../../../core/form/index.ts';
import { fail, problem, type Problem } from '../../../core/problem.ts';
import { makeLensBoard } from '../../../packet/index.ts';
import { figure, name as asName, say } from '../../../words/index.ts';
import { readFonts } from '../../assets.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { printProblems } from '../../disk/load.ts';
import { readPictureApart } from '../../disk/read-picture.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { placeOf } from '../../options.ts';
import { readerOnPaper, sayHere } from '../../reader.ts';
import { option, replaceFile, word } from '../../say/help.ts';
import { textOf } from '../../say/words.ts';
import { photoOf } from './trace.ts';

export const lens: Command = {
  name: 'lens',
  usage: say('help.lensUsage'),
  summary: say('help.lensSummary'),
  help: [
    say('help.lensText'),
    word('photo', say('help.lensPhotos')),
    option('--board a4|letter', say('help.lensBoard')),
    option('--out', say('help.lensOut'), 'file'),
    replaceFile,
  ],
  prints: true,
  options: { board: { type: 'string' }, out: { type: 'string' }, replace: { type: 'boolean' } },
  async run(call) {
    const out = textOf(call.options['out']) ?? fail('no-file', placeOf('--out'), say('refusals.whichFile'), say('refusals.writeOut')),
      replace = call.options['replace'] === true;
    mustBeNew(out, replace);
    const board = textOf(call.options['board']);
    if (board !== undefined) {
      if (board !== 'a4' && board !== 'letter')
        fail('no-such-page', placeOf('--board'), say('cli.cannotUse', { text: asName(board) }), say('refusals.boardPages'));
      const bytes = await makeLensBoard(board, readFonts(), readerOnPaper(call.language));
      writeNew(out, replace, () => bytes);
      console.log(sayHere('inkAnswers.boardMade', { file: asName(out) }));
      return 0;
    }
    if (call.words.length === 0) fail('no-photo', say('where.commandLine'), say('cli.whichPhoto'), say('cli.namePicture'));
    const seen: BoardSeen[] = [];
    const problems: Problem[] = [];
    for (const path of call.words) {
      const one = boardSeen(photoOf(await readPictureApart(readFileBytes(path), path)));
      if (one) seen.push(one);
      else problems.push(problem('warning', 'photo-no-board', fileAt(path), say('form.noBoard'), say('form.showBoard')));
    }
    printProblems(problems);
    const found = calibrated(seen);
    if (!found) return fail('no-lens', say('where.commandLine'), say('form.noBoard'), say('form.showBoard'));
    if (seen.length < 3) console.log(sayHere('inkAnswers.fewBoards', { n: seen.length }));
    writeNew(out, replace, () => `${JSON.stringify({ lens: found.lens }, null, 2)}\n`);
    console.log(sayHere('inkAnswers.lensRead', { file: asName(out), n: seen.length, off: figure(found.offPx, 2) }));
    return 0;
  },
};
